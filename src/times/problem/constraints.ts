import type { AloneGroup, TimeProblem } from './time-problem.js'
import { checkedMoments } from './validation.js'

/** x[to] − x[from] ≤ limit. */
export interface Arc {
  readonly from: number
  readonly to: number
  readonly limit: number
}

/** An arc that holds always, with the span, hold or group that it comes from. */
export interface NamedArc extends Arc {
  readonly member: number // a place among spans, then holds, then groups
}

/** One of the two arcs has to hold. The first is preferred where both cost the same. */
export interface Choice {
  readonly member: number // the group's
  readonly sides: readonly [Arc, Arc]
}

/** Costs weight × (x[to] − x[from] − usual)². */
export interface Spring {
  readonly from: number
  readonly to: number
  readonly usual: number
  readonly weight: number
}

/** The use of a group, its ends as moments. */
export interface Use {
  readonly from: number
  readonly to: number
}

/** A group as the overload test needs it. */
export interface Room {
  readonly member: number
  readonly between: number
  readonly closed: readonly (readonly [number, number])[] // sorted, apart from each other
  readonly uses: readonly Use[]
}

/** How far two times may be apart and still be taken for the same: minutes. */
export const sameTime = 1e-9

/**
 * A problem as arcs between numbered moments. The number after the last moment is the origin, whose time is `base`;
 * all else is told from there, so that times counted from far away lose no digits.
 */
export interface Constraints {
  readonly origin: number
  readonly base: number
  readonly arcs: readonly NamedArc[]
  readonly choices: readonly Choice[] // orders of two uses first, then closed hours
  readonly springs: readonly Spring[]
  readonly rooms: readonly Room[]
  readonly members: number
}

/** @throws RangeError as `checkedMoments` */
export function constraintsOf(problem: TimeProblem): Constraints {
  const places = checkedMoments(problem)
  const place = (name: string) => places.get(name)!
  const { spans, holds, alone = [] } = problem
  const origin = problem.moments.length
  const base = baseOf(problem)
  const arcs: NamedArc[] = []
  const add = (member: number, from: number, to: number, least: number, most: number) => {
    if (most < Infinity) arcs.push({ member, from, to, limit: most })
    if (least > -Infinity) arcs.push({ member, from: to, to: from, limit: 0 - least })
  }
  for (const [member, { from, to, least, most }] of spans.entries())
    add(member, place(from), place(to), least, most)
  for (const [index, { moment, at, from = at ?? -Infinity, until = at ?? Infinity }] of holds.entries())
    add(spans.length + index, origin, place(moment), from - base, until - base)
  const springs = spans.flatMap(({ from, to, least, most, usual, leeway = most - least }): Spring[] => {
    const weight = 1 / leeway
    if (usual === undefined || least === most || !(weight > 0 && weight < Infinity)) return []
    return [{ from: place(from), to: place(to), usual, weight }]
  })
  const rooms = alone.map((group, index): Room => {
    const uses = group.uses.map(({ from, to }) => ({ from: place(from), to: place(to) }))
    const closed = joined(group.closed ?? []).map(([a, b]) => [a - base, b - base] as const)
    return { member: spans.length + holds.length + index, between: group.between ?? 0, closed, uses }
  })
  for (const { member, uses } of rooms)
    for (const { from, to } of uses) if (from !== to) arcs.push({ member, from: to, to: from, limit: 0 })
  const choices = [
    ...rooms.flatMap((room, index) => ordersOf(room, alone[index]!)),
    ...rooms.flatMap(room => closedOf(room, origin)),
  ]
  const members = spans.length + holds.length + rooms.length
  return { origin, base, arcs, choices, springs, rooms, members }
}

/** Each two uses, in the order given; that the first given comes first is the first side. */
function ordersOf({ member, uses }: Room, { between = 0, change = 0, uses: given }: AloneGroup): Choice[] {
  const choices: Choice[] = []
  for (const [i, a] of uses.entries()) {
    for (let j = i + 1; j < uses.length; j++) {
      const b = uses[j]!
      const gap = given[i]!.setting === given[j]!.setting ? between : Math.max(between, change)
      const before = (first: Use, second: Use): Arc => ({ from: second.from, to: first.to, limit: 0 - gap })
      choices.push({ member, sides: [before(a, b), before(b, a)] })
    }
  }
  return choices
}

/** Each use and each of the closed hours; that the use comes after them is the first side. */
function closedOf({ member, closed, uses }: Room, origin: number): Choice[] {
  return uses.flatMap(({ from, to }) =>
    closed.map(([begins, ends]): Choice => {
      const after = { from, to: origin, limit: 0 - ends }
      return { member, sides: [after, { from: origin, to, limit: begins }] }
    }),
  )
}

/** The same hours, sorted, those that overlap made one. */
function joined(closed: readonly (readonly [number, number])[]): [number, number][] {
  const sorted = closed.map(([a, b]): [number, number] => [a, b]).sort((a, b) => a[0] - b[0] || a[1] - b[1])
  const apart: [number, number][] = []
  for (const hours of sorted) {
    const last = apart.at(-1)
    // Those that only touch leave a moment in which a use of no length fits.
    if (last && hours[0] < last[1]) last[1] = Math.max(last[1], hours[1])
    else apart.push(hours)
  }
  return apart
}

/** A time near those of the problem. */
function baseOf({ holds, alone = [] }: TimeProblem): number {
  const held = holds.flatMap(({ at, from, until }) => [at, from, until])
  const closed = alone.flatMap(group => (group.closed ?? []).flat())
  return [...held, ...closed].find(time => time !== undefined && Number.isFinite(time)) ?? 0
}
