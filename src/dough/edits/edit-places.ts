import type { Formula, Line, Stage } from '../document/formula.js'
import type { LineChange, Transaction, Workbook } from '../document/workbook.js'
import { refuse } from './words.js'

/** A line by ids. */
export interface LineAt {
  readonly formula: string
  readonly stage: string
  readonly line: string
}

/** A stage by ids. */
export interface StageAt {
  readonly formula: string
  readonly stage: string
}

/** Several edits as one, undone together. */
export const together = (label: string, parts: readonly Transaction[]): Transaction => ({
  label,
  changes: parts.flatMap(part => part.changes),
})

export function formulaIn(workbook: Workbook, id: string): Formula {
  const formula = workbook.formulas.find(f => f.id === id)
  if (!formula) refuse({ code: 'formulaGone' })
  return formula
}

export function stageIn(workbook: Workbook, at: StageAt): Stage {
  const stage = formulaIn(workbook, at.formula).stages.find(s => s.id === at.stage)
  if (!stage) refuse({ code: 'stageGone' })
  return stage
}

export function lineIn(workbook: Workbook, at: LineAt): Line {
  const line = stageIn(workbook, at).lines.find(l => l.id === at.line)
  if (!line) refuse({ code: 'lineGone' })
  return line
}

/** Puts a line at its id, where it is, last, or at `index`. */
export const putLine = (at: StageAt, line: Line, index?: number): LineChange => ({
  of: 'line',
  formula: at.formula,
  stage: at.stage,
  id: line.id,
  value: line,
  ...(index === undefined ? {} : { index }),
})
export const takeLine = (at: LineAt): LineChange => ({
  of: 'line',
  formula: at.formula,
  stage: at.stage,
  id: at.line,
})
/** What to call a line in a sentence. */
export const named = (line: Line): string => line.ingredient || 'a line'
