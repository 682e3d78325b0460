import { localOf } from '../../src/day/course/clock.js'
import { type OvenLoad, ovenDays } from '../../src/day/plan/loads.js'
import { nightsIn, type PlannedDay, type PlannedEvent } from '../../src/day/plan/planned.js'

/** What is drawn of a stretch of time. Instants: minutes since 1970, UTC. */
export interface LanePart {
  readonly shows: 'hands' | 'wait' | 'bake' | 'heating'
  readonly from: number
  readonly until: number
  readonly row: number // of its lane, from 0
  readonly held: boolean // its beginning is kept at a time
  readonly moment: string | undefined // at which it begins; undefined: none of the day's
  readonly event: PlannedEvent | undefined
  readonly load: OvenLoad | undefined // in an oven's lane
}

/** A bread, a build made for several, or an oven. */
export interface Lane {
  readonly key: string
  readonly of: 'bread' | 'together' | 'oven'
  readonly breads: readonly string[] // ids
  readonly name: string // of the stage made together, or of the oven; '' for a bread
  readonly rows: number
  readonly parts: readonly LanePart[] // by the clock
}

/** The lanes of a day, from its first hour to its last. */
export interface LaneDay {
  readonly from: number
  readonly until: number
  readonly lanes: readonly Lane[]
  readonly nights: readonly (readonly [number, number])[]
}

/** An hour of the clock to be marked. */
export interface HourMark {
  readonly instant: number
  readonly hour: number // of the local clock
}

/** A local date and the part of the drawing that belongs to it. */
export interface DateStretch {
  readonly date: string // `2026-12-05`
  readonly from: number
  readonly until: number
}

const sameMinute = 0.01

/** Puts stretches that overlap into rows of their own: each into the first that is free. */
function rowsOf(stretches: ReadonlyMap<string, readonly [number, number]>): Map<string, number> {
  const ends: number[] = []
  const rows = new Map<string, number>()
  for (const [key, [from, until]] of [...stretches].sort(([, a], [, b]) => a[0] - b[0] || b[1] - a[1])) {
    const free = ends.findIndex(end => end <= from + sameMinute)
    const row = free < 0 ? ends.length : free
    ends[row] = until
    rows.set(key, row)
  }
  return rows
}

/** What stays in one row: a stage, and each further load of it. */
const stretchKey = ({ stage, load }: PlannedEvent): string =>
  load && load.number > 1 ? `${stage} ${load.number}` : stage

function laneOf(key: string, of: 'bread' | 'together', events: readonly PlannedEvent[]): Lane {
  const stretches = new Map<string, [number, number]>()
  for (const event of events) {
    const [from, until] = stretches.get(stretchKey(event)) ?? [event.from, event.until]
    stretches.set(stretchKey(event), [Math.min(from, event.from), Math.max(until, event.until)])
  }
  const rows = rowsOf(stretches)
  const [{ breads, stageName }] = events as [PlannedEvent]
  return {
    key,
    of,
    breads,
    name: of === 'together' ? stageName : '',
    rows: Math.max(...rows.values()) + 1,
    parts: events.map(event => ({
      shows: event.kind,
      from: event.from,
      until: event.until,
      row: rows.get(stretchKey(event))!,
      held: event.held,
      moment: event.begins,
      event,
      load: undefined,
    })),
  }
}

function ovenLanes(plan: PlannedDay): Lane[] {
  return ovenDays(plan).map(({ oven, heatings, loads }) => {
    const part = { row: 0, event: undefined }
    const before = heatings.map(({ from, until }): LanePart => {
      return { ...part, from, until, shows: 'heating', held: false, moment: undefined, load: undefined }
    })
    return {
      key: `oven ${oven.id}`,
      of: 'oven',
      breads: [],
      name: oven.name,
      rows: 1,
      parts: [
        ...before,
        ...loads.map(
          (load): LanePart => ({
            ...part,
            from: load.from,
            until: load.until,
            shows: 'bake',
            held: plan.day.holds.some(hold => hold.moment === load.moment),
            moment: load.moment,
            load,
          }),
        ),
      ].sort((a, b) => a.from - b.from),
    }
  })
}

/** The instant at which the local hour of another began. */
const hourBefore = (instant: number, zone: string): number => instant - (localOf(instant, zone).minutes % 60)

/** A planned day in lanes: builds made together, the breads in the order of the day, the ovens. */
export function laneDay(plan: PlannedDay): LaneDay {
  const { day, events } = plan
  const groups = new Map<string, PlannedEvent[]>()
  for (const event of events) {
    const key = event.breads.length > 1 ? `together ${event.stage}` : event.breads[0]!
    groups.set(key, [...(groups.get(key) ?? []), event])
  }
  const together = [...groups].filter(([key]) => !day.breads.some(b => b.id === key))
  const alone = day.breads.flatMap(({ id }) => (groups.has(id) ? [[id, groups.get(id)!] as const] : []))
  const lanes = [
    ...together.map(([key, of]) => laneOf(key, 'together', of)),
    ...alone.map(([key, of]) => laneOf(key, 'bread', of)),
    ...ovenLanes(plan),
  ]
  const parts = lanes.flatMap(lane => lane.parts)
  const [first, last] = [Math.min(...parts.map(p => p.from)), Math.max(...parts.map(p => p.until))]
  const from = hourBefore(first, day.zone)
  const until = hourBefore(last + 60 - sameMinute, day.zone)
  const nights = nightsIn(plan).flatMap(([begins, ends]): [number, number][] =>
    ends > from && begins < until ? [[Math.max(begins, from), Math.min(ends, until)]] : [],
  )
  return { from, until, lanes, nights }
}

const quarter = 15 // minutes: every zone's clock is set by whole quarters

/** Each full hour of the local clock that is a multiple of `step`. */
export function hourMarks({ from, until }: LaneDay, zone: string, step: number): HourMark[] {
  const marks: HourMark[] = []
  for (let instant = from; instant <= until; instant += quarter) {
    const minutes = Math.round(localOf(instant, zone).minutes)
    if (minutes % (step * 60) === 0) marks.push({ instant, hour: minutes / 60 })
  }
  return marks
}

/** The local dates that a day lies on. */
export function datesOf({ from, until }: LaneDay, zone: string): DateStretch[] {
  const dates: DateStretch[] = []
  for (let instant = from; instant < until; instant += quarter) {
    const { date } = localOf(instant, zone)
    const before = dates.at(-1)
    if (before?.date === date) dates[dates.length - 1] = { ...before, until: instant + quarter }
    else dates.push({ date, from: instant, until: instant + quarter })
  }
  return dates
}
