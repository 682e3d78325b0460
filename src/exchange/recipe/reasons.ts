import type { CountsAs } from '../../dough/document/formula.js'
import type { Purpose } from './purposes.js'

/** What speaks for a row being of a kind: the codes of the evidence that `candidates.ts` weighs. */
export type Evidence =
  | 'first row'
  | 'marked as a heading'
  | 'opens as a heading'
  | 'short'
  | 'names a kind of stage'
  | 'names a bread'
  | 'names what is in it'
  | 'below a blank row'
  | 'above a blank row'
  | 'named by a line below'
  | 'name of an ingredient'
  | 'says how much'
  | 'unlike the rows below'
  | 'heading of a list'
  | 'heading of a method'
  | 'heading of remarks'
  | 'a time first'
  | 'a verb first'
  | 'several sentences'
  | 'opens like a sentence'
  | 'long, with a verb'
  | 'long'
  | 'a fact with its figure'
  | 'asks for ingredients'
  | 'names its stage'
  | 'amounts of ingredients'
  | 'ingredients the larder knows'
  | 'an ingredient in a list'
  | 'as much as is wished'
  | 'takes an earlier stage'
  | 'ingredients in a sentence'
  | 'only an amount'
  | 'only what is done to it'
  | 'a name beside lines'
  | 'a remark among remarks'
  | 'nothing known'

/** A second measure beside the one that is taken. */
export interface Comparison {
  readonly code: 'also given'
  readonly typed: string
  readonly taken: string
  readonly agrees: boolean // so nearly that nothing is to be confirmed
  readonly more?: number // per cent that it is more than what is taken
  readonly grams?: number // what it weighs …
  readonly by?: string // … by this ingredient of the larder
  readonly unknown?: true // the larder cannot compare the two
}

/** What was guessed of a line or is to be asked about it, with its figures; `words.ts` has the sentences. */
export type LineReason =
  | Comparison
  | { readonly code: 'two readings'; readonly typed: string; readonly read: string } // `1,250 kg`
  | { readonly code: 'range'; readonly typed: string; readonly read: string } // the middle was taken
  | { readonly code: 'times'; readonly typed: string; readonly times: number; readonly one: string }
  | { readonly code: 'of each'; readonly count: string; readonly one: string; readonly read: string }
  | { readonly code: 'of all together'; readonly count: string; readonly one: string }
  | { readonly code: 'converted' | 'no unit'; readonly read: string }
  | { readonly code: 'letter'; readonly unit: string }
  | {
      readonly code: 'us measure' | 'metric pound' | 'other cup' | 'estimate' | 'stick'
      readonly unit: string
      readonly number: number
      readonly read: string
    }
  | { readonly code: 'unknown measure'; readonly typed: string }
  | { readonly code: 'not counted'; readonly typed: string } // an amount in a remark
  | { readonly code: 'not understood'; readonly text: string }
  | { readonly code: 'each of several' }
  | { readonly code: 'for use'; readonly purpose: Purpose }
  | { readonly code: 'no amount'; readonly ingredient: string }
  | { readonly code: 'which yeast' }
  | { readonly code: 'counts as'; readonly ingredient: string; readonly kind: CountsAs['kind'] }
  | { readonly code: 'starter within'; readonly written: string; readonly stage: string; readonly as: string }
  | {
      readonly code: 'taken'
      readonly share: number | 'rest'
      readonly stage: string
      readonly grams: number // of the whole stage
      readonly before: number // grams taken by other lines, where the rest is meant
    }
  | { readonly code: 'taken by its weight'; readonly written: string; readonly stage: string }
  | { readonly code: 'taken by no line'; readonly stage: string; readonly into: string }

/** Why a row with amounts is no line. */
export type RestReason =
  | { readonly code: 'amounts not taken' }
  | { readonly code: 'no ingredient' }
  | { readonly code: 'nothing known' }
  | { readonly code: 'too long' }
  | { readonly code: 'amount of a row'; readonly row: number }
