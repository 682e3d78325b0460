import type { AloneGroup, TimeHold, TimeSpan } from '../../times/index.js'
import type { DayProblem, HoldReason } from './day-problem.js'

/** What has happened of a day so far. Instants: minutes since 1970, UTC. */
export interface Happened {
  readonly now: number
  readonly at: ReadonlyMap<string, number> // moments that have been, by their names
  readonly later: ReadonlyMap<string, number> // moments put off: not before these
  readonly lastDone: number | undefined // when hands last did something: whoever did is awake
}

const awakeFor = 45 // minutes after something was done for which its baker is taken to be up
const lateLeeway = 1 // what it costs that a bread is done after its time, minutes² ÷ this: more than any wait
const mostLate = 14 * 24 * 60

/** The moments of a day that have been: those that were noted, and those that come before one of them. */
export function beenOf({ network }: DayProblem, noted: ReadonlyMap<string, number>): Map<string, number> {
  const known = new Set(network.moments)
  const been = new Map([...noted].filter(([moment]) => known.has(moment)))
  const before = new Map<string, string[]>()
  for (const [i, { from, to }] of network.spans.entries())
    if (network.reasons[i]!.of !== 'ready') before.set(to, [...(before.get(to) ?? []), from])
  const open = [...been].sort(([, a], [, b]) => a - b)
  for (const [moment, at] of open)
    for (const from of before.get(moment) ?? [])
      if (!been.has(from)) {
        been.set(from, at)
        open.push([from, at])
      }
  return been
}

/** How a day under way is planned where it does not fit: breads after their time; with the nights left out besides; or with waits longer than they may be. */
export type LateWay = 'late' | 'sleepless' | 'loose'

/**
 * A day that is under way as a problem of times: what has been stays where it was, what has not begun cannot begin before
 * now, and a wait that is longer by now than it may be is as long as it is. With a `way` a bread may be done after its time,
 * and in `loose` a wait may be longer than it may, at its cost.
 */
export function aroundNow(
  written: DayProblem,
  { now, at, later, lastDone }: Happened,
  way: LateWay | undefined,
): DayProblem {
  const { network, problem, holds: reasons } = written
  const been = beenOf(written, at)
  const soonest = (moment: string): number => Math.max(now, later.get(moment) ?? now)

  const spans = network.spans.map((span, i): TimeSpan => {
    const { from, to, usual: _usual, ...rest } = span
    const begun = been.get(from)
    const isReady = network.reasons[i]!.of === 'ready'
    if (begun !== undefined && (been.has(to) || isReady))
      return { from, to, least: Number.NEGATIVE_INFINITY, most: Number.POSITIVE_INFINITY }
    if (isReady && way) return { ...span, least: -mostLate, most: mostLate, leeway: lateLeeway }
    if (way === 'loose' && span.usual !== undefined)
      return { ...span, most: mostLate, leeway: span.leeway ?? Math.max(1, span.most - span.least) }
    if (begun === undefined) return span
    const most = Math.max(span.most, soonest(to) - begun)
    // Longer than it may be, or done at once: then it is not drawn to its usual either.
    return most > span.most ? { ...rest, from, to, most } : span
  })
  network.spans.splice(0, spans.length, ...spans)

  const holds: TimeHold[] = []
  const why: HoldReason[] = []
  const hold = (reason: HoldReason, one: TimeHold) => {
    holds.push(one)
    why.push(reason)
  }
  for (const [i, { moment, at: wanted }] of problem.holds.entries()) {
    const reason = reasons[i]!
    if (been.has(moment) || wanted === undefined) continue
    if (reason.of === 'ready') hold(reason, { moment, at: wanted })
    else if (wanted < now || way) hold(reason, { moment, from: Math.max(wanted, now) })
    else hold(reason, { moment, at: wanted })
  }
  for (const [moment, instant] of been) hold({ of: 'held', moment }, { moment, at: instant })
  const follows = new Set(spans.flatMap(({ from, to }) => (been.has(from) ? [] : [to])))
  for (const moment of problem.moments)
    if (!been.has(moment) && !moment.endsWith(' ready') && (later.has(moment) || !follows.has(moment)))
      hold({ of: 'held', moment }, { moment, from: soonest(moment) })

  const alone = (problem.alone ?? []).map(group => underWay(group, been, { now, lastDone }))
  return { ...written, problem: { ...problem, spans, holds, alone }, holds: why }
}

/** What of a group is still to come: of uses that are under way the last one begun, and no night that somebody is up in. */
function underWay(
  group: AloneGroup,
  been: ReadonlyMap<string, number>,
  { now, lastDone }: Pick<Happened, 'now' | 'lastDone'>,
): AloneGroup {
  const isUp = lastDone !== undefined && now - lastDone <= awakeFor
  const closed = (group.closed ?? []).flatMap(([begins, ends]): (readonly [number, number])[] => {
    if (ends <= now) return []
    if (begins > now || !isUp) return [[begins, ends]]
    // Up before the night is half over: they go to bed late. After it: they are up early.
    const bed = now + awakeFor
    return now < (begins + ends) / 2 && bed < ends ? [[bed, ends]] : []
  })
  const isClosed = (at: number) => closed.some(([begins, ends]) => at > begins && at < ends)
  const under = group.uses.filter(({ from, to }) => been.has(from) && !been.has(to))
  const last = under.sort((a, b) => been.get(b.from)! - been.get(a.from)!)[0]
  const isKept = last && !isClosed(been.get(last.from)!) && !isClosed(now)
  const uses = group.uses.filter(use => !been.has(use.from) || (isKept && use === last))
  return { ...group, closed, uses }
}
