import { type Line, newId, type Stage, sameName } from '../document/formula.js'
import type { Change, Transaction, Workbook } from '../document/workbook.js'
import { formulaIn, type StageAt, stageIn } from './edit-places.js'
import { withSteps } from './following-steps.js'
import { jottingsWithNames, stageName, withNames } from './renaming.js'
import { labels, refuse } from './words.js'

export const newStage = (name: string, lines: readonly Line[] = []): Stage => ({ id: newId(), name, lines })

/** Adds a stage before the final dough, or at `index`. */
export function addStage(workbook: Workbook, formula: string, stage: Stage, index?: number): Transaction {
  const last = formulaIn(workbook, formula).stages.length - 1
  return {
    label: labels.add(stage.name),
    changes: [{ of: 'stage', formula, id: stage.id, value: stage, index: index ?? last }],
  }
}

/** Renames a stage, and with it the lines and amounts that speak of it. Throws Refusal when the name is taken. */
export function renameStage(workbook: Workbook, at: StageAt, name: string): Transaction {
  const formula = formulaIn(workbook, at.formula)
  const stage = stageIn(workbook, at)
  const wanted = name.trim()
  if (!wanted) refuse({ code: 'stageWithoutName' })
  if (formula.stages.some(s => s.id !== stage.id && sameName(s.name, wanted)))
    refuse({ code: 'stageNameTaken', name: wanted })
  const renamed = stageName(stage.name, wanted)
  const changes: Change[] = formula.stages.flatMap(s => {
    const lines = s.lines.map(l => {
      const ingredient = sameName(l.ingredient, stage.name) ? wanted : l.ingredient
      const amount = withNames(l.amount, renamed)
      return ingredient === l.ingredient && amount === l.amount ? l : { ...l, ingredient, amount }
    })
    const changed = s.id === stage.id || lines.some((l, i) => l !== s.lines[i])
    const value: Stage = { ...s, name: s.id === stage.id ? wanted : s.name, lines }
    return changed ? [{ of: 'stage', formula: at.formula, id: s.id, value }] : []
  })
  const jottings = jottingsWithNames(formula.jottings, renamed)
  if (jottings) changes.push({ of: 'fields', formula: at.formula, value: { jottings } })
  return withSteps(workbook, at.formula, { label: labels.rename(stage.name, wanted), changes })
}

export function moveStage(workbook: Workbook, at: StageAt, by: -1 | 1): Transaction | undefined {
  const formula = formulaIn(workbook, at.formula)
  const stage = stageIn(workbook, at)
  const to = formula.stages.indexOf(stage) + by
  if (to < 0 || to >= formula.stages.length) return undefined
  return {
    label: labels.moveStage(stage.name, by),
    changes: [{ of: 'stage', formula: at.formula, id: stage.id, value: stage, index: to }],
  }
}
