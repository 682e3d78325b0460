import { beenOf, type Happened } from '../course/around-now.js'
import type { DaySheet } from '../plan/open-day.js'
import type { PlannedEvent } from '../plan/planned.js'
import type { BenchNow, Todo, UnderWay } from './todos.js'

const asGoodAsOver = 5 // minutes before the least of a wait from which it may end without a question

/** The waits that end when a thing to do begins. */
export function waitsBefore(sheet: DaySheet, { at }: Happened, { event, records }: Todo): PlannedEvent[] {
  const before = new Map([...at].filter(([moment]) => moment !== event.begins && moment !== records))
  const without = beenOf(sheet.written, before)
  const withIt = beenOf(sheet.written, new Map([...before, [event.begins, 0]]))
  const isReached = (moment: string): boolean => withIt.has(moment) && !without.has(moment)
  const { spans, reasons } = sheet.written.network
  /** What a stage made is taken at several moments; with the first its last wait is over. */
  const isTaken = (begins: string): boolean =>
    spans.some(({ from, to }, i) => from === begins && reasons[i]!.of !== 'ready' && isReached(to))
  return (sheet.plan?.events ?? []).filter(
    ({ kind, time, begins, ends }) =>
      kind === 'wait' && time === undefined && (ends === undefined ? isTaken(begins) : isReached(ends)),
  )
}

/** Of the waits that are under way, those that a thing to do would end long before they are as long as they must be. */
export function cutShort(
  sheet: DaySheet,
  { underWay }: Pick<BenchNow, 'underWay'>,
  happened: Happened,
  todo: Todo,
  now: number,
): UnderWay[] {
  const ended = new Set(waitsBefore(sheet, happened, todo).map(({ begins }) => begins))
  return underWay.filter(
    ({ event: { begins, kind, length }, since }) =>
      kind === 'wait' &&
      ended.has(begins) &&
      length !== undefined &&
      since + length.least > now + asGoodAsOver,
  )
}
