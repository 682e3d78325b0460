import '../../dough/cells/rare-cells-at-once.js'
import { doughForPieces } from '../../dough/document/batch.js'
import type { Day } from '../../dough/document/day.js'
import { type Formula, finalDoughOf, nameKey, type Stage, type Step } from '../../dough/document/formula.js'
import type { Larder } from '../../dough/document/larder.js'
import type { Workbook } from '../../dough/document/workbook.js'
import { newDay } from '../../dough/edits/fetched/day-edits.js'
import type { StagePlan } from '../../dough/outline/outline.js'
import type { FigureSheet } from '../../dough/sheet/figures.js'
import { openSheet } from '../../dough/sheet/sheet.js'
import type { Bake, FigureName } from '../bench/bake.js'
import { formulaAsBaked } from '../bench/bake-formula.js'
import { type BakeRecord, bakedWith, bakeRecord } from '../bench/bake-record.js'
import { standingOf } from '../course/waits.js'
import { readStep } from '../method/step-text.js'
import { isFed, ripeningStep } from '../mixing/fed-build.js'
import { partsOfBuild } from '../mixing/feeding.js'
import { mixedIn, mixingOf } from '../mixing/mixing.js'
import { speedOf, timeFactor } from '../temperature/growth.js'

/**
 * What can be learnt, each by a name of its own: the rise that mixing makes in °C, what is lost in baking and on the way before it as
 * fractions of 1, how slow a levain is (f), and how many times its written time a wait takes.
 */
export const lessonOf = {
  rise: (formula: string, stage: Pick<Stage, 'name'>): string => `rise ${formula} ${nameKey(stage.name)}`,
  bakeLoss: (formula: string): string => `bakeLoss ${formula}`,
  loss: (formula: string): string => `loss ${formula}`,
  /** One of the same name, of the same flours, is the same in every formula. */
  speed: (stage: Pick<Stage, 'name'>, flours: readonly string[]): string =>
    `speed ${nameKey(stage.name)}: ${[...new Set(flours.map(nameKey))].sort().join(', ')}`,
  wait: (formula: string, stage: Pick<Stage, 'name'>, step: Pick<Step, 'does'>, count = 1): string =>
    `wait ${formula} ${nameKey(stage.name)} ${nameKey(step.does)} ${count}`,
}

/** The name of a wait's lesson: of several steps called alike in a stage, each has its own. */
export function waitLesson(formula: string, stage: Stage, step: Step): string {
  const alike = (stage.method ?? []).filter(({ does }) => nameKey(does) === nameKey(step.does))
  return lessonOf.wait(formula, stage, step, alike.findIndex(({ id }) => id === step.id) + 1)
}

/** The name of a levain's lesson; undefined for a stage that is not fed. */
export function speedLesson(sheet: FigureSheet, stage: string): string | undefined {
  const plan = sheet.workedOut.outline.stages.find(one => one.stage.id === stage)
  if (!plan || !isFed(plan)) return undefined
  return lessonOf.speed(
    plan.stage,
    partsOfBuild(plan).flour.map(({ line }) => line.ingredient),
  )
}

/** What one bake tells. */
export type Lessons = ReadonlyMap<string, number>

/** What is known of the place of a bake. */
interface Told {
  readonly bake: Bake
  readonly record: BakeRecord
  readonly sheet: FigureSheet // as it was baked
  readonly day: Day | undefined // it was baked on
}

/** The moments of a stage's steps, whosever bread named them. */
const isAt = (moment: string, { id }: Pick<Step, 'id'>): boolean => moment.split(' ').includes(id)

/** Whether a stage was made under this bread's own name; made with another's, it is that one's to tell of. */
const isOwn = ({ bread, moments }: Bake, { id }: Stage): boolean =>
  moments.some(({ moment, at }) => at !== undefined && moment.startsWith(`${bread} ${id} `))

