import { copyOf, type Formula, nameKey, newId, usualFlourWeight } from '../../document/formula.js'
import type { Change, Transaction, Workbook } from '../../document/workbook.js'
import { clearingAway } from '../clear-away.js'
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
export function freeAmong(taken: ReadonlySet<string>, name: string): string {
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

/** Puts `formula` in the place of the one called the same, which is cleared away; its id stays. */
export function replaceFormula(workbook: Workbook, id: string, formula: Formula): Transaction {
  const before = formulaIn(workbook, id)
  const label = fetchedLabels.replaceFormula(before.name)
  const changes: Change[] = [{ of: 'formula', id, value: { ...formula, id } }]
  return clearingAway(workbook, { label, changes }, { replaced: true })
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

/** Clears a formula away. */
export function removeFormula(workbook: Workbook, id: string): Transaction {
  const label = fetchedLabels.deleteFormula(formulaIn(workbook, id).name)
  return clearingAway(workbook, { label, changes: [{ of: 'formula', id }] })
}

/** Several as one edit. */
export function removeFormulas(workbook: Workbook, ids: readonly string[]): Transaction {
  const [first, ...others] = ids.map(id => removeFormula(workbook, id))
  if (first && others.length === 0) return first
  return {
    label: fetchedLabels.deleteFormulas(ids.length),
    changes: [first!, ...others].flatMap(({ changes }) => changes),
  }
}

/** The names of the groups on the shelf, each once and as it was first written. */
export function groupsOf({ formulas }: Pick<Workbook, 'formulas'>): readonly string[] {
  const groups = new Map<string, string>()
  for (const { group } of formulas)
    if (group && !groups.has(nameKey(group))) groups.set(nameKey(group), group)
  return [...groups.values()]
}

/** Puts formulas into a group of the shelf, spelled as it is known there; '' takes them out of theirs. */
export function groupFormulas(workbook: Workbook, ids: readonly string[], name: string): Transaction {
  const wanted = name.trim()
  const group = groupsOf(workbook).find(known => nameKey(known) === nameKey(wanted)) ?? wanted
  const formulas = ids.map(id => formulaIn(workbook, id))
  const changes = formulas.flatMap((formula): Change[] => {
    const { group: before = '', ...without } = formula
    if (before === group) return []
    return group
      ? [{ of: 'fields', formula: formula.id, value: { group } }]
      : [{ of: 'formula', id: formula.id, value: without }]
  })
  const what = formulas.length === 1 ? formulas[0]!.name : formulas.length
  return { label: group ? fetchedLabels.group(what, group) : fetchedLabels.ungroup(what), changes }
}
