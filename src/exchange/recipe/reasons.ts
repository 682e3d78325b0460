import type { AmountGuess } from '../../dough/amounts/figures.js'
import type { CountsAs } from '../../dough/document/formula.js'
import type { Purpose } from './kitchen-words.js'

/** A second measure beside the one that is taken. */
export interface Comparison {
  readonly code: 'alsoGiven'
  readonly typed: string
  readonly taken: string
  readonly agrees: boolean // so nearly that nothing is to be confirmed
  readonly more?: number // per cent that it is more than what is taken
  readonly grams?: number // what it weighs …
  readonly by?: string // … by this ingredient of the larder
  readonly unknown?: true // the larder cannot compare the two
}

/** An amount as the recipe has it. */
interface AsTyped {
  readonly typed: string
  readonly number: number
  readonly unit: string // '' for none
  readonly read: string // as Tarebook writes it
}

/** What was guessed of a line or is to be asked about it, with its figures; `words.ts` has the sentences. */
export type LineReason =
  | Comparison
  | (AmountGuess & AsTyped)
  | { readonly code: 'nobodyKnows' | 'notCounted' | 'notUnderstood'; readonly typed: string }
  | { readonly code: 'noUnit'; readonly read: string }
  | { readonly code: 'ofEach'; readonly count: string; readonly one: string; readonly read: string }
  | { readonly code: 'ofAllTogether'; readonly count: string; readonly one: string }
  | { readonly code: 'eachOfSeveral' | 'whichYeast' }
  | { readonly code: 'forUse'; readonly purpose: Purpose }
  | { readonly code: 'noAmount'; readonly ingredient: string }
  | { readonly code: 'countsAs'; readonly ingredient: string; readonly kind: CountsAs['kind'] }
  | {
      readonly code: 'starterWithin'
      readonly written: string
      readonly stage: string
      readonly as: string
    }
  | {
      readonly code: 'taken'
      readonly share: number | 'rest'
      readonly stage: string
      readonly grams: number // of the whole stage
      readonly before: number // grams taken by other lines, where the rest is meant
    }
  | { readonly code: 'takenByNoLine'; readonly stage: string; readonly into: string }

/** Why a row is no line, where that is to be said. */
export type RestReason =
  | { readonly code: 'amountsNotTaken' | 'noIngredient' | 'nothingKnown' | 'tooLong' }
  | { readonly code: 'amountOfRow'; readonly row: number }

/** What is wrong with a recipe. `row` is 1-based, `why` a sentence on it. */
export type RecipeDiagnostic =
  | { readonly code: 'recipeRowNotUnderstood'; readonly row: number; readonly why: string }
  | { readonly code: 'recipeWithoutIngredient' }
