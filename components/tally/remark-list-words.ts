import type { Problem } from '../../src/dough/document/formula.js'

export const remarkWords = {
  remarks: 'Remarks',
  none: 'No remarks.',
  more: (count: number): string => `Show ${count} more`,
  show: (place: string): string => `Show ${place}`,
  someLine: 'the line', // one without an ingredient
} as const

export const severityWords: Readonly<Record<Problem['severity'], string>> = {
  error: 'Error',
  warning: 'Warning',
  remark: 'Remark',
}
