import type { Act } from '../../src/day/bench/todos.js'
import { lengthText } from '../../src/day/course/clock.js'

export const benchPlaceWords = {
  title: (name: string): string => `${name} · Tarebook`,
  bench: 'Bench',
  bakes: 'Bakes',
  gone: 'That bench or bake is no longer here.',
  all: 'All bakes',
  none: 'Nothing has been baked yet.',
  how: 'A bake is recorded while you use the bench: open a day and press To the bench, or weigh one formula by itself from its method.',
  write: 'Write one down afterwards',
  writeOf: 'Which bread was it?',
  byBread: 'Measured over several bakes',
  underWay: 'Under way',
  finished: 'Bakes',
  steps: (done: number): string => (done === 1 ? '1 step done' : `${done} steps done`),
  damaged: (count: number): string =>
    count === 1
      ? 'One bake could not be read. What is stored of it stays as it is.'
      : `${count} bakes could not be read. What is stored of them stays as it is.`,
} as const

/** Of the bench in use. */
export const atBenchWords = {
  backToBench: 'Back',
  notTicked: (names: string): string => `Not ticked yet: ${names}.`,
  doneAnyway: 'Done anyway',
  endsShort: (stage: string, wait: string, length: string): string =>
    `${stage}: “${wait}” would end now, ${length} before its time.`,
  endsNow: 'It ends now',
  sign: (wait: string, note: string): string => `${wait}: ${note}`,
  back: (name: string): string => `Back to ${name}`,
  now: (clock: string): string => clock,
  pieces: (count: number): string => (count === 1 ? '1 piece' : `${count} pieces`),
  follows: (what: string, length: string): string => `then ${what.toLowerCase()} ${length}`,
  due: (clock: string): string => `at ${clock}`,
  stillRuns: (timers: readonly string[]): string =>
    `Still running: ${timers.join(', ')}. Finishing stops ${timers.length === 1 ? 'it' : 'them'}.`,
  finishAnyway: 'Finish anyway',
  dueIn: (clock: string, minutes: number): string => `at ${clock}, in ${lengthText(Math.round(minutes))}`,
  dueNow: 'now',
  overdue: (clock: string, minutes: number): string =>
    `was due at ${clock}, ${lengthText(Math.round(minutes))} ago`,
  begun: (clock: string): string => `begun at ${clock}`,
  weigh: 'To weigh',
  bowl: 'bowl to',
  bowlHas: 'bowl',
  total: (grams: string): string => `In the bowl at the end ${grams} g. Tare once, with the bowl empty.`,
  totalOnDough: (grams: string): string => `Tare with the dough in the bowl; ${grams} g go in.`,
  totalWithBowl: (grams: string, bowl: string): string =>
    `The scale says ${grams} g at the end, the bowl’s ${bowl} g included.`,
  scale: 'scale to',
  scaleHas: 'scale',
  bowlOn: 'Count the bowl’s weight too',
  bowlWeighs: (grams: string): string => `The bowl weighs ${grams} g`,
  gramsOfBowl: 'Grams of the empty bowl; 0 when the scale is tared',
  scaleStep: (grams: string): string => `Weighed in steps of ${grams}\u00a0g.`,
  instead: (grams: string): string => `instead of ${grams} g`,
  waterAt: (celsius: string): string => `at ${celsius}`,
  waterWithIce: (celsius: string, ice: string): string => `at ${celsius}, ${ice} g of it ice`,
  heldBack: (grams: string, at: string): string => `${grams} g more at ${at}`,
  heldBackUnknown: (at: string): string => `more at ${at}`,
  later: 'Goes in later',
  laterLine: (ingredient: string, grams: string, at: string): string => `${ingredient} ${grams} g, at ${at}`,
  unknown: 'no weight',
  other: 'Another weight went in',
  otherOf: 'Of which did another weight go in?',
  gramsOf: (ingredient: string): string => `Grams of ${ingredient}`,
  measure: 'Measured',
  done: (then: string): string => (then ? `Done, ${then.toLowerCase()} begins` : 'Done'),
  act: {
    in: 'It is in the oven',
    out: 'It is out of the oven',
    on: 'Done',
    begin: 'It begins now',
  } satisfies Record<Exclude<Act, 'do'>, string>,
  putOff: 'Later',
  longer: 'It takes longer',
  at: 'Done earlier',
  putOffTitle: (name: string): string => `${name}: later by`,
  longerTitle: (name: string): string => `${name}: longer by`,
  atTitle: (name: string): string => `${name} was done`,
  more: (count: number): string => `and ${count} more`,
  nothingMoved: 'Nothing else moved.',
  next: 'Then',
  before: 'Done so far',
  notNoted: 'not noted',
  notDone: (name: string): string => `${name} is not done yet`,
  back2: 'To what is next',
  allDone: 'All is done.',
  finish: 'Finish and keep the bake',
  finishNow: 'Finish here, and keep the bake',
  finished: 'This bench is finished.',
  toBake: (name: string): string => `The bake of ${name}`,
  beside: 'What goes on and what comes then',
  undo: (label: string): string => `Undo: ${label}`,
  noTimes: 'The times no longer fit; the steps are listed in order, and each can still be done.',
  looking: 'Looking for the times…',
  readOnly: 'This bench is in use in another tab. Here you can follow it.',
  noSteps: 'There is nothing to weigh or to do here yet.',
} as const

/** What a step has to be careful of, in few words. */
export const careWords = {
  hot: 'Hot oven, hot pot: wear dry gloves, and keep your face out of the steam.',
  rawFlour: 'Raw flour: wash your hands, and do not taste the dough.',
  perishable: (names: string): string => `${names}: cold until it goes in, no more than 2 h warm in all.`,
} as const
