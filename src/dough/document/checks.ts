import type { Worded } from '../../engine/index.js'
import type { Batch, Scale } from './batch.js'
import { type DocumentDiagnostic, documentProblem } from './words.js'

export type DocumentProblem = Worded<DocumentDiagnostic>

/** Why there is no such scale; undefined when there can be. Below 0 g is never: no fine step. */
export function scaleProblem({ step, fineStep, fineBelow }: Scale): DocumentProblem | undefined {
  const isStep = (grams: number) => grams > 0 && Number.isFinite(grams)
  if (!isStep(step) || !isStep(fineStep)) return documentProblem({ code: 'scaleStepNotAboveZero' })
  if (!(fineBelow >= 0 && Number.isFinite(fineBelow))) return documentProblem({ code: 'fineBelowNegative' })
  return undefined
}

/** Whether a loss is a fraction of 1 and leaves something. */
export const isLoss = (loss: number): boolean => loss >= 0 && loss < 1

/** Whether a leeway is a fraction of 1 that leaves something of a wait. */
export const isLeeway = (part: number): boolean => isLoss(part)

/** Why a batch cannot be made; undefined when it can. */
export function batchProblem(batch: Batch): DocumentProblem | undefined {
  if (!isLoss(batch.loss ?? 0) || !isLoss(batch.bakeLoss ?? 0))
    return documentProblem({ code: 'lossOutOfRange' })
  const above = (value: number) => value > 0 && Number.isFinite(value)
  switch (batch.make) {
    case 'as written':
      return undefined
    case 'pieces':
    case 'baked pieces':
      return batch.pieces.length && batch.pieces.every(p => above(p.count) && above(p.weight))
        ? undefined
        : documentProblem({ code: 'piecesNotAboveZero' })
    case 'factor':
      return above(batch.factor) ? undefined : documentProblem({ code: 'factorNotAboveZero' })
    default:
      if (batch.make === 'all of' && batch.ingredient.trim() === '')
        return documentProblem({ code: 'allOfNothing' })
      return above(batch.grams) ? undefined : documentProblem({ code: 'batchNotAboveZero' })
  }
}
