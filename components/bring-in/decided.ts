import type { Formula } from '../../src/dough/document/formula.js'
import type { Larder } from '../../src/dough/document/larder.js'
import type { Workbook } from '../../src/dough/document/workbook.js'
import { isHere } from '../../src/exchange/data/same-formula.js'
import type { Read } from './intake.js'
import { type Choice, namesake } from './plan/bring-in-plan.js'
import { type RecipeSaid, recipeFormula, type StepsSaid } from './recipes/recipe-draft.js'
import { type MeaningsSaid, type NotInLarder, notInLarder, withMeanings } from './unknown/not-in-larder.js'
import { merging, type RestoreWish } from './workbooks/restore-wish.js'

/** What the baker decided of what was read, before any of it is added. */
export interface Decided {
  readonly choices: ReadonlyMap<string, Choice> // by the formula's id
  readonly meanings: MeaningsSaid // of what is not in the larder
  readonly said: RecipeSaid
  readonly steps: StepsSaid // of a recipe's method
  readonly name: string // of a recipe, where it was changed
  readonly wanted: RestoreWish // of a workbook file
  readonly sure: 0 | 1 | 2 // how often it was said that all is to be replaced
}

export const undecided: Decided = {
  choices: new Map(),
  meanings: new Map(),
  said: new Map(),
  steps: new Map(),
  name: '',
  wanted: merging,
  sure: 0,
}

/** What would be added of what was read; of a workbook file nothing, which goes another way. */
export interface Incoming {
  readonly formulas: readonly Formula[] // as they would be added
  readonly unknown: readonly NotInLarder[] // their ingredients that are not in the larder
  readonly here: ReadonlySet<string> // ids of those that are on the shelf already, the same
  readonly choice: (formula: Formula) => Choice
}

function formulasRead(read: Read | undefined, { said, steps, name }: Decided): readonly Formula[] {
  const arrived = read?.arrived
  if (!arrived || arrived.as === 'workbook') return []
  if (arrived.as !== 'recipe') return arrived.formulas
  if (arrived.lines.length === 0) return []
  return [recipeFormula(arrived.formulas[0], arrived.lines, said, name, arrived.steps, steps)]
}

const unknownOf = new WeakMap<readonly Formula[], readonly [Larder, readonly NotInLarder[]]>() // thousands of names, say

export function incoming(
  read: Read | undefined,
  decided: Decided,
  { formulas: shelf }: Workbook,
  larder: Larder,
): Incoming {
  const asRead = formulasRead(read, decided)
  let known = unknownOf.get(asRead)
  if (known?.[0] !== larder) {
    known = [larder, notInLarder(asRead, larder)]
    unknownOf.set(asRead, known)
  }
  const [, unknown] = known
  const formulas = withMeanings(asRead, unknown, decided.meanings)
  const here = new Set(
    formulas.flatMap((formula, at) => {
      const there = namesake(shelf, formula)
      const isSame = there && [asRead[at]!, formula].some(one => isHere(there, one, larder))
      return isSame ? [formula.id] : []
    }),
  )
  const choice = ({ id }: Formula): Choice => decided.choices.get(id) ?? (here.has(id) ? 'leave' : 'add')
  return { formulas, unknown, here, choice }
}
