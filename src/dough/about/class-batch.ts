import { type Batch, doughForPieces } from '../document/batch.js'
import type { Day } from '../document/day.js'
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

/**
 * For how many people a day bakes: as was said, or the fewest pieces of a bread where those of all others are so many times that, 11 of
 * 11 loaves and 66 buns; undefined where neither tells.
 */
export function peopleOfDay({ people, breads }: Pick<Day, 'people' | 'breads'>): number | undefined {
  if (people !== undefined) return people
  const counts = breads.flatMap(({ batch }) =>
    'pieces' in batch ? [batch.pieces.reduce((sum, { count }) => sum + count, 0)] : [],
  )
  const fewest = Math.min(...counts)
  return counts.length > 0 && fewest > 1 && counts.every(count => isWhole(count / fewest))
    ? fewest
    : undefined
}
