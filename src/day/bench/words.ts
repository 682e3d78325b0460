import type { Step } from '../../dough/document/formula.js'
import { listed } from '../../engine/index.js'
import { lengthText } from '../course/clock.js'
import { stepName } from '../method/words.js'
import { eventWords } from '../plan/words.js'
import type { Act, Todo } from './todos.js'

export const benchWords = {
  weighAndMix: 'Weigh and mix',
} as const

const acts: Readonly<Record<Act, (name: string) => string>> = {
  do: name => name,
  in: name => `${name}: into the oven`,
  out: name => `${name}: out of the oven`,
  on: name => name,
  begin: name => `${name} begins`,
}

/** `Mix`, `Bake, load 2: out of the oven`, `Mix of Mill wheat`. */
export function todoName({ event, act }: Pick<Todo, 'event' | 'act'>, bread = ''): string {
  const name = acts[act](eventWords(event))
  return bread ? `${name} (${bread})` : name
}

export const onWeekday = (clock: string, weekday: string): string => `${clock} on ${weekday}`

/** `12 min later`. */
export const movedByText = (by: number): string =>
  `${lengthText(Math.round(Math.abs(by)))} ${by > 0 ? 'later' : 'earlier'}`

/** `Divide is at 18:42 now, 12 min later; 3 more move, by at most 12 min.` */
export function movedSaid(moved: {
  readonly name: string
  readonly clock: string
  readonly by: number // minutes
  readonly more: number
  readonly most: number // minutes
}): string {
  const { name, clock, by, more, most } = moved
  const rest = more
    ? `; ${more} more ${more === 1 ? 'moves' : 'move'}, by at most ${lengthText(Math.round(most))}`
    : ''
  return `${name} is at ${clock} now, ${movedByText(by)}${rest}.`
}

/** A bread that is done after its time. */
export interface Lateness {
  readonly bread: string
  readonly done: string // on the clock
  readonly wanted: string
  readonly by: number // minutes
  readonly tight: readonly Pick<Step, 'does' | 'kind'>[] // waits that are as short as they may be
}

export function latenessSentence({ bread, done, wanted, by, tight }: Lateness): string {
  const first = `${bread} can no longer be ready at ${wanted}: it is at ${done}, ${lengthText(Math.round(by))} later.`
  if (tight.length === 0) return first
  const names = listed([...new Set(tight.map(step => stepName(step).toLowerCase()))])
  return tight.length === 1
    ? `${first} ${names.charAt(0).toUpperCase()}${names.slice(1)} is as short as it may be; making it shorter would help.`
    : `${first} ${names.charAt(0).toUpperCase()}${names.slice(1)} are as short as they may be; making one shorter would help.`
}

export const earlySentence = (bread: string, clock: string, by: number): string =>
  `${bread} is done at ${clock}, ${lengthText(Math.round(by))} before its time: its waits cannot be so long.`

export const tooLongSentence = (what: string, minutes: number, bounds: string): string =>
  `${what} lasts ${lengthText(Math.round(minutes))}, longer than its ${bounds}: look at the dough.`

export const sleeplessSentence = (count: number): string =>
  `${count === 1 ? 'One step falls' : `${count} steps fall`} into the hours of sleep, since no other times fit; a colder place would help.`

/** What edits at the bench are called when they are told and undone. */
export const benchLabels = {
  weighed: (name: string) => `Weighed ${name}`,
  notWeighed: (name: string) => `${name} not weighed yet`,
  done: (name: string) => `Done: ${name}`,
  notDone: (name: string) => `Not done yet: ${name}`,
  begun: (name: string) => `Begun: ${name}`,
  later: (name: string) => `Later: ${name}`,
  figure: (name: string) => `Measured: ${name}`,
  bowl: 'Weight of the bowl',
  timer: (name: string) => `Timer: ${name}`,
  timerGone: (name: string) => `Timer stopped: ${name}`,
  finished: (name: string) => `Finish ${name}`,
  removed: (name: string) => `Delete the bake of ${name}`,
  said: (name: string) => `Note on the bake of ${name}`,
  asBaked: (name: string) => `Keep ${name} as it was baked`,
  wrote: (name: string) => `Write down a bake of ${name}`,
} as const
