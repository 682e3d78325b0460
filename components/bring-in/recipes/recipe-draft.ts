import {
  type Formula,
  type Line,
  nameKey,
  type Stage,
  type Step,
} from '../../../src/dough/document/formula.js'
import { methodFollowing } from '../../../src/dough/document/step-names.js'
import { unconfirmedNote } from '../../../src/dough/document/words.js'
import type { RecipeLine, RecipeStep } from '../../../src/exchange/index.js'

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

const stepAsSaid = (step: Step, said: StepsSaid): Step => {
  const { does = step.does, kind = step.kind, text = step.text } = said.get(step.id) ?? {}
  return { ...step, does, kind, text }
}

/** Is something of the step still to be said? */
export const isStepOpen = ({ stepId, guesses }: RecipeStep, said: StepsSaid): boolean => {
  const { isRight, isOut } = said.get(stepId) ?? {}
  return guesses.length > 0 && !isRight && !isOut
}

/** A line as the baker said it; undefined where it is left out. */
function lineAsSaid(line: Line, said: RecipeSaid): Line | undefined {
  const { ingredient = line.ingredient, amount = line.amount, isOut } = said.get(line.id) ?? {}
  return isOut ? undefined : { ...line, ingredient, amount }
}

/** The method of a stage as it is shown: with what was said of it and of its lines, also the steps that are left out. */
export function methodShown(stage: Stage, ofSteps: StepsSaid, ofLines: RecipeSaid): readonly Step[] {
  const method = stage.method?.map(step => stepAsSaid(step, ofSteps)) ?? []
  const lines = stage.lines.flatMap(line => lineAsSaid(line, ofLines) ?? [])
  return methodFollowing({ ...stage, method }, lines).method
}

/**
 * The method of a stage with what the baker said of it, and of its lines, which are `lines` now: what is called otherwise is
 * so in its steps, what is left out in none. A step with a guess nobody confirmed keeps the recipe's words.
 */
function methodAsSaid(
  stage: Stage,
  read: readonly RecipeStep[],
  ofSteps: StepsSaid,
  lines: readonly Line[],
): Step[] {
  const byId = new Map(read.map(step => [step.stepId, step]))
  const said = (stage.method ?? []).flatMap(step =>
    ofSteps.get(step.id)?.isOut ? [] : [stepAsSaid(step, ofSteps)],
  )
  return methodFollowing({ ...stage, method: said }, lines).method.map(step => {
    const words = byId.get(step.id)
    const note = step.note || (words && isStepOpen(words, ofSteps) ? words.source : '')
    return { ...step, note }
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

/** The formula of a recipe with what the baker said of it: its lines keep their words, and say in their notes which guesses nobody confirmed. */
export function recipeFormula(
  formula: Formula,
  lines: readonly RecipeLine[],
  said: RecipeSaid,
  name: string,
  steps: readonly RecipeStep[] = [],
  ofSteps: StepsSaid = new Map(),
): Formula {
  const byId = new Map(lines.map(line => [line.id, line]))
  const stages = formula.stages.map((stage): Stage => {
    const { method: _asRead, ...rest } = stage
    const lines = stage.lines.flatMap((asRead): Line[] => {
      const line = lineAsSaid(asRead, said)
      if (!line) return []
      const read = byId.get(line.id)
      const source = read?.source.trim()
      const note = read && isOpen(read, said) ? unconfirmedNote(line.note, read.source) : line.note
      return [{ ...line, note, ...(source && { source }) }]
    })
    const method = methodAsSaid(stage, steps, ofSteps, lines)
    return { ...rest, lines, ...(method.length && { method }) }
  })
  const kept = stages.filter(
    (stage, at) => stage.lines.length > 0 || stage.method?.length || at === stages.length - 1,
  )
  const names = new Set(kept.flatMap(stage => stage.lines.map(line => nameKey(line.ingredient))))
  return {
    ...formula,
    name: name.trim() || formula.name,
    stages: kept,
    meanings: formula.meanings.filter(({ ingredient }) => names.has(nameKey(ingredient))),
  }
}
