import type { TemplateResult } from 'lit'
import type { Batch, Pieces } from '../../src/dough/document/batch.js'
import type { Formula, Stage } from '../../src/dough/document/formula.js'
import type { FigureSheet } from '../../src/dough/sheet/figures.js'
import { gramDigits, type NumberStyle, showDecimals } from '../base/numbers.js'
import { batchSentence, keepWords, lossWords, makeWords, type ShapeSaid } from './words.js'

/** A number in a sentence, with at most so many decimals. */
export const sayNumber = (value: number, style: NumberStyle, digits: number): string =>
  showDecimals(value, style, digits, 0)

/** A weight in a sentence: `652 g`, `50 g`, `3.25 g`. */
export const sayGrams = (grams: number, style: NumberStyle): string =>
  `${sayNumber(grams, style, gramDigits(grams))}\u00a0g`

/** A weight the baker gave, or one on their scale: to the last of its digits. */
export const sayWhole = (grams: number, style: NumberStyle): string => `${sayNumber(grams, style, 4)}\u00a0g`
const sayPart = (part: number, style: NumberStyle): string => `${sayNumber(part * 100, style, 2)}\u00a0%`

/** Shapes as they are said; `baked`: what a piece weighs after it is baked, where that is to stand beside. */
export const shapesOf = (
  pieces: readonly Pieces[],
  style: NumberStyle,
  baked: (weight: number) => number | undefined = () => undefined,
): ShapeSaid[] =>
  pieces.map(({ count, weight, name = '' }) => {
    const after = baked(weight)
    return {
      count: sayNumber(count, style, 4),
      isOne: count === 1,
      weight: sayWhole(weight, style),
      name,
      baked: after === undefined ? '' : sayGrams(after, style),
    }
  })

/** What a piece of a batch weighs after it is baked; undefined where no bake loss is said, or it is weighed baked anyway. */
export const bakedWeight =
  ({ make, bakeLoss }: Batch) =>
  (weight: number): number | undefined =>
    make === 'pieces' && bakeLoss ? weight * (1 - bakeLoss) : undefined

/** `Make 6 pieces of 900 g`, what was given standing out. */
export function makeProse(sheet: FigureSheet, style: NumberStyle): TemplateResult {
  const batch: Batch = sheet.formula.batch ?? { make: 'as written' }
  switch (batch.make) {
    case 'as written': {
      const dough = sheet.reading('doughWeight')
      return makeWords.asWritten(dough === undefined ? undefined : sayGrams(dough, style))
    }
    case 'pieces':
      return makeWords.pieces(shapesOf(batch.pieces, style, bakedWeight(batch)))
    case 'baked pieces':
      return makeWords.bakedPieces(shapesOf(batch.pieces, style))
    case 'dough':
      return makeWords.dough(sayWhole(batch.grams, style))
    case 'flour':
      return makeWords.flour(sayWhole(batch.grams, style))
    case 'all of':
      return makeWords.allOf(sayWhole(batch.grams, style), batch.ingredient)
    case 'factor':
      return makeWords.factor(sayNumber(batch.factor, style, 4))
  }
}

/** Whether a loss in mixing, or in baking, changes how much dough there is to make. */
export const losesInMixing = (make: Batch['make']): boolean => make === 'pieces' || make === 'baked pieces'
export const losesInBaking = (make: Batch['make']): boolean => make === 'baked pieces'

/** What is lost of the batch, in words; `inMixing` says it of what is lost in mixing. */
export function losses(batch: Batch, style: NumberStyle, inMixing = lossWords.inMixing): string[] {
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
  return batchSentence([makeProse(sheet, style), ...(lost ? [lost] : []), ...kept])
}

export const earlierStages = (formula: Formula): readonly Stage[] => formula.stages.slice(0, -1)