/** A figure measured at a step; several are taken together. */
function figureAt({ figures }: Bake, what: FigureName, step: Step): number | undefined {
  return mean(figures.filter(one => one.what === what && isAt(one.moment, step)))
}

/** A figure of a bake, wherever it was measured. */
export const figureOf = ({ figures }: Bake, what: FigureName): number | undefined =>
  mean(figures.filter(one => one.what === what))

const mean = (all: readonly { readonly value: number }[]): number | undefined =>
  all.length ? all.reduce((sum, { value }) => sum + value, 0) / all.length : undefined

/** Reads what a bake tells; `workbook` has the day it was baked on and the bakes of that day. */
export function lessonsOf(bake: Bake, workbook: Workbook, larder: Larder, all: readonly Bake[]): Lessons {
  const record = bakeRecord(bake, larder, workbook.scale, bakedWith(bake, all))
  const sheet = openSheet(formulaAsBaked(bake, record), larder, workbook.scale)
  const told = { bake, record, sheet, day: workbook.days?.find(({ id }) => id === bake.day) }
  return new Map([...risesOf(told), ...lossesOf(told), ...speedsOf(told), ...waitsOf(told)])
}

type Lesson = readonly [name: string, value: number]

/** How much warmer each dough was than its parts, water and dough being measured, and the room, the flour or the day known. */
function risesOf({ bake, sheet, day }: Told): Lesson[] {
  return sheet.workedOut.outline.stages.flatMap((plan): Lesson[] => {
    const mixed = mixedIn(plan)
    const step = plan.stage.method?.find(({ id }) => id === mixed?.step)
    if (!mixed) return []
    // What was written down afterwards is of the bread's own dough.
    const of = (what: FigureName) =>
      step && bake.moments.some(({ at }) => at !== undefined)
        ? figureAt(bake, what, step)
        : plan.isFinal
          ? figureOf(bake, what)
          : undefined
    const [water, dough, room, flour] = [of('water'), of('dough'), of('room'), of('flour')]
    if (water === undefined || dough === undefined) return []
    if (room === undefined && flour === undefined && !day) return []
    const known = day ?? newDay({ name: '', date: bake.at.slice(0, 10), zone: bake.zone })
    const kitchen = room ?? (day ? day.kitchen : flour!)
    const flours = plan.lines.filter(({ countsAs }) => countsAs?.kind === 'flour')
    const lines = flour === undefined ? [] : flours.map(({ line }) => ({ line: line.id, celsius: flour }))
    const mix = { bread: bake.bread, stage: plan.stage.id, rise: 0, water, room: kitchen, lines }
    const without = mixingOf({ ...known, kitchen, mixes: [mix] }, bake.bread, plan.stage.id, sheet)?.dough
    return without === undefined ? [] : [[lessonOf.rise(bake.formula.id, plan.stage), dough - without]]
  })
}

const mostLost = 0.6 // of a weight: more is a slip of the pen

/** What was lost in baking, and before it: from the mixed dough to the pieces. */
function lossesOf({ bake, record }: Told): Lesson[] {
  const { batch, id } = bake.formula
  const pieces = batch?.make === 'pieces' ? batch.pieces : []
  const [piece] = pieces.length === 1 ? pieces : []
  const [raw, baked] = [figureOf(bake, 'raw'), figureOf(bake, 'baked')]
  const before = raw ?? piece?.weight
  const lessons: Lesson[] = []
  const tell = (name: string, loss: number) => {
    if (Math.abs(loss) < mostLost) lessons.push([name, loss])
  }
  if (before && baked) tell(lessonOf.bakeLoss(id), 1 - baked / before)
  const count = batch && 'pieces' in batch && batch.pieces.length === 1 ? batch.pieces[0]!.count : 0
  const dough = doughOf(bake.formula, record)
  if (raw && count && dough) tell(lessonOf.loss(id), 1 - (count * raw) / dough)
  return lessons
}

