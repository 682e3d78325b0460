import type { Worded } from '../../engine/index.js'
import { type Amount, type AmountProblem, type Dimensions, readAmount } from '../amounts/amounts.js'
import { dimensionsOf, type JottingPlan, planJottings } from '../amounts/jottings.js'
import {
  type CountsAs,
  type Formula,
  type Hold,
  isInProportion,
  type Line,
  nameKey,
  type Stage,
} from '../document/formula.js'
import type { Ingredient, Larder } from '../document/larder.js'
import { tooLarge } from './too-large.js'
import { type OutlineDiagnostic, outlineProblem } from './words.js'

/** What is counted through the stages, per gram of an ingredient or of a stage. */
export const counts = [
  'flour',
  'water',
  'salt',
  'prefermented',
  'moisture',
  'soaked', // water that soakers carry
  'fat',
  'sugar',
  'egg',
  'milk',
] as const
export type Count = (typeof counts)[number]
/** A count, or the weight of one ingredient through all stages by its key. */
export type Counted = Count | `all ${string}`
export type Brings = Readonly<Partial<Record<Count, number>>> // gram a gram; left out: 0

/** An amount that is not understood, or not worked out. */
export type AmountUnread = Omit<AmountProblem, 'problem'> & { readonly problem: Worded }

/** A line with what it stands for. */
export interface LinePlan {
  readonly line: Line
  readonly stage: StagePlan
  readonly amount: Amount | AmountUnread | undefined // undefined: nothing typed
  readonly source: StagePlan | undefined // the stage it takes, if it is one
  readonly ingredient: Ingredient | undefined // as the larder has it
  readonly countsAs: CountsAs | undefined // undefined: a stage, or unknown
  readonly brings: Brings // of an ingredient; a stage brings its shares
  readonly gives: Hold | undefined // the hold for which its weight is solved
}

/** A stage with what follows from its lines alone. */
export interface StagePlan {
  readonly stage: Stage
  readonly isFinal: boolean
  readonly lines: readonly LinePlan[]
  readonly base: readonly LinePlan[] // the lines that are 100 % together
  readonly baseIsFlour: boolean
  readonly takenBy: readonly LinePlan[] // lines of other stages that take this one
  readonly ferments: boolean
  readonly circle: Worded<OutlineDiagnostic> | undefined // when it is made of itself
}

/** A formula with its names resolved: who takes what, what each line brings, what ferments. */
export interface Outline {
  readonly formula: Formula
  readonly larder: Larder
  readonly stages: readonly StagePlan[]
  readonly final: StagePlan
  readonly giving: readonly LinePlan[] // lines of the final dough whose weight is solved for a hold
  readonly doughWeight: number | undefined // grams that the dough is held at while every line gives in proportion
  readonly jottings: ReadonlyMap<string, JottingPlan> // by the name amounts use
  readonly counted: readonly Counted[] // the counts, and the ingredients whose whole-dough share is held
  readonly tooMuch: Worded<OutlineDiagnostic> | undefined // why it is not worked out
  stageNamed(name: string): StagePlan | undefined
}

/** Lines of one key are of one ingredient, whatever name they use. */
export const ingredientKey = (line: LinePlan): string => line.ingredient?.id ?? nameKey(line.line.ingredient)

/** What a gram of the line's own ingredient brings; nothing for a stage. */
export function lineBrings(line: LinePlan, count: Counted): number {
  if (!count.startsWith('all ')) return line.brings[count as Count] ?? 0
  return !line.source && line.line.ingredient && count === `all ${ingredientKey(line)}` ? 1 : 0
}

/** Whether a stage is a soaker: it does not ferment, and what it is made of is no flour. */
export const isSoaker = ({ ferments, baseIsFlour, isFinal }: StagePlan): boolean =>
  !ferments && !baseIsFlour && !isFinal

/** What of an earlier stage a line that takes it carries of a count: all flour of one that ferments is prefermented. */
export const carriedAs = <C extends Counted>(source: StagePlan, count: C): C | 'flour' | 'water' =>
  count === 'prefermented' && source.ferments
    ? 'flour'
    : count === 'soaked' && isSoaker(source)
      ? 'water'
      : count

type Open<T> = { -readonly [K in keyof T]: T[K] }

/** What a gram brings. A flour's own moisture is left out, as the trade does; so is the fat and sugar of flour. */
export function bringsOf(countsAs: CountsAs, ingredient: Ingredient | undefined): Brings {
  switch (countsAs.kind) {
    case 'flour':
      return { flour: 1 }
    case 'water':
      return { water: 1, moisture: 1 }
    case 'salt':
      return { salt: 1 }
    case 'starter': {
      const flour = 1 / (1 + countsAs.hydration)
      const water = countsAs.hydration / (1 + countsAs.hydration)
      return { flour, water, prefermented: flour, moisture: water }
    }
    case 'other': {
      if (!ingredient) return {}
      const { moisture, fat, sugar, salt, kind } = ingredient
      const egg = kind === 'egg' ? 1 : 0
      const milk = kind === 'dairy' ? 1 : 0
      const all = { moisture, fat, sugar, salt, egg, milk }
      return Object.fromEntries(Object.entries(all).filter(([, value]) => value !== 0))
    }
  }
}

/** The names by which an amount can count its line: `3 eggs`. */
export const namesOf = ({ ingredient: name }: Line, known: Ingredient | undefined): readonly string[] =>
  known ? [name, ...known.otherNames] : [name]

