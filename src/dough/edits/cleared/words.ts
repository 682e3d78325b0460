import { type Sentences, wording } from '../../../engine/index.js'

/** Why what was deleted cannot be brought back. */
export interface ClearedDiagnostic {
  readonly code: 'clearedGone' | 'clearedDamaged'
}

export const clearedSentences: Sentences<ClearedDiagnostic> = {
  clearedGone: 'That is no longer kept.',
  clearedDamaged: 'That cannot be read any more, so it stays where it is.',
}

export const clearedProblem = wording(clearedSentences)

export const clearedLabels = {
  bringBack: (name: string) => `Bring back ${name}`,
  forget: (name: string) => `Delete ${name} for good`,
  forgetAll: (count: number) => `Delete ${count} things for good`,
  aThing: 'a thing', // whose name cannot be read
} as const
