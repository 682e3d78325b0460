import type { Batch } from '../../src/dough/document/batch.js'
import {
  type Formula,
  finalDoughOf,
  hasBatch,
  type Line,
  type Stage,
  sameName,
} from '../../src/dough/document/formula.js'
import type { FigureSheet, StageFigures } from '../../src/dough/sheet/figures.js'
import type { NumberStyle } from '../base/numbers.js'
import { losses, sayGrams, sayNumber, sayWhole, shapesOf } from './batch-prose.js'
import { totalWords } from './total-words.js'
import { keptOf } from './weighed-shown.js'
import { leftWords, lossWords } from './words.js'

/** `6 × 900 g, 2 % lost`: why the total is what it is. */
function whyTotal(batch: Batch, style: NumberStyle): string | undefined {
  const what = whatTotal(batch, style)
  return what && [what, ...losses(batch, style, lossWords.lost)].join(', ')
}

function whatTotal(batch: Batch, style: NumberStyle): string | undefined {
  switch (batch.make) {
    case 'pieces':
      return totalWords.shapes(shapesOf(batch.pieces, style))
    case 'baked pieces':
      return totalWords.baked(totalWords.shapes(shapesOf(batch.pieces, style)))
    case 'flour':
      return totalWords.fromFlour(sayWhole(batch.grams, style))
    case 'all of':
      return totalWords.allOf(sayWhole(batch.grams, style), batch.ingredient)
    case 'factor':
      return totalWords.times(sayNumber(batch.factor, style, 4))
    default:
      return undefined
  }
}

/** What there is to weigh of the dough, all its lines on the baker's scale together; undefined as written. */
export function totalToWeigh(sheet: FigureSheet, style: NumberStyle) {
  const { formula } = sheet
  if (!hasBatch(formula)) return undefined
  const weighed = finalDoughOf(formula).lines.map(line => sheet.weighed(line.id)?.grams)
  if (weighed.includes(undefined)) return undefined
  const total = (weighed as number[]).reduce((sum, grams) => sum + grams, 0)
  const why = whyTotal(formula.batch ?? { make: 'as written' }, style)
  const over = total - (sheet.stage(finalDoughOf(formula).id).build ?? total)
  return {
    total: sayWhole(total, style),
    why: why && over > 0.99 ? totalWords.withSteps(why, sayGrams(over, style)) : why,
  }
}

/** The stages that take another, by name. */
const takers = (formula: Formula, stage: Stage): readonly string[] =>
  formula.stages.filter(s => s.lines.some(l => sameName(l.ingredient, stage.name))).map(s => s.name)

/** `652 g made, 602 g goes into Final dough, 50 g kept back`; undefined where there is nothing to tell. */
export function leftOver(sheet: FigureSheet, stage: Stage, style: NumberStyle): string | undefined {
  const figures = sheet.stage(stage.id)
  return hasBatch(sheet.formula) ? leftOfBatch(sheet, stage, figures, style) : leftAsWritten(figures, style)
}

function leftAsWritten({ weight, taken }: StageFigures, style: NumberStyle): string | undefined {
  if (weight === undefined || !taken) return undefined
  const left = weight - taken
  if (Math.abs(left) <= 1e-6 * Math.max(1, weight)) return undefined
  return [
    leftWords.made(sayGrams(weight, style)),
    leftWords.taken(sayGrams(taken, style)),
    left > 0 ? leftWords.left(sayGrams(left, style)) : leftWords.short(sayGrams(-left, style)),
  ].join(', ')
}

/** In the grams that are weighed, as the grid shows them; in exact ones where the batch cannot be weighed. */
function leftOfBatch(
  sheet: FigureSheet,
  stage: Stage,
  figures: StageFigures,
  style: NumberStyle,
): string | undefined {
  const { formula } = sheet
  const weighed = (lines: readonly Line[]) =>
    lines.reduce<number | undefined>((sum, line) => {
      const grams = sheet.weighed(line.id)?.grams
      return sum === undefined || grams === undefined ? undefined : sum + grams
    }, 0)
  const taking = formula.stages.flatMap(s => s.lines).filter(l => sameName(l.ingredient, stage.name))
  const build = weighed(stage.lines) ?? figures.build
  const needed = weighed(taking) ?? figures.needed
  if (build === undefined || needed === undefined || figures.needed === undefined) return undefined
  const whole = needed / (1 - (stage.loss ?? 0))
  const tiny = 1e-6 * Math.max(1, build)
  const kept = keptOf(sheet, stage)
  const into = takers(formula, stage)
  return [
    leftWords.made(sayGrams(build, style)),
    ...(into.length ? [leftWords.goesInto(sayGrams(needed, style), into)] : []),
    ...(whole - needed > tiny ? [leftWords.lost(sayGrams(whole - needed, style))] : []),
    ...(kept > tiny ? [leftWords.keptBack(sayGrams(kept, style))] : []),
  ].join(', ')
}