/** What the final dough weighed, grams: what really went in, and where nobody said so what was to. */
function doughOf(formula: Formula, { weights }: BakeRecord): number | undefined {
  const ids = new Set(finalDoughOf(formula).lines.map(({ id }) => id))
  const own = weights.filter(({ id }) => ids.has(id)).map(({ grams, wanted }) => grams ?? wanted)
  if (own.length === 0 || own.includes(undefined)) {
    const { batch } = formula
    return batch && 'pieces' in batch ? doughForPieces(batch) : undefined
  }
  return own.reduce<number>((sum, one) => sum + one!, 0)
}

/** How warm it was where a step stood: measured there, at any step of its stage, or as the day has it. */
function warmthAt({ bake, day }: Told, { method = [] }: Stage, step: Step): number | undefined {
  const read = readStep(step.text)
  const standing = day && (day[standingOf(read, day)] ?? day.kitchen)
  if (read.inFridge || (read.celsius !== undefined && read.celsius <= coldest))
    return standing ?? read.celsius
  const nearest = figureAt(bake, 'dough', step) ?? figureAt(bake, 'room', step)
  const others = method.flatMap(one => figureAt(bake, 'dough', one) ?? figureAt(bake, 'room', one) ?? [])
  return nearest ?? others[0] ?? standing ?? read.celsius
}

const coldest = 10 // °C: up to this a wait stands in the fridge, whatever the room has

/** How slow each levain was that ripened until it was taken. */
function speedsOf(told: Told): Lesson[] {
  const { sheet, record } = told
  return sheet.workedOut.outline.stages.flatMap((plan): Lesson[] => {
    const name = isOwn(told.bake, plan.stage) ? speedLesson(sheet, plan.stage.id) : undefined
    const step = name === undefined ? undefined : ripeningOf(told.bake.formula, plan.stage.id)
    const took = record.steps.find(({ id }) => id === step?.id)?.took
    const dilution = dilutionOf(sheet, plan)
    const celsius = step && warmthAt(told, plan.stage, step)
    if (name === undefined || !took || celsius === undefined) return []
    const speed = speedOf(took / 60, dilution, celsius)
    return Number.isFinite(speed) && speed > 0 ? [[name, speed]] : []
  })
}

/** (Seed + flour + water) ÷ seed of a build, by weight. */
export function dilutionOf(sheet: FigureSheet, plan: StagePlan): number {
  const { seed, flour, water } = partsOfBuild(plan)
  const grams = (lines: typeof seed) =>
    lines.reduce((sum, { line }) => sum + (sheet.line(line.id).weight ?? Number.NaN), 0)
  return grams([...seed, ...flour, ...water]) / grams(seed)
}

const ripeningOf = (formula: Formula, stage: string): Step | undefined => {
  const own = formula.stages.find(({ id }) => id === stage)
  return own && ripeningStep(own)?.step
}

/** How many times its written time each wait took, brought to the temperature it is written for. */
function waitsOf(told: Told): Lesson[] {
  const { bake, record, sheet } = told
  const took = new Map(record.steps.map(step => [step.id, step]))
  return bake.formula.stages.flatMap(stage => {
    if (!isOwn(bake, stage)) return []
    const ripening = speedLesson(sheet, stage.id) && ripeningStep(stage)?.step
    return (stage.method ?? []).flatMap((step): Lesson[] => {
      const { took: minutes, written } = took.get(step.id) ?? {}
      if (step.kind !== 'wait' || step === ripening || !minutes || !written?.usual) return []
      const { celsius } = readStep(step.text)
      const real = celsius === undefined ? undefined : warmthAt(told, stage, step)
      const factor = celsius === undefined || real === undefined ? 1 : timeFactor(celsius, real)
      const times = minutes / (written.usual * factor)
      return Number.isFinite(times) && times > 0 ? [[waitLesson(bake.formula.id, stage, step), times]] : []
    })
  })
}
