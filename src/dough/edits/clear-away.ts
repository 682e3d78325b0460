import { newId } from '../document/formula.js'
import type { Change, Transaction, Workbook } from '../document/workbook.js'

interface HasId {
  readonly id: string
}

/** Of what is cleared away: what it is, and whatever else is to be known of it. */
export interface ClearedFacts {
  readonly of: 'formula' | 'ingredient' | 'day' | 'state'
  readonly thing: HasId
  readonly index: number // where it stood in its list
  readonly formula?: string // id of the one a state was kept of
  readonly called?: string // and its name
}

const isoNow = (): string => new Date().toISOString()

/** Clears something away that an edit deletes. `at`: when, ISO 8601. */
export function clearAway(facts: ClearedFacts, at = isoNow()): Change {
  const id = newId()
  return { of: 'cleared', id, value: { id, at, ...facts } }
}

/** What of a transaction is cleared away. */
export interface ClearingAway {
  readonly at?: string // when, ISO 8601; left out: now
  readonly replaced?: true // also those in whose place it puts others
  readonly but?: ReadonlySet<unknown> // those that are not gone: the same is elsewhere in what it puts there
}

/**
 * The transaction with everything cleared away that it takes out of the workbook: the formulas, the ingredients and the days
 * that it removes.
 */
export function clearingAway(
  workbook: Workbook,
  { label, changes }: Transaction,
  { at = isoNow(), replaced, but }: ClearingAway = {},
): Transaction {
  const lists = { formula: workbook.formulas, ingredient: workbook.larder, day: workbook.days ?? [] } as const
  const isWhole = (change: Change): change is Extract<Change, { of: keyof typeof lists }> =>
    Object.hasOwn(lists, change.of)
  const last = new Map(changes.filter(isWhole).map(change => [`${change.of} ${change.id}`, change]))
  const gone = [...last.values()].flatMap(({ of, id, value }): Change[] => {
    const list: readonly HasId[] = lists[of]
    const index = list.findIndex(item => item.id === id)
    const thing = list[index]
    const stays = !thing || value === thing || (value && !replaced) || but?.has(thing)
    return stays ? [] : [clearAway({ of, thing, index }, at)]
  })
  return { label, changes: [...changes, ...gone] }
}
