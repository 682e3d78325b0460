import type { Stage } from '../../document/formula.js'
import type { Transaction, Workbook } from '../../document/workbook.js'
import {
  formulaIn,
  type LineAt,
  lineIn,
  named,
  putLine,
  type StageAt,
  stageIn,
  takeLine,
} from '../edit-places.js'
import { withSteps } from '../following-steps.js'
import { fetchedLabels, refuseFetched } from './fetched-words.js'

/** Marks a line as what 100 % means in a stage without flour, or takes the mark away. */
export function markBase(workbook: Workbook, at: LineAt, isBase: boolean): Transaction {
  const { base: _base, ...line } = lineIn(workbook, at)
  const label = fetchedLabels.base(named(line), isBase)
  return { label, changes: [putLine(at, isBase ? { ...line, base: true } : line)] }
}

/** Removes lines of one formula. */
export function removeLines(workbook: Workbook, lines: readonly LineAt[]): Transaction {
  const only = lines.length === 1 ? lineIn(workbook, lines[0]!) : undefined
  const edit = {
    label: only ? fetchedLabels.remove(named(only)) : fetchedLabels.removeLines(lines.length),
    changes: lines.map(takeLine),
  }
  return lines[0] ? withSteps(workbook, lines[0].formula, edit) : edit
}

/** Removes a stage; lines that took it stay, and say that it is gone. The final dough cannot be removed. */
export function removeStage(workbook: Workbook, at: StageAt): Transaction {
  const formula = formulaIn(workbook, at.formula)
  const stage = stageIn(workbook, at)
  if (formula.stages.length === 1) refuseFetched({ code: 'lastStage' })
  return {
    label: fetchedLabels.remove(stage.name),
    changes: [{ of: 'stage', formula: at.formula, id: stage.id }],
  }
}

/** Says whether a stage ferments; undefined leaves it to what the stage holds. */
export function setFerments(workbook: Workbook, at: StageAt, ferments: boolean | undefined): Transaction {
  const { ferments: _before, ...stage } = stageIn(workbook, at)
  const value: Stage = ferments === undefined ? stage : { ...stage, ferments }
  const label = fetchedLabels.ferments(stage.name, ferments)
  return { label, changes: [{ of: 'stage', formula: at.formula, id: stage.id, value }] }
}
