import { html, nothing, type TemplateResult } from 'lit'
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
import { keptOf } from './weighing-words.js'

const number = (value: number, style: NumberStyle, digits: number): string =>
  showDecimals(value, style, digits, 0)

/** A weight in a sentence: `652 g`, `50 g`, `3.25 g`. */
export const sayGrams = (grams: number, style: NumberStyle): string =>
  `${number(grams, style, gramDigits(grams))}\u00a0g`

/** A weight the baker gave, or one on their scale: to the last of its digits. */
const sayWhole = (grams: number, style: NumberStyle): string => `${number(grams, style, 4)}\u00a0g`
const sayPart = (part: number, style: NumberStyle): string => `${number(part * 100, style, 2)}\u00a0%`
const list = (parts: readonly unknown[], joint: string, last = joint) =>
  parts.map((part, at) => [at === 0 ? nothing : at === parts.length - 1 ? last : joint, part])

function inShapes(pieces: readonly Pieces[], style: NumberStyle) {
  return list(
    pieces.map(({ count, weight }, at) => {
      const noun = at > 0 ? '' : count === 1 ? 'piece ' : 'pieces '
      return html`<b>${number(count, style, 4)}</b> ${noun}of <b>${sayWhole(weight, style)}</b>`
    }),
    ', ',
    ' and ',
  )
}

function toMake(batch: Batch, sheet: FigureSheet, style: NumberStyle): TemplateResult {
  switch (batch.make) {
    case 'as written': {
      const dough = sheet.reading('doughWeight')
      return html`Make it as written${dough === undefined ? nothing : html`: ${sayGrams(dough, style)} of dough`}`
    }
    case 'pieces':
      return html`Make ${inShapes(batch.pieces, style)}`
    case 'baked pieces':
      return html`Make ${inShapes(batch.pieces, style)} when baked`
    case 'dough':
      return html`Make <b>${sayWhole(batch.grams, style)}</b> of dough`
    case 'flour':
      return html`Make the dough of <b>${sayWhole(batch.grams, style)}</b> of flour`
    case 'all of':
      return html`Use all of <b>${sayWhole(batch.grams, style)}</b> of ${batch.ingredient}`
    case 'factor':
      return html`Make <b>${number(batch.factor, style, 4)}</b> times what is written`
  }
}

/** Whether a loss in mixing, or in baking, changes how much dough there is to make. */
export const losesInMixing = (make: Batch['make']): boolean => make === 'pieces' || make === 'baked pieces'
export const losesInBaking = (make: Batch['make']): boolean => make === 'baked pieces'

function losses(batch: Batch, style: NumberStyle): string[] {
  const { make, loss, bakeLoss } = batch
  return [
    ...(losesInBaking(make) && bakeLoss ? [`${sayPart(bakeLoss, style)} lost in baking`] : []),
    ...(losesInMixing(make) && loss ? [`${sayPart(loss, style)} lost in mixing`] : []),
  ]
}

/** `Make 6 pieces of 900 g; 2 % lost in mixing; keep back 50 g of Levain`, what was given standing out. */
export function batchProse(sheet: FigureSheet, style: NumberStyle): TemplateResult {
  const { formula } = sheet
  const batch: Batch = formula.batch ?? { make: 'as written' }
  const lost = losses(batch, style).join(', ')
  const kept = earlierStages(formula).flatMap(({ name, keepBack, loss }) => [
    ...(keepBack === 'seed' ? [html`keep back as much ${name} as its seed`] : []),
    ...(typeof keepBack === 'number' ? [html`keep back <b>${sayWhole(keepBack, style)}</b> of ${name}`] : []),
    ...(loss ? [html`${sayPart(loss, style)} of ${name} lost`] : []),
  ])
  return html`${list([toMake(batch, sheet, style), ...(lost ? [lost] : []), ...kept], '; ')}.`
}

export const earlierStages = (formula: Formula): readonly Stage[] => formula.stages.slice(0, -1)

/** Whether the formula is made just as it is written. */
export const isAsWritten = ({ batch, stages }: Formula): boolean =>
  (batch?.make ?? 'as written') === 'as written' && !stages.some(s => s.keepBack || s.loss)

/** `6 × 900 g, 2 % lost`: why the total is what it is. */
function whyTotal(batch: Batch, style: NumberStyle): string | undefined {
  const lost = losses(batch, style)
    .join(', ')
    .replace(/ in mixing$/, '')
  const what = whatTotal(batch, style)
  return what && [what, ...(lost ? [lost] : [])].join(', ')
}

function whatTotal(batch: Batch, style: NumberStyle): string | undefined {
  switch (batch.make) {
    case 'pieces':
    case 'baked pieces': {
      const shapes = batch.pieces.map(p => `${number(p.count, style, 4)} × ${sayWhole(p.weight, style)}`)
      return shapes.join(' + ') + (batch.make === 'baked pieces' ? ' baked' : '')
    }
    case 'flour':
      return `from ${sayWhole(batch.grams, style)} of flour`
    case 'all of':
      return `all of ${sayWhole(batch.grams, style)} of ${batch.ingredient}`
    case 'factor':
      return `${number(batch.factor, style, 4)} times as written`
    default:
      return undefined
  }
}

/** What there is to weigh of the dough, all its lines on the baker's scale together; undefined as written. */
export function totalToWeigh(sheet: FigureSheet, style: NumberStyle) {
  const { formula } = sheet
  if (isAsWritten(formula)) return undefined
  const weighed = finalDoughOf(formula).lines.map(line => sheet.weighed(line.id)?.grams)
  if (weighed.includes(undefined)) return undefined
  const total = (weighed as number[]).reduce((sum, grams) => sum + grams, 0)
  const why = whyTotal(formula.batch ?? { make: 'as written' }, style)
  const over = total - (sheet.stage(finalDoughOf(formula).id).build ?? total)
  const steps = over > 0.99 ? `, and ${sayGrams(over, style)} that the scale’s steps add` : ''
  return { total: sayWhole(total, style), why: why && why + steps }
}

/** The stages that take another, by name. */
const takers = (formula: Formula, stage: Stage): string =>
  formula.stages
    .filter(s => s.lines.some(l => sameName(l.ingredient, stage.name)))
    .map(s => s.name)
    .join(' and ')

/** `652 g made, 602 g goes into Final dough, 50 g kept back`; undefined where there is nothing to tell. */
export function leftOver(sheet: FigureSheet, stage: Stage, style: NumberStyle): string | undefined {
  const figures = sheet.stage(stage.id)
  return isAsWritten(sheet.formula)
    ? leftAsWritten(figures, style)
    : leftOfBatch(sheet, stage, figures, style)
}

function leftAsWritten({ weight, taken }: StageFigures, style: NumberStyle): string | undefined {
  if (weight === undefined || !taken) return undefined
  const left = weight - taken
  if (Math.abs(left) <= 1e-6 * Math.max(1, weight)) return undefined
  const rest = left > 0 ? `${sayGrams(left, style)} left` : `${sayGrams(-left, style)} short`
  return `${sayGrams(weight, style)} made, ${sayGrams(taken, style)} taken, ${rest}`
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
    `${sayGrams(build, style)} made`,
    ...(into ? [`${sayGrams(needed, style)} goes into ${into}`] : []),
    ...(whole - needed > tiny ? [`${sayGrams(whole - needed, style)} lost`] : []),
    ...(kept > tiny ? [`${sayGrams(kept, style)} kept back`] : []),
  ].join(', ')
}
