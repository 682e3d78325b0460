import type { LeastSquares } from '../least-squares/least-squares.js'
import { arcOf } from '../least-squares/shape.js'
import { Distances } from '../network/distances.js'
import { type Arc, sameTime } from '../problem/constraints.js'

/**
 * Bounds that hold for whatever costs at most `allowed` and keeps the sides in force in `state`, which is at its
 * least cost. As the cost is a sum of squares, a solution costs at least that and for each spring weight × (how
 * much its length differs)² more.
 */
export function windows(state: LeastSquares, allowed: number): Distances {
  const { shape, x } = state
  const room = Math.max(0, allowed - state.cost)
  const arcs: Arc[] = shape.springs.flatMap(({ from, to, weight }) => {
    const length = x[to]! - x[from]!
    const off = Math.sqrt(room / weight) + sameTime // for rounding
    return [
      { from, to, limit: length + off },
      { from: to, to: from, limit: off - length },
    ]
  })
  for (let arc = 0; arc < shape.always; arc++) arcs.push(arcOf(shape, arc))
  for (const arc of state.enabled) arcs.push(arcOf(shape, arc))
  return new Distances(shape.size, arcs)
}
