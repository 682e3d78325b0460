import type { Day } from '../../dough/document/day.js'
import { ovenDays } from '../plan/loads.js'
import type { PlannedDay, PlannedEvent } from '../plan/planned.js'
import { eventWords } from '../plan/words.js'
import type { NameOf } from './bread-names.js'
import { outWords } from './words.js'

/** What a calendar file is made with. */
export interface CalendarOptions {
  readonly now: Date // when it is made
  readonly alarm?: number // minutes before each event; left out: none
}

const encoder = new TextEncoder()

/** A text value (RFC 5545, 3.3.11): backslashes, semicolons, commas and line ends escaped, other controls left out, and halves of characters. */
const escaped = (text: string): string =>
  text
    .replace(/[\\;,]/g, '\\$&')
    .replace(/\r\n?|\n/g, '\\n')
    .replace(/\p{Cs}/gu, '\ufffd')
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

/** An event of the calendar. Instants: minutes since 1970, UTC. */
interface Entry {
  readonly key: string // the same for the same thing of the same day
  readonly title: string
  readonly about: string
  readonly from: number
  readonly until: number
}

function entriesOf(plan: PlannedDay, nameOf: NameOf): Entry[] {
  const hands = eventsOfHands(plan).map((event): Entry => {
    const { begins, from, until, breads, stageName, step } = event
    const title = `${breads.map(nameOf).join(', ')}: ${eventWords(event)}`
    const about = [stageName, step.text, step.note].filter(Boolean).join('\n')
    return { key: begins, title, about, from, until }
  })
  const heatings = ovenDays(plan).flatMap(({ oven, heatings }) =>
    heatings.map(({ from, until }, i): Entry => {
      const key = ['heating', oven.id, ...(i ? [i + 1] : [])].join(' ')
      return { key, title: outWords.heat(oven.name), about: '', from, until }
    }),
  )
  return [...hands, ...heatings].sort((a, b) => a.from - b.from)
}

function eventLines({ key, title, about, from, until }: Entry, day: Day, options: CalendarOptions): string[] {
  const { now, alarm } = options
  const made = now.getTime() / 60_000
  return [
    'BEGIN:VEVENT',
    `UID:${escaped(`${day.id} ${key}`.replace(/\s+/g, '-'))}@tarebook`,
    `DTSTAMP:${utc(made)}`,
    `SEQUENCE:${Math.floor(made)}`, // a calendar takes what is later for the newer state of the same event
    `DTSTART:${utc(from)}`,
    `DTEND:${utc(Math.max(until, from + 1))}`,
    `SUMMARY:${escaped(title)}`,
    ...(about ? [`DESCRIPTION:${escaped(about)}`] : []),
    ...(alarm === undefined ? [] : alarmLines(title, alarm)),
    'END:VEVENT',
  ]
}

const alarmLines = (title: string, minutes: number): string[] => [
  'BEGIN:VALARM',
  'ACTION:DISPLAY',
  `DESCRIPTION:${escaped(title)}`,
  `TRIGGER:-PT${Math.max(0, Math.round(minutes))}M`,
  'END:VALARM',
]

/**
 * A day as a calendar file (RFC 5545): one event for each step of hands, each load and the heating of an oven; times in UTC, so
 * that every calendar shows them in its own zone. The same day gives the same identifiers: brought in again it takes the old
 * one's place. There has to be something to do on the day: a calendar without events is none.
 */
export function writeCalendar(plan: PlannedDay, nameOf: NameOf, options: CalendarOptions): string {
  const { day } = plan
  const lines = [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    'PRODID:-//Tarebook//Bake day//EN',
    'CALSCALE:GREGORIAN',
    'METHOD:PUBLISH',
    ...(day.name ? [`X-WR-CALNAME:${escaped(day.name)}`] : []),
    ...entriesOf(plan, nameOf).flatMap(entry => eventLines(entry, day, options)),
    'END:VCALENDAR',
  ]
  return `${lines.map(folded).join('\r\n')}\r\n`
}
