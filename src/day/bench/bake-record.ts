import type { Scale } from '../../dough/document/batch.js'
import type { Step } from '../../dough/document/formula.js'
import { nameKey, type Stage, sameName } from '../../dough/document/formula.js'
import type { Larder } from '../../dough/document/larder.js'
import { openSheet } from '../../dough/sheet/sheet.js'
import { stagePlans } from '../method/stage-steps.js'
import type { Length } from '../method/step-time.js'
import { stepName } from '../method/words.js'
import type { Bake, BakeMoment, BakeWeight, FigureName } from './bake.js'
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
  readonly stage: string
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

/** Where what was done about a stage is kept: under its own names, or those of the bread that it was made with. */
interface KeptAs {
  readonly bake: Bake
  readonly stage: Stage
}

/** The bakes of the same day that a bake shares stages with. */
export const bakedWith = ({ id, day }: Bake, all: readonly Bake[]): Bake[] =>
  day === undefined ? [] : all.filter(one => one.day === day && one.id !== id)

function keptAs(bake: Bake, own: Stage, others: readonly Bake[]): KeptAs {
  const isNoted = ({ bread }: Bake, { id }: Stage) =>
    bake.moments.some(({ moment }) => moment.startsWith(`${bread} ${id} `))
  const mine = { bake, stage: own }
  if (isNoted(bake, own)) return mine
  for (const other of others) {
    const stage = withSteps(other.formula).stages.find(one => sameName(one.name, own.name))
    if (stage && isNoted(other, stage)) return { bake: other, stage }
  }
  return mine
}

/** Puts together what is kept of a bake; `others` are those of its day, of which one may have the times of a stage made for both. */
export function bakeRecord(
  bake: Bake,
  larder: Larder,
  scale?: Scale,
  others: readonly Bake[] = [],
): BakeRecord {
  const formula = withSteps(bake.formula)
  const plans = stagePlans(formula, 0)
  const places = new Map(
    plans.map(({ stage, isFinal }) => [stage.id, keptAs(bake, stage, isFinal ? [] : others)]),
  )
  const kept = new Map<string, BakeMoment>()
  for (const { moments } of [...others, bake])
    for (const one of moments) kept.set(one.moment, { ...kept.get(one.moment), ...one })
  const find = (moment: string) => kept.get(moment) ?? kept.get(`${moment} load 1`)
  /** The beginning of a step; of a stage made with another bread's, the one of that name, or at that place. */
  const begins = (stage: string, step: string): string => {
    const place = places.get(stage)!
    if (place.bake === bake) return `${bake.bread} ${stage} ${step}`
    const own = plans.find(plan => plan.stage.id === stage)!.steps.map(({ step: one }) => one)
    const at = own.findIndex(({ id }) => id === step)
    const there = place.stage.method ?? []
    const alike = there.find(one => own[at] && sameName(stepName(one), stepName(own[at]))) ?? there[at]
    return `${place.bake.bread} ${place.stage.id} ${alike?.id ?? ''}`
  }
  const at = (moment: string): number | undefined => {
    const found = find(moment)?.at
    return found === undefined ? undefined : minutesOf(found)
  }
  const isDone = (stage: string): number | undefined => {
    const { bake: by, stage: as } = places.get(stage)!
    return at(`${by.bread} ${as.id} done`)
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
      const end = next ? at(begins(stage.id, next.step.id)) : (isDone(stage.id) ?? taken(stage.id))
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
  const isShared = ({ moment, line }: BakeWeight): boolean =>
    others.some(({ weighed }) => weighed.some(one => one.moment === moment && one.line === line))
  const weights = bake.formula.stages.flatMap(stage => {
    const place = places.get(stage.id)!
    return stage.lines
      .filter(({ ingredient }) => ingredient)
      .map(({ id, ingredient }): WeightRecord => {
        const line = place.stage.lines.find(one =>
          place.bake === bake ? one.id === id : sameName(one.ingredient, ingredient),
        )
        const weighed = bake.weighed.find(one => one.line === line?.id)
        const own = sheet.weighed(id)?.grams ?? sheet.line(id).batch
        // Weighed for several breads at once: each has its part of it.
        const part =
          weighed && isShared(weighed) && own !== undefined && weighed.wanted ? own / weighed.wanted : 1
        return {
          key: lineKeys.of(stage.name, ingredient),
          id,
          stage: stage.name,
          ingredient,
          wanted: weighed?.wanted === undefined ? own : weighed.wanted * part,
          grams: weighed?.grams === undefined ? undefined : weighed.grams * part,
        }
      })
  })
  const named = [formula, ...others.map(one => one.formula)].flatMap(({ stages }) =>
    stages.flatMap(stage => (stage.method ?? []).map(step => ({ stage, step }))),
  )
  const placeOf = (moment: string) => named.find(({ step }) => moment.split(' ').includes(step.id))
  const figureKeys = new Keys()
  const figures = bake.figures.map(({ moment, what, value }): FigureRecord => {
    const { step, stage } = placeOf(moment) ?? {}
    const [at, of] = [step?.does ?? '', stage?.name ?? '']
    return { key: figureKeys.of(what, of, at), what, at, stage: of, value }
  })
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
