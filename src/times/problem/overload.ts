import { type NamedArc, type Room, sameTime } from './constraints.js'

/** A use with the time it takes. */
export interface Load {
  readonly from: number
  readonly to: number
  readonly least: number // minutes
  readonly because: number // the member that says so, -1 for none
}

/** The uses of a room with what the arcs say they take at least. */
export function loadsOf(arcs: readonly NamedArc[], { uses }: Room): Load[] {
  const back = new Map<number, NamedArc[]>()
  for (const arc of arcs) {
    if (arc.limit >= 0) continue
    const others = back.get(arc.from)
    if (others) others.push(arc)
    else back.set(arc.from, [arc])
  }
  return uses.map(({ from, to }) => {
    let load: Load = { from, to, least: 0, because: -1 }
    for (const { to: end, limit, member } of back.get(to) ?? [])
      if (end === from && -limit > load.least) load = { from, to, least: -limit, because: member }
    return load
  })
}

/**
 * Loads of one room that ask for more time than there is: none can begin before one time or end after another, and
 * together they take longer than lies between. Undefined where there are none. `early` and `late` are bounds on all
 * moments, by which the loads are compared.
 */
export function overload(
  room: Room,
  loads: readonly Load[],
  early: Float64Array,
  late: Float64Array,
): readonly Load[] | undefined {
  const byEnd = loads.toSorted((a, b) => late[a.to]! - late[b.to]!)
  for (const { from } of loads) {
    const begins = early[from]!
    const inside: Load[] = []
    let needed = 0
    for (const load of byEnd) {
      if (early[load.from]! < begins) continue
      inside.push(load)
      needed += load.least
      const ends = late[load.to]!
      if (needed + idle(room, begins, ends, inside.length - 1) > ends - begins + sameTime) return inside
    }
  }
  return undefined
}

/**
 * The minutes between two times that are closed, or go by from one use to the next; one such pause may lie in each
 * closed hours.
 */
function idle({ closed, between }: Room, begins: number, ends: number, pauses: number): number {
  let sum = 0
  let open = pauses
  for (const [a, b] of closed) {
    const shut = Math.min(b, ends) - Math.max(a, begins)
    if (shut <= 0) continue
    sum += shut
    open -= 1
  }
  return sum + Math.max(0, open) * between
}
