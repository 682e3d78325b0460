import { copyOf, type Formula, nameKey, newId, usualFlourWeight } from '../../document/formula.js'
import type { Change, Transaction, Workbook } from '../../document/workbook.js'
import { formulaIn } from '../edit-places.js'
import { newLine } from '../line-edits.js'
import { newStage } from '../stage-edits.js'
import { fetchedLabels } from './fetched-words.js'

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
    formulas.length === 1
      ? fetchedLabels.addFormula(formulas[0]!.name)
      : fetchedLabels.addFormulas(formulas.length)
  return { label, changes }
}

/** Puts `formula` in the place of the one called the same; its id stays. */
export function replaceFormula(workbook: Workbook, id: string, formula: Formula): Transaction {
  const before = formulaIn(workbook, id)
  return {
    label: fetchedLabels.replaceFormula(before.name),
    changes: [{ of: 'formula', id, value: { ...formula, id } }],
  }
}

export function duplicateFormula(workbook: Workbook, id: string): Transaction {
  const before = formulaIn(workbook, id)
  const value = copyOf(before, freeName(workbook, before.name))
  const index = workbook.formulas.indexOf(before) + 1
  return {
    label: fetchedLabels.duplicateFormula(before.name),
    changes: [{ of: 'formula', id: value.id, value, index }],
  }
}

export function removeFormula(workbook: Workbook, id: string): Transaction {
  return {
    label: fetchedLabels.deleteFormula(formulaIn(workbook, id).name),
    changes: [{ of: 'formula', id }],
  }
}
