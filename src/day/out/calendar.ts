import type { DayProblem } from '../plan/day-problem.js'
import type { PlannedDay, PlannedEvent } from '../plan/planned.js'
import { eventWords } from '../plan/words.js'

/** What a calendar file is made with. */
export interface CalendarOptions {
  readonly now: Date // when it is made
  readonly alarm?: number // minutes before each event; left out: none
}

const encoder = new TextEncoder()

/** A text value (RFC 5545, 3.3.11): backslashes, semicolons, commas and line ends escaped, other controls left out. */
const escaped = (text: string): string =>
  text
    .replace(/[\\;,]/g, '\\$&')
    .replace(/\r\n?|\n/g, '\\n')
    // biome-ignore lint/suspicious/noControlCharactersInRegex: those that the standard leaves out of texts
    .replace(/[\u0000-\u0008\u000b-\u001f\u007f]/g, '')

/** A content line of at most 75 octets; longer ones go on after a line end and a blank (3.1), never within a character. */
function folded(line: string): string {
  const lines: string[] = []
  let now = ''
  let octets = 0
  for (const character of line) {
    const more = encoder.encode(character).length
    if (octets + more > 75) {
      lines.push(now)
      now = ' '
      octets = 1
    }
    now += character
    octets += more
  }
  return [...lines, now].join('\r\n')
}

/** `20261205T053000Z` of minutes since 1970, to the nearest minute. */
const utc = (instant: number): string =>
  new Date(Math.round(instant) * 60_000).toISOString().replace(/[-:]|\.\d+/g, '')

/** What is done by hand, and when the oven is filled: what a baker has to be reminded of. */
export const eventsOfHands = ({ events }: PlannedDay): PlannedEvent[] => events.filter(e => e.kind !== 'wait')

/**
 * A day as a calendar file (RFC 5545): one event for each step of hands and each load, times in UTC, so that every
 * calendar shows them in its own zone. The same day gives the same identifiers: brought in again it takes the old one's place.
 */
export function writeCalendar(
  plan: PlannedDay,
  { breads }: Pick<DayProblem, 'breads'>,
  { now, alarm }: CalendarOptions,
): string {
  const { day } = plan
  const nameOf = (id: string) => breads.find(b => b.id === id)?.formula.name ?? ''
  const lines = [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    'PRODID:-//Tarebook//Bake day//EN',
    'CALSCALE:GREGORIAN',
    'METHOD:PUBLISH',
  ]
  if (day.name) lines.push(`X-WR-CALNAME:${escaped(day.name)}`)
  for (const event of eventsOfHands(plan)) {
    const { begins, from, until, breads: of, stageName, step } = event
    const title = `${of.map(nameOf).join(', ')}: ${eventWords(event)}`
    lines.push(
      'BEGIN:VEVENT',
      `UID:${escaped(`${day.id} ${begins}`.replace(/\s+/g, '-'))}@tarebook`,
      `DTSTAMP:${utc(now.getTime() / 60_000)}`,
      `DTSTART:${utc(from)}`,
      `DTEND:${utc(Math.max(until, from + 1))}`,
      `SUMMARY:${escaped(title)}`,
      `DESCRIPTION:${escaped([stageName, step.text, step.note].filter(Boolean).join('\n'))}`,
    )
    if (alarm !== undefined)
      lines.push(
        'BEGIN:VALARM',
        'ACTION:DISPLAY',
        `DESCRIPTION:${escaped(title)}`,
        `TRIGGER:-PT${Math.max(0, Math.round(alarm))}M`,
        'END:VALARM',
      )
    lines.push('END:VEVENT')
  }
  lines.push('END:VCALENDAR')
  return `${lines.map(folded).join('\r\n')}\r\n`
}
