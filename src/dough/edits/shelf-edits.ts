import type { Batch, Scale } from '../document/batch.js'
import { batchProblem, scaleProblem } from '../document/checks.js'
import { type Formula, finalDoughOf, nameKey, newId, usualFlourWeight } from '../document/formula.js'
import type { Ingredient } from '../document/larder.js'
import type { Change, Transaction, Workbook } from '../document/workbook.js'
import { formulaIn, type StageAt } from './edit-places.js'
import { newLine } from './line-edits.js'
import { newStage } from './stage-edits.js'
import { labels, Refusal, refuse } from './words.js'

/** A formula to begin with by percentages: flour, water, salt, one levain. */
export function blankFormula(name = 'New formula'): Formula {
  const levain = newStage('Levain', [
    newLine({ ingredient: 'Ripe starter', amount: '20%' }),
    newLine({ ingredient: 'Bread flour', amount: '100%' }),
    newLine({ ingredient: 'Water', amount: '100%' }),
  ])
  const dough = newStage('Final dough', [
    newLine({ ingredient: 'Bread flour', amount: '100%' }),
    newLine({ ingredient: 'Water', amount: '70%' }),
    newLine({ ingredient: 'Salt', amount: '2%' }),
    newLine({ ingredient: 'Levain', amount: '20%' }),
  ])
  return {
    id: newId(),
    name,
    note: '',
    flourWeight: usualFlourWeight,
    stages: [levain, dough],
    meanings: [],
    keptSettings: [],
  }
}

/** Says how much to make. Throws Refusal for an amount that cannot be. */
export function setBatch(workbook: Workbook, id: string, batch: Batch): Transaction {
  formulaIn(workbook, id)
  const problem = batchProblem(batch)
  if (problem) throw new Refusal(problem)
  return { label: labels.batch(batch), changes: [{ of: 'fields', formula: id, value: { batch } }] }
}

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

/** `name`, or `name 2`, `name 3`, … where that is among the keys of names taken. */
function freeAmong(taken: ReadonlySet<string>, name: string): string {
  for (let n = 1; ; n++) {
    const tried = n === 1 ? name : `${name} ${n}`
    if (!taken.has(nameKey(tried))) return tried
  }
}

const namesTaken = (workbook: Workbook): Set<string> => new Set(workbook.formulas.map(f => nameKey(f.name)))

/** `name`, or `name 2`, `name 3`, … where that is taken on the shelf. */
export const freeName = (workbook: Workbook, name: string): string => freeAmong(namesTaken(workbook), name)

/** Puts formulas on the shelf, last; each under a name that is free. */
export function addFormulas(workbook: Workbook, formulas: readonly Formula[]): Transaction {
  const taken = namesTaken(workbook)
  const changes = formulas.map((formula): Change => {
    const value = { ...formula, name: freeAmong(taken, formula.name) }
    taken.add(nameKey(value.name))
    return { of: 'formula', id: value.id, value }
  })
  const label =
    formulas.length === 1 ? labels.addFormula(formulas[0]!.name) : labels.addFormulas(formulas.length)
  return { label, changes }
}

/** Puts `formula` in the place of the one called the same; its id stays. */
export function replaceFormula(workbook: Workbook, id: string, formula: Formula): Transaction {
  const before = formulaIn(workbook, id)
  return {
    label: labels.replaceFormula(before.name),
    changes: [{ of: 'formula', id, value: { ...formula, id } }],
  }
}

/** A copy with ids of its own. */
export function copyOf(formula: Formula, name: string): Formula {
  const ids = new Map(formula.stages.flatMap(s => s.lines.map(l => [l.id, newId()] as const)))
  const stages = formula.stages.map(s => ({
    ...s,
    id: newId(),
    lines: s.lines.map(l => ({ ...l, id: ids.get(l.id)! })),
    ...(s.method && { method: s.method.map(step => ({ ...step, id: newId() })) }),
  }))
  const holds = formula.holds?.map(h => ({ ...h, line: ids.get(h.line) ?? h.line }))
  return { ...formula, id: newId(), name, stages, ...(holds && { holds }) }
}

export function duplicateFormula(workbook: Workbook, id: string): Transaction {
  const before = formulaIn(workbook, id)
  const value = copyOf(before, freeName(workbook, before.name))
  const index = workbook.formulas.indexOf(before) + 1
  return {
    label: labels.duplicateFormula(before.name),
    changes: [{ of: 'formula', id: value.id, value, index }],
  }
}

export function removeFormula(workbook: Workbook, id: string): Transaction {
  return { label: labels.deleteFormula(formulaIn(workbook, id).name), changes: [{ of: 'formula', id }] }
}

/** Puts an ingredient of the baker's own in the larder, or in the place of the one with its id. */
export function defineIngredient(ingredient: Ingredient): Transaction {
  return {
    label: labels.defineIngredient(ingredient.name),
    changes: [{ of: 'ingredient', id: ingredient.id, value: ingredient }],
  }
}

/** Takes the baker's own ingredient, or change to a usual one, out of the larder. */
export function forgetIngredient(workbook: Workbook, id: string): Transaction {
  const name = workbook.larder.find(i => i.id === id)?.name
  return { label: labels.forgetIngredient(name), changes: [{ of: 'ingredient', id }] }
}

export function renameWorkbook(name: string): Transaction {
  return { label: labels.renameWorkbook, changes: [{ of: 'workbook', value: { name: name.trim() } }] }
}

/** Says how the baker's scale weighs. Throws Refusal for steps that cannot be. */
export function setScale(scale: Scale): Transaction {
  const problem = scaleProblem(scale)
  if (problem) throw new Refusal(problem)
  return {
    label: labels.scale(scale),
    changes: [{ of: 'workbook', value: { scale } }],
  }
}

/** The formula's final dough by ids. */
export const finalDoughAt = (formula: Formula): StageAt => ({
  formula: formula.id,
  stage: finalDoughOf(formula).id,
})
