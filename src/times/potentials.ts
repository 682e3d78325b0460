import { type Arc, sameTime } from './constraints.js'

/** The greatest x ≤ start that keeps all arcs, or a cycle of arcs that contradict each other. */
export type Potentials =
  | { readonly x: Float64Array; readonly by: Int32Array } // `by`: the arc that holds each down, -1 where its start does
  | { readonly cycle: readonly number[] } // places of arcs

/** Bellman and Ford's, which looks for a circle among the arcs that hold down, now and then. */
export function greatest(arcs: readonly Arc[], start: Float64Array): Potentials {
  const x = start.slice()
  const by = new Int32Array(x.length).fill(-1)
  for (let round = 1; ; round++) {
    let changed = false
    for (let arc = 0; arc < arcs.length; arc++) {
      const { from, to, limit } = arcs[arc]!
      const bound = x[from]! + limit
      // Less than this is rounding, which would go round a circle for ever.
      if (bound < x[to]! - sameTime / 100) {
        if (bound === -Infinity) return { cycle: [arc] }
        x[to] = bound
        by[to] = arc
        changed = true
      }
    }
    if (!changed) return { x, by }
    if (round % 8 === 0 || round > x.length) {
      const cycle = circle(arcs, by)
      if (cycle) return { cycle }
    }
  }
}

/** The least x ≥ start that keeps all arcs; `by` is the arc that holds each up. */
export function least(arcs: readonly Arc[], start: Float64Array): Potentials {
  const turned = arcs.map(({ from, to, limit }) => ({ from: to, to: from, limit }))
  const found = greatest(
    turned,
    start.map(value => -value),
  )
  return 'cycle' in found ? found : { x: found.x.map(value => -value), by: found.by }
}

function circle(arcs: readonly Arc[], by: Int32Array): number[] | undefined {
  const seen = new Int32Array(by.length) // in which walk
  for (let start = 0; start < by.length; start++) {
    let at = start
    while (seen[at] === 0 && by[at] !== -1) {
      seen[at] = start + 1
      at = arcs[by[at]!]!.from
    }
    if (by[at] === -1 || seen[at] !== start + 1) continue
    const cycle: number[] = []
    const first = at
    do {
      cycle.push(by[at]!)
      at = arcs[by[at]!]!.from
    } while (at !== first)
    return cycle.reverse()
  }
  return undefined
}

/**
 * Of all negative cycles one with the fewest arcs, and of those the one that is short by most; undefined where there is none.
 * Walks of one arc more each round, from every node at once.
 */
export function shortestCycle(arcs: readonly Arc[], count: number): number[] | undefined {
  if (!('cycle' in greatest(arcs, new Float64Array(count)))) return undefined
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
