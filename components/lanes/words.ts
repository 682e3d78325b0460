import { clockText, lengthText, localOf } from '../../src/day/course/clock.js'
import { eventWords } from '../../src/day/plan/words.js'
import type { Lane, LanePart } from './lane-layout.js'

/** Names in a row: `Mill wheat, Two-build rye and Oven`. */
export const listed = (names: readonly string[]): string =>
  names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`

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
