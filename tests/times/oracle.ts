import type { TimeProblem } from '../../src/times/index'

// The least cost by another way: every order of uses and every side of closed hours is tried in turn; in each,
// shortest paths say whether it can be, and a proximal method with Hildreth's one-constraint-at-a-time ascent finds
// the least cost. Slow and plain.

interface Bound {
  readonly from: number
  readonly to: number
  readonly limit: number // x[to] − x[from] ≤ limit
}

export interface Tried {
  readonly cost: number
  readonly sides: string // a 0 or 1 for each choice
  readonly x: readonly number[]
}

/**
 * Each two uses in the order given (0: the first goes first), group by group; then each use and each closed hours
 * (0: after them).
 */
export function choicesOf({ moments, alone = [] }: TimeProblem): (readonly [Bound, Bound])[] {
  const place = (name: string) => moments.indexOf(name)
  const origin = moments.length
  const orders = alone.flatMap(({ uses, between = 0, change = 0 }) =>
    uses.flatMap((a, i) =>
      uses.slice(i + 1).map((b): readonly [Bound, Bound] => {
        const gap = a.setting === b.setting ? between : Math.max(between, change)
        return [
          { from: place(b.from), to: place(a.to), limit: -gap },
          { from: place(a.from), to: place(b.to), limit: -gap },
        ]
      }),
    ),
  )
  const closed = alone.flatMap(({ uses, closed = [] }) =>
    uses.flatMap(({ from, to }) =>
      closed.map(([begins, ends]): readonly [Bound, Bound] => [
        { from: place(from), to: origin, limit: -ends },
        { from: origin, to: place(to), limit: begins },
      ]),
    ),
  )
  return [...orders, ...closed]
}

/** The bounds of spans and holds, the origin being the number after the last moment. */
export function boundsOf({ moments, spans, holds, alone = [] }: TimeProblem): Bound[] {
  const place = (name: string) => moments.indexOf(name)
  const origin = moments.length
  const all = [
    ...spans.flatMap(({ from, to, least, most }) => [
      { from: place(from), to: place(to), limit: most },
      { from: place(to), to: place(from), limit: -least },
    ]),
    ...holds.flatMap(({ moment, at, from = at ?? -Infinity, until = at ?? Infinity }) => [
      { from: origin, to: place(moment), limit: until },
      { from: place(moment), to: origin, limit: -from },
    ]),
    ...alone.flatMap(({ uses }) =>
      uses.map(({ from, to }) => ({ from: place(to), to: place(from), limit: 0 })),
    ),
  ]
  return all.filter(({ limit }) => limit < Infinity)
}

/** Whether some times keep all bounds: no closed walk of negative length. */
export function possible(bounds: readonly Bound[], nodes: number): boolean {
  const least = Array.from({ length: nodes }, (_, i) =>
    Array.from({ length: nodes }, (_, j) => (i === j ? 0 : Infinity)),
  )
  for (const { from, to, limit } of bounds) least[from]![to] = Math.min(least[from]![to]!, limit)
  for (let k = 0; k < nodes; k++)
    for (let i = 0; i < nodes; i++)
      for (let j = 0; j < nodes; j++) least[i]![j] = Math.min(least[i]![j]!, least[i]![k]! + least[k]![j]!)
  return least.every((row, i) => row[i]! >= -1e-7)
}

/** All ways to decide the choices that can be, in the order in which equal ones are preferred. */
export function* waysOf(problem: TimeProblem): Generator<{ sides: string; bounds: Bound[] }> {
  const choices = choicesOf(problem)
  const nodes = problem.moments.length + 1
  function* below(sides: string, bounds: Bound[]): Generator<{ sides: string; bounds: Bound[] }> {
    if (!possible(bounds, nodes)) return
    const choice = choices[sides.length]
    if (!choice) yield { sides, bounds }
    else for (const side of [0, 1] as const) yield* below(`${sides}${side}`, [...bounds, choice[side]])
  }
  yield* below('', boundsOf(problem))
}

