import { isAsWritten } from '../cells/batch-cells.js'
import { makesUpTheRest } from '../cells/hold-cells.js'
import { type Place, type Problem, sameName } from '../document/formula.js'
import type { ReadingName } from '../document/reading-names.js'
import { grams, holdWords, per100, readingWords } from '../document/words.js'
import { cellOf } from '../outline/names.js'
import { bringsOf, type LinePlan, type Outline, type StagePlan } from '../outline/outline.js'
import { usualRanges } from './ranges.js'
import { numberIn, type WorkedOut } from './worked-out.js'

type Severity = Problem['severity']
type Say = (severity: Severity, message: string) => void

/** What the sheet noticed. What it noticed of a line is kept until that is to be forgotten. */
export class Remarks {
  #ofLines = new Map<LinePlan, readonly Problem[]>()
  #ofMeanings: readonly Problem[] | undefined
  #all: readonly Problem[] | undefined

  /** To be called with the lines that are touched, or with none where anything may be. */
  forget(lines?: Iterable<LinePlan>): void {
    this.#all = undefined
    if (lines) for (const line of lines) this.#ofLines.delete(line)
    else {
      this.#ofLines.clear()
      this.#ofMeanings = undefined
    }
  }

  /** Everything that was noticed, errors first. */
  on(seen: WorkedOut): readonly Problem[] {
    this.#all ??= gravestFirst(this.#found(seen))
    return this.#all
  }

  #found(seen: WorkedOut): Problem[] {
    const found: Problem[] = []
    const { outline } = seen
    const at =
      (stage?: StagePlan, line?: LinePlan): Say =>
      (severity, message) =>
        found.push(problem(outline, severity, message, stage, line))
    for (const stage of outline.stages) {
      for (const line of stage.lines) found.push(...this.#ofLine(seen, line))
      onStage(seen, stage, at(stage))
    }
    onHolds(seen, at)
    this.#ofMeanings ??= gathered(outline, say => onMeanings(seen, say))
    found.push(...this.#ofMeanings)
    onDough(seen, at())
    return found
  }

  #ofLine(seen: WorkedOut, line: LinePlan): readonly Problem[] {
    let remarks = this.#ofLines.get(line)
    if (!remarks) {
      remarks = gathered(seen.outline, say => onLine(seen, line, say), line)
      this.#ofLines.set(line, remarks)
    }
    return remarks
  }
}

const none: readonly Problem[] = []

/** What `look` says, of a line or of the whole. */
function gathered(outline: Outline, look: (say: Say) => void, line?: LinePlan): readonly Problem[] {
  let found: Problem[] | undefined
  look((severity, message) => {
    found ??= []
    found.push(problem(outline, severity, message, line?.stage, line))
  })
  return found ?? none
}

function problem(
  { formula }: Outline,
  severity: Severity,
  message: string,
  stage?: StagePlan,
  line?: LinePlan,
): Problem {
  const where: Place = {
    formula: formula.id,
    ...(stage ? { stage: stage.stage.id } : {}),
    ...(line ? { line: line.line.id } : {}),
  }
  return { where, message, severity }
}

const gravestFirst = (problems: readonly Problem[]): Problem[] =>
  (['error', 'warning', 'remark'] as const).flatMap(severity =>
    problems.filter(one => one.severity === severity),
  )

function onLine(seen: WorkedOut, plan: LinePlan, say: Say): void {
  const { line, stage, ingredient, countsAs, source, amount } = plan
  const here = `${line.ingredient || 'A line'} in ${stage.stage.name}`
  const value = seen.graph.value(cellOf.weight(plan))
  const isOf = (cell: string) => cell === cellOf.weight(plan) || cell === cellOf.asTyped(plan)
  // An error that arose elsewhere is told where it arose.
  const arose = typeof value !== 'number' && (isOf(value.origin) || value.path?.some(isOf))
  if (arose) say('error', `${here}: ${seen.explain(value)}`)
  if (line.ingredient && !amount && !plan.gives) say('remark', `${here} has no amount yet.`)
  if (!line.ingredient && amount)
    say('warning', `A line of ${stage.stage.name} has an amount but no ingredient.`)
  if (line.ingredient && !source && !countsAs)
    say(
      'warning',
      `${line.ingredient} is not in the larder: only its weight is counted. Say what it counts as.`,
    )
  const weighed = seen.weighed(line.id)
  const wanted = numberIn(seen, cellOf.batch(plan))
  if (weighed && wanted && weighed.mayBeOff > 0.1)
    say(
      'remark',
      `${grams(wanted)} of ${line.ingredient || 'a line'} on a scale of ${grams(weighed.step)} steps could be off by ${per100(weighed.mayBeOff)}: use a finer scale, or dilute it.`,
    )
  if (source && !stage.circle && !source.stage.lines.length)
    say('warning', `${source.stage.name} has nothing in it yet, so no flour or water of it is counted.`)
  if (source && !stage.circle && seen.outline.stages.indexOf(source) > seen.outline.stages.indexOf(stage))
    say(
      'remark',
      `${stage.stage.name} takes ${source.stage.name}, which is mixed after it. Move ${source.stage.name} earlier.`,
    )
  if (ingredient && countsAs?.kind === 'starter' && !(countsAs.hydration >= 0))
    say('error', `The hydration of ${ingredient.name} is not a percentage.`)
}

