import type { MeasureSystem } from '../../src/dough/about/household.js'
import type { Problem } from '../../src/dough/document/formula.js'

export const dialogWords = {
  close: 'Close',
  leaveUnsaved: 'Leave without keeping what you typed?',
  stay: 'Go on writing',
  lose: 'Leave without it',
} as const

/** Headings of the problems of one severity. */
export const severityWords: Readonly<Record<Problem['severity'], string>> = {
  error: 'Not understood',
  warning: 'Understood with a doubt',
  remark: 'Noticed',
}

export const problemListWords = {
  more: (count: number): string => `And ${count} more; copying takes them all.`,
  copy: 'Copy as text',
} as const

export const measureWords = {
  measures: 'Measures',
  partsAtHand: 'Parts of a cup at hand',
} as const

export const systemWords: Readonly<Record<MeasureSystem, string>> = {
  us: 'US, cup of 237 ml',
  metric: 'Metric, cup of 250 ml',
  imperial: 'Imperial, cup of 284 ml',
}

/** Sets of measures, by the sign of the part that gives a set its name. */
export const fractionWords = { '½': 'halves', '⅓': 'thirds', '¼': 'quarters', '⅛': 'eighths' } as const
