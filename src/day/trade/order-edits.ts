import type { Batch, Pieces } from '../../dough/document/batch.js'
import { batchProblem } from '../../dough/document/batch-checks.js'
import type { Day, DayBread } from '../../dough/document/day.js'
import { isPeople } from '../../dough/document/day-checks.js'
import { type Formula, newId } from '../../dough/document/formula.js'
import { sameData } from '../../dough/document/same-data.js'
import { tidy } from '../../dough/document/words.js'
import type { Change, Transaction, Workbook } from '../../dough/document/workbook.js'
import { dayIn } from '../../dough/edits/fetched/day-edits.js'
import { Refusal } from '../../dough/edits/words.js'
import { tradeLabels } from './words.js'

/** How many of a bread are wanted. */
export interface Wanted {
  readonly count: number
  readonly weight?: number // grams of dough in a piece, where nobody has said it yet
}

const shapesOf = (batch: Batch | undefined): readonly Pieces[] =>
  batch && (batch.make === 'pieces' || batch.make === 'baked pieces') ? batch.pieces : []

/** Shapes of so many pieces all told, in proportion as they are; whole ones where the number is whole. */
function spread(shapes: readonly Pieces[], count: number): Pieces[] {
  const all = shapes.reduce((sum, shape) => sum + shape.count, 0)
  const exact = shapes.map(shape => (shape.count / all) * count)
  if (!Number.isInteger(count) || shapes.length === 1)
    return shapes.map((shape, i) => ({ ...shape, count: exact[i]! }))
  const whole = exact.map(part => Math.floor(tidy(part)))
  let left = count - whole.reduce((sum, part) => sum + part, 0)
  const byRest = exact
    .map((part, i) => ({ i, rest: part - whole[i]! }))
    .sort((a, b) => b.rest - a.rest || a.i - b.i)
  for (const { i } of byRest) if (left-- > 0) whole[i]! += 1
  return shapes.map((shape, i) => ({ ...shape, count: whole[i]! })).filter(shape => shape.count > 0)
}

/** What a piece of a bread weighs is said by its batch, or else by its formula's own: the batch that says so. */
const saysPieces = (batch: Batch | undefined, own: Batch | undefined): Batch | undefined =>
  [batch, own].find(one => shapesOf(one).length > 0)

/** Whether it has to be asked what a piece weighs before so many of them can be made. */
export const wantsWeight = (batch: Batch | undefined, own: Batch | undefined): boolean =>
  !saysPieces(batch, own)

/** A batch of so many pieces, in the shapes that are said of it; undefined where nobody says what a piece weighs. */
export function batchOfCount(
  batch: Batch | undefined,
  own: Batch | undefined,
  { count, weight }: Wanted,
): Batch | undefined {
  const said = saysPieces(batch, own)
  const { loss, bakeLoss } = said ?? batch ?? own ?? {}
  const losses = { ...(loss && { loss }), ...(bakeLoss && { bakeLoss }) }
  if (said && 'pieces' in said) return { make: said.make, pieces: spread(said.pieces, count), ...losses }
  return weight === undefined ? undefined : { make: 'pieces', pieces: [{ count, weight }], ...losses }
}

const putDay = (label: string, before: Day, breads: readonly DayBread[]): Transaction | undefined =>
  sameData(before.breads, breads)
    ? undefined
    : { label, changes: [{ of: 'day', id: before.id, value: { ...before, breads } }] }

const refuseBatch = (batch: Batch): Batch => {
  const problem = batchProblem(batch)
  if (problem) throw new Refusal(problem)
  return batch
}

/**
 * Bakes so many of each formula on a day, as one edit: where it is not baked on it yet, it is from now on; of one that is
 * baked twice the first takes them. Others stay as they are. Undefined where nothing changes. Throws Refusal where a day is gone.
 */
export function setOrders(
  workbook: Workbook,
  day: string,
  orders: ReadonlyMap<string, Wanted>, // by formula
): Transaction | undefined {
  const before = dayIn(workbook, day)
  const left = new Map(orders)
  const taken = (formula: string) => {
    const wanted = left.get(formula)
    left.delete(formula)
    return wanted
  }
  const own = (id: string) => workbook.formulas.find(formula => formula.id === id)?.batch
  const breads = before.breads.map((bread): DayBread => {
    const wanted = taken(bread.formula)
    const batch = wanted && batchOfCount(bread.batch, own(bread.formula), wanted)
    return batch ? { ...bread, batch: refuseBatch(batch) } : bread
  })
  const more = workbook.formulas.flatMap(({ id, batch: its }): DayBread[] => {
    const wanted = taken(id)
    const batch = wanted && batchOfCount(its, undefined, wanted)
    return batch ? [{ id: newId(), formula: id, batch: refuseBatch(batch) }] : []
  })
  return putDay(tradeLabels.orders(before.name), before, [...breads, ...more])
}

/** Counts that were whole stay so: nobody goes without. */
const timesCount = (count: number, ratio: number): number =>
  Number.isInteger(count) ? Math.ceil(Number((count * ratio).toPrecision(12))) : tidy(count * ratio)

/** A batch for more people or fewer: `ratio` times as much, whole pieces rounded up. */
export function timesBatch(batch: Batch | undefined, ratio: number): Batch {
  const its = batch ?? { make: 'as written' }
  switch (its.make) {
    case 'as written': {
      const { make: _make, ...losses } = its
      return { ...losses, make: 'factor', factor: tidy(ratio) }
    }
    case 'pieces':
    case 'baked pieces':
      return {
        ...its,
        pieces: its.pieces.map(shape => ({ ...shape, count: timesCount(shape.count, ratio) })),
      }
    case 'factor':
      return { ...its, factor: tidy(its.factor * ratio) }
    default:
      return { ...its, grams: tidy(its.grams * ratio) }
  }
}

/** So many in place of so many: 11 in place of 8. */
export interface HowMany {
  readonly from: number
  readonly to: number
}

/** Makes all breads of a day for `to` in place of `from`, as one edit; undefined where nothing changes. */
export function changeBreads(
  workbook: Workbook,
  day: string,
  { from, to }: HowMany,
): Transaction | undefined {
  const before = dayIn(workbook, day)
  const breads = before.breads.map(bread => ({
    ...bread,
    batch: refuseBatch(timesBatch(bread.batch, to / from)),
  }))
  const { people: _people, ...others } = before
  const value = { ...others, breads, ...(isPeople(to) && { people: to }) }
  return from === to
    ? undefined
    : { label: tradeLabels.forAsMany(from, to), changes: [{ of: 'day', id: day, value }] }
}

/** The same of formulas of the shelf, by their ids. */
export function changeFormulas(
  { formulas }: Workbook,
  ids: readonly string[],
  { from, to }: HowMany,
): Transaction | undefined {
  const changes = formulas
    .filter(({ id }) => ids.includes(id))
    .map(
      ({ id, batch }: Formula): Change => ({
        of: 'fields',
        formula: id,
        value: { batch: refuseBatch(timesBatch(batch, to / from)) },
      }),
    )
  return from === to || changes.length === 0 ? undefined : { label: tradeLabels.forAsMany(from, to), changes }
}

/** The number of pieces that all batches have; undefined where they are not as many, or none of pieces. */
export function commonCount(batches: readonly (Batch | undefined)[]): number | undefined {
  const counts = new Set(batches.map(batch => shapesOf(batch).reduce((sum, { count }) => sum + count, 0)))
  const [count] = counts
  return counts.size === 1 && count ? count : undefined
}
