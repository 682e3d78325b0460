import { type Batch, doughForPieces } from '../document/batch.js'
import type { Formula } from '../document/formula.js'

/** What each of several people makes of a formula: a piece of each shape, its whole batch, or their part of it. */
export type EachMakes = 'piece' | 'batch' | 'share'

/** A formula as it is made by one person, and by all of them together. */
export interface ForClass {
  readonly each: Formula
  readonly all: Formula
}

const isWhole = (count: number): boolean => Math.abs(count - Math.round(count)) < 1e-9

/** So many times a batch. Pieces that would not be whole are dough. */
function times(batch: Batch, factor: number): Batch {
  const { loss, bakeLoss } = batch
  const losses = { ...(loss !== undefined && { loss }), ...(bakeLoss !== undefined && { bakeLoss }) }
  switch (batch.make) {
    case 'as written':
      return { ...losses, make: 'factor', factor }
    case 'factor':
      return { ...batch, factor: batch.factor * factor }
    case 'dough':
    case 'flour':
    case 'all of':
      return { ...batch, grams: batch.grams * factor }
    case 'pieces':
    case 'baked pieces': {
      const pieces = batch.pieces.map(({ count, weight }) => ({ count: count * factor, weight }))
      if (pieces.every(({ count }) => isWhole(count))) return { ...batch, pieces }
      return { ...losses, make: 'dough', grams: doughForPieces(batch) * factor }
    }
  }
}

/** What one of so many people makes, and all together. Where a batch is not in pieces, a piece is all of it. */
export function forClass(formula: Formula, people: number, makes: EachMakes): ForClass {
  const { batch = { make: 'as written' as const } } = formula
  const made = (of: Batch): Formula => ({ ...formula, batch: of })
  if (makes === 'share') return { each: made(times(batch, 1 / people)), all: made(batch) }
  const each =
    makes === 'piece' && 'pieces' in batch
      ? { ...batch, pieces: batch.pieces.map(({ weight }) => ({ count: 1, weight })) }
      : batch
  return { each: made(each), all: made(people === 1 ? each : times(each, people)) }
}