/** The least cost of each way. */
export function triedAll(problem: TimeProblem): Tried[] {
  return [...waysOf(problem)].map(({ sides, bounds }) => ({ sides, ...leastCost(problem, bounds) }))
}

/** min Σ (length − usual)² ÷ leeway under the bounds, which can be kept. */
export function leastCost(
  { moments, spans }: TimeProblem,
  bounds: readonly Bound[],
): { cost: number; x: number[] } {
  const n = moments.length
  const springs = spans.flatMap(({ from, to, least, most, usual, leeway = most - least }) =>
    usual === undefined || most === least
      ? []
      : [{ from: moments.indexOf(from), to: moments.indexOf(to), usual, weight: 1 / leeway }],
  )
  // Scaled by the stiffest spring; the nearness to the last centre makes each round strictly convex.
  const stiffest = Math.max(1e-9, ...springs.map(spring => spring.weight))
  const near = stiffest / 20
  const matrix = Array.from({ length: n }, (_, i) => {
    const row = new Array<number>(n).fill(0)
    row[i] = near
    return row
  })
  const linear = new Array<number>(n).fill(0)
  for (const { from, to, usual, weight } of springs) {
    matrix[from]![from]! += 2 * weight
    matrix[to]![to]! += 2 * weight
    matrix[from]![to]! -= 2 * weight
    matrix[to]![from]! -= 2 * weight
    linear[to]! += 2 * weight * usual
    linear[from]! -= 2 * weight * usual
  }
  const inverse = inverted(matrix)
  // What a push of each bound does to every moment, and how much the bound gives.
  const apart = bounds.filter(({ from, to }) => from !== to)
  const pushes = apart.map(({ from, to, limit }) => {
    const way = inverse.map(row => (from < n ? row[from]! : 0) - (to < n ? row[to]! : 0))
    return { from, to, limit, way, give: (from < n ? way[from]! : 0) - (to < n ? way[to]! : 0) }
  })
  const forces = new Array<number>(bounds.length).fill(0)
  const start = bounds.find(bound => bound.from === n)?.limit ?? 0
  let centre = new Array<number>(n).fill(start)
  for (let round = 0; round < 4000; round++) {
    const x = inverse.map(row =>
      row.reduce((sum, value, j) => sum + value * (linear[j]! + near * centre[j]!), 0),
    )
    for (const [k, { way }] of pushes.entries())
      if (forces[k]) for (let i = 0; i < n; i++) x[i]! += forces[k]! * way[i]!
    for (let sweep = 0; sweep < 4000; sweep++) {
      let moved = 0
      for (const [k, { from, to, limit, way, give }] of pushes.entries()) {
        const over = (to < n ? x[to]! : 0) - (from < n ? x[from]! : 0) - limit
        const force = Math.max(-forces[k]!, over / give)
        if (force === 0) continue
        forces[k]! += force
        for (let i = 0; i < n; i++) x[i]! += force * way[i]!
        moved = Math.max(moved, Math.abs(force * give))
      }
      if (moved < 1e-10) break
    }
    const step = Math.max(...x.map((value, i) => Math.abs(value - centre[i]!)))
    centre = x
    if (step < 1e-9) break
  }
  let cost = 0
  for (const { from, to, usual, weight } of springs)
    cost += weight * (centre[to]! - centre[from]! - usual) ** 2
  return { cost, x: centre }
}

/** Gauss and Jordan's. */
function inverted(matrix: readonly (readonly number[])[]): number[][] {
  const n = matrix.length
  const rows = matrix.map((row, i) => [...row, ...row.map((_, j) => Number(i === j))])
  for (let k = 0; k < n; k++) {
    const pivot = rows[k]![k]!
    rows[k] = rows[k]!.map(value => value / pivot)
    for (let i = 0; i < n; i++) {
      if (i === k) continue
      const factor = rows[i]![k]!
      rows[i] = rows[i]!.map((value, j) => value - factor * rows[k]![j]!)
    }
  }
  return rows.map(row => row.slice(n))
}
