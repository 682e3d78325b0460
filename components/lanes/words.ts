import { clockText, lengthText, localOf } from '../../src/day/course/clock.js'
import { piecesOf } from '../../src/day/course/course.js'
import type { NameOf } from '../../src/day/out/bread-names.js'
import { eventWords } from '../../src/day/plan/words.js'
import type { Day } from '../../src/dough/document/day.js'
import { listed } from '../../src/engine/index.js'
import type { Lane, LanePart } from './lane-layout.js'

/** `14:48` of an instant. */
export const clockWords = (instant: number, zone: string): string => clockText(localOf(instant, zone).minutes)

/** Of the drawing. */
export const laneWords = {
  steps: 'Steps in the drawing',
  keys: 'Left and right go from step to step, up and down from lane to lane, Enter goes to the step in the list.',
  now: 'now',
  heating: 'Heating up',
  together: (stage: string, breads: readonly string[]) => `${stage} for ${listed(breads)}`,
  load: (bread: string, number: number, of: number) => (of > 1 ? `${bread}, load ${number} of ${of}` : bread),
  hour: (hour: number) => `${hour}`,
  drawn: (lanes: readonly string[], from: string, until: string, nights: readonly string[]) =>
    `The day drawn from ${from} to ${until}, with a lane each for ${listed(lanes)}.${
      nights.length ? ` Asleep ${listed(nights)}.` : ''
    } The list has the same steps by the clock.`,
} as const

/** What the drawing's signs stand for. */
export const legendWords: Readonly<Record<LanePart['shows'] | 'night' | 'held', string>> = {
  hands: 'work',
  wait: 'wait',
  bake: 'in the oven',
  heating: 'heating up',
  night: 'asleep',
  held: 'held at its time',
}

/** A lane's name: the bread's, the stage's with the breads it is made for, or the oven's. */
export function laneName({ of, breads, name }: Lane, nameOf: (bread: string) => string): string {
  if (of === 'together') return laneWords.together(name, breads.map(nameOf))
  return of === 'oven' ? name : breads.map(nameOf).join('')
}

/** A part of a lane as it is read out: `14:48–18:32, 3 h 44. Mill wheat: Bulk`. */
export function partWords(part: LanePart, zone: string, nameOf: (bread: string) => string): string {
  const { from, until, event, load } = part
  const times = `${clockWords(from, zone)}–${clockWords(until, zone)}, ${lengthText(until - from)}.`
  if (load) return `${times} ${laneWords.load(nameOf(load.bread), load.number, load.of)}`
  return event
    ? `${times} ${event.breads.map(nameOf).join(', ')}: ${eventWords(event)}`
    : `${times} ${laneWords.heating}`
}

/** Of what goes into the oven at once. */
export const loadWords = {
  loadsOf: (oven: string) => (oven ? `Loads of ${oven}` : 'Loads of the oven'),
  heatUpAt: (clocks: readonly string[]) => `heat up at ${listed(clocks)}`,
  in: 'In',
  goTo: (clock: string) => `${clock}, go to it in the list`,
  out: 'Out',
  what: 'Bread',
  pieces: 'Pieces',
  degrees: 'Oven',
  load: (bread: string, number: number, of: number) => (of > 1 ? `${bread}, load ${number}` : bread),
  ofPieces: (pieces: number | undefined, atOnce: number | undefined) =>
    pieces === undefined ? '–' : atOnce === undefined ? `${pieces}` : `${pieces} of ${atOnce}`,
  celsius: (degrees: number) => `${Math.round(degrees)} °C`,
} as const

/** Of the page for the wall. */
export const dayPageWords = {
  weights: 'Weights',
  allTold: 'To weigh, all told',
  made: (day: Day, nameOf: NameOf) =>
    `${listed(
      day.breads.map(bread => {
        const pieces = piecesOf(bread)
        return pieces === undefined ? nameOf(bread.id) : `${pieces} ${nameOf(bread.id)}`
      }),
    )}.`,
  places: ({ ready, begin, kitchen, proofer }: Day) => {
    const when = ready !== undefined ? `Ready ${ready}. ` : begin !== undefined ? `Begun ${begin}. ` : ''
    const warm = proofer === undefined ? '' : `, proofer ${proofer} °C`
    return `${when}Kitchen ${kitchen} °C${warm}.`
  },
} as const

/** Of what leaves of a day. */
export const dayOutWords = {
  calendar: 'Calendar file',
  calendarSays:
    'One event for each thing to do, with an alarm before it. A calendar shows it in its own time zone.',
  alarm: 'Alarm',
  alarms: (minutes: number | undefined) =>
    minutes === undefined ? 'no alarm' : minutes === 0 ? 'when it begins' : `${minutes} min before`,
  copy: 'Copy as text',
  copied: 'The day is on the clipboard.',
  notCopied: 'The browser does not allow copying here. Select the text and copy it.',
  text: 'The day as text',
  print: 'Page for the wall',
  downloaded: (file: string) => `${file} is among your downloads.`,
  none: 'There is nothing to take along until the day has its times.',
} as const
