import { clockText, lengthText, localOf } from '../course/clock.js'
import type { PlannedDay } from '../plan/planned.js'
import { eventWords } from '../plan/words.js'
import type { NameOf } from './bread-names.js'
import { type ClockRow, datesByClock } from './by-clock.js'
import { outWords } from './words.js'

/** `Friday 4 December` in a language, or short `Fri 4 Dec`, of a date `2026-12-04`. */
export const dateText = (date: string, language: string, length: 'long' | 'short' = 'long'): string =>
  new Intl.DateTimeFormat(language, {
    weekday: length,
    day: 'numeric',
    month: length,
    timeZone: 'UTC',
  }).format(Date.parse(`${date}T12:00Z`))

/** `Fri` in a language, of a date. */
export const weekdayText = (date: string, language: string): string =>
  new Intl.DateTimeFormat(language, { weekday: 'short', timeZone: 'UTC' }).format(
    Date.parse(`${date}T12:00Z`),
  )

/** A day as plain text by the clock, a heading for each date. */
export function writeDayText(plan: PlannedDay, nameOf: NameOf, language = 'en-GB'): string {
  const { zone, name } = plan.day
  const row = (of: ClockRow): string => {
    const clock = clockText(localOf(Math.round(of.from), zone).minutes).padStart(5)
    const long = lengthText(of.until - of.from)
    if (of.heats) return `${clock}  ${outWords.heat(of.heats.name)}, ${long}`
    const { breads, step } = of.event
    const note = step.note ? ` (${step.note})` : ''
    return `${clock}  ${breads.map(nameOf).join(', ')}: ${eventWords(of.event)}, ${long}${note}`
  }
  const dates = datesByClock(plan).map(({ date, rows }) => [dateText(date, language), ...rows.map(row), ''])
  return [name, '', ...dates.flat()].join('\n')
}
