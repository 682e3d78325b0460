import type { DaySheet } from '../../src/day/plan/open-day.js'
import type { PlannedEvent } from '../../src/day/plan/planned.js'
import type { NumberStyle } from '../base/numbers.js'
import { bakedWeight, shapesOf } from '../batch/batch-prose.js'
import { totalWords } from '../batch/total-words.js'
import { atBenchWords } from './words.js'

/** How many pieces a step is of: of a load so many, of a dough its shapes, `3 × 852 g (750 g baked), round tin`; '' where there are none. */
export function piecesSaid(
  { day, breads }: DaySheet,
  { load, stage, breads: [first] }: PlannedEvent,
  numbers: NumberStyle,
): string {
  const bread = breads.find(({ id }) => id === first)
  const pieces = load?.pieces ?? bread?.pieces
  if (pieces === undefined) return ''
  const isDough = bread?.stages.some(plan => plan.isFinal && plan.stage.id === stage)
  const batch = day.breads.find(({ id }) => id === first)?.batch
  if (!isDough || !batch || !('pieces' in batch) || (load && load.of > 1)) return atBenchWords.pieces(pieces)
  const shapes = totalWords.shapes(shapesOf(batch.pieces, numbers, bakedWeight(batch)))
  return batch.make === 'baked pieces' ? totalWords.baked(shapes) : shapes
}
