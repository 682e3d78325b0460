/** The answer to a small system of equations, or which equations and unknowns stand in its way. */
export type Solution =
  | { readonly x: number[]; readonly condition: number; readonly doubtful: boolean } // doubtful: condition above 1e8
  | { readonly reason: 'none'; readonly equations: number[] } // these contradict one another
  | { readonly reason: 'many'; readonly unknowns: number[] } // these can be traded against one another
  | { readonly reason: 'unstable'; readonly condition: number } // condition above 1e12

const doubtfulAbove = 1e8
const refusedAbove = 1e12
const rounding = 1e-14 // what is left of a pivot that would be zero but for rounding, entries being about 1
const contradiction = 1e-10 // relative; a right side typed to ten digits counts as agreeing

/**
 * Solves matrix · x = right, one row an equation, for up to a dozen unknowns: elimination on
 * scaled rows, the largest pivot first, and one step of refinement. The condition is that of the scaled
 * rows in the maximum norm: how many times larger than those of the equations the errors of x may be,
 * both relative to the largest. The unknowns should therefore be of one kind, such as grams.
 */
export function solve(matrix: readonly (readonly number[])[], right: readonly number[]): Solution {
  const unknowns = matrix[0]?.length ?? 0
  const scales = matrix.map(scale)
  const scaled = matrix.map((row, i) => row.map(value => value * scales[i]!))
  const b = right.map((value, i) => value * scales[i]!)
  const { work, record, pivots } = eliminate(scaled, unknowns)

  const used = new Set(pivots.map(pivot => pivot.row))
  for (let row = 0; row < work.length; row++) {
    if (used.has(row)) continue
    const terms = record[row]!.map((share, i) => share * b[i]!)
    const size = terms.reduce((sum, term) => sum + Math.abs(term), 0)
    if (Math.abs(total(terms)) > contradiction * size)
      return { reason: 'none', equations: involved(record[row]!) }
  }
  if (pivots.length < unknowns) return { reason: 'many', unknowns: loose(work, pivots, unknowns) }

  const condition = norm(scaled) * norm(pivots.map(({ row }) => record[row]!))
  if (!(condition <= refusedAbove)) return { reason: 'unstable', condition }
  const x = new Array<number>(unknowns).fill(0)
  const improve = (rest: readonly number[]) => {
    for (const { row, column } of pivots)
      x[column]! += total(record[row]!.map((share, i) => share * rest[i]!))
  }
  improve(b)
  improve(b.map((value, i) => remainder(value, scaled[i]!, x)))
  return { x, condition, doubtful: condition > doubtfulAbove }
}

/** Brings a row's largest entry between 1/2 and 1 by a power of two, which rounds nothing. */
function scale(row: readonly number[]): number {
  const largest = Math.max(...row.map(Math.abs))
  return largest > 0 ? 2 ** -Math.ceil(Math.log2(largest)) : 1
}

interface Pivot {
  readonly row: number
  readonly column: number
}

/** Elimination above and below each pivot; `record` holds what of each first row went into each row. */
function eliminate(scaled: readonly (readonly number[])[], unknowns: number) {
  const work = scaled.map(row => [...row])
  const record = scaled.map((_, i) => scaled.map((_, k) => (i === k ? 1 : 0)))
  const pivots: Pivot[] = []
  for (;;) {
    const pivot = largestLeft(work, pivots, unknowns)
    if (!pivot) return { work, record, pivots }
    pivots.push(pivot)
    const { row, column } = pivot
    const by = 1 / work[row]![column]!
    multiply(work[row]!, by)
    multiply(record[row]!, by)
    work[row]![column] = 1
    for (let i = 0; i < work.length; i++) {
      const share = work[i]![column]!
      if (i === row || share === 0) continue
      subtract(work[i]!, work[row]!, share)
      subtract(record[i]!, record[row]!, share)
      work[i]![column] = 0
    }
  }
}

function largestLeft(
  work: readonly number[][],
  pivots: readonly Pivot[],
  unknowns: number,
): Pivot | undefined {
  let best: Pivot | undefined
  let size = rounding * Math.max(1, unknowns)
  for (let row = 0; row < work.length; row++) {
    if (pivots.some(pivot => pivot.row === row)) continue
    for (let column = 0; column < unknowns; column++) {
      if (pivots.some(pivot => pivot.column === column) || Math.abs(work[row]![column]!) <= size) continue
      size = Math.abs(work[row]![column]!)
      best = { row, column }
    }
  }
  return best
}

/** The unknowns without a pivot, and those that change with them. */
function loose(work: readonly number[][], pivots: readonly Pivot[], unknowns: number): number[] {
  const free = Array.from({ length: unknowns }, (_, j) => j).filter(j => !pivots.some(p => p.column === j))
  const follow = pivots.filter(({ row }) => free.some(j => Math.abs(work[row]![j]!) > contradiction))
  return [...free, ...follow.map(pivot => pivot.column)].sort((a, b) => a - b)
}

/** The equations that take part in a combination, rounding aside. */
function involved(shares: readonly number[]): number[] {
  const most = Math.max(...shares.map(Math.abs))
  return [...shares.keys()].filter(i => Math.abs(shares[i]!) > contradiction * most)
}

/** right − row · x in twice the precision, so that one step of refinement gives x to the last digit or so. */
function remainder(right: number, row: readonly number[], x: readonly number[]): number {
  let rest = right
  let error = 0
  row.forEach((a, j) => {
    const product = a * x[j]!
    const less = rest - product
    const taken = rest - less
    error += rest - (less + taken) - (product - taken) - productError(a, x[j]!, product)
    rest = less
  })
  return rest + error
}

/** What a product lost by rounding (Dekker 1971). */
function productError(a: number, b: number, product: number): number {
  const highA = high(a)
  const highB = high(b)
  return (a - highA) * (b - highB) - (product - highA * highB - (a - highA) * highB - highA * (b - highB))
}

/** The upper half of a double's digits (Veltkamp 1968). */
function high(a: number): number {
  const spread = a * (2 ** 27 + 1)
  return spread - (spread - a)
}

const total = (terms: readonly number[]): number => terms.reduce((sum, term) => sum + term, 0)
const norm = (rows: readonly (readonly number[])[]): number =>
  rows.reduce((most, row) => Math.max(most, total(row.map(Math.abs))), 0)

function multiply(row: number[], by: number): void {
  for (let j = 0; j < row.length; j++) row[j]! *= by
}

function subtract(row: number[], other: readonly number[], share: number): void {
  for (let j = 0; j < row.length; j++) row[j]! -= share * other[j]!
}
