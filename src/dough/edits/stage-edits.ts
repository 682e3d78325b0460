import type { KeepBack } from '../document/batch.js'
import { type Line, newId, type Stage, sameName } from '../document/formula.js'
import { grams, per100 } from '../document/words.js'
import type { Change, Transaction, Workbook } from '../document/workbook.js'
import { formulaIn, Refusal, type StageAt, stageIn } from './edit-places.js'
import { jottingsWithNames, stageName, withNames } from './renaming.js'

export const newStage = (name: string, lines: readonly Line[] = []): Stage => ({ id: newId(), name, lines })

/** Adds a stage before the final dough, or at `index`. */
export function addStage(workbook: Workbook, formula: string, stage: Stage, index?: number): Transaction {
  const last = formulaIn(workbook, formula).stages.length - 1
  return {
    label: `Add ${stage.name}`,
    changes: [{ of: 'stage', formula, id: stage.id, value: stage, index: index ?? last }],
  }
}

/** Renames a stage, and with it the lines and amounts that speak of it. Throws Refusal when the name is taken. */
export function renameStage(workbook: Workbook, at: StageAt, name: string): Transaction {
  const formula = formulaIn(workbook, at.formula)
  const stage = stageIn(workbook, at)
  const wanted = name.trim()
  if (!wanted) throw new Refusal('A stage needs a name, so that other stages can take it.')
  if (formula.stages.some(s => s.id !== stage.id && sameName(s.name, wanted)))
    throw new Refusal(`There is a stage called ${wanted} already.`)
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
  return { label: `Rename ${stage.name} to ${wanted}`, changes }
}

/** Removes a stage; lines that took it stay, and say that it is gone. The final dough cannot be removed. */
export function removeStage(workbook: Workbook, at: StageAt): Transaction {
  const formula = formulaIn(workbook, at.formula)
  const stage = stageIn(workbook, at)
  if (formula.stages.length === 1) throw new Refusal('A formula keeps at least its final dough.')
  return { label: `Remove ${stage.name}`, changes: [{ of: 'stage', formula: at.formula, id: stage.id }] }
}

export function moveStage(workbook: Workbook, at: StageAt, by: -1 | 1): Transaction | undefined {
  const formula = formulaIn(workbook, at.formula)
  const stage = stageIn(workbook, at)
  const to = formula.stages.indexOf(stage) + by
  if (to < 0 || to >= formula.stages.length) return undefined
  return {
    label: `Move ${stage.name} ${by < 0 ? 'earlier' : 'later'}`,
    changes: [{ of: 'stage', formula: at.formula, id: stage.id, value: stage, index: to }],
  }
}

/** Says whether a stage ferments; undefined leaves it to what the stage holds. */
export function setFerments(workbook: Workbook, at: StageAt, ferments: boolean | undefined): Transaction {
  const { ferments: _before, ...stage } = stageIn(workbook, at)
  const value: Stage = ferments === undefined ? stage : { ...stage, ferments }
  const label =
    ferments === undefined
      ? `Let ${stage.name} decide whether it ferments`
      : `${stage.name} ${ferments ? 'ferments' : 'does not ferment'}`
  return { label, changes: [{ of: 'stage', formula: at.formula, id: stage.id, value }] }
}

/** Says how much of a stage to make beyond what is taken: grams, or as much as its seed; 0 is none. */
export function setKeepBack(workbook: Workbook, at: StageAt, keepBack: KeepBack): Transaction {
  const { keepBack: _before, ...stage } = stageIn(workbook, at)
  if (keepBack !== 'seed' && !(keepBack >= 0 && Number.isFinite(keepBack)))
    throw new Refusal('What is kept back is a number of grams, 0 or more.')
  const value: Stage = keepBack === 0 ? stage : { ...stage, keepBack }
  const words = keepBack === 'seed' ? 'as much as the seed' : grams(keepBack)
  return {
    label: `Keep back ${words} of ${stage.name}`,
    changes: [{ of: 'stage', formula: at.formula, id: stage.id, value }],
  }
}

/** Says what part of a stage is lost on the way, fraction of 1. */
export function setStageLoss(workbook: Workbook, at: StageAt, loss: number): Transaction {
  const { loss: _before, ...stage } = stageIn(workbook, at)
  if (!(loss >= 0 && loss < 1)) throw new Refusal('A loss is a percentage from 0 to below 100.')
  const value: Stage = loss === 0 ? stage : { ...stage, loss }
  return {
    label: `${stage.name}: ${per100(loss)} lost`,
    changes: [{ of: 'stage', formula: at.formula, id: stage.id, value }],
  }
}
