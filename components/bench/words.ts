import type { FigureName, TasteName } from '../../src/day/bench/bake.js'
import type { Act } from '../../src/day/bench/todos.js'
import { lengthText } from '../../src/day/course/clock.js'

export const benchPlaceWords = {
  title: (name: string): string => `${name} · Tarebook`,
  bench: 'Bench',
  bakes: 'Bakes',
  gone: 'There is no such bench or bake here any more.',
  all: 'All bakes',
  none: 'Nothing has been baked yet.',
  how: 'A bake keeps itself while a bench is used: open a day and press To the bench, or weigh one formula by itself from its method.',
  write: 'Write one down afterwards',
  writeOf: 'Which bread was it?',
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
  back: (name: string): string => `Back to ${name}`,
  now: (clock: string): string => clock,
  pieces: (count: number): string => (count === 1 ? '1 piece' : `${count} pieces`),
  follows: (what: string, length: string): string => `then ${what.toLowerCase()} ${length}`,
  due: (clock: string): string => `at ${clock}`,
  dueIn: (clock: string, minutes: number): string => `at ${clock}, in ${lengthText(minutes)}`,
  dueNow: 'now',
  overdue: (clock: string, minutes: number): string => `was due at ${clock}, ${lengthText(minutes)} ago`,
  begun: (clock: string): string => `begun at ${clock}`,
  weigh: 'To weigh',
  bowl: (grams: string): string => `bowl to ${grams} g`,
  bowlHas: (grams: string): string => `bowl ${grams} g`,
  total: (grams: string): string => `In the bowl at the end ${grams} g. Tare once, with the bowl empty.`,
  scaleStep: (grams: string): string => `Weighed in steps of ${grams}\u00a0g.`,
  instead: (grams: string): string => `${grams} g went in`,
  heldBack: (grams: string, at: string): string => `${grams} g more at ${at}`,
  heldBackUnknown: (at: string): string => `more at ${at}`,
  later: 'Goes in later',
  laterLine: (ingredient: string, grams: string, at: string): string => `${ingredient} ${grams} g, at ${at}`,
  unknown: 'no weight',
  other: 'Other weight',
  otherOf: (ingredient: string): string => `Another weight of ${ingredient} went in`,
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
  timers: 'Timers',
  timer: 'New timer',
  timerTitle: 'Minutes',
  timerName: (minutes: string): string => `${minutes} min`,
  left: (length: string): string => `${length} left`,
  over: (length: string): string => `over since ${length}`,
  overNow: 'over',
  stop: (name: string): string => `Stop the timer ${name}`,
  stopShort: 'Stop',
  undo: (label: string): string => `Undo: ${label}`,
  noTimes: 'No times fit any more; the steps stand in their order. Each can still be done.',
  looking: 'Looking for the times…',
  readOnly: 'Another tab leads: here the bench can be read, and follows.',
  noSteps: 'Nothing to weigh or to do is written here yet.',
} as const

/** What this browser does and does not do while the bench is open. */
export const bellWords = {
  heading: 'This device',
  awake: 'The screen stays on while the bench is in sight.',
  notAwake: 'This browser does not keep the screen on. Set it to stay on in the device’s own settings.',
  sound: 'It rings when something is due.',
  soundLocked: 'It rings once you have touched this page.',
  noSound: 'This browser makes no sound here.',
  vibrates: 'It also vibrates where the device can.',
  noVibration: 'It does not vibrate in this browser.',
  closed: 'A closed page cannot ring. Opened again, it shows what was due meanwhile.',
  notifies: 'It notifies you while another page is in front.',
  notify: 'Notify me while another page is in front',
  blocked: 'Notifications are blocked for this page, in the settings of the browser.',
  noNotifications: 'This browser has no notifications for this page.',
  due: (what: string): string => `Now: ${what}`,
  over: (name: string): string => `Timer over: ${name}`,
} as const

/** What a step has to be careful of, in few words. */
export const careWords = {
  hot: 'Hot oven, hot vessel: dry gloves, and steam goes to the face.',
  rawFlour: 'Raw flour: wash your hands, and taste no dough.',
  perishable: (names: string): string => `${names}: cold until it goes in, no more than 2 h warm in all.`,
} as const

export const figureWords: Readonly<Record<FigureName, { readonly name: string; readonly unit: string }>> = {
  flour: { name: 'Flour', unit: '°C' },
  water: { name: 'Water', unit: '°C' },
  room: { name: 'Room', unit: '°C' },
  dough: { name: 'Dough', unit: '°C' },
  oven: { name: 'Oven', unit: '°C' },
  rise: { name: 'Rise', unit: '%' },
  pH: { name: 'pH', unit: '' },
  raw: { name: 'Piece raw', unit: 'g' },
  baked: { name: 'Piece baked', unit: 'g' },
}

export const tasteWords: Readonly<
  Record<TasteName, { readonly name: string; readonly ends: readonly [string, string] }>
> = {
  sour: { name: 'Sour', ends: ['mild', 'sour'] },
  open: { name: 'Open', ends: ['close', 'open'] },
  dark: { name: 'Dark', ends: ['pale', 'dark'] },
  high: { name: 'High', ends: ['flat', 'high'] },
  keeps: { name: 'Keeps', ends: ['a day', 'long'] },
}

/** Of a bake that is looked at. */
export const bakeWords = {
  all: 'All bakes',
  besides: 'Beside',
  formula: 'the formula as it stood',
  bakeOf: (date: string, clock: string): string => `the bake of ${date}, ${clock}`,
  steps: 'Times',
  step: 'Step',
  began: 'Began',
  took: 'Took',
  tookThere: 'Took there',
  written: 'Written',
  planned: (clock: string): string => `planned ${clock}`,
  weights: 'Weights, g',
  ingredient: 'Ingredient',
  wentIn: 'Went in',
  wentInThere: 'Went in there',
  wanted: 'Wanted',
  figures: 'Measured',
  howItWas: 'How it was',
  verdict: 'Verdict on the bake',
  verdictHint: 'How it was, in your own words',
  note: 'Note on the bake',
  noteHint: 'A note',
  taste: (name: string, value: number): string => `${name}, ${value} of 5`,
  again: 'Bake it like that day: keep it as a state of the formula',
  state: (date: string): string => `as baked on ${date}`,
  keptAsState: (name: string, state: string): string =>
    `Kept with ${name}, “${state}”: bring it back from its kept states.`,
  keptAsFormula: (name: string): string => `${name} is a formula on the shelf again, as it was baked.`,
  remove: 'Delete this bake',
  sure: 'Delete it for good? Only undo brings it back.',
  keep: 'Keep it',
  removed: (name: string): string => `Deleted the bake of ${name}.`,
  noNumber: (typed: string): string => `“${typed}” is no number. Write one like 25.5.`,
} as const
