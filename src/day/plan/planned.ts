import type { Day } from '../../dough/document/day.js'
import type { TimePlan } from '../../times/index.js'
import { piecesOf } from '../course/course.js'
import type { DayEvent } from '../course/day-network.js'
import type { DayProblem } from '../course/day-problem.js'
import { nightsOf } from '../course/day-problem.js'

/** A thing of the day with its times. Instants: minutes since 1970, UTC. */
export interface PlannedEvent extends DayEvent {
  readonly from: number
  readonly until: number
  readonly held: boolean // its beginning is kept at a time
}

/** What a time touches that keeps it from being earlier or later. */
export type Edge =
  | { readonly of: 'wakes' | 'sleeps'; readonly event: PlannedEvent } // it begins when the night ends, or ends when it begins
  | { readonly of: 'held'; readonly event: PlannedEvent }

/** A day whose times are known. */
export interface PlannedDay {
  readonly day: Day
  readonly events: readonly PlannedEvent[] // by the clock
  readonly at: ReadonlyMap<string, number> // instants of all moments
  readonly cost: number
  readonly proven: boolean
  readonly gap: number
  /** Breads done before they are to be ready, with the minutes: not all could be baked at once. */
  readonly early: readonly { readonly bread: string; readonly minutes: number }[]
  readonly edges: readonly Edge[]
}

const sameMinute = 0.01 // minutes within which times are the same

/** The events of a day in the order of the clock, with what they touch. */
export function plannedDay(day: Day, { network, problem, breads }: DayProblem, plan: TimePlan): PlannedDay {
  const { at } = plan
  const held = new Set(day.holds.map(h => h.moment))
  const events = network.events
    .map(event => {
      const from = at.get(event.begins)!
      return {
        ...event,
        from,
        until: event.ends === undefined ? lastTaking(event, network, at) : at.get(event.ends)!,
        held: held.has(event.begins),
      }
    })
    .sort((a, b) => a.from - b.from || a.until - b.until)
  const early = breads.flatMap(({ id }) => {
    const ready = at.get(`${id} ready`)
    if (ready === undefined) return []
    const done = Math.max(...events.filter(e => e.breads.includes(id)).map(e => e.until))
    return ready - done > sameMinute ? [{ bread: id, minutes: ready - done }] : []
  })
  return {
    day,
    events,
    at,
    cost: plan.cost,
    proven: plan.proven || plan.gap === 0, // what is left unsettled then costs the same
    gap: plan.gap,
    early,
    edges: edgesOf(events, problem.alone?.flatMap(g => g.closed ?? []) ?? []),
  }
}

/** What is taken by several stages goes on until the last of them takes it. */
function lastTaking(
  event: DayEvent,
  { spans, reasons }: DayProblem['network'],
  at: ReadonlyMap<string, number>,
): number {
  const taken = spans.flatMap(({ to }, i) => {
    const reason = reasons[i]!
    return reason.of === 'ripe' && reason.event.begins === event.begins ? [at.get(to)!] : []
  })
  return taken.length ? Math.max(...taken) : at.get(event.begins)! + (event.length?.usual ?? 0)
}

function edgesOf(events: readonly PlannedEvent[], closed: readonly (readonly [number, number])[]): Edge[] {
  const near = (a: number, b: number) => Math.abs(a - b) <= sameMinute
  return events.flatMap((event): Edge[] => {
    const { kind, from, until, held } = event
    if (held) return [{ of: 'held', event }]
    if (kind === 'wait') return []
    if (closed.some(([, ends]) => near(from, ends))) return [{ of: 'wakes', event }]
    const last = kind === 'hands' ? until : from
    return closed.some(([begins]) => near(last, begins)) ? [{ of: 'sleeps', event }] : []
  })
}

/** The nights that the day reaches over. */
export const nightsIn = ({ day, events }: PlannedDay): (readonly [number, number])[] =>
  events.length ? nightsOf(day, events[0]!.from - 60, Math.max(...events.map(e => e.until)) + 60) : []

/** A plan for a day of which another amount is made now: its loads hold as many pieces as they did only where that is the same. */
export function madeAs(plan: PlannedDay, now: Day): PlannedDay {
  const made = new Map(now.breads.map(bread => [bread.id, bread]))
  const isOther = (id: string): boolean => {
    const [before, after] = [plan.day.breads.find(b => b.id === id), made.get(id)]
    return !before || !after || piecesOf(before) !== piecesOf(after)
  }
  return {
    ...plan,
    day: {
      ...plan.day,
      breads: plan.day.breads.map(bread => ({ ...bread, batch: made.get(bread.id)?.batch ?? bread.batch })),
    },
    events: plan.events.map(event => {
      const { load = event.kind === 'bake' ? { number: 1, of: 1 } : undefined, breads } = event
      return load && breads.some(isOther) ? { ...event, load: { ...load, pieces: undefined } } : event
    }),
  }
}
