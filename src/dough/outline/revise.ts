import { readAmount } from '../amounts/amounts.js'
import { dimensionsOf } from '../amounts/jottings.js'
import type { Formula, Hold, Line, Stage } from '../document/formula.js'
import { tooMuchNamed } from './named-lines.js'
import { heldInProportion, type LinePlan, namesOf, type Outline, type StagePlan } from './outline.js'

/** What was revised of a formula where no name, no order and no meaning in it is another. */
export interface Revision {
  readonly stages: readonly StagePlan[] // that are written otherwise
  readonly lines: readonly LinePlan[] // of another text, or that give for another value
  readonly amounts: readonly LinePlan[] // of them, those of another amount
  readonly holds: boolean // the values at which readings are kept
  readonly flourWeight: boolean
  readonly batch: boolean // what is made of the dough, or kept back or lost of a stage
}

type Open<T> = { -readonly [K in keyof T]: T[K] }

/**
 * Brings an outline to another state of its formula where that only revises it, and says what it revises: its plans stay
 * the same objects. Undefined, with the outline as it was, where lines could come to stand for something
 * else: then the formula is to be outlined anew. What is the same object is the same.
 */
export function revise(outline: Outline, formula: Formula): Revision | undefined {
  const before = outline.formula
  const isKept =
    !outline.tooMuch &&
    formula.id === before.id &&
    isRevisedHolds(outline, formula.holds) &&
    formula.meanings === before.meanings &&
    formula.jottings === before.jottings &&
    formula.stages.length === before.stages.length
  if (!isKept || !formula.stages.every((stage, i) => isRevision(outline.stages[i]!, stage))) return undefined

  const dimensions = dimensionsOf(outline.jottings)
  const read = new Map<LinePlan, LinePlan['amount']>()
  for (const [i, stage] of formula.stages.entries()) {
    const plan = outline.stages[i]!
    if (plan.stage === stage) continue
    for (const [at, { amount }] of stage.lines.entries()) {
      const line = plan.lines[at]!
      if (line.line.amount !== amount)
        read.set(line, readAmount(amount, dimensions, namesOf(line.line, line.ingredient)))
    }
  }
  if (tooMuchNamed(outline, read)) return undefined

  const stages: StagePlan[] = []
  const lines = new Set<LinePlan>()
  let batch = formula.batch !== before.batch
  for (const [i, stage] of formula.stages.entries()) {
    const plan = outline.stages[i]! as Open<StagePlan>
    if (plan.stage === stage) continue
    if (plan.stage.keepBack !== stage.keepBack || plan.stage.loss !== stage.loss) batch = true
    plan.stage = stage
    stages.push(plan)
    for (const [at, line] of stage.lines.entries()) {
      const revised = plan.lines[at]! as Open<LinePlan>
      if (revised.line === line) continue
      lines.add(revised)
      if (read.has(revised)) revised.amount = read.get(revised)
      revised.line = line
    }
  }
  const holds = formula.holds !== before.holds
  if (holds)
    for (const giving of outline.giving as readonly Open<LinePlan>[]) {
      const gives = formula.holds!.find(hold => hold.line === giving.line.id)!
      if (gives === giving.gives) continue
      giving.gives = gives
      lines.add(giving)
    }
  const open = outline as Open<Outline>
  open.formula = formula
  open.doughWeight = heldInProportion(formula)
  return {
    stages,
    lines: [...lines],
    amounts: [...read.keys()],
    holds,
    batch,
    flourWeight: formula.flourWeight !== before.flourWeight,
  }
}

/** The same readings are kept, and the same lines give for them. */
function isRevisedHolds({ formula, giving }: Outline, holds: readonly Hold[] = []): boolean {
  const before = formula.holds ?? []
  if (holds === before) return true
  const has = (list: readonly Hold[], { reading, line }: Hold) =>
    list.some(hold => hold.reading === reading && hold.line === line)
  return (
    before.length === holds.length &&
    holds.every(hold => has(before, hold)) &&
    before.every(hold => has(holds, hold)) &&
    giving.every(({ line, gives }) => holds.find(h => h.line === line.id)?.reading === gives!.reading)
  )
}

function isRevision(plan: StagePlan, stage: Stage): boolean {
  const before = plan.stage
  if (before === stage) return true
  return (
    before.id === stage.id &&
    before.name === stage.name &&
    before.ferments === stage.ferments &&
    before.lines.length === stage.lines.length &&
    stage.lines.every((line, i) => {
      const former = before.lines[i]!
      return former === line || isRevisedLine(former, line)
    })
  )
}

/** A line without a name counts as 100 % of its stage only from when it has an amount. */
const isRevisedLine = (before: Line, line: Line): boolean =>
  before.id === line.id &&
  before.ingredient === line.ingredient &&
  before.base === line.base &&
  (line.ingredient !== '' || (before.amount === '') === (line.amount === ''))
