import type { ReadingName } from '../../src/dough/document/reading-names.js'

/** Of kept states, which are fetched when their fold is first opened. */
export const stateWords = {
  name: 'Name of this state',
  keep: 'Keep this state',
  whatItIs: 'A kept state is this formula as it stands now: to compare with later, and to bring back.',
  /** The name proposed: `24 November, 70.5 % true`. */
  proposed: (day: string, hydration: string | undefined): string =>
    hydration === undefined ? day : `${day}, ${hydration} % true`,
  bringsAlso: (also: string): string => `Bringing it back also ${also}.`,
  read: 'Read',
  readThis: (state: string): string => `Read ${state} beside the present`,
  bringBack: 'Bring back',
  bringBackThis: (state: string): string => `Bring back ${state}`,
  letGo: 'Let go',
  letGoOf: (state: string): string => `Let go of ${state}`,
  kept: (state: string): string => `Kept as ${state}.`,
  isBack: (state: string, asThen: string): string =>
    `${state} is back${asThen && `, and so are ${asThen}`}. Undo takes it back.`,
  gone: (state: string): string =>
    `Let go of ${state}. Undo brings it back; for 30 days it is under Cleared away.`,
} as const

/** A reading of a state, after its figure. */
export const stateReadingWords = {
  trueHydration: '% true',
  salt: '% salt',
  prefermentedFlour: '% prefermented',
  doughWeight: 'g of dough',
} as const satisfies Partial<Record<ReadingName, string>>
