import { type Formula, nameKey, type Stage, type Step } from '../../../src/dough/document/formula.js'
import { withAddedName } from '../../../src/dough/document/step-names.js'
import type { RecipeLine, RecipeStep } from '../../../src/exchange/index.js'
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

/** What a baker said of a step that was read from a recipe's method. */
export interface StepSaid extends Partial<Pick<Step, 'does' | 'kind' | 'text'>> {
  readonly isOut?: boolean // it is not to be added
  readonly isRight?: boolean // what was guessed of it is confirmed
}

/** By the id of the step. */
export type StepsSaid = ReadonlyMap<string, StepSaid>

export const stepAsSaid = (step: Step, said: StepsSaid): Step => {
  const { does = step.does, kind = step.kind, text = step.text } = said.get(step.id) ?? {}
  return { ...step, does, kind, text }
}

/** Is something of the step still to be said? */
export const isStepOpen = ({ stepId, guesses }: RecipeStep, said: StepsSaid): boolean => {
  const { isRight, isOut } = said.get(stepId) ?? {}
  return guesses.length > 0 && !isRight && !isOut
}

/**
 * The method of a stage with what the baker said of it: lines that were called otherwise are so in its steps, and a step
 * with a guess nobody confirmed keeps the recipe's words.
 */
function methodAsSaid(
  { lines, method = [] }: Stage,
  read: readonly RecipeStep[],
  ofSteps: StepsSaid,
  ofLines: RecipeSaid,
): Step[] {
  const byId = new Map(read.map(step => [step.stepId, step]))
  const renamed = lines.flatMap(({ id, ingredient }) => {
    const { ingredient: now = ingredient } = ofLines.get(id) ?? {}
    return now === ingredient ? [] : [[ingredient, now] as const]
  })
  return method.flatMap(asRead => {
    if (ofSteps.get(asRead.id)?.isOut) return []
    const step = stepAsSaid(asRead, ofSteps)
    const text = renamed.reduce((words, [from, to]) => withAddedName(words, from, to), step.text)
    const words = byId.get(step.id)
    const note = step.note || (words && isStepOpen(words, ofSteps) ? words.source : '')
    return [{ ...step, text, note }]
  })
}

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
  steps: readonly RecipeStep[] = [],
  ofSteps: StepsSaid = new Map(),
): Formula {
  const byId = new Map(lines.map(line => [line.id, line]))
  const guessed: string[] = []
  const stages = formula.stages.map((stage): Stage => {
    const { method: _asRead, ...rest } = stage
    const method = methodAsSaid(stage, steps, ofSteps, said)
    return {
      ...rest,
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
      ...(method.length && { method }),
    }
  })
  const kept = stages.filter(
    (stage, at) => stage.lines.length > 0 || stage.method?.length || at === stages.length - 1,
  )
  const names = new Set(kept.flatMap(stage => stage.lines.map(line => nameKey(line.ingredient))))
  return {
    ...formula,
    name: name.trim() || formula.name,
    note: [formula.note, ...guessed].filter(part => part !== '').join('\n'),
    stages: kept,
    meanings: formula.meanings.filter(({ ingredient }) => names.has(nameKey(ingredient))),
  }
}
