import { usualLeeway } from '../../dough/document/day.js'
import type { Stage, Step } from '../../dough/document/formula.js'
import { cellOf } from '../../dough/outline/names.js'
import type { LinePlan, StagePlan } from '../../dough/outline/outline.js'
import type { FigureSheet } from '../../dough/sheet/figures.js'
import { numberIn } from '../../dough/sheet/worked-out.js'
import { lengthOf, readStep, type StepRead, usualFridge } from '../method/step-text.js'
import type { Length } from '../method/step-time.js'
import { timeFactor } from '../temperature/growth.js'
import { type Feeding, feedFor, partsOfBuild, type Ripening, type SeedShares } from './feeding.js'
import type { FeedingProblem } from './feeding-words.js'

/** The step of a build in which it ripens: its last wait that says a time. */
export interface RipeningStep {
  readonly step: Step
  readonly read: StepRead
  readonly length: Length // minutes, as written
}

/** In which step a stage ripens; undefined where its method says no time. */
export function ripeningStep({ method = [] }: Stage): RipeningStep | undefined {
  const step = method.findLast(({ kind }) => kind === 'wait')
  const read = step && readStep(step.text)
  return read?.length ? { step: step!, read, length: read.length } : undefined
}

/** The stage's own ripening; where it names no temperature, that of the place at `celsius`. */
const ripeningOf = (stage: Stage, celsius: number): Ripening | undefined => {
  const ripening = ripeningStep(stage)
  return (
    ripening && {
      hours: ripening.length.usual / 60,
      celsius: ripening.read.celsius ?? (ripening.read.inFridge ? usualFridge : celsius),
    }
  )
}

/** Flour and water in a gram of what a line adds. */
const sharesIn =
  (sheet: FigureSheet) =>
  (line: LinePlan): SeedShares => {
    const of = (count: keyof SeedShares) =>
      (line.source ? numberIn(sheet.workedOut, cellOf.share(line.source, count)) : line.brings[count]) ?? 0
    return { flour: of('flour'), water: of('water') }
  }

/** A stage of a formula by its id. Throws RangeError where there is none. */
export function stageOf(sheet: FigureSheet, id: string): StagePlan {
  const plan = sheet.workedOut.outline.stages.find(({ stage }) => stage.id === id)
  if (!plan) throw new RangeError(`There is no stage ${id} in ${sheet.formula.name}.`)
  return plan
}

/** Whether a stage is fed: it ferments, and takes a seed with flour. */
export function isFed(plan: StagePlan): boolean {
  const { seed, flour } = partsOfBuild(plan)
  return !plan.isFinal && plan.ferments && seed.length > 0 && flour.length > 0
}

/**
 * Feeds a stage of a formula so that it is ripe after `hours` at a temperature in °C, as fast as its own method tells. It needs
 * no day. Throws RangeError for a stage that is not there.
 */
export function feedStage(
  sheet: FigureSheet,
  stage: string,
  hours: number,
  celsius: number,
): Feeding | FeedingProblem {
  const plan = stageOf(sheet, stage)
  const gramsOf = (line: string) => sheet.line(line).weight
  return feedFor(plan, hours, celsius, gramsOf, sharesIn(sheet), ripeningOf(plan.stage, celsius))
}

/** The builds that lead to a stage, each the seed of the next, the earliest first; the stage itself is the last. */
export function chainTo(sheet: FigureSheet, stage: string): StagePlan[] {
  const chain = [stageOf(sheet, stage)]
  for (let at = chain[0]!; ; at = chain[0]!) {
    const before = partsOfBuild(at).seed.flatMap(({ source }) => (source && isFed(source) ? [source] : []))
    if (before.length !== 1 || chain.includes(before[0]!)) return chain
    chain.unshift(before[0]!)
  }
}

/** Hours for each build of a chain that has so many in all: as they ripen now at a temperature in °C, longer or shorter alike. */
export function hoursInChain(
  sheet: FigureSheet,
  stages: readonly string[],
  hours: number,
  celsius: number,
): number[] {
  const now = stages.map(stage => {
    const fed = feedStage(sheet, stage, hours / stages.length, celsius)
    return 'code' in fed ? Number.NaN : fed.before.hours
  })
  const all = now.reduce((sum, one) => sum + one, 0)
  return now.map(one => (all > 0 ? (hours * one) / all : hours / now.length))
}

const roughly = 0.3 // where nothing is known of a levain's speed

/**
 * From when to when a build fed so is ripe, minutes: as far from the usual as its own step goes, and out by a tenth of what
 * its temperature moved the usual; where its method says no time ± 30 %. `leeway` is how far a wait of one time moves.
 */
export function ripeRange(stage: Stage, { hours, celsius }: Feeding, leeway = usualLeeway): Length {
  const usual = hours * 60
  const own = ripeningStep(stage)
  if (!own) return { least: usual * (1 - roughly), usual, most: usual * (1 + roughly) }
  const length = lengthOf(own.step, own.read, leeway)!
  const there = usual / timeFactor(own.read.celsius ?? celsius, celsius) // at the temperature it is written for
  const out = Math.abs(usual - there) / 10
  return {
    least: Math.max(0, (usual * length.least) / length.usual - out),
    usual,
    most: (usual * length.most) / length.usual + out,
  }
}
