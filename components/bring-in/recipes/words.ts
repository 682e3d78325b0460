import { counted } from '../plan/words.js'

/** What is left to be said of a recipe. */
export const stateWords = {
  nothing: 'No guesses are left to check.',
  guessed: (count: number): string => `${counted(count, 'line')} ${count === 1 ? 'holds' : 'hold'} a guess.`,
  guessedHow: 'Say that it is right, or change it.',
  needs: (count: number): string =>
    `${counted(count, 'line')} still ${count === 1 ? 'needs' : 'need'} an amount.`,
  needsHow: 'Type it, or leave the line out.',
  otherwise: 'A line added without that says so in its note.',
  allIsRight: 'All of it is right',
} as const

export const recipeWords = {
  breadName: 'Name of the bread',
  more: (count: number): string => `And ${counted(count, 'more line')}, added as read.`,
} as const

/** Of the steps of a recipe's method. */
export const stepWords = {
  heading: (count: number): string => `Method: ${counted(count, 'step')}`,
  guessed: (count: number): string =>
    `${counted(count, 'step')} ${count === 1 ? 'holds' : 'hold'} a guess: say that it is right, or change it.`,
  otherwise: 'Each step keeps the recipe’s words as its note where they say more than its time.',
  allIsRight: 'All steps are right',
  more: (count: number): string => `And ${counted(count, 'more step')}, added as read.`,
  doesOf: (does: string): string => `What is done at ${does}`,
  kindOf: (does: string): string => `How ${does} passes`,
  textOf: (does: string): string => `Time of ${does}, and what else matters`,
  noTime: 'no time',
} as const

/** Of one line. */
export const lineWords = {
  row: (row: number): string => `row ${row}`,
  ingredientOf: (ingredient: string): string => `Ingredient of ${ingredient}`,
  amountOf: (ingredient: string): string => `Amount of ${ingredient}`,
  noAmount: 'no amount',
  putBack: 'Put back',
  putBackThis: (ingredient: string): string => `Put back ${ingredient}`,
  leaveOut: 'Leave out',
  leaveOutThis: (ingredient: string): string => `Leave out ${ingredient}`,
  note: (note: string): string => `Note: ${note}`,
  rightAsSaid: 'Right, as you said.',
  needsAmount: 'No amount.',
  guessed: 'Guessed.',
  typeAmount: (ingredient: string): string => `No amount is given for ${ingredient}: type one.`,
  isRight: 'Yes, that is right',
  isRightThis: (ingredient: string): string => `Yes, that is right: ${ingredient}`,
} as const
