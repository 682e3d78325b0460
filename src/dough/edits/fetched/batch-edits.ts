import type { Batch, KeepBack, Scale } from '../../document/batch.js'
import { batchProblem, scaleProblem } from '../../document/batch-checks.js'
import { documentProblem } from '../../document/batch-words.js'
import { isLoss } from '../../document/checks.js'
import type { Stage } from '../../document/formula.js'
import type { Transaction, Workbook } from '../../document/workbook.js'
import { formulaIn, type StageAt, stageIn } from '../edit-places.js'
import { Refusal } from '../words.js'
import { fetchedLabels, refuseFetched } from './fetched-words.js'

/** Says how much to make. Throws Refusal for an amount that cannot be. */
export function setBatch(workbook: Workbook, id: string, batch: Batch): Transaction {
  formulaIn(workbook, id)
  const problem = batchProblem(batch)
  if (problem) throw new Refusal(problem)
  return { label: fetchedLabels.batch(batch), changes: [{ of: 'fields', formula: id, value: { batch } }] }
}

/** Says how the baker's scale weighs. Throws Refusal for steps that cannot be. */
export function setScale(scale: Scale): Transaction {
  const problem = scaleProblem(scale)
  if (problem) throw new Refusal(problem)
  return {
    label: fetchedLabels.scale(scale),
    changes: [{ of: 'workbook', value: { scale } }],
  }
}

/** Says how much of a stage to make beyond what is taken: grams, or as much as its seed; 0 is none. */
export function setKeepBack(workbook: Workbook, at: StageAt, keepBack: KeepBack): Transaction {
  const { keepBack: _before, ...stage } = stageIn(workbook, at)
  if (keepBack !== 'seed' && !(keepBack >= 0 && Number.isFinite(keepBack)))
    refuseFetched({ code: 'keepBackNegative' })
  const value: Stage = keepBack === 0 ? stage : { ...stage, keepBack }
  return {
    label: fetchedLabels.keepBack(keepBack, stage.name),
    changes: [{ of: 'stage', formula: at.formula, id: stage.id, value }],
  }
}

/** Says what part of a stage is lost on the way, fraction of 1. */
export function setStageLoss(workbook: Workbook, at: StageAt, loss: number): Transaction {
  const { loss: _before, ...stage } = stageIn(workbook, at)
  if (!isLoss(loss)) throw new Refusal(documentProblem({ code: 'lossOutOfRange' }))
  const value: Stage = loss === 0 ? stage : { ...stage, loss }
  return {
    label: fetchedLabels.stageLoss(stage.name, loss),
    changes: [{ of: 'stage', formula: at.formula, id: stage.id, value }],
  }
}
