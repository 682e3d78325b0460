import { applyChanges, type Transaction, type Workbook } from '../../../src/dough/document/workbook.js'
import {
  addLine,
  enterAmount,
  enterIngredient,
  enterNote,
  newLine,
  renameStage,
  together,
} from '../../../src/dough/edits/edits.js'
import type { Edit } from '../../base/events.js'
import { type Column, isAmount, type Row } from '../table/table.js'
import { addLabel, addLineLabel } from './words.js'

/** Edits made one upon the other, as one transaction. */
function inTurn(workbook: Workbook, label: string, edits: readonly Edit[]): Transaction | undefined {
  const parts: Transaction[] = []
  let now = workbook
  for (const edit of edits) {
    const part = edit(now)
    if (!part) continue
    now = applyChanges(now, part.changes).workbook
    parts.push(part)
  }
  if (parts.length === 0) return undefined
  return together(parts.length === 1 ? parts[0]!.label : label, parts)
}

/** Types `text` into a column of a line. */
function enterIn(
  formula: string,
  stage: string,
  line: string,
  column: Column,
  text: string,
  decimal: '.' | ',',
): Edit {
  const at = { formula, stage, line }
  return workbook => {
    if (column === 'ingredient') return enterIngredient(workbook, at, text)
    if (column === 'note') return enterNote(workbook, at, text)
    if (isAmount(column)) return enterAmount(workbook, at, column, text, decimal)
    return undefined
  }
}

/** Types `text` into a cell; in the row for another ingredient it begins the line `begun`. */
export function enterInCell(
  formula: string,
  row: Row,
  column: Column,
  text: string,
  decimal: '.' | ',',
  begun: string,
): Edit {
  return workbook => {
    if (row.kind === 'stage') return renameStage(workbook, { formula, stage: row.stage.id }, text)
    if (row.kind === 'line') return enterIn(formula, row.stage, row.line.id, column, text, decimal)(workbook)
    const at = { formula, stage: row.stage }
    const line = { ...newLine(), id: begun }
    const parts = [() => addLine(at, line), enterIn(formula, row.stage, begun, column, text, decimal)]
    const made = inTurn(workbook, '', parts)
    return made && { ...made, label: column === 'ingredient' ? addLabel(text.trim()) : addLineLabel }
  }
}
