import type { Scale } from './batch.js'

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
