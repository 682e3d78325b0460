import type { Scale } from './batch.js'
import type { Day } from './day.js'
import type { Formula, Line, Stage } from './formula.js'
import type { Ingredient } from './larder.js'

/** Everything a baker keeps, as plain immutable data: every edit makes a new one. */
export interface Workbook {
  readonly name: string // the bakehouse or notebook, shown at the top
  readonly formulas: readonly Formula[] // in the order of the shelf
  readonly larder: readonly Ingredient[] // the baker's own and changed ingredients only
  readonly scale?: Scale // left out: the usual one
  readonly leeway?: number // how far a wait of one time moves on a day, fraction of 1; left out: the usual 0.15
  readonly days?: readonly Day[] // in the order they were planned; left out: none
  readonly later?: LaterFields
}

/** Fields of a workbook file that this version does not know, kept so that the next file has them again. */
export type LaterFields = Readonly<Record<string, unknown>>

/** What a workbook may have or not have: those of `from` that it has. */
export const optionsOf = ({
  scale,
  leeway,
  later,
}: WorkbookOptions): Pick<Workbook, keyof WorkbookOptions> => ({
  ...(scale && { scale }),
  ...(leeway !== undefined && { leeway }),
  ...(later && { later }),
})

/** Undefined: the usual ones, and no fields of a later version. */
export interface WorkbookOptions {
  readonly scale?: Scale | undefined
  readonly leeway?: number | undefined
  readonly later?: LaterFields | undefined
}

/** The workbook with these days; one without any has no list of them. */
export const withDays = ({ days: _before, ...workbook }: Workbook, days: readonly Day[]): Workbook =>
  days.length > 0 ? { ...workbook, days } : workbook

export const emptyWorkbook: Workbook = { name: '', formulas: [], larder: [] }

/**
 * One step of an edit: a thing is put at an id, or taken away (`value` undefined). Ids, never positions,
 * say what is meant; `index` says only where in its list a thing goes (left out: where it is, or last).
 */
export type Change =
  | {
      readonly of: 'workbook' // those of its own fields that change
      readonly value: { readonly name?: string } & WorkbookOptions
    }
  | { readonly of: 'day'; readonly id: string; readonly value?: Day; readonly index?: number }
  | { readonly of: 'ingredient'; readonly id: string; readonly value?: Ingredient; readonly index?: number }
  | { readonly of: 'formula'; readonly id: string; readonly value?: Formula; readonly index?: number }
  | {
      readonly of: 'fields' // of a formula: everything but its id and stages
      readonly formula: string
      readonly value: Partial<Omit<Formula, 'id' | 'stages'>>
    }
  | {
      readonly of: 'stage'
      readonly formula: string
      readonly id: string
      readonly value?: Stage
      readonly index?: number
    }
  | {
      readonly of: 'line'
      readonly formula: string
      readonly stage: string
      readonly id: string
      readonly value?: Line
      readonly index?: number
    }

/** An edit as the baker knows it: undone, saved and announced as one. */
export interface Transaction {
  readonly label: string // what was done, in words: `Change salt in Final dough`
  readonly changes: readonly Change[]
}

interface HasId {
  readonly id: string
}

interface Put<T> {
  readonly list: readonly T[]
  readonly inverse: { readonly value?: T; readonly index?: number }
}

/** Puts `value` at `id` in `list`, or takes it away, and says what would undo that. */
function put<T extends HasId>(list: readonly T[], id: string, value: T | undefined, index?: number): Put<T> {
  const at = list.findIndex(item => item.id === id)
  const before = list[at]
  const rest = list.filter(item => item.id !== id)
  if (value) {
    const to = index ?? (at < 0 ? rest.length : at)
    rest.splice(Math.max(0, Math.min(to, rest.length)), 0, value)
  }
  return { list: rest, inverse: before ? { value: before, index: at } : {} }
}

function need<T extends HasId>(list: readonly T[], id: string, what: string): T {
  const found = list.find(item => item.id === id)
  if (!found) throw new RangeError(`There is no ${what} ${id} here any more.`)
  return found
}

function inFormula(workbook: Workbook, id: string, edit: (formula: Formula) => Formula): Workbook {
  need(workbook.formulas, id, 'formula')
  return { ...workbook, formulas: workbook.formulas.map(f => (f.id === id ? edit(f) : f)) }
}

/** One change made, and the change that takes it back. Throws RangeError when its place is gone. */
function applyOne(workbook: Workbook, change: Change): { workbook: Workbook; inverse: Change } {
  switch (change.of) {
    case 'workbook': {
      const { name, scale, leeway, later, ...rest } = workbook
      const before = { name, scale, leeway, later }
      const after = { ...before, ...change.value }
      return {
        workbook: { ...rest, name: after.name, ...optionsOf(after) },
        inverse: { of: 'workbook', value: before },
      }
    }
    case 'ingredient': {
      const { list, inverse } = put(workbook.larder, change.id, change.value, change.index)
      return {
        workbook: { ...workbook, larder: list },
        inverse: { of: 'ingredient', id: change.id, ...inverse },
      }
    }
    case 'day': {
      const { list, inverse } = put(workbook.days ?? [], change.id, change.value, change.index)
      return { workbook: withDays(workbook, list), inverse: { of: 'day', id: change.id, ...inverse } }
    }
    case 'formula': {
      const { list, inverse } = put(workbook.formulas, change.id, change.value, change.index)
      return {
        workbook: { ...workbook, formulas: list },
        inverse: { of: 'formula', id: change.id, ...inverse },
      }
    }
    case 'fields': {
      const before = need(workbook.formulas, change.formula, 'formula')
      return {
        workbook: inFormula(workbook, change.formula, f => ({ ...f, ...change.value })),
        inverse: { of: 'formula', id: before.id, value: before }, // whole, so that a field that was not there goes again
      }
    }
    case 'stage': {
      const formula = need(workbook.formulas, change.formula, 'formula')
      const { list, inverse } = put(formula.stages, change.id, change.value, change.index)
      return {
        workbook: inFormula(workbook, formula.id, f => ({ ...f, stages: list })),
        inverse: { of: 'stage', formula: formula.id, id: change.id, ...inverse },
      }
    }
    case 'line': {
      const formula = need(workbook.formulas, change.formula, 'formula')
      const stage = need(formula.stages, change.stage, 'stage')
      const { list, inverse } = put(stage.lines, change.id, change.value, change.index)
      const edited = { ...stage, lines: list }
      return {
        workbook: inFormula(workbook, formula.id, f => ({
          ...f,
          stages: f.stages.map(s => (s.id === stage.id ? edited : s)),
        })),
        inverse: { of: 'line', formula: formula.id, stage: stage.id, id: change.id, ...inverse },
      }
    }
  }
}

/**
 * Makes all the changes or none: the new workbook, and the changes that take them back in reverse order.
 * Throws RangeError, with the workbook untouched, when a place is gone.
 */
export function applyChanges(
  workbook: Workbook,
  changes: readonly Change[],
): { workbook: Workbook; inverse: readonly Change[] } {
  const inverse: Change[] = []
  let now = workbook
  for (const change of changes) {
    const done = applyOne(now, change)
    now = done.workbook
    inverse.unshift(done.inverse)
  }
  return { workbook: now, inverse }
}
