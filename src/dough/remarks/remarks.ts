import '../cells/rare-cells-at-once.js'
import type { Worded } from '../../engine/index.js'
import { makesUpTheRest } from '../cells/hold-cells.js'
import { hasBatch, isInProportion, nameKey, type Place, type Problem } from '../document/formula.js'
import type { ReadingName } from '../document/reading-names.js'
import { isUnconfirmed } from '../document/words.js'
import { cellOf } from '../outline/names.js'
import { bringsOf, type LinePlan, type Outline, type StagePlan } from '../outline/outline.js'
import { explain } from '../sheet/explain.js'
import { leadingHydration, usualRanges } from '../sheet/ranges.js'
import { numberIn, type WorkedOut } from '../sheet/worked-out.js'
import { baseInTwoUnits } from './base-units.js'
import { nearestOf, type OutOfReach, outOfReach, stayingWhile } from './reach.js'
import { type NamedLine, remark } from './remark-words.js'

type Severity = Problem['severity']
type Say = (severity: Severity, told: Worded) => void

/** Everything that is noticed in a formula, errors first. */
export function remarksOn(seen: WorkedOut): readonly Problem[] {
  seen.noticed.all ??= gravestFirst(found(seen))
  return seen.noticed.all
}

const byLines = new WeakMap<readonly Problem[], ReadonlyMap<string, readonly Problem[]>>()

/** Of that, what is noticed in a line: many lines may ask, one after the other. */
export function remarksOnLine(seen: WorkedOut, line: string): readonly Problem[] {
  const all = remarksOn(seen)
  let byLine = byLines.get(all)
  if (!byLine) {
    byLine = inTheirLines(all)
    byLines.set(all, byLine)
  }
  return byLine.get(line) ?? none
}

function inTheirLines(all: readonly Problem[]): ReadonlyMap<string, readonly Problem[]> {
  const byLine = new Map<string, Problem[]>()
  for (const problem of all) {
    const { line = '' } = problem.where
    const others = byLine.get(line)
    if (others) others.push(problem)
    else byLine.set(line, [problem])
  }
  return byLine
}

function found(seen: WorkedOut): Problem[] {
  const problems: Problem[] = []
  const { outline, noticed } = seen
  if (outline.tooMuch) return [problem(outline, 'error', outline.tooMuch)]
  const at =
    (stage?: StagePlan, line?: LinePlan): Say =>
    (severity, told) =>
      problems.push(problem(outline, severity, told, stage, line))
  for (const stage of outline.stages) {
    for (const line of stage.lines) problems.push(...ofLine(seen, line))
    onStage(seen, stage, at(stage))
    for (const [line, told] of baseInTwoUnits(seen, stage)) at(stage, line)('remark', told)
  }
  onHolds(seen, at)
  noticed.ofMeanings ??= gathered(outline, say => onMeanings(seen, say))
  problems.push(...noticed.ofMeanings)
  onDough(seen, at())
  return problems
}

function ofLine(seen: WorkedOut, line: LinePlan): readonly Problem[] {
  const { ofLines } = seen.noticed
  let remarks = ofLines.get(line)
  if (!remarks) {
    remarks = gathered(seen.outline, say => onLine(seen, line, say), line)
    ofLines.set(line, remarks)
  }
  return remarks
}

const none: readonly Problem[] = []

/** What `look` says, of a line or of the whole. */
function gathered(outline: Outline, look: (say: Say) => void, line?: LinePlan): readonly Problem[] {
  let found: Problem[] | undefined
  look((severity, told) => {
    found ??= []
    found.push(problem(outline, severity, told, line?.stage, line))
  })
  return found ?? none
}

function problem(
  { formula }: Outline,
  severity: Severity,
  told: Worded,
  stage?: StagePlan,
  line?: LinePlan,
): Problem {
  const where: Place = {
    formula: formula.id,
    ...(stage ? { stage: stage.stage.id } : {}),
    ...(line ? { line: line.line.id } : {}),
  }
  return { ...told, where, severity }
}

const gravestFirst = (problems: readonly Problem[]): Problem[] =>
  (['error', 'warning', 'remark'] as const).flatMap(severity =>
    problems.filter(one => one.severity === severity),
  )

function onLine(seen: WorkedOut, plan: LinePlan, say: Say): void {
  const { line, stage, ingredient, countsAs, source, amount } = plan
  const here: NamedLine = { line: line.ingredient, stage: stage.stage.name }
  const value = seen.graph.value(cellOf.weight(plan))
  const isOf = (cell: string) => cell === cellOf.weight(plan) || cell === cellOf.asTyped(plan)
  // An error that arose elsewhere is told where it arose.
  const arose = typeof value !== 'number' && (isOf(value.origin) || value.path?.some(isOf))
  const why = arose && seen.explain(value)
  if (why) say('error', remark({ code: 'lineWithoutFigure', why, ...here }))
  if (line.ingredient && !amount && !plan.gives) say('remark', remark({ code: 'lineWithoutAmount', ...here }))
  if (isUnconfirmed(line.note)) say('remark', remark({ code: 'lineNotConfirmed', ...here }))
  if (!line.ingredient && amount)
    say('warning', remark({ code: 'lineWithoutIngredient', stage: stage.stage.name }))
  if (line.ingredient && !source && !countsAs)
    say('warning', remark({ code: 'ingredientUnknown', ingredient: line.ingredient }))
  const weighed = seen.weighed(line.id)
  const wanted = numberIn(seen, cellOf.batch(plan))
  if (weighed && wanted && weighed.mayBeOff > 0.1) {
    const { step, mayBeOff } = weighed
    const weight = { weight: wanted, step, mayBeOff }
    say('remark', remark({ code: 'scaleTooCoarse', ingredient: line.ingredient, ...weight }))
  }
  if (source && !stage.circle && !source.stage.lines.length)
    say('warning', remark({ code: 'emptyStageTaken', stage: source.stage.name }))
  if (source && !stage.circle && seen.outline.stages.indexOf(source) > seen.outline.stages.indexOf(stage))
    say('remark', remark({ code: 'takenBeforeMixed', stage: stage.stage.name, taken: source.stage.name }))
  if (ingredient && countsAs?.kind === 'starter' && !(countsAs.hydration >= 0))
    say('error', remark({ code: 'hydrationNotANumber', ingredient: ingredient.name }))
}

