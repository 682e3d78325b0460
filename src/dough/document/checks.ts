import type { Batch, Scale } from './batch.js'
import type { DocumentDiagnostic } from './batch-words.js'

export const isAboveZero = (value: unknown): boolean =>
  typeof value === 'number' && value > 0 && Number.isFinite(value)
export const isNoneOrMore = (value: unknown): boolean => value === 0 || isAboveZero(value)

/** Whether a scale can weigh so, whatever else is said of it. */
export function isScale(value: unknown): value is Scale {
  if (typeof value !== 'object' || value === null) return false
  const { step, fineStep, fineBelow } = value as Partial<Scale>
  return isAboveZero(step) && isAboveZero(fineStep) && isNoneOrMore(fineBelow)
}

/** Whether a loss is a fraction of 1 and leaves something. */
export const isLoss = (loss: number): boolean => loss >= 0 && loss < 1

/** Whether a leeway is a fraction of 1 that leaves something of a wait. */
export const isLeeway = (part: number): boolean => isLoss(part)

/** Whether a currency is written as ISO 4217 has them: `EUR`. */
export const isCurrency = (value: unknown): value is string =>
  typeof value === 'string' && /^[A-Z]{3}$/.test(value)

/** Code of why a batch cannot be made; undefined when it can. */
export function batchFault(batch: Batch): DocumentDiagnostic['code'] | undefined {
  if (!isLoss(batch.loss ?? 0) || !isLoss(batch.bakeLoss ?? 0)) return 'lossOutOfRange'
  switch (batch.make) {
    case 'as written':
      return undefined
    case 'pieces':
    case 'baked pieces':
      return batch.pieces.length && batch.pieces.every(p => isAboveZero(p.count) && isAboveZero(p.weight))
        ? undefined
        : 'piecesNotAboveZero'
    case 'factor':
      return isAboveZero(batch.factor) ? undefined : 'factorNotAboveZero'
    default:
      if (batch.make === 'all of' && batch.ingredient.trim() === '') return 'allOfNothing'
      return isAboveZero(batch.grams) ? undefined : 'batchNotAboveZero'
  }
}
