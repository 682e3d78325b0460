import type { LeftOut } from '../../dough/data/left-out.js'

/** What of what is stored could not be read. Things go by their names. */
export type Damage =
  | { readonly code: 'shelfUnreadable' | 'formulaMissing' | 'dayMissing' }
  | {
      readonly code:
        | 'formulaUnreadable'
        | 'dayUnreadable'
        | 'ingredientUnreadable'
        | 'clearedUnreadable'
        | 'bakeUnreadable'
      readonly name?: string
    }
  | {
      readonly code: 'formulaDamaged' | 'dayDamaged' | 'ingredientDamaged'
      readonly name: string
      readonly left: readonly LeftOut[] // what of it was left out
    }
