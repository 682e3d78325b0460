import { type Formula, finalDoughOf } from '../document/formula.js'
import type { Transaction, Workbook } from '../document/workbook.js'
import { formulaIn, type StageAt } from './edit-places.js'
import { labels, refuse } from './words.js'

export function renameFormula(workbook: Workbook, id: string, name: string): Transaction {
  const wanted = name.trim()
  if (!wanted) refuse({ code: 'formulaWithoutName' })
  return {
    label: labels.rename(formulaIn(workbook, id).name, wanted),
    changes: [{ of: 'fields', formula: id, value: { name: wanted } }],
  }
}

export function setFormulaNote(workbook: Workbook, id: string, note: string): Transaction {
  return {
    label: labels.note(formulaIn(workbook, id).name),
    changes: [{ of: 'fields', formula: id, value: { note } }],
  }
}

/** Sets what 100 % weighs in the final dough, grams. */
export function setFlourWeight(workbook: Workbook, id: string, grams: number): Transaction {
  formulaIn(workbook, id)
  if (!(grams > 0 && Number.isFinite(grams))) refuse({ code: 'flourWeightNotAboveZero' })
  return {
    label: labels.flourWeight(grams),
    changes: [{ of: 'fields', formula: id, value: { flourWeight: grams } }],
  }
}

export function renameWorkbook(name: string): Transaction {
  return { label: labels.renameWorkbook, changes: [{ of: 'workbook', value: { name: name.trim() } }] }
}

/** The formula's final dough by ids. */
export const finalDoughAt = (formula: Formula): StageAt => ({
  formula: formula.id,
  stage: finalDoughOf(formula).id,
})
