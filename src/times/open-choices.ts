import type { Arc } from './constraints.js'
import { Distances } from './distances.js'
import type { Network } from './network.js'

/**
 * The network's arcs with the sides of choices that its bounds already decide, and the choices that they leave open, by place.
 * Undefined where nothing can be kept.
 */
export function decidedByBounds({
  size,
  arcs: given,
  choices,
}: Network): { arcs: Arc[]; open: number[] } | undefined {
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
  return { arcs, open }
}
