import { clockText, lengthText, localOf } from '../plan/clock.js'
import type { DayProblem } from '../plan/day-problem.js'
import type { PlannedDay } from '../plan/planned.js'
import { eventWords } from '../plan/words.js'

/** `Friday 4 December` in a language. */
export const dateText = (date: string, language: string): string =>
  new Intl.DateTimeFormat(language, {
    weekday: 'long',
    day: 'numeric',
    month: 'long',
    timeZone: 'UTC',
  }).format(Date.parse(`${date}T12:00Z`))

/** A day as plain text by the clock, a heading for each date. */
export function writeDayText(
  plan: PlannedDay,
  { breads }: Pick<DayProblem, 'breads'>,
  language = 'en-GB',
): string {
  const { day, events } = plan
  const rows = [day.name, '']
  let on = ''
  for (const event of events) {
    const { date, minutes } = localOf(Math.round(event.from), day.zone)
    if (date !== on) {
      if (on) rows.push('')
      rows.push(dateText(date, language))
      on = date
    }
    const of = event.breads.map(id => breads.find(b => b.id === id)?.formula.name ?? '').join(', ')
    const { step } = event
    const long = lengthText(event.until - event.from)
    const note = step.note ? ` (${step.note})` : ''
    rows.push(`${clockText(minutes).padStart(5)}  ${of}: ${eventWords(event)}, ${long}${note}`)
  }
  return `${rows.join('\n')}\n`
}
