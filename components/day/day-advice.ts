import { localOf, localText } from '../../src/day/course/clock.js'
import type { DaySheet } from '../../src/day/plan/open-day.js'
import { eventWords } from '../../src/day/plan/words.js'
import { changeBread, changeDay, holdMoment } from '../../src/dough/edits/fetched/day-edits.js'
import type { Edit } from '../base/events.js'
import { adviceWords, clockOf, stepOfBread } from './words.js'

/** A time that would do, and the edit that takes it. */
export interface Advice {
  readonly words: string
  readonly edit: Edit
}

/** What would do, each by itself, where it can be said of the day. */
export function adviceOf({ day, conflict, breads, stepAt }: DaySheet): Advice[] {
  return (conflict?.nearest ?? []).flatMap(({ time, reason }): Advice[] => {
    const { date } = localOf(time, day.zone)
    const clock = clockOf(time, day)
    if (reason.of === 'held') {
      const event = stepAt(reason.moment)
      const bread =
        day.breads.length > 1 ? (breads.find(b => b.id === event?.breads[0])?.formula.name ?? '') : ''
      const what = event ? stepOfBread(event, bread) : ''
      const at = localText(localOf(time, day.zone))
      return [
        {
          words: adviceWords.hold(what, clock),
          edit: workbook => holdMoment(workbook, day.id, reason.moment, at, event ? eventWords(event) : what),
        },
      ]
    }
    const isAlone = day.breads.length === 1
    const isOfDay = isAlone && (reason.of === 'begin' || day.breads[0]!.ready === undefined)
    if (date !== day.date && !isOfDay) return [] // a day has one date
    if (reason.of === 'begin')
      return [
        {
          words: adviceWords.begin(clock),
          edit: workbook => changeDay(workbook, day.id, { begin: clock, date }),
        },
      ]
    const name = breads.find(b => b.id === reason.bread)?.formula.name ?? ''
    return [
      {
        words: adviceWords.ready(isAlone ? '' : name, clock),
        edit: workbook =>
          isOfDay
            ? changeDay(workbook, day.id, { ready: clock, date })
            : changeBread(workbook, { day: day.id, bread: reason.bread }, { ready: clock }),
      },
    ]
  })
}
