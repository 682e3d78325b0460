import type { Worded } from '../../engine/index.js'
import type { ReadingName } from '../document/reading-names.js'

/** What a working can be asked of: a reading, a figure of a line, or a figure of a stage, by ids. */
export type CellName =
  | ReadingName
  | `line ${string} ${'weight' | 'percent' | 'wholeDough' | 'batch'}`
  | `jotting ${string}`
  | `stage ${string} ${'base' | 'weight' | 'taken' | 'build' | 'water' | 'flour' | 'salt' | 'prefermented' | 'moisture' | 'soaked' | 'fat' | 'sugar' | 'egg' | 'milk'}`

/** One figure that a number was worked out from. */
export interface Source {
  readonly words: string // `carried by Levain`
  readonly figure: string // with its unit: `95.5 g`
  readonly how: string // the arithmetic behind it, '' for none: `210 g × 100 g ÷ 220 g`
  readonly value: number | undefined
  readonly cell?: CellName // to be followed further
  readonly line?: string // id of the line it came from
}

/** How a number came about: the arithmetic in words, the same with its figures, and where they came from. */
export interface Working {
  readonly title: string // `True hydration`
  readonly words: string // `all water ÷ all flour`
  readonly figures: string // `785.5 g ÷ 1,114.5 g = 70.5 %`
  readonly value: number | undefined // gram, or fraction of 1
  readonly sources: readonly Source[]
  readonly problem?: Worded // why there is no figure
}

/** A working as plain text, to be copied. */
export function workingText({ title, words, figures, sources, problem }: Working): string {
  const lines = sources.map(s => `  ${s.words}: ${s.figure}${s.how ? ` (${s.how})` : ''}`)
  return [title, words, figures, ...lines, ...(problem ? [problem.message] : [])].filter(Boolean).join('\n')
}
