import { stepWords } from '../../day/method/words.js'
import type { Formula, Step } from '../../dough/document/formula.js'
import type { Worded } from '../../engine/index.js'
import type { RecipeLine, RecipeStep } from '../recipe/index.js'
import type { ForeignTable, RowRead } from '../tables/index.js'

/** A line that was read, beside what it was read from. */
export interface ArrivedRow {
  readonly text: string // as it stands in what arrived: a row of a table with its cells parted by tabs; of Tarebook's own files the amount and the ingredient
  readonly ingredient: string
  readonly amount: string // as a line keeps it: decimal point, with its unit; '' where it has to be asked for
  readonly stage: string // the stage its line stands in, by name
  readonly guesses: readonly Reason[] // what was guessed or is to be asked, to be confirmed: `range`, `noAmount`, …
}

/** A step that was read, beside what it was read from. */
export interface ArrivedStep {
  readonly text: string // the words of the recipe; of Tarebook's own files what is done and its time
  readonly step: Step
  readonly stage: string // the stage it belongs to, by name
  readonly guesses: readonly Reason[] // what was guessed or is to be asked, to be confirmed
}

/** The steps of formulas, with what a recipe's reader says of each. */
export function arrivedSteps(formulas: readonly Formula[], read: readonly RecipeStep[] = []): ArrivedStep[] {
  const byId = new Map(read.map(one => [one.stepId, one]))
  return formulas.flatMap(({ stages }) =>
    stages.flatMap(({ name, method = [] }) =>
      method.map(step => {
        const { source, guesses = [] } = byId.get(step.id) ?? {}
        return { text: source ?? stepWords(step), step, stage: name, guesses }
      }),
    ),
  )
}

/** Why something was read as it was: its reader's code for it and the figures, with the sentence made of them. */
export type Reason = Worded

/** The lines of formulas that Tarebook wrote. */
export const ownRows = (formulas: readonly Formula[]): ArrivedRow[] =>
  formulas.flatMap(({ stages }) =>
    stages.flatMap(stage =>
      stage.lines.map(({ ingredient, amount, source }) => ({
        text: source ?? `${amount} ${ingredient}`.trim(),
        ingredient,
        amount,
        stage: stage.name,
        guesses: [],
      })),
    ),
  )

/** The lines of a recipe. */
export function recipeRows(formula: Formula, lines: readonly RecipeLine[]): ArrivedRow[] {
  const stages = new Map(formula.stages.flatMap(({ name, lines: of }) => of.map(line => [line.id, name])))
  return lines.map(({ id, source, ingredient, amount, guesses }) => ({
    text: source,
    ingredient,
    amount,
    stage: stages.get(id) ?? '',
    guesses,
  }))
}

/** The rows of a table that became lines. */
export const tableRows = (table: ForeignTable, rows: readonly RowRead[]): ArrivedRow[] =>
  rows.flatMap(({ became, ingredient = '', amount = '', stage = '', why = [] }, at) =>
    became === 'line'
      ? [
          {
            text: (table.rows[at]?.cells ?? []).join('\t'),
            ingredient,
            amount,
            stage,
            guesses: why,
          },
        ]
      : [],
  )