function planLine(
  line: Line,
  stage: StagePlan,
  source: StagePlan | undefined,
  holds: ReadonlyMap<string, Hold>,
  meanings: ReadonlyMap<string, CountsAs>,
  larder: Larder,
  dimensions: Dimensions,
): LinePlan {
  const ingredient = source ? undefined : larder.find(line.ingredient)
  const amount = readAmount(line.amount, dimensions, namesOf(line, ingredient))
  const gives = stage.isFinal ? holds.get(line.id) : undefined
  if (source)
    return { line, stage, amount, source, ingredient: undefined, countsAs: undefined, brings: {}, gives }
  const countsAs = meanings.get(nameKey(line.ingredient)) ?? ingredient?.countsAs
  return {
    line,
    stage,
    amount,
    source,
    ingredient,
    countsAs,
    brings: countsAs ? bringsOf(countsAs, ingredient) : {},
    gives,
  }
}

/** Whether a line is (part of) what 100 % means in its stage. */
export const isBase = (line: LinePlan): boolean =>
  line.stage.baseIsFlour ? line.countsAs?.kind === 'flour' : line.stage.base.includes(line)

/** The lines that are 100 %: the flours; without flour the lines marked as base, or the first one. */
function baseOf(lines: readonly LinePlan[]): { base: LinePlan[]; baseIsFlour: boolean } {
  const flours = lines.filter(l => l.countsAs?.kind === 'flour')
  if (flours.length) return { base: flours, baseIsFlour: true }
  const marked = lines.filter(l => l.line.base)
  if (marked.length) return { base: marked, baseIsFlour: false }
  const first = lines.find(l => l.line.ingredient || l.line.amount)
  return { base: first ? [first] : [], baseIsFlour: false }
}

/** The stages in an order in which each comes after those it takes; members of a circle are left out. */
export function inOrder(stages: readonly StagePlan[]): StagePlan[] {
  const waitsFor = new Map(stages.map(stage => [stage, stage.lines.filter(l => l.source).length]))
  const order = stages.filter(stage => waitsFor.get(stage) === 0)
  for (const { takenBy } of order)
    for (const { stage } of takenBy) {
      const left = waitsFor.get(stage)! - 1
      waitsFor.set(stage, left)
      if (left === 0) order.push(stage)
    }
  return order
}

/** The path from a stage back to itself along what it takes, or undefined. */
function circleOf(start: StagePlan): StagePlan[] | undefined {
  const from = new Map<StagePlan, StagePlan>()
  const open = [start]
  for (const at of open) {
    for (const { source } of at.lines) {
      if (!source || from.has(source)) continue
      from.set(source, at)
      if (source !== start) {
        open.push(source)
        continue
      }
      const path = [start]
      for (let s = at; s !== start; s = from.get(s)!) path.unshift(s)
      return [start, ...path]
    }
  }
  return undefined
}

export const heldInProportion = ({ holds }: Formula): number | undefined => holds?.find(isInProportion)?.value

export function outlineOf(formula: Formula, larder: Larder): Outline {
  const last = formula.stages.length - 1
  const plans: Open<StagePlan>[] = formula.stages.map((stage, i) => ({
    stage,
    isFinal: i === last,
    lines: [],
    base: [],
    baseIsFlour: false,
    takenBy: [],
    ferments: false,
    circle: undefined,
  }))
  const byName = new Map<string, StagePlan>()
  for (const plan of plans)
    if (!byName.has(nameKey(plan.stage.name))) byName.set(nameKey(plan.stage.name), plan)
  const stageNamed = (name: string) => byName.get(nameKey(name))
  const tooMuch = tooLarge(formula)
  const jottings = planJottings(formula.jottings ?? [], tooMuch)
  const dimensions = dimensionsOf(jottings)
  // of two for one ingredient the first holds
  const meanings = new Map(
    [...formula.meanings].reverse().map(({ ingredient, countsAs }) => [nameKey(ingredient), countsAs]),
  )
  // of two for one line likewise
  const holds = new Map((tooMuch ? [] : [...(formula.holds ?? [])].reverse()).map(h => [h.line, h]))
  for (const plan of plans) {
    plan.lines = plan.stage.lines.map(line =>
      planLine(line, plan, stageNamed(line.ingredient), holds, meanings, larder, dimensions),
    )
    Object.assign(plan, baseOf(plan.lines))
  }
  for (const { lines } of plans)
    for (const line of lines) (line.source?.takenBy as LinePlan[] | undefined)?.push(line)
  for (const plan of tooMuch ? [] : plans) {
    const path = circleOf(plan)
    if (!path) continue
    plan.circle = outlineProblem({ code: 'stageCircle', path: path.map(s => s.stage.name) })
  }
  for (const plan of inOrder(plans) as Open<StagePlan>[]) {
    const holds = (l: LinePlan) =>
      l.countsAs?.kind === 'starter' || l.ingredient?.kind === 'yeast' || l.source?.ferments === true
    plan.ferments = !plan.isFinal && (plan.stage.ferments ?? plan.lines.some(holds))
  }
  for (const plan of plans) if (plan.circle) plan.ferments = !plan.isFinal && plan.stage.ferments === true
  const final = plans[last]!
  const giving = final.lines.filter(l => l.gives)
  const shares = giving.filter(l => l.gives?.reading === 'wholeDough' && !l.source)
  const counted = [...counts, ...shares.map(l => `all ${ingredientKey(l)}` as const)]
  const doughWeight = tooMuch ? undefined : heldInProportion(formula)
  return {
    formula,
    larder,
    stages: plans,
    final,
    giving,
    doughWeight,
    jottings,
    counted,
    tooMuch,
    stageNamed,
  }
}
