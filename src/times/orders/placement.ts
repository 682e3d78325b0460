import type { LeastSquares } from '../least-squares/least-squares.js'
import { arcOf } from '../least-squares/shape.js'
import { Joined } from '../network/joined.js'
import type { Network } from '../network/network.js'
import type { Constraints } from '../problem/constraints.js'

interface Slack {
  readonly from: number
  readonly to: number
  readonly least: number // what is left of an arc's limit, never less than 0
}

/**
 * The time of every moment. What the costs and bounds leave free is put as late as they let it; what may be ever so
 * late, then as early as they let it; of what is left, the first moment in the order given is put at 0, and so on
 * with the rest. With `all` sides in force.
 */
export function placed(
  names: readonly string[],
  { origin, base }: Constraints,
  network: Network,
  state: LeastSquares,
): Map<string, number> {
  const { shape, x } = state
  // What springs hold together has its lengths from the costs, and moves as a block.
  const joined = new Joined(shape.size)
  for (const { from, to } of shape.springs) joined.join(from, to)
  const block = Int32Array.from({ length: shape.size }, (_, body) => joined.of(body))
  const slacks: Slack[] = []
  const add = (arc: number) => {
    const { from, to, limit } = arcOf(shape, arc)
    const least = Math.max(0, limit - (x[to]! - x[from]!))
    if (block[from] !== block[to]) slacks.push({ from: block[from]!, to: block[to]!, least })
  }
  for (let arc = 0; arc < shape.always; arc++) add(arc)
  for (const arc of state.enabled) add(arc)

  const moved = new Float64Array(shape.size).fill(Number.NaN)
  moved[block[0]!] = 0
  const unplaced = () => [...block].some(b => Number.isNaN(moved[b]!))
  while (unplaced()) {
    if (push(slacks, moved, 1) || push(slacks, moved, -1)) continue
    const moment = [...Array(origin).keys()].find(m => Number.isNaN(moved[block[network.bodyOf[m]!]!]!))!
    const body = network.bodyOf[moment]!
    moved[block[body]!] = -base - network.offset[moment]! - x[body]!
  }
  return new Map(
    names.map((name, moment) => {
      const body = network.bodyOf[moment]!
      const time = base + (x[body]! + moved[block[body]!]! + network.offset[moment]!)
      return [name, time === 0 ? 0 : time] // no −0
    }),
  )
}

/**
 * Moves what can only go so far that way (1 later, −1 earlier) until it is there; false where nothing new found its
 * place.
 */
function push(slacks: readonly Slack[], moved: Float64Array, way: 1 | -1): boolean {
  const far = Float64Array.from(moved, place => (Number.isNaN(place) ? Infinity : way * place))
  for (let changed = true; changed; ) {
    changed = false
    for (const { from, to, least } of slacks) {
      const begin = way === 1 ? from : to
      const end = way === 1 ? to : from
      if (Number.isNaN(moved[end]!) && far[begin]! + least < far[end]!) {
        far[end] = far[begin]! + least
        changed = true
      }
    }
  }
  let any = false
  for (const [block, place] of far.entries()) {
    if (!Number.isNaN(moved[block]!) || place === Infinity) continue
    moved[block] = way * place
    any = true
  }
  return any
}
