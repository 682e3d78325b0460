import { isPerishable } from '../../dough/about/allergens.js'
import { nameKey } from '../../dough/document/formula.js'
import type { FigureSheet } from '../../dough/sheet/figures.js'
import { type StagePlan, type StepPlan, stagePlans } from './stage-steps.js'
import { usualFridge } from './step-text.js'
import { methodCaution } from './words.js'

/** Something in a method to keep in mind at the bench. */
export type MethodCaution = ReturnType<typeof methodCaution>

/** °C above which a levain is too warm: at 35 the yeasts of a sourdough no longer grow. */
export const warmestStarter = 35

// The public rule for perishable food: no more than 2 h in all between 4 and 60 °C, no more than 1 h above 32 °C.
const [coldest, hottest, hot] = [usualFridge, 60, 32]
const mostMinutes = { warm: 120, hot: 60 } as const

/** Minutes that something has stood between 4 and 60 °C, and of them above 32 °C. */
interface Stood {
  readonly warm: number
  readonly hot: number
}

const nothing: Stood = { warm: 0, hot: 0 }

/** How long a step takes and how warm it stands, °C; where that is not known, it stands in the room. */
export interface StepStanding {
  readonly minutes: number
  readonly celsius: number | undefined
}

/** Steps as they are planned, by their ids; those that are not there are taken as they are written. */
export type StandingOf = (step: string) => StepStanding | undefined

const asWritten = ({ read }: StepPlan): StepStanding => ({
  minutes: read.length?.usual ?? 0,
  celsius: read.inFridge ? usualFridge : read.celsius,
})

function warmIn({ step }: StepPlan, { minutes, celsius }: StepStanding): Stood {
  const isCold = celsius !== undefined && (celsius <= coldest || celsius >= hottest)
  if (step.kind === 'bake' || isCold) return nothing
  return { warm: minutes, hot: celsius !== undefined && celsius > hot ? minutes : 0 }
}

/** What something that goes in at a step has stood when its stage is done, or goes into the oven. */
function stoodFrom(steps: readonly StepPlan[], from: number, before: Stood, standing: StandingOf): Stood {
  const oven = steps.findIndex(({ step }) => step.kind === 'bake')
  return steps
    .slice(from, oven < 0 ? undefined : oven)
    .map(plan => warmIn(plan, standing(plan.step.id) ?? asWritten(plan)))
    .reduce((sum, { warm, hot }) => ({ warm: sum.warm + warm, hot: sum.hot + hot }), before)
}

const longer = (a: Stood, b: Stood): Stood => ({
  warm: Math.max(a.warm, b.warm),
  hot: Math.max(a.hot, b.hot),
})

/** What of each stage has stood longest of all that is perishable in it, earlier stages counted; undefined where nothing is. */
function perishableIn(
  sheet: FigureSheet,
  stages: readonly StagePlan[],
  standing: StandingOf,
): Map<string, Stood | undefined> {
  const stood = new Map<string, Stood | undefined>()
  const stageNames = new Set(sheet.formula.stages.map(({ name }) => nameKey(name)))
  const of = (plan: StagePlan): Stood | undefined => {
    const { stage, steps, takes } = plan
    if (stood.has(stage.id)) return stood.get(stage.id)
    stood.set(stage.id, undefined) // while a stage that is made of itself is looked at
    const taken = takes.flatMap(({ from, step }) => {
      const before = of(stages.find(other => other.stage.id === from)!)
      return before ? [stoodFrom(steps, step, before, standing)] : []
    })
    const own = stage.lines
      .filter(
        ({ ingredient }) =>
          !stageNames.has(nameKey(ingredient)) && isPerishable(sheet.larder.find(ingredient)),
      )
      .map(line => {
        const at = steps.findIndex(({ lines }) => lines.includes(line))
        return stoodFrom(steps, Math.max(0, at), nothing, standing)
      })
    const all = [...taken, ...own]
    const longest = all.length > 0 ? all.reduce(longer) : undefined
    stood.set(stage.id, longest)
    return longest
  }
  for (const plan of stages) of(plan)
  return stood
}

/** Ids of the stages in which a starter works: those that hold one, and those that take such a stage. */
function withStarter(sheet: FigureSheet, stages: readonly StagePlan[]): Set<string> {
  const found = new Set<string>()
  for (const { stage, takes } of stages)
    if (
      stage.lines.some(({ id }) => sheet.line(id).is === 'starter') ||
      takes.some(({ from }) => found.has(from))
    )
      found.add(stage.id)
  return found
}

/**
 * What the method of a formula gives cause to mind: a wait in which a starter is too warm, and milk or egg that stands
 * longer in the warm than the public rule for perishable food has it, all stages and steps counted at their usual times, or
 * as `planned` has them.
 */
export function methodCautions(sheet: FigureSheet, planned?: StandingOf): readonly MethodCaution[] {
  const { formula } = sheet
  if (!formula.stages.some(({ method }) => method?.length)) return []
  const stages = stagePlans(formula, 0)
  const standing = planned ?? (() => undefined)
  const by = planned ? 'plan' : 'method'
  const cautions: MethodCaution[] = []
  const starters = withStarter(sheet, stages)
  for (const { stage, steps } of stages)
    for (const plan of steps) {
      const { step } = plan
      const { celsius } = standing(step.id) ?? asWritten(plan)
      if (step.kind === 'wait' && celsius !== undefined && celsius > warmestStarter && starters.has(stage.id))
        cautions.push(methodCaution({ code: 'starterTooWarm', step, stage: stage.name, celsius }))
    }
  const taken = new Set(stages.flatMap(({ takes }) => takes.map(({ from }) => from)))
  const perishable = perishableIn(sheet, stages, standing)
  for (const { stage } of stages.filter(plan => !taken.has(plan.stage.id))) {
    const stood = perishable.get(stage.id) ?? nothing
    if (stood.warm > mostMinutes.warm)
      cautions.push(methodCaution({ code: 'perishableWarm', by, stage: stage.name, minutes: stood.warm }))
    if (stood.hot > mostMinutes.hot)
      cautions.push(methodCaution({ code: 'perishableHot', by, stage: stage.name, minutes: stood.hot }))
  }
  return cautions
}
