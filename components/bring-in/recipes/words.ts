import { counted } from '../plan/words.js'

/** What is left to be said of a recipe. */
export const stateWords = {
  nothing: 'Nothing is left to be guessed.',
  guessed: (count: number): string => `${counted(count, 'line')} ${count === 1 ? 'holds' : 'hold'} a guess.`,
  guessedHow: 'Say that it is right, or change it.',
  needs: (count: number): string =>
    `${counted(count, 'line')} still ${count === 1 ? 'needs' : 'need'} an amount.`,
  needsHow: 'Type it, or leave the line out.',
  otherwise: 'What is added without that keeps its text in the formula’s note.',
  allIsRight: 'All of it is right',
} as const

export const recipeWords = {
  breadName: 'Name of the bread',
  more: (count: number): string => `And ${counted(count, 'more line')}, added as read.`,
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
