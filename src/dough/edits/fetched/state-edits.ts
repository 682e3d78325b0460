import { type Formula, type KeptState, newId } from '../../document/formula.js'
import type { Transaction, Workbook } from '../../document/workbook.js'
import { clearAway } from '../clear-away.js'
import { formulaIn } from '../edit-places.js'
import { fetchedLabels, refuseFetched } from './fetched-words.js'

/** Keeps the formula as it stands under a name, to be read, compared and brought back. `at` is ISO 8601. */
export function keepState(workbook: Workbook, id: string, name: string, at: string): Transaction {
  const { states = [], group: _group, ...formula } = formulaIn(workbook, id)
  const wanted = name.trim()
  if (!wanted) refuseFetched({ code: 'stateWithoutName' })
  const state: KeptState = { id: newId(), name: wanted, keptAt: at, formula }
  return {
    label: fetchedLabels.keepState(wanted),
    changes: [{ of: 'fields', formula: id, value: { states: [...states, state] } }],
  }
}

function stateIn(workbook: Workbook, id: string, state: string): { formula: Formula; state: KeptState } {
  const formula = formulaIn(workbook, id)
  const found = formula.states?.find(s => s.id === state)
  if (!found) refuseFetched({ code: 'stateGone' })
  return { formula, state: found }
}

/** Makes the formula what it was in a kept state; its name, its group and the states stay. */
export function bringBack(workbook: Workbook, id: string, state: string): Transaction {
  const { formula, state: kept } = stateIn(workbook, id, state)
  const { group: _group, ...then } = kept.formula
  const { name, group, states } = formula
  const value: Formula = { ...then, id, name, ...(group && { group }), states: states! }
  return { label: fetchedLabels.bringBack(kept.name), changes: [{ of: 'formula', id, value }] }
}

/** Lets a kept state go: it is cleared away. */
export function forgetState(workbook: Workbook, id: string, state: string): Transaction {
  const { formula, state: kept } = stateIn(workbook, id, state)
  const index = formula.states!.indexOf(kept)
  const states = formula.states!.filter(s => s !== kept)
  return {
    label: fetchedLabels.forgetState(kept.name),
    changes: [
      { of: 'fields', formula: id, value: { states } },
      clearAway({ of: 'state', thing: kept, index, formula: id, called: formula.name }),
    ],
  }
}
