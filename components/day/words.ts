import { clockText, localOf } from '../../src/day/course/clock.js'
import type { Standing } from '../../src/day/course/waits.js'
import type { PlannedEvent } from '../../src/day/plan/planned.js'
import { eventWords } from '../../src/day/plan/words.js'
import type { Day } from '../../src/dough/document/day.js'

/** Of the place as a whole, and of the list of days. */
export const daysWords = {
  title: (day: string): string => `${day} · Tarebook`,
  days: 'Days',
  none: 'No day is planned yet.',
  how: 'A day says when each step of its breads begins: give it the breads, how much of each, and when they are to be ready. Any time can be typed; the rest follows.',
  newDay: 'New day',
  empty: 'Empty',
  emptyNote: 'without breads',
  like: (day: string): string => `Like ${day}`,
  actions: (day: string): string => `Actions for ${day}`,
  rename: 'Rename',
  again: 'Plan again a week later',
  handout: 'Handout',
  remove: 'Delete',
  removed: (day: string): string => `Deleted ${day}.`,
  cleared: (count: number): string => `Cleared away: ${count}`,
  undo: 'Undo',
  all: 'All days',
  bakes: 'Bakes',
  gone: 'That day is no longer planned.',
} as const

/** Of an open day. */
export const dayWords = {
  name: 'Name of the day',
  note: 'Note on the day',
  noteHint: 'A note',
  facts: 'What is baked, and when',
  change: 'Change',
  done: 'Done',
  byTheClock: 'By the clock',
  drawn: 'The day drawn',
  out: 'Take it along',
  bench: 'To the bench',
  order: 'What to weigh and order',
  noBreads: 'Add a bread, and its steps stand here by the clock.',
  noSteps: 'None of these breads has a method yet. Write its steps on the formula, under the stages.',
  remarks: 'Good to know',
  looking: 'Looking for the best order…',
  lookingOn: (tried: string): string =>
    `Looking for a better order; ${tried} tried so far. These are the times found so far.`,
  stop: 'Stop here',
  stopped: 'Stopped here: these are the best times found so far, there may be better ones.',
  stoppedEmpty: 'Stopped before any times were found. Change something, or look again.',
  again: 'Look again',
  withoutHolds: 'The times below are those without any held time.',
  lastGood:
    'The times below are from the last plan that fitted, the amounts are those of now. What you typed since does not fit yet.',
  noTimes: 'There are no times yet: the day does not fit as it is. What stands in the way is said above.',
  noTimesYet: 'There are no times yet: they are still being looked for.',
  noTimesFound: 'There are no times yet: none were found before it was stopped.',
  doesNotFit: 'What does not fit',
  at: (date: string, clock: string): string => `${date} at ${clock}`,
  atClock: (clock: string): string => `at ${clock}`,
  onDate: (date: string, clock: string): string => `on ${date} at ${clock}`,
  fits: 'All of it fits.',
  fitsAtUsual: 'All of it fits, every wait as long as usual.',
  begins: (when: string): string => `You begin on ${when}.`,
  beginsPast: (when: string): string => `You would have to begin on ${when}, which is past.`,
} as const

/** Of the list by the clock. */
export const clockWords = {
  hint: 'Type a time to hold it there; Delete lets it follow again.',
  time: (what: string, time: string, held: boolean): string => `${what}: ${time}${held ? ', held' : ''}`,
  newTime: (what: string): string => `Time of ${what}`,
  how: (what: string): string => `How the time of ${what} came about`,
  follow: 'Let it follow',
  followThis: (what: string): string => `Let the time of ${what} follow`,
  notATime: (typed: string): string => `“${typed}” is not a time. Write one like 6:30 or 18:45.`,
  moved: (count: number, most: string): string =>
    count === 1 ? `One other time moved, by ${most}.` : `${count} other times moved, by at most ${most}.`,
  nothingMoved: 'No other time moved.',
  notFitting: (planned: string): string => `Does not fit; it is ${planned} in this plan.`,
  takeInstead: (time: string): string => `Hold it at ${time}`,
  held: (what: string, time: string): string => `${what} held at ${time}.`,
  released: (what: string): string => `${what} follows again.`,
  of: (length: string, bounds: string): string => (length === bounds ? length : `${length} of ${bounds}`),
  at: (celsius: string): string => `at ${celsius}`,
  water: (liquid: 'water' | 'milk', celsius: string, wanted: string): string =>
    `${liquid} at ${celsius} for a dough of ${wanted}`,
  written: (bounds: string, celsius: string): string => `${bounds} written for ${celsius}`,
  pieces: (count: number): string => (count === 1 ? '1 piece' : `${count} pieces`),
} as const

/** Where a wait stands: `in the fridge, 4 °C`. */
export const standingWords: Readonly<Record<Standing, string>> = {
  kitchen: 'in the kitchen',
  fridge: 'in the fridge',
  proofer: 'in the proofer',
}

export const degrees = (celsius: number): string => `${Number(celsius.toFixed(1))}\u00a0°C`

/** `Mix of Mill wheat`, where the day has several breads; `Mix` where it has one. */
export function stepOfBread(
  event: Pick<PlannedEvent, 'step' | 'time' | 'load' | 'breads'>,
  bread: string,
): string {
  const what = eventWords(event)
  return bread ? `${what} of ${bread}` : what
}

/** `14:38` of an instant in the day's zone. */
export const clockOf = (instant: number, { zone }: Day): string => clockText(localOf(instant, zone).minutes)

/** A day in one sentence, where its fields are put away. */
export const saidWords = {
  when: (
    begin: string | undefined,
    ready: string | undefined,
    date: string,
    breads: readonly string[],
  ): string => {
    const times = [begin && `begin at ${begin}`, ready && `ready by ${ready}`].filter(Boolean).join(', ')
    const what = breads.length ? `: ${breads.join(', ')}.` : '.'
    return `${times.charAt(0).toUpperCase()}${times.slice(1)} on ${date}${what}`
  },
  kitchen: (celsius: string): string => `Kitchen ${celsius}.`,
  asleep: (from: string, until: string): string => `Asleep ${from}–${until}.`,
} as const

/** In the buttons of a conflict: what the advice does. */
export const adviceWords = {
  ready: (bread: string, time: string): string =>
    bread ? `Have ${bread} ready at ${time}` : `Be ready at ${time}`,
  begin: (time: string): string => `Begin at ${time}`,
  hold: (what: string, time: string): string => `Hold ${what} at ${time}`,
  follow: (what: string): string => `Let ${what} follow`,
  toStep: (step: string, bread: string): string => `Go to ${step} of ${bread}`,
  inFormula: (bread: string): string => `What is changed there changes the formula ${bread}, on every day.`,
} as const

/** Of the working of a time. */
export const timeWorkingWords = {
  from: 'What was typed',
  gone: 'That step is no longer in the day.',
  signed: (length: string, adds: boolean): string => `${adds ? '+' : '−'} ${length}`,
} as const
