import { type Arc, type Constraints, constraintsOf, sameTime } from '../constraints.js'
import { Heap } from '../heap.js'
import type { TimeConflict, TimeProblem } from '../problem.js'
import { type Bounds, boundsFrom, greatest, least } from './potentials.js'
import { horizonOf } from './proof.js'

/** The time with which one hold of a conflict would fit all the rest of the problem. */
export interface NearestTime {
  readonly hold: number // its place among the holds
  readonly bound: 'at' | 'from' | 'until' // which of its times would have to change
  readonly time: number // to this, the nearest that will do
}

interface Node {
  readonly arcs: readonly Arc[]
  readonly bounds: Bounds
}

const mostNodes = 2_000

/**
 * For each hold of a conflict the nearest time that it alone would have to be at, from or until, the rest staying as it is; the earlier one where two
 * are as near. A hold that cannot help is left out: the rest has a conflict of its own, or so many orders that 2,000 of them have not shown an answer.
 */
export function nearestTimes(problem: TimeProblem, conflict: TimeConflict): NearestTime[] {
  return conflict.holds.flatMap(hold => {
    const { moment, at, from = at, until = at } = problem.holds[hold]!
    const holds = problem.holds.filter((_, other) => other !== hold)
    const rest = constraintsOf({ ...problem, holds })
    const place = problem.moments.indexOf(moment)
    const found: (NearestTime & { off: number })[] = []
    const add = (bound: 'from' | 'until', wanted: number | undefined, sign: 1 | -1) => {
      if (wanted === undefined) return
      const time = extreme(rest, place, wanted - rest.base, sign)
      if (time === undefined) return
      const entry = { hold, bound: at === undefined ? bound : 'at', time: time + rest.base } as const
      found.push({ ...entry, off: Math.abs(entry.time - wanted) })
    }
    add('from', from, 1)
    add('until', until, -1)
    const nearest = found.sort((a, b) => a.off - b.off)[0]
    return nearest ? [{ hold, bound: nearest.bound, time: nearest.time }] : []
  })
}

/** The latest time of a moment up to `wanted` (sign 1), or its earliest from then on (−1); undefined where there is none. */
function extreme(constraints: Constraints, moment: number, wanted: number, sign: 1 | -1): number | undefined {
  const { origin, choices } = constraints
  const horizon = sign * horizonOf(constraints) + wanted
  const start = boundsFrom(new Float64Array(origin + 1).fill(horizon).fill(0, origin))
  const tighten = sign === 1 ? greatest : least
  const nodes = new Heap<Node>((a, b) => {
    const ahead = sign * (a.bounds.x[moment]! - b.bounds.x[moment]!)
    return ahead > 0 || (ahead === 0 && a.arcs.length > b.arcs.length)
  })
  const add = (arcs: readonly Arc[], from: Bounds) => {
    const bounds = tighten(arcs, from)
    if (!('cycle' in bounds)) nodes.push({ arcs, bounds })
  }
  const own: Arc =
    sign === 1 ? { from: origin, to: moment, limit: wanted } : { from: moment, to: origin, limit: 0 - wanted }
  add([...constraints.arcs, own], start)
  for (let count = 0; count < mostNodes; count++) {
    const node = nodes.pop()
    if (!node) return undefined
    const { x } = node.bounds
    const over = ({ from, to, limit }: Arc) => x[to]! - x[from]! - limit
    let most = sameTime
    let sides: readonly [Arc, Arc] | undefined
    for (const choice of choices) {
      const least = Math.min(over(choice.sides[0]), over(choice.sides[1]))
      if (least <= most) continue
      most = least
      sides = choice.sides
    }
    if (!sides) return x[moment]
    for (const side of sides) add([...node.arcs, side], node.bounds)
  }
  return undefined
}
