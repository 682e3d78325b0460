import type { TemplateResult } from 'lit'
import type { Batch, Pieces } from '../../src/dough/document/batch.js'
import {
  type Formula,
  finalDoughOf,
  type Line,
  type Stage,
  sameName,
} from '../../src/dough/document/formula.js'
import type { FigureSheet, StageFigures } from '../../src/dough/sheet/figures.js'
import { gramDigits, type NumberStyle, showDecimals } from '../base/numbers.js'
import { hasBatch, keptOf } from './weighing.js'
import {
  batchSentence,
  keepWords,
  leftWords,
  lossWords,
  makeWords,
  type ShapeSaid,
  totalWords,
} from './words.js'

const number = (value: number, style: NumberStyle, digits: number): string =>
  showDecimals(value, style, digits, 0)

/** A weight in a sentence: `652 g`, `50 g`, `3.25 g`. */
const sayGrams = (grams: number, style: NumberStyle): string =>
  `${number(grams, style, gramDigits(grams))}\u00a0g`

/** A weight the baker gave, or one on their scale: to the last of its digits. */
const sayWhole = (grams: number, style: NumberStyle): string => `${number(grams, style, 4)}\u00a0g`
const sayPart = (part: number, style: NumberStyle): string => `${number(part * 100, style, 2)}\u00a0%`

const shapesOf = (pieces: readonly Pieces[], style: NumberStyle): ShapeSaid[] =>
  pieces.map(({ count, weight }) => ({
    count: number(count, style, 4),
    isOne: count === 1,
    weight: sayWhole(weight, style),
  }))

function toMake(batch: Batch, sheet: FigureSheet, style: NumberStyle): TemplateResult {
  switch (batch.make) {
    case 'as written': {
      const dough = sheet.reading('doughWeight')
      return makeWords.asWritten(dough === undefined ? undefined : sayGrams(dough, style))
    }
    case 'pieces':
      return makeWords.pieces(shapesOf(batch.pieces, style))
    case 'baked pieces':
      return makeWords.bakedPieces(shapesOf(batch.pieces, style))
    case 'dough':
      return makeWords.dough(sayWhole(batch.grams, style))
    case 'flour':
      return makeWords.flour(sayWhole(batch.grams, style))
    case 'all of':
      return makeWords.allOf(sayWhole(batch.grams, style), batch.ingredient)
    case 'factor':
      return makeWords.factor(number(batch.factor, style, 4))
  }
}

/** Whether a loss in mixing, or in baking, changes how much dough there is to make. */
export const losesInMixing = (make: Batch['make']): boolean => make === 'pieces' || make === 'baked pieces'
export const losesInBaking = (make: Batch['make']): boolean => make === 'baked pieces'

/** What is lost of the batch, in words; `inMixing` says it of what is lost in mixing. */
function losses(batch: Batch, style: NumberStyle, inMixing = lossWords.inMixing): string[] {
  const { make, loss, bakeLoss } = batch
  return [
    ...(losesInBaking(make) && bakeLoss ? [lossWords.inBaking(sayPart(bakeLoss, style))] : []),
    ...(losesInMixing(make) && loss ? [inMixing(sayPart(loss, style))] : []),
  ]
}

/** `Make 6 pieces of 900 g; 2 % lost in mixing; keep back 50 g of Levain`, what was given standing out. */
export function batchProse(sheet: FigureSheet, style: NumberStyle): TemplateResult {
  const { formula } = sheet
  const batch: Batch = formula.batch ?? { make: 'as written' }
  const lost = losses(batch, style).join(', ')
  const kept = earlierStages(formula).flatMap(({ name, keepBack, loss }) => [
    ...(keepBack === 'seed' ? [keepWords.asItsSeed(name)] : []),
    ...(typeof keepBack === 'number' ? [keepWords.grams(sayWhole(keepBack, style), name)] : []),
    ...(loss ? [keepWords.lost(sayPart(loss, style), name)] : []),
  ])
  return batchSentence([toMake(batch, sheet, style), ...(lost ? [lost] : []), ...kept])
}

export const earlierStages = (formula: Formula): readonly Stage[] => formula.stages.slice(0, -1)

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
      return totalWords.times(number(batch.factor, style, 4))
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
