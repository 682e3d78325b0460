import { type Formula, nameKey, type Stage } from '../../src/dough/formula.js'
import type { RecipeLine } from '../../src/exchange/index.js'

/** What a baker said of a line that was read from a recipe. */
export interface LineSaid {
  readonly ingredient?: string
  readonly amount?: string // as it is kept
  readonly isOut?: boolean // it is not to be added
  readonly isRight?: boolean // what was guessed of it is confirmed
}

/** By the id of the line. */
export type RecipeSaid = ReadonlyMap<string, LineSaid>

export const isOpen = ({ lineId, guesses }: RecipeLine, said: RecipeSaid): boolean => {
  const { isRight, isOut } = said.get(lineId) ?? {}
  return guesses.length > 0 && !isRight && !isOut
}

/** How a line that was never confirmed says, in its note, that it is a guess. */
const guessNote = (source: string): string => `guessed from “${source.trim()}”`

/** The formula of a recipe with what the baker said of it: a guess that is not confirmed keeps its source in the note. */
export function recipeFormula(
  formula: Formula,
  lines: readonly RecipeLine[],
  said: RecipeSaid,
  name: string,
): Formula {
  const byId = new Map(lines.map(line => [line.lineId, line]))
  const stages = formula.stages.map(
    (stage): Stage => ({
      ...stage,
      lines: stage.lines.flatMap(line => {
        const { ingredient = line.ingredient, amount = line.amount, isOut } = said.get(line.id) ?? {}
        const read = byId.get(line.id)
        if (isOut) return []
        const note =
          read && isOpen(read, said)
            ? [line.note, guessNote(read.source)].filter(part => part !== '').join('; ')
            : line.note
        return [{ ...line, ingredient, amount, note }]
      }),
    }),
  )
  const kept = stages.filter((stage, at) => stage.lines.length > 0 || at === stages.length - 1)
  const names = new Set(kept.flatMap(stage => stage.lines.map(line => nameKey(line.ingredient))))
  return {
    ...formula,
    name: name.trim() || formula.name,
    stages: kept,
    meanings: formula.meanings.filter(({ ingredient }) => names.has(nameKey(ingredient))),
  }
}
