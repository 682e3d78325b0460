import { type Sentences, wording } from '../../engine/index.js'
import type { Hold } from '../document/formula.js'
import { grams, holdWords } from '../document/words.js'

/** A hold and the ingredient of the line that gives for it. */
export interface HeldLine {
  readonly hold: Hold
  readonly ingredient: string
}

/** Why a cell that few formulas have has no number. Ingredients go by their names, weights are grams. */
export type RareDiagnostic =
  | { readonly code: 'allOfUnknown' | 'allOfNotTaken'; readonly ingredient: string }
  | { readonly code: 'keptBackTakesMore'; readonly ingredient: string; readonly weight: number }
  // Holds: all that are solved together, or those that stand in the way.
  | { readonly code: 'onlyNothingHolds'; readonly holds: readonly HeldLine[] }
  | {
      readonly code: 'givesBelowNothing'
      readonly holds: readonly HeldLine[]
      readonly ingredient: string
      readonly weight: number
    }
  | { readonly code: 'holdsContradict' | 'holdsAlike'; readonly holds: readonly HeldLine[] }
  | {
      readonly code: 'holdsLeaveOpen'
      readonly holds: readonly HeldLine[]
      readonly open: readonly string[] // ingredients
    }

const list = (words: readonly string[]): string =>
  words.length < 2 ? (words[0] ?? '') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`
const lines = (ingredients: readonly string[]): string => list(ingredients.map(name => name || 'a line'))
const held = (holds: readonly HeldLine[]): string =>
  list(holds.map(({ hold, ingredient }) => holdWords(hold, ingredient)))
const giving = (holds: readonly HeldLine[]): string => lines(holds.map(({ ingredient }) => ingredient))

export const rareSentences: Sentences<RareDiagnostic> = {
  allOfUnknown: ({ ingredient }) => `There is no ${ingredient} in the formula to make all of.`,
  allOfNotTaken: ({ ingredient }) => `The dough takes no ${ingredient}.`,
  keptBackTakesMore: ({ ingredient, weight }) =>
    `What is kept back takes more than ${weight} g of ${ingredient} alone.`,
  onlyNothingHolds: ({ holds }) =>
    `With ${held(holds)} only an empty dough would fit: the amounts you typed and what is held ask for different shares. Change or release a hold, or type the weight of a flour.`,
  givesBelowNothing: ({ holds, ingredient, weight }) =>
    `With ${held(holds)}, ${lines([ingredient])} would have to weigh ${grams(weight)}, which is below 0. Change or release a hold.`,
  holdsContradict: ({ holds }) =>
    `No weight of ${giving(holds)} gives ${held(holds)}. Change or release one of these holds, or let another line give.`,
  holdsLeaveOpen: ({ holds, open }) =>
    `With ${held(holds)} the weight of ${lines(open)} is left open: more than one would fit. Let another line give, or type one amount.`,
  holdsAlike: ({ holds }) =>
    `${held(holds)}: these holds are almost the same, so ${giving(holds)} cannot be worked out reliably. Let another line give.`,
}

/** A diagnostic of cells that few formulas have, with its sentence. */
export const rareProblem = wording(rareSentences)
