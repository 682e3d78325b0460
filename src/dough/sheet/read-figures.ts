import type { JottingPlan } from '../amounts/jottings.js'
import type { ReadingName } from '../document/reading-names.js'
import { measured, tidy } from '../document/words.js'
import { cellOf, linesCalled } from '../outline/names.js'
import { isBase, type LinePlan, type Outline, type StagePlan } from '../outline/outline.js'
import { placed } from './explain.js'
import type { DoughParts, FigureProblem, JottingFigures, LineFigures, StageFigures } from './figures.js'
import { sheetProblem } from './words.js'
import { numberIn, valueIn, type WorkedOut } from './worked-out.js'

/** `lastGood`: grams of a line that gives, from when its holds had an answer. */
export function lineFigures(seen: WorkedOut, plan: LinePlan, lastGood: number | undefined): LineFigures {
  const { amount, countsAs, source, gives } = plan
  const value = valueIn(seen, cellOf.weight(plan))
  const known = typeof value === 'number'
  const weight = known ? value : gives && lastGood
  const share = gives?.reading === 'wholeDough' ? gives : undefined
  const typed = !gives && amount && !('problem' in amount) ? amount : undefined
  const asTyped = amount?.typed ?? plan.line.amount
  const isScaled = seen.outline.doughWeight !== undefined && amount?.typedIn === 'weight'
  return {
    weight,
    batch: numberIn(seen, cellOf.batch(plan)),
    percent: percentOf(seen, plan, weight),
    wholeDough: seen.plan.cells.has(cellOf.wholeDough(plan))
      ? numberIn(seen, cellOf.wholeDough(plan))
      : undefined,
    typedIn: gives ? share && 'wholeDough' : amount?.typedIn,
    typed: share ? `${tidy(share.value * 100)}` : gives ? '' : isScaled ? plan.line.amount : asTyped,
    plain: share ? true : (typed?.plain ?? false) && !isScaled,
    is: source ? 'stage' : (countsAs?.kind ?? 'unknown'),
    starterHydration: countsAs?.kind === 'starter' ? countsAs.hydration : undefined,
    isBase: isBase(plan),
    gives,
    isStale: !known && weight !== undefined,
    problem: known ? undefined : placed(seen, value, cellOf.weight(plan)),
  }
}

/** Whether a line is so much of its base and nothing else: its percentage does not come of its weight. */
export function isAllSlope(seen: Pick<WorkedOut, 'plan'>, plan: LinePlan): boolean {
  const { slope, fixed } = seen.plan.splits.get(plan)!
  return fixed === 'none' && slope !== 'none'
}

function percentOf(seen: WorkedOut, plan: LinePlan, weight: number | undefined): number | undefined {
  if (isAllSlope(seen, plan)) return numberIn(seen, cellOf.slope(plan))
  const base = numberIn(seen, cellOf.base(plan.stage))
  return weight === undefined || !base ? undefined : weight / base
}

/** `percents`: those of its lines. */
export function stageFigures(
  seen: WorkedOut,
  plan: StagePlan,
  percents: readonly (number | undefined)[],
): StageFigures {
  const weight = valueIn(seen, cellOf.stageWeight(plan))
  const known = percents.every(p => p !== undefined)
  return {
    weight: typeof weight === 'number' ? weight : undefined,
    build: numberIn(seen, cellOf.build(plan)),
    needed:
      plan.isFinal || !seen.plan.cells.has(cellOf.needed(plan))
        ? undefined
        : numberIn(seen, cellOf.needed(plan)),
    base: numberIn(seen, cellOf.base(plan)),
    percent: known && percents.length ? percents.reduce((sum, p) => sum + p, 0) : undefined,
    hydration: hydrationOf(seen, plan),
    ferments: plan.ferments,
    isFinal: plan.isFinal,
    taken: plan.isFinal ? undefined : numberIn(seen, cellOf.taken(plan)),
    problem: plan.circle ?? (typeof weight === 'number' ? undefined : placed(seen, weight)),
  }
}

/** By shares, which a stage in percentages has whatever is made of it, or by weights. */
function hydrationOf(seen: WorkedOut, plan: StagePlan): number | undefined {
  const of = (count: 'water' | 'flour') =>
    numberIn(seen, cellOf.share(plan, count)) ?? numberIn(seen, cellOf.count(plan, count))
  const [flour, water] = [of('flour'), of('water')]
  return flour && water !== undefined ? water / flour : undefined
}

const byId = new WeakMap<Outline['jottings'], ReadonlyMap<string, JottingPlan>>()

function jottingOf({ outline: { jottings } }: WorkedOut, id: string): JottingPlan | undefined {
  const plans = byId.get(jottings) ?? new Map([...jottings.values()].map(plan => [plan.jotting.id, plan]))
  byId.set(jottings, plans)
  return plans.get(id)
}

/** Of a jotting by its id. */
export function jottingFigures(seen: WorkedOut, id: string): JottingFigures {
  const plan = jottingOf(seen, id)
  if (!plan) {
    const problem = sheetProblem({ code: 'jottingTwice' })
    return { value: undefined, measures: 'number', said: '–', problem }
  }
  const value = valueIn(seen, cellOf.jotting(plan.name))
  const known = typeof value === 'number' ? value : undefined
  const problem =
    typeof value === 'number' ? alsoALine(seen, plan.name) : placed(seen, value, cellOf.jotting(plan.name))
  return { value: known, measures: plan.dimension, said: measured(known, plan.dimension), problem }
}

function alsoALine({ outline }: WorkedOut, jotting: string): FigureProblem | undefined {
  const [line] = outline.stages.flatMap(stage => linesCalled(jotting, stage))
  return line && sheetProblem({ code: 'jottingAlsoALine', ingredient: line.line.ingredient, jotting })
}

/** Why a reading has no number. */
export function readingProblem(seen: WorkedOut, name: ReadingName): FigureProblem | undefined {
  const value = seen.graph.value(cellOf.reading(name))
  if (typeof value === 'number') return undefined
  const { final } = seen.outline
  if (value.kind === 'domain' && numberIn(seen, cellOf.count(final, 'flour')) === 0)
    return sheetProblem({ code: 'noFlourYet' })
  if (value.kind === 'domain' && numberIn(seen, cellOf.lines(final, 'flour')) === 0)
    return sheetProblem({ code: 'noFlourLine' })
  return placed(seen, value)
}

/** The whole dough by weight; undefined where not all of it is known. */
export function doughParts(seen: WorkedOut): DoughParts | undefined {
  const { final } = seen.outline
  const of = (count: 'flour' | 'water' | 'salt') => numberIn(seen, cellOf.count(final, count))
  const [flour, water, salt] = [of('flour'), of('water'), of('salt')]
  const all = numberIn(seen, cellOf.stageWeight(final))
  if (flour === undefined || water === undefined || salt === undefined || all === undefined) return undefined
  const rest = all - flour - water - salt
  return {
    flour,
    flourCarried: flour - (numberIn(seen, cellOf.lines(final, 'flour')) ?? 0),
    water,
    waterCarried: water - (numberIn(seen, cellOf.lines(final, 'water')) ?? 0),
    salt,
    other: rest > 1e-9 * all ? rest : 0, // what rounding alone leaves is nothing
  }
}
