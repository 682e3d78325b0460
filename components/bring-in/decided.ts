import type { Formula } from '../../src/dough/formula.js'
import type { Choice } from '../bring-in-plan.js'
import type { Read } from './intake.js'
import { type RecipeSaid, recipeFormula } from './recipe-draft.js'
import { merging, type RestoreWish } from './restore-wish.js'

/** What the baker decided of what was read, before any of it is added. */
export interface Decided {
  readonly choices: ReadonlyMap<string, Choice> // by the formula's id
  readonly said: RecipeSaid
  readonly name: string // of a recipe, where it was changed
  readonly wanted: RestoreWish // of a workbook file
  readonly sure: 0 | 1 | 2 // how often it was said that all is to be replaced
}

export const undecided: Decided = { choices: new Map(), said: new Map(), name: '', wanted: merging, sure: 0 }

/** The formulas as they would be added; those of a workbook file go another way. */
export function formulasOf(read: Read | undefined, { said, name }: Decided): readonly Formula[] {
  const arrived = read?.arrived
  if (!arrived || arrived.as === 'workbook') return []
  if (arrived.as !== 'recipe') return arrived.formulas
  if (arrived.lines.length === 0) return []
  return [recipeFormula(arrived.formulas[0], arrived.lines, said, name)]
}
