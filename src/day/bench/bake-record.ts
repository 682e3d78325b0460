import type { Scale } from '../../dough/document/batch.js'
import type { Step } from '../../dough/document/formula.js'
import { nameKey } from '../../dough/document/formula.js'
import type { Larder } from '../../dough/document/larder.js'
import { openSheet } from '../../dough/sheet/sheet.js'
import { stagePlans } from '../method/stage-steps.js'
import type { Length } from '../method/step-time.js'
import { stepName } from '../method/words.js'
import type { Bake, FigureName } from './bake.js'
import { minutesOf } from './bake.js'
import { withSteps } from './bench-day.js'

/** A step of a bake. Instants: minutes since 1970, UTC; lengths: minutes. */
export interface StepRecord {
  readonly key: string // by which another bake of the bread has it too
  readonly id: string // of the step
  readonly stage: string
  readonly name: string
  readonly kind: Step['kind']
  readonly written: Length | undefined // by the formula as it stood
  readonly planned: number | undefined
  readonly at: number | undefined // when it began
  readonly took: number | undefined
}

/** A line of a bake: grams in its batch. */
export interface WeightRecord {
  readonly key: string
  readonly id: string // of the line
  readonly stage: string
  readonly ingredient: string
  readonly wanted: number | undefined
  readonly grams: number | undefined // that went in; undefined where nobody ticked it off
}

export interface FigureRecord {
  readonly key: string
  readonly what: FigureName
  readonly at: string // name of the step
  readonly value: number
}

/** What happened at a bake, stage by stage. */
export interface BakeRecord {
  readonly steps: readonly StepRecord[]
  readonly weights: readonly WeightRecord[]
  readonly figures: readonly FigureRecord[]
}

/** Keys that are told apart by how often a name has come before. */
class Keys {
  readonly #seen = new Map<string, number>()

  of(...names: readonly string[]): string {
    const key = names.map(nameKey).join(' / ')
    const count = (this.#seen.get(key) ?? 0) + 1
    this.#seen.set(key, count)
    return count === 1 ? key : `${key} ${count}`
  }
}

/** Puts together what is kept of a bake. */
export function bakeRecord(bake: Bake, larder: Larder, scale?: Scale): BakeRecord {
  const formula = withSteps(bake.formula)
  const plans = stagePlans(formula, 0)
  const kept = new Map(bake.moments.map(one => [one.moment, one]))
  const find = (moment: string) => kept.get(moment) ?? kept.get(`${moment} load 1`)
  const begins = (stage: string, step: string): string => `${bake.bread} ${stage} ${step}`
  const at = (moment: string): number | undefined => {
    const found = find(moment)?.at
    return found === undefined ? undefined : minutesOf(found)
  }
  /** When what a stage made was taken, by the first that takes it. */
  const taken = (stage: string): number | undefined => {
    const all = plans.flatMap(plan =>
      plan.takes.flatMap(({ from, step }) => {
        const by = plan.steps[step]
        return from === stage && by ? (at(begins(plan.stage.id, by.step.id)) ?? []) : []
      }),
    )
    return all.length ? Math.min(...all) : undefined
  }
  const keys = new Keys()
  const steps = plans.flatMap(({ stage, steps: all }) =>
    all.map(({ step, length }, i): StepRecord => {
      const moment = begins(stage.id, step.id)
      const next = all[i + 1]
      const end = next
        ? at(begins(stage.id, next.step.id))
        : (at(`${bake.bread} ${stage.id} done`) ?? taken(stage.id))
      const begun = at(moment)
      const planned = find(moment)?.planned
      return {
        key: keys.of(stage.name, stepName(step)),
        id: step.id,
        stage: stage.name,
        name: stepName(step),
        kind: step.kind,
        written: length,
        planned: planned === undefined ? undefined : minutesOf(planned),
        at: begun,
        took: begun === undefined || end === undefined ? undefined : end - begun,
      }
    }),
  )
  const sheet = openSheet(bake.formula, larder, scale)
  const lineKeys = new Keys()
  const weights = bake.formula.stages.flatMap(stage =>
    stage.lines
      .filter(({ ingredient }) => ingredient)
      .map(({ id, ingredient }): WeightRecord => {
        const weighed = bake.weighed.find(one => one.line === id)
        return {
          key: lineKeys.of(stage.name, ingredient),
          id,
          stage: stage.name,
          ingredient,
          wanted: weighed?.wanted ?? sheet.weighed(id)?.grams ?? sheet.line(id).batch,
          grams: weighed?.grams,
        }
      }),
  )
  const nameOf = (moment: string): string =>
    plans.flatMap(plan => plan.steps.filter(({ step }) => moment.includes(step.id)))[0]?.step.does ?? ''
  const figureKeys = new Keys()
  const figures = bake.figures.map(
    ({ moment, what, value }): FigureRecord => ({
      key: figureKeys.of(what, nameOf(moment)),
      what,
      at: nameOf(moment),
      value,
    }),
  )
  return { steps, weights, figures }
}

/** Of one bake and another, what each has of the same thing. */
export const beside = <T extends { readonly key: string }>(
  left: readonly T[],
  right: readonly T[],
): readonly (readonly [left: T | undefined, right: T | undefined])[] => {
  const there = new Map(right.map(one => [one.key, one]))
  const here = new Set(left.map(({ key }) => key))
  return [
    ...left.map(one => [one, there.get(one.key)] as const),
    ...right.filter(({ key }) => !here.has(key)).map(one => [undefined, one] as const),
  ]
}
