import { type Arc, sameTime } from '../problem/constraints.js'

/**
 * Bounds on all x that follow from arcs; `by` is the arc that each comes from, -1 where it comes from its start.
 */
export interface Bounds {
  readonly x: Float64Array
  readonly by: Int32Array
  readonly kept: number // the first arcs, which are kept already
}

/** A cycle of arcs that contradict each other, by their places. */
export interface Contradiction {
  readonly cycle: readonly number[]
}

export const boundsFrom = (start: Float64Array): Bounds => ({
  x: start,
  by: new Int32Array(start.length).fill(-1),
  kept: 0,
})

/**
 * The greatest x below `start` that keeps all arcs. Bellman and Ford's, which looks for a circle among the arcs
 * that hold down, now and then. `start` may be what fewer of the arcs gave, the first ones.
 */
export function greatest(arcs: readonly Arc[], start: Bounds): Bounds | Contradiction {
  return tightened(arcs, start, 1)
}

/** The least x above `start` that keeps all arcs. */
export function least(arcs: readonly Arc[], start: Bounds): Bounds | Contradiction {
  return tightened(arcs, start, -1)
}

function tightened(arcs: readonly Arc[], start: Bounds, sign: 1 | -1): Bounds | Contradiction {
  const x = start.x.slice()
  const by = start.by.slice()
  const moved = new Int32Array(x.length) // the round in which each was moved last
  for (let round = 1; ; round++) {
    let changed = false
    for (let arc = 0; arc < arcs.length; arc++) {
      const { from, to, limit } = arcs[arc]!
      const source = sign === 1 ? from : to
      if (moved[source]! < round - 1 || (moved[source] === 0 && arc < start.kept)) continue
      // Less than this is rounding, which would go round a circle for ever; what has no bound yet gives none.
      if (!(x[to]! - x[from]! - limit > sameTime / 100)) continue
      if (limit === -Infinity) return { cycle: [arc] }
      const target = sign === 1 ? to : from
      x[target] = sign === 1 ? x[from]! + limit : x[to]! - limit
      by[target] = arc
      moved[target] = round
      changed = true
    }
    if (!changed) return { x, by, kept: arcs.length }
    if (round % 8 === 0 || round > x.length) {
      const cycle = circle(arcs, by, sign)
      if (cycle) return { cycle }
    }
  }
}

/** The arcs that a bound comes from, one after the other. */
export function* reasons(arcs: readonly Arc[], { by }: Bounds, at: number): Generator<number> {
  for (let arc = by[at]!; arc !== -1; arc = by[at]!) {
    yield arc
    at = at === arcs[arc]!.to ? arcs[arc]!.from : arcs[arc]!.to
  }
}

function circle(arcs: readonly Arc[], by: Int32Array, sign: 1 | -1): number[] | undefined {
  const before = (arc: number) => (sign === 1 ? arcs[arc]!.from : arcs[arc]!.to)
  const seen = new Int32Array(by.length) // in which walk
  for (let start = 0; start < by.length; start++) {
    let at = start
    while (seen[at] === 0 && by[at] !== -1) {
      seen[at] = start + 1
      at = before(by[at]!)
    }
    if (by[at] === -1 || seen[at] !== start + 1) continue
    const cycle: number[] = []
    const first = at
    do {
      cycle.push(by[at]!)
      at = before(by[at]!)
    } while (at !== first)
    return sign === 1 ? cycle.reverse() : cycle
  }
  return undefined
}

/**
 * Of all negative cycles one with the fewest arcs, and of those the one that is short by most; undefined where
 * there is none. Walks of one arc more each round, from every node at once.
 */
export function shortestCycle(arcs: readonly Arc[], count: number): number[] | undefined {
  if (!('cycle' in greatest(arcs, boundsFrom(new Float64Array(count))))) return undefined
  let walks = Array.from({ length: count }, (_, start) => {
    const lengths = new Float64Array(count).fill(Infinity)
    lengths[start] = 0
    return lengths
  })
  const last: Int32Array[][] = [] // by round and start: the last arc of the walk to each node
  for (let round = 0; round < count; round++) {
    const arcsOf: Int32Array[] = []
    walks = walks.map(lengths => {
      const longer = new Float64Array(count).fill(Infinity)
      const by = new Int32Array(count).fill(-1)
      for (let arc = 0; arc < arcs.length; arc++) {
        const { from, to, limit } = arcs[arc]!
        if (lengths[from]! + limit < longer[to]!) {
          longer[to] = lengths[from]! + limit
          by[to] = arc
        }
      }
      arcsOf.push(by)
      return longer
    })
    last.push(arcsOf)
    const closed = walks.map((lengths, start) => lengths[start]!)
    const shortest = Math.min(...closed)
    if (shortest >= -sameTime) continue
    const start = closed.indexOf(shortest)
    const cycle: number[] = []
    for (let at = start, k = round; k >= 0; k--) {
      const arc = last[k]![start]![at]!
      cycle.push(arc)
      at = arcs[arc]!.from
    }
    return cycle.reverse()
  }
  return undefined
}
