import type { Formula, Line, Stage, Step } from '../../dough/document/formula.js'
import { finalDoughOf, nameKey } from '../../dough/document/formula.js'
import { lineFirstNamed } from '../../dough/document/step-names.js'
import { lengthOf, readStep, type StepRead } from './step-text.js'
import type { Length } from './step-time.js'

/** A step of a stage, with what its text says. */
export interface StepPlan {
  readonly step: Step
  readonly read: StepRead
  readonly length: Length | undefined // minutes, with the leeway of a wait; before it is scaled to the day
  readonly lines: readonly Line[] // that go in at it
  readonly missing: readonly string[] // names it adds that are none of the stage's lines
}

/** A stage as it is done. */
export interface StagePlan {
  readonly stage: Stage
  readonly isFinal: boolean
  readonly steps: readonly StepPlan[]
  readonly takes: readonly Taking[]
}

/** A stage takes an earlier one at one of its steps. */
export interface Taking {
  readonly from: string // id of the earlier stage
  readonly line: Line
  readonly step: number // place in the method; 0 where there is none
}

/**
 * A stage's method read: each step with its length and the lines that go in at it. What no step names goes in at the
 * first. `leeway` is how far a wait of one time moves, a fraction of 1.
 */
export function stepsOf(stage: Stage, leeway: number): StepPlan[] {
  const named = new Set<Line>()
  const steps = (stage.method ?? []).map(step => {
    const read = readStep(step.text)
    const lines: Line[] = []
    const missing: string[] = []
    for (let names = read.adds; names.length > 0; ) {
      const { line, count = 1 } = lineFirstNamed(names, stage.lines, named) ?? {}
      if (line) lines.push(line)
      else missing.push(names[0]!)
      if (line) named.add(line)
      names = names.slice(count)
    }
    return { step, read, length: lengthOf(step, read, leeway), lines, missing }
  })
  const rest = stage.lines.filter(line => line.ingredient && !named.has(line))
  return steps.map((step, i) => (i === 0 ? { ...step, lines: [...rest, ...step.lines] } : step))
}

/** All stages of a formula as they are done, in their order. */
export function stagePlans(formula: Formula, leeway: number): StagePlan[] {
  const final = finalDoughOf(formula)
  const first = new Map<string, Stage>()
  for (const stage of formula.stages)
    if (!first.has(nameKey(stage.name))) first.set(nameKey(stage.name), stage)
  return formula.stages.map(stage => {
    const steps = stepsOf(stage, leeway)
    const takes = stage.lines.flatMap(line => {
      const from = first.get(nameKey(line.ingredient))
      if (!from || from === stage || from === final) return []
      return [
        {
          from: from.id,
          line,
          step: Math.max(
            0,
            steps.findIndex(s => s.lines.includes(line)),
          ),
        },
      ]
    })
    return { stage, isFinal: stage === final, steps, takes }
  })
}
