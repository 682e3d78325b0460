import { type Formula, nameKey, type Stage } from '../../../src/dough/document/formula.js'
import type { RecipeLine } from '../../../src/exchange/index.js'
import { notConfirmedNote } from '../../../src/exchange/values/not-confirmed.js'

/** What a baker said of a line that was read from a recipe. */
export interface LineSaid {
  readonly ingredient?: string
  readonly amount?: string // as it is kept
  readonly isOut?: boolean // it is not to be added
  readonly isRight?: boolean // what was guessed of it is confirmed
}

/** By the id of the line. */
export type RecipeSaid = ReadonlyMap<string, LineSaid>

/** Is there no amount yet, neither read nor said? */
export const needsAmount = ({ id, amount }: RecipeLine, said: RecipeSaid): boolean => {
  const { amount: typed = amount, isOut } = said.get(id) ?? {}
  return typed.trim() === '' && !isOut
}

/** Is something of the line still to be said? Without an amount nothing can be right. */
export const isOpen = (line: RecipeLine, said: RecipeSaid): boolean => {
  const { isRight, isOut } = said.get(line.id) ?? {}
  return needsAmount(line, said) || (line.guesses.length > 0 && !isRight && !isOut)
}

/** The formula of a recipe with what the baker said of it: its lines keep their words, its note the guesses nobody confirmed. */
export function recipeFormula(
  formula: Formula,
  lines: readonly RecipeLine[],
  said: RecipeSaid,
  name: string,
): Formula {
  const byId = new Map(lines.map(line => [line.id, line]))
  const guessed: string[] = []
  const stages = formula.stages.map(
    (stage): Stage => ({
      ...stage,
      lines: stage.lines.flatMap(line => {
        const { ingredient = line.ingredient, amount = line.amount, isOut } = said.get(line.id) ?? {}
        if (isOut) return []
        const read = byId.get(line.id)
        const source = read?.source.trim()
        const kept = { ...line, ingredient, amount, ...(source && { source }) }
        if (read && isOpen(read, said))
          guessed.push(notConfirmedNote({ ...kept, stage: stage.name, source: read.source }))
        return [kept]
      }),
    }),
  )
  const kept = stages.filter((stage, at) => stage.lines.length > 0 || at === stages.length - 1)
  const names = new Set(kept.flatMap(stage => stage.lines.map(line => nameKey(line.ingredient))))
  return {
    ...formula,
    name: name.trim() || formula.name,
    note: [formula.note, ...guessed].filter(part => part !== '').join('\n'),
    stages: kept,
    meanings: formula.meanings.filter(({ ingredient }) => names.has(nameKey(ingredient))),
  }
}
