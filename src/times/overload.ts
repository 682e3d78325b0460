import { type NamedArc, type Room, sameTime } from './constraints.js'

interface Bounds {
  readonly x: Float64Array
  readonly by: Int32Array // the arc that holds each up or down
}

interface Load {
  readonly from: number
  readonly to: number
  readonly least: number // minutes it takes
  readonly because: number // the member that says so, -1 for none
}

/**
 * The members that ask for more time of a room than there is: uses that can neither begin before one time nor end after another, and take
 * longer together than lies between. Undefined where there are none.
 */
export function overload(
  arcs: readonly NamedArc[],
  rooms: readonly Room[],
  early: Bounds,
  late: Bounds,
): Set<number> | undefined {
  for (const room of rooms) {
    const loads = room.uses.map(({ from, to }) => loadOf(arcs, from, to))
    const byEnd = loads.toSorted((a, b) => late.x[a.to]! - late.x[b.to]!)
    for (const { from } of loads) {
      const begins = early.x[from]!
      const inside: Load[] = []
      let needed = 0
      for (const load of byEnd) {
        if (early.x[load.from]! < begins) continue
        inside.push(load)
        needed += load.least
        const ends = late.x[load.to]!
        if (needed + idle(room, begins, ends, inside.length - 1) > ends - begins + sameTime)
          return reasonsOf(arcs, room, inside, early, late)
      }
    }
  }
  return undefined
}

function loadOf(arcs: readonly NamedArc[], from: number, to: number): Load {
  let least = 0
  let because = -1
  for (const arc of arcs) {
    if (arc.from !== to || arc.to !== from || -arc.limit <= least) continue
    least = -arc.limit
    because = arc.member
  }
  return { from, to, least, because }
}

/** The minutes between two times that are closed, or go by from one use to the next; one such pause may lie in each closed hours. */
function idle({ closed, between }: Room, begins: number, ends: number, pauses: number): number {
  const shut = closed.map(([a, b]) => Math.min(b, ends) - Math.max(a, begins)).filter(length => length > 0)
  const sum = shut.reduce((total, length) => total + length, 0)
  return sum + Math.max(0, pauses - shut.length) * between
}

function reasonsOf(
  arcs: readonly NamedArc[],
  room: Room,
  inside: readonly Load[],
  early: Bounds,
  late: Bounds,
): Set<number> {
  const reasons = new Set([room.member])
  for (const { from, to, because } of inside) {
    if (because !== -1) reasons.add(because)
    for (let at = from, arc = early.by[at]!; arc !== -1; arc = early.by[at]!) {
      reasons.add(arcs[arc]!.member)
      at = arcs[arc]!.to
    }
    for (let at = to, arc = late.by[at]!; arc !== -1; arc = late.by[at]!) {
      reasons.add(arcs[arc]!.member)
      at = arcs[arc]!.from
    }
  }
  return reasons
}
