import { beenOf, type Happened } from '../course/around-now.js'
import type { DayEvent } from '../course/day-network.js'
import type { DaySheet } from '../plan/open-day.js'
import type { PlannedEvent } from '../plan/planned.js'

/** What hands do about a step: all of it, put it in, take it out, go on to the next of several bakings, or let it begin. */
export type Act = 'do' | 'in' | 'out' | 'on' | 'begin'

/** One thing to be done at the bench. Instants: minutes since 1970, UTC. */
export interface Todo {
  readonly key: string // its own
  readonly event: PlannedEvent
  readonly act: Act
  readonly records: string // the moment that is noted when it is done
  readonly due: number // when it begins, as it is planned
  readonly begun: number | undefined // of work: when hands began
  readonly done: number | undefined
  readonly noted: boolean // false of what was done without a word, since something after it was
}

/** A wait or a baking that is under way. */
export interface UnderWay {
  readonly event: PlannedEvent
  readonly since: number
  readonly until: number
}

/** A bench as it stands. */
export interface BenchNow {
  readonly todos: readonly Todo[] // by when they are due
  readonly current: Todo | undefined // undefined: all is done
  readonly underWay: readonly UnderWay[]
}

/** Where every time of a step's moments is the same, the event that another follows on. */
const follows = (events: readonly DayEvent[], { begins }: DayEvent): DayEvent | undefined =>
  events.find(other => other.ends === begins && other.time === undefined)

/** Where there are no times: all steps in their order, from now on. */
const unplanned = ({ written }: DaySheet, now: number): PlannedEvent[] =>
  written.network.events.map(event => ({ ...event, from: now, until: now, held: false }))

/** What is to be done on a day, with what has happened of it. */
export function benchNow(sheet: DaySheet, happened: Happened): BenchNow {
  const events = sheet.plan?.events ?? unplanned(sheet, happened.now)
  const been = beenOf(sheet.written, happened.at)
  const todos: Todo[] = []
  const seen = new Set<string>()
  const add = (event: PlannedEvent, act: Act, records: string, due: number) => {
    if (seen.has(records)) return
    seen.add(records)
    const done = been.get(records)
    const begun = act === 'do' ? happened.at.get(event.begins) : undefined
    const key = `${event.begins} ${act}`
    todos.push({ key, event, act, records, due, begun, done, noted: happened.at.has(records) })
  }
  for (const event of events) {
    const { kind, begins, ends, from, until } = event
    const before = follows(events, event)
    if (kind === 'hands' && ends !== undefined) add(event, 'do', ends, from)
    else if (kind === 'bake') {
      add(event, before?.kind === 'bake' ? 'on' : 'in', begins, from)
      const goesOn = events.some(other => other.kind === 'bake' && other.begins === ends)
      if (ends !== undefined && !goesOn) add(event, 'out', ends, until)
    } else if (kind === 'wait' && (!before || before.kind === 'wait')) add(event, 'begin', begins, from)
  }
  todos.sort((a, b) => a.due - b.due)
  const underWay = events.flatMap((event): UnderWay[] => {
    const { kind, begins, ends, until, time } = event
    const since = been.get(begins)
    if (kind === 'hands' || time !== undefined || since === undefined || until < happened.now - 0.5) return []
    return ends !== undefined && been.has(ends) ? [] : [{ event, since, until }]
  })
  return { todos, current: todos.find(({ done }) => done === undefined), underWay: lastOfEach(underWay) }
}

/** Of loads that wait together, the wait of the one that goes last. */
const lastOfEach = (all: readonly UnderWay[]): UnderWay[] =>
  all.filter(one => !all.some(other => other.event.begins === one.event.begins && other.until > one.until))

/** What follows on a thing that is done, and waits or bakes by itself. */
export const thenOf = (sheet: DaySheet, { records }: Todo): PlannedEvent | undefined =>
  sheet.plan?.events.find(
    ({ begins, kind, time }) => begins === records && kind !== 'hands' && time === undefined,
  )

/** When a thing of work began where nobody said so: as long before it was done as it usually takes, and not before what went before. */
export function beginningOf(todo: Todo, done: number, happened: Happened): number {
  const past = [...happened.at.values()].filter(at => at <= done)
  const before = past.length ? Math.max(...past) : Number.NEGATIVE_INFINITY
  return Math.max(before, done - (todo.event.length?.usual ?? 0))
}