function onStage(seen: WorkedOut, plan: StagePlan, say: Say): void {
  const { name } = plan.stage
  if (plan.circle) return say('error', plan.circle)
  const base = seen.graph.value(cellOf.base(plan))
  if (typeof base !== 'number' && base.origin === cellOf.base(plan)) say('error', explain(seen, base)!)
  const shares = plan.base.map(l => seen.plan.splits.get(l)!)
  if (plan.base.length && seen.plan.isFree(plan) && shares.some(s => s.slope !== 'none')) {
    const parts = plan.base.map(l =>
      seen.plan.splits.get(l)!.slope === 'none' ? 0 : numberIn(seen, cellOf.slope(l)),
    )
    const sum = parts.reduce<number>((total, p) => total + (p ?? Number.NaN), 0)
    const isFlour = plan.baseIsFlour
    if (Math.abs(sum - 1) > 1e-9) say('remark', remark({ code: 'baseNotWhole', stage: name, isFlour, sum }))
  }
  if (plan.isFinal) return
  const made = numberIn(seen, cellOf.stageWeight(plan))
  const taken = numberIn(seen, cellOf.taken(plan))
  if (!plan.takenBy.length && plan.lines.length)
    return say('remark', remark({ code: 'stageNotTaken', stage: name }))
  if (made === undefined || taken === undefined || hasBatch(seen.outline.formula)) return // a batch makes what is taken
  const over = taken - made
  const tiny = 1e-6 * Math.max(1, made)
  const figures = { stage: name, made, taken }
  if (over > tiny) say('warning', remark({ code: 'stageShort', ...figures }))
  else if (over < -tiny) say('remark', remark({ code: 'stageLeftOver', ...figures }))
}

function onHolds(seen: WorkedOut, at: (stage?: StagePlan, line?: LinePlan) => Say): void {
  const { formula, final, giving } = seen.outline
  const say = at()
  for (const hold of formula.holds ?? [])
    if (!isInProportion(hold) && !giving.some(l => l.gives === hold))
      say('warning', remark({ code: 'holdWithoutLine', hold }))
  const value = giving[0] && seen.graph.value(cellOf.weight(giving[0]))
  const times = seen.graph.value(cellOf.times(final))
  if (typeof times !== 'number' && times.origin === cellOf.times(final))
    say('error', remark({ code: 'batchNotWorkedOut', why: explain(seen, times)! }))
  if (value !== undefined && typeof value !== 'number' && value.origin === 'holds') {
    const out = outOfReach(seen)
    if (!out) at(final, giving[0])('error', explain(seen, value)!)
    else at(final, out.line)('error', outOfReachSaid(seen, out))
  }
  const rest = giving.find(l => makesUpTheRest(seen.outline, l))
  const share = rest && numberIn(seen, cellOf.wholeDough(rest))
  if (rest && share !== undefined && Math.abs(share - rest.gives!.value) > 5e-4)
    at(final, rest)('remark', remark({ code: 'restOfFlour', ingredient: rest.line.ingredient, share }))
}

/** That a reading cannot be what it is held at, and how far it goes. */
export function outOfReachSaid(seen: WorkedOut, { line, reach }: OutOfReach): Worded {
  const hold = line.gives!
  return remark({
    code: 'holdOutOfReach',
    hold,
    ingredient: line.line.ingredient,
    nearest: nearestOf(reach, hold),
    stay: stayingWhile(seen, line),
  })
}

function onMeanings(seen: WorkedOut, say: Say): void {
  const { formula, larder } = seen.outline
  const used = new Set(formula.stages.flatMap(s => s.lines.map(l => nameKey(l.ingredient))))
  for (const { ingredient, countsAs } of formula.meanings) {
    const known = larder.find(ingredient)
    if (
      !known ||
      JSON.stringify(bringsOf(known.countsAs, undefined)) === JSON.stringify(bringsOf(countsAs, undefined)) ||
      !used.has(nameKey(ingredient))
    )
      continue
    say('remark', remark({ code: 'meaningUnlikeLarder', ingredient, countsAs }))
  }
}

function onDough(seen: WorkedOut, say: Say): void {
  const { final } = seen.outline
  const flour = numberIn(seen, cellOf.count(final, 'flour'))
  if (flour === 0) return say('warning', remark({ code: 'noFlour' }))
  const onUsual = (reading: ReadingName, value = numberIn(seen, cellOf.reading(reading))) => {
    const [low, high] = usualRanges[reading]!
    if (value === undefined || value === 0 || (value >= low && value <= high)) return
    say('remark', remark({ code: 'readingUnusual', reading, value, usual: [low, high] }))
  }
  onUsual('salt')
  onUsual(leadingHydration(name => numberIn(seen, cellOf.reading(name))))
}
