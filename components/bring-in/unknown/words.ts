export const unknownWords = {
  notInLarder: 'Not in the larder',
  guessed: (count: number): string =>
    `${count === 1 ? 'What it counts as is' : 'What each counts as is'} guessed from its name where that tells it. Change what is not right; it holds in the formulas you add. Allergens are not guessed.`,
  /** Those not shown yet, with how many there are of each kind. */
  rest: (count: number, kinds: readonly string[]): string => `And ${count} more: ${kinds.join(', ')}.`,
  ofKind: (count: number, kind: string): string => `${count} ${kind}`,
  showRest: (count: number): string => `Show ${count} more`,
  showNext: (count: number): string => `Show the next ${count}`,
  notKnown: 'Not known',
  hydrationOf: (ingredient: string): string => `Hydration of ${ingredient}, per cent`,
  at: 'at', // before a hydration
  notAHydration: 'Write a number from 10 to 1000.',
} as const

/** Why an ingredient counts as it does. */
export const whyWords = {
  said: 'as you said',
  saidNotKnown: 'as you said: only its weight counts',
  guessed: 'a guess from its name',
  isStage: 'only its weight counts; a stage of another formula has this name',
  notKnown: 'only its weight counts',
} as const
