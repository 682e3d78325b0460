import { Distances } from '../network/distances.js'
import type { Network } from '../network/network.js'
import type { Arc, Constraints } from '../problem/constraints.js'
import { loadsOf, overload } from '../problem/overload.js'

/**
 * The network's arcs with the sides of choices that its bounds already decide, the choices that they leave open, by
 * place, and the bounds. Undefined where nothing can be kept.
 */
export function decidedByBounds({
  size,
  arcs: given,
  choices,
}: Network): { arcs: Arc[]; open: number[]; distances: Distances } | undefined {
  const arcs = [...given]
  const distances = new Distances(size, arcs)
  let open = [...choices.keys()]
  for (let before = -1; before !== open.length; ) {
    before = open.length
    open = open.filter(choice => {
      const [first, second] = choices[choice]!
      if (distances.implies(first) || distances.implies(second)) return false
      const only = distances.excludes(first) ? second : distances.excludes(second) ? first : undefined
      if (only) {
        arcs.push(only)
        distances.add(only)
      }
      return !only
    })
    if (!distances.possible) return undefined
  }
  return { arcs, open, distances }
}

/** That those bounds leave some room too little time for its uses. */
export function overloaded(
  { rooms, arcs, origin }: Constraints,
  { bodyOf, offset }: Network,
  distances: Distances,
): boolean {
  const early = offset.map((time, moment) =>
    moment === origin ? 0 : time - distances.of(bodyOf[moment]!, 0),
  )
  const late = offset.map((time, moment) => (moment === origin ? 0 : time + distances.of(0, bodyOf[moment]!)))
  return rooms.some(room => overload(room, loadsOf(arcs, room), early, late) !== undefined)
}
