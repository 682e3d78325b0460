import type { Worded } from '../../engine/index.js'
import type { Batch, Scale } from './batch.js'
import { type DocumentDiagnostic, documentProblem } from './batch-words.js'
import { batchFault, isAboveZero, isNoneOrMore } from './checks.js'

export type DocumentProblem = Worded<DocumentDiagnostic>

/** Why there is no such scale; undefined when there can be. Below 0 g is never: no fine step. */
export function scaleProblem({ step, fineStep, fineBelow }: Scale): DocumentProblem | undefined {
  if (!isAboveZero(step) || !isAboveZero(fineStep)) return documentProblem({ code: 'scaleStepNotAboveZero' })
  if (!isNoneOrMore(fineBelow)) return documentProblem({ code: 'fineBelowNegative' })
  return undefined
}

/** Why a batch cannot be made; undefined when it can. */
export function batchProblem(batch: Batch): DocumentProblem | undefined {
  const code = batchFault(batch)
  return code && documentProblem({ code })
}
