import type { Worded } from '../../engine/index.js'
import type { Batch, Scale } from './batch.js'
import { type DocumentDiagnostic, documentProblem } from './batch-words.js'
import { isAboveZero, isLoss, isNoneOrMore } from './checks.js'

export type DocumentProblem = Worded<DocumentDiagnostic>

/** Why there is no such scale; undefined when there can be. Below 0 g is never: no fine step. */
export function scaleProblem({ step, fineStep, fineBelow }: Scale): DocumentProblem | undefined {
  if (!isAboveZero(step) || !isAboveZero(fineStep)) return documentProblem({ code: 'scaleStepNotAboveZero' })
  if (!isNoneOrMore(fineBelow)) return documentProblem({ code: 'fineBelowNegative' })
  return undefined
}

/** Why a batch cannot be made; undefined when it can. */
export function batchProblem(batch: Batch): DocumentProblem | undefined {
  if (!isLoss(batch.loss ?? 0) || !isLoss(batch.bakeLoss ?? 0))
    return documentProblem({ code: 'lossOutOfRange' })
  switch (batch.make) {
    case 'as written':
      return undefined
    case 'pieces':
    case 'baked pieces':
      return batch.pieces.length && batch.pieces.every(p => isAboveZero(p.count) && isAboveZero(p.weight))
        ? undefined
        : documentProblem({ code: 'piecesNotAboveZero' })
    case 'factor':
      return isAboveZero(batch.factor) ? undefined : documentProblem({ code: 'factorNotAboveZero' })
    default:
      if (batch.make === 'all of' && batch.ingredient.trim() === '')
        return documentProblem({ code: 'allOfNothing' })
      return isAboveZero(batch.grams) ? undefined : documentProblem({ code: 'batchNotAboveZero' })
  }
}
