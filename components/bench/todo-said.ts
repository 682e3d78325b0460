import { breadOf } from '../../src/day/bench/rescheduled.js'
import { type Todo, thenOf } from '../../src/day/bench/todos.js'
import { clockText, lengthText, localOf } from '../../src/day/course/clock.js'
import type { DaySheet } from '../../src/day/plan/open-day.js'
import { eventWords } from '../../src/day/plan/words.js'
import type { NumberStyle } from '../base/numbers.js'
import { piecesSaid } from './pieces-said.js'
import { clockCut } from './timers/timer-text.js'
import { atBenchWords } from './words.js'

export const isPast = 0.75 // minutes from which something is late

/** `18:42`, on the clock of the place. */
export const clockIn = (instant: number, zone: string): string => clockText(localOf(instant, zone).minutes)

/** When a thing is to be done, was begun or was done. */
export function whenSaid({ due, begun, done }: Todo, now: number, zone: string): string {
  if (done !== undefined) return atBenchWords.due(clockCut(done, zone))
  if (begun !== undefined) return atBenchWords.begun(clockCut(begun, zone))
  const clock = clockIn(due, zone)
  const off = due - now
  if (Math.abs(off) <= isPast) return atBenchWords.dueNow
  return off > 0 ? atBenchWords.dueIn(clock, off) : atBenchWords.overdue(clock, -off)
}

/** What a thing to do is of, and about it: its pieces, and what follows by itself. */
export function aboutSaid(sheet: DaySheet, todo: Todo, numbers: NumberStyle, isDay: boolean) {
  const { event } = todo
  const bread = sheet.breads.length > 1 || isDay ? breadOf(sheet, todo) || sheet.breads[0]?.formula.name : ''
  const then = thenOf(sheet, todo)
  const follows = then ? atBenchWords.follows(eventWords(then), lengthText(then.until - then.from)) : ''
  return {
    of: [bread, event.stageName].filter(Boolean).join(', '),
    about: [piecesSaid(sheet, event, numbers), follows].filter(Boolean).join(' · '),
  }
}
