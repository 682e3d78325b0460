import { newId, type Stage, type Step } from '../../document/formula.js'
import type { Transaction, Workbook } from '../../document/workbook.js'
import { type StageAt, stageIn } from '../edit-places.js'
import { fetchedLabels, refuseFetched } from './fetched-words.js'

/** A step by ids. */
export interface StepAt extends StageAt {
  readonly step: string
}

export const newStep = (does: string, kind: Step['kind'], text = '', note = ''): Step => ({
  id: newId(),
  does,
  kind,
  text,
  note,
})

/** The stage with another method; one without steps has none. */
function withMethod({ method: _before, ...stage }: Stage, method: readonly Step[]): Stage {
  return method.length ? { ...stage, method } : stage
}

const put = (label: string, at: StageAt, stage: Stage, method: readonly Step[]): Transaction => ({
  label,
  changes: [{ of: 'stage', formula: at.formula, id: stage.id, value: withMethod(stage, method) }],
})

/** Where a step stands in its stage's method. Throws Refusal when it is gone. */
function stepIn(workbook: Workbook, at: StepAt): { stage: Stage; method: readonly Step[]; index: number } {
  const stage = stageIn(workbook, at)
  const method = stage.method ?? []
  const index = method.findIndex(step => step.id === at.step)
  if (index < 0) refuseFetched({ code: 'stepGone' })
  return { stage, method, index }
}

/** Adds a step to a stage's method, last or at `index`. */
export function addStep(workbook: Workbook, at: StageAt, step: Step, index?: number): Transaction {
  const stage = stageIn(workbook, at)
  const method = [...(stage.method ?? [])]
  method.splice(index ?? method.length, 0, step)
  return put(fetchedLabels.addStep(step.does, stage.name), at, stage, method)
}

/** Says a step otherwise; undefined when it is as it was. */
export function changeStep(
  workbook: Workbook,
  at: StepAt,
  fields: Partial<Omit<Step, 'id'>>,
): Transaction | undefined {
  const { stage, method, index } = stepIn(workbook, at)
  const before = method[index]!
  const after = { ...before, ...fields }
  if (
    after.does === before.does &&
    after.kind === before.kind &&
    after.text === before.text &&
    after.note === before.note
  )
    return undefined
  return put(fetchedLabels.changeStep(after.does), at, stage, method.with(index, after))
}

/** Moves a step up (below 0) or down in its method, past so many others; undefined where there is no such place. */
export function moveStep(workbook: Workbook, at: StepAt, by: number): Transaction | undefined {
  const { stage, method, index } = stepIn(workbook, at)
  if (by === 0 || !method[index + by]) return undefined
  const moved = method.toSpliced(index, 1).toSpliced(index + by, 0, method[index]!)
  return put(fetchedLabels.moveStep(method[index]!.does, by), at, stage, moved)
}

export function removeStep(workbook: Workbook, at: StepAt): Transaction {
  const { stage, method, index } = stepIn(workbook, at)
  return put(fetchedLabels.removeStep(method[index]!.does), at, stage, method.toSpliced(index, 1))
}
