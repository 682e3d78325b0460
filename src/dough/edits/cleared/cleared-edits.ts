import { type ClearedThing, readClearedData } from '../../data/cleared-data.js'
import type { Day } from '../../document/day.js'
import { copyOf, type Formula, type KeptState, nameKey, newId } from '../../document/formula.js'
import type { Ingredient } from '../../document/larder.js'
import type { Change, Cleared, Transaction, Workbook } from '../../document/workbook.js'
import { larderWith } from '../../larder/usual-larder.js'
import { freeAmong, freeName } from '../fetched/shelf-edits.js'
import { Refusal } from '../words.js'
import { clearedLabels, clearedProblem } from './words.js'

/** What was deleted, as it can be shown: read, or undefined where nothing can be made of it. */
export const readCleared = (cleared: Cleared): ClearedThing | undefined => readClearedData(cleared, () => {})

/** What bringing something back makes of it. */
export interface BroughtBack {
  readonly of: ClearedThing['of']
  readonly name: string // that it had
  readonly now: string // that it has, other than it had where that is taken
  readonly formula?: string // id of the one that is on the shelf with it
  readonly called?: string // name of the formula a state was kept of
  readonly alone?: true // a state that is a formula of its own, since the one it was kept of is gone
}

interface Back {
  readonly changes: readonly Change[]
  readonly done: BroughtBack
}

function clearedIn(workbook: Workbook, id: string): Cleared {
  const found = workbook.cleared?.find(cleared => cleared.id === id)
  if (!found) throw new Refusal(clearedProblem({ code: 'clearedGone' }))
  return found
}

/**
 * Brings back what was deleted, to where it stood, and says what becomes of it. It has another name where that is taken by
 * now, and a state whose formula is gone is a formula of its own.
 */
export function bringBackCleared(
  workbook: Workbook,
  id: string,
): { readonly transaction: Transaction; readonly done: BroughtBack } {
  const cleared = readCleared(clearedIn(workbook, id))
  if (!cleared) throw new Refusal(clearedProblem({ code: 'clearedDamaged' }))
  const { changes, done } = backOf(workbook, cleared)
  const label = clearedLabels.bringBack(cleared.thing.name)
  return { transaction: { label, changes: [...changes, { of: 'cleared', id }] }, done }
}

function backOf(workbook: Workbook, cleared: ClearedThing): Back {
  const { index = Number.MAX_SAFE_INTEGER } = cleared
  switch (cleared.of) {
    case 'formula':
      return formulaBack(workbook, cleared.thing, index)
    case 'state':
      return stateBack(workbook, cleared.thing, index, cleared)
    case 'ingredient':
      return ingredientBack(workbook, cleared.thing, index)
    case 'day':
      return dayBack(workbook, cleared.thing, index)
  }
}

const idTaken = (list: readonly { readonly id: string }[], id: string): boolean =>
  list.some(item => item.id === id)

function formulaBack(workbook: Workbook, formula: Formula, index: number): Back {
  const now = freeName(workbook, formula.name)
  const value = idTaken(workbook.formulas, formula.id) ? copyOf(formula, now) : { ...formula, name: now }
  return {
    changes: [{ of: 'formula', id: value.id, value, index }],
    done: { of: 'formula', name: formula.name, now, formula: value.id },
  }
}

function stateBack(
  workbook: Workbook,
  state: KeptState,
  index: number,
  { formula: id, called }: { readonly formula: string; readonly called: string },
): Back {
  const formula = workbook.formulas.find(f => f.id === id)
  const { name } = state
  if (!formula) {
    const now = freeName(workbook, `${called}, ${name}`)
    const value = copyOf(state.formula, now)
    return {
      changes: [{ of: 'formula', id: value.id, value }],
      done: { of: 'state', name, now, formula: value.id, called, alone: true },
    }
  }
  const states = [...(formula.states ?? [])]
  const now = freeAmong(new Set(states.map(s => nameKey(s.name))), name)
  states.splice(index, 0, { ...state, name: now, id: idTaken(states, state.id) ? newId() : state.id })
  return {
    changes: [{ of: 'fields', formula: id, value: { states } }],
    done: { of: 'state', name, now, formula: id, called: formula.name },
  }
}

/** What is known by its names stays what they mean: they are names of formulas' lines. */
function ingredientBack({ larder }: Workbook, ingredient: Ingredient, index: number): Back {
  const known = larderWith(larder)
  const id = idTaken(larder, ingredient.id) ? newId() : ingredient.id
  const isFree = (name: string): boolean => (known.find(name)?.id ?? id) === id
  const { name } = ingredient
  const taken = new Set<string>()
  let now = name
  while (!isFree(now)) {
    taken.add(nameKey(now))
    now = freeAmong(taken, name)
  }
  const value = { ...ingredient, id, name: now, otherNames: ingredient.otherNames.filter(isFree) }
  return { changes: [{ of: 'ingredient', id, value, index }], done: { of: 'ingredient', name, now } }
}

function dayBack({ days = [] }: Workbook, day: Day, index: number): Back {
  const names = days.filter(({ date }) => date === day.date).map(({ name }) => nameKey(name))
  const now = freeAmong(new Set(names), day.name)
  const value = { ...day, name: now, id: idTaken(days, day.id) ? newId() : day.id }
  return {
    changes: [{ of: 'day', id: value.id, value, index }],
    done: { of: 'day', name: day.name, now },
  }
}

/** Deletes something for good that was deleted before. */
export function forgetCleared(workbook: Workbook, id: string): Transaction {
  const name = readCleared(clearedIn(workbook, id))?.thing.name ?? clearedLabels.aThing
  return { label: clearedLabels.forget(name), changes: [{ of: 'cleared', id }] }
}

/** Deletes everything for good that was deleted before. */
export function forgetAllCleared({ cleared = [] }: Workbook): Transaction {
  return {
    label: clearedLabels.forgetAll(cleared.length),
    changes: cleared.map(({ id }) => ({ of: 'cleared', id })),
  }
}