function onStage(seen: WorkedOut, plan: StagePlan, say: Say): void {
  const { name } = plan.stage
  if (plan.circle) return say('error', plan.circle)
  const base = seen.graph.value(cellOf.base(plan))
  if (typeof base !== 'number' && base.origin === cellOf.base(plan)) say('error', base.message)
  const shares = plan.base.map(l => seen.plan.splits.get(l)!)
  if (plan.base.length && seen.plan.isFree(plan) && shares.some(s => s.slope !== 'none')) {
    const parts = plan.base.map(l =>
      seen.plan.splits.get(l)!.slope === 'none' ? 0 : numberIn(seen, cellOf.slope(l)),
    )
    const sum = parts.reduce<number>((total, p) => total + (p ?? Number.NaN), 0)
    const what = plan.baseIsFlour ? 'flours' : 'base lines'
    if (Math.abs(sum - 1) > 1e-9) say('remark', `The ${what} of ${name} add to ${per100(sum)}, not 100 %.`)
  }
  if (plan.isFinal) return
  const made = numberIn(seen, cellOf.stageWeight(plan))
  const taken = numberIn(seen, cellOf.taken(plan))
  if (!plan.takenBy.length && plan.lines.length) return say('remark', `No later stage takes ${name} yet.`)
  if (made === undefined || taken === undefined || !isAsWritten(seen.outline)) return // a batch makes what is taken
  const over = taken - made
  const tiny = 1e-6 * Math.max(1, made)
  const asWritten = `${name} as written makes ${grams(made)}`
  if (over > tiny) say('warning', `${asWritten} and ${grams(taken)} is taken: ${grams(over)} short.`)
  else if (over < -tiny) say('remark', `${asWritten} and ${grams(taken)} is taken. ${grams(-over)} is left.`)
}

function onHolds(seen: WorkedOut, at: (stage?: StagePlan, line?: LinePlan) => Say): void {
  const { formula, final, giving } = seen.outline
  const say = at()
  for (const hold of formula.holds ?? [])
    if (!giving.some(l => l.gives === hold))
      say('warning', `${holdWords(hold, 'A line')}, but the line that gave is gone. Release it.`)
  const value = giving[0] && seen.graph.value(cellOf.weight(giving[0]))
  const times = seen.graph.value(cellOf.times(final))
  if (typeof times !== 'number' && times.origin === cellOf.times(final))
    say('error', `The batch cannot be worked out: ${times.message}`)
  if (value !== undefined && typeof value !== 'number' && value.origin === 'holds')
    at(final, giving[0])('error', value.message)
  const rest = giving.find(l => makesUpTheRest(seen.outline, l))
  const share = rest && numberIn(seen, cellOf.wholeDough(rest))
  if (rest && share !== undefined && Math.abs(share - rest.gives!.value) > 5e-4)
    at(final, rest)(
      'remark',
      `${rest.line.ingredient} makes up the rest of the flour: ${per100(share)} of it, since a starter brings some of its own.`,
    )
}

function onMeanings(seen: WorkedOut, say: Say): void {
  const { formula, larder } = seen.outline
  for (const { ingredient, countsAs } of formula.meanings) {
    const known = larder.find(ingredient)
    if (
      !known ||
      JSON.stringify(bringsOf(known.countsAs, undefined)) === JSON.stringify(bringsOf(countsAs, undefined)) ||
      !formula.stages.some(s => s.lines.some(l => sameName(l.ingredient, ingredient)))
    )
      continue
    const here = countsAs.kind === 'starter' ? `a starter at ${per100(countsAs.hydration)}` : countsAs.kind
    say('remark', `${ingredient} counts as ${here} in this formula, not as your larder has it.`)
  }
}

function onDough(seen: WorkedOut, say: Say): void {
  const { final } = seen.outline
  const flour = numberIn(seen, cellOf.count(final, 'flour'))
  if (flour === 0)
    return say('warning', 'There is no flour in this formula yet, so nothing can be said per flour.')
  const onUsual = (reading: ReadingName, value = numberIn(seen, cellOf.reading(reading))) => {
    const [low, high] = usualRanges[reading]!
    if (value === undefined || value === 0 || (value >= low && value <= high)) return
    const words = readingWords[reading]
    say(
      'remark',
      `${words[0]!.toUpperCase()}${words.slice(1)} is ${per100(value)}; usual is ${per100(low)} to ${per100(high)}.`,
    )
  }
  onUsual('salt')
  // Where milk, egg or honey bring much of the moisture, the trade's hydration alone says little.
  const [water, moisture] = [
    numberIn(seen, cellOf.reading('trueHydration')),
    numberIn(seen, cellOf.reading('moistureHydration')),
  ]
  if (water === undefined || moisture === undefined || moisture - water < 0.05)
    onUsual('trueHydration', water)
  else onUsual('moistureHydration', moisture)
}
