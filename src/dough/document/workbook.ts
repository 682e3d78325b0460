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
  readonly currency?: string // of all prices, ISO 4217: `EUR`; left out: none was chosen
  readonly days?: readonly Day[] // in the order they were planned; left out: none
  readonly cleared?: readonly Cleared[] // what was deleted and can be brought back; left out: nothing
  readonly bakes?: readonly Unread[] // what was baked; left out: nothing
  readonly later?: LaterFields
}

/** Something of which it is known when it was, and nothing of what is in it until that is wanted. */
export interface Unread {
  readonly id: string // of its own
  readonly at: string // ISO 8601, UTC
  readonly [field: string]: unknown
}

/** Something that was deleted, cleared away for a while: `readClearedData` reads it, `at` is when it was deleted. */
export type Cleared = Unread

/** Milliseconds for which what was deleted can be brought back: 30 days. */
export const clearedFor = 30 * 864e5

/** Fields of a workbook file that this version does not know, kept so that the next file has them again. */
export type LaterFields = Readonly<Record<string, unknown>>

/** What a workbook may have or not have: those of `from` that it has. */
export const optionsOf = ({
  scale,
  leeway,
  currency,
  later,
}: WorkbookOptions): Pick<Workbook, keyof WorkbookOptions> => ({
  ...(scale && { scale }),
  ...(leeway !== undefined && { leeway }),
  ...(currency && { currency }),
  ...(later && { later }),
})

/** Undefined: the usual ones, and no fields of a later version. */
export interface WorkbookOptions {
  readonly scale?: Scale | undefined
  readonly leeway?: number | undefined
  readonly currency?: string | undefined
  readonly later?: LaterFields | undefined
}

export const emptyWorkbook: Workbook = { name: '', formulas: [], larder: [] }

/** The lists of a workbook, by what is in them. */
const lists = {
  formula: 'formulas',
  ingredient: 'larder',
  day: 'days',
  cleared: 'cleared',
  bake: 'bakes',
} as const
type ListName = (typeof lists)[keyof typeof lists]

/** The workbook with another list; days, bakes and what is cleared away are left out where there are none. */
export function withList<L extends ListName>(
  workbook: Workbook,
  which: L,
  list: NonNullable<Workbook[L]>,
): Workbook {
  const after: { -readonly [name in keyof Workbook]: Workbook[name] } = { ...workbook, [which]: list }
  if (list.length === 0 && !(which in emptyWorkbook)) delete after[which as 'days']
  return after
}

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
  | { readonly of: 'bake'; readonly id: string; readonly value?: Unread; readonly index?: number }
  | { readonly of: 'cleared'; readonly id: string; readonly value?: Cleared; readonly index?: number }
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

/** A line is put at an id of its stage, or taken away. */
export type LineChange = Extract<Change, { of: 'line' }>

/** A step: what was done, and what takes it back. */
interface Made {
  readonly changes: readonly Change[]
  readonly inverse: readonly Change[]
}

/** An edit as the baker knows it: undone, saved and announced as one. */
export interface Transaction {
  readonly label: string // what was done, in words: `Change salt in Final dough`
  readonly changes: readonly Change[]
  /** Of an edit that is for good, which is no step: what it leaves of the steps before it. */
  readonly forgets?: <S extends Made>(steps: readonly S[]) => readonly S[]
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
function applyOne(
  workbook: Workbook,
  change: Exclude<Change, LineChange>,
): { workbook: Workbook; inverse: Change } {
  switch (change.of) {
    case 'workbook': {
      const { name, scale, leeway, currency, later, ...rest } = workbook
      const before = { name, scale, leeway, currency, later }
      const after = { ...before, ...change.value }
      return {
        workbook: { ...rest, name: after.name, ...optionsOf(after) },
        inverse: { of: 'workbook', value: before },
      }
    }
    case 'ingredient':
    case 'day':
    case 'cleared':
    case 'bake':
    case 'formula': {
      const { of, id, value, index } = change
      const { list, inverse } = put<HasId>(workbook[lists[of]] ?? [], id, value, index)
      return {
        workbook: withList(workbook, lists[of], list as never), // of what there was and `value`
        inverse: { of, id, ...inverse } as Change,
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
  }
}

const isOneStages = (a: LineChange, b: Change | undefined): b is LineChange =>
  b?.of === 'line' && b.formula === a.formula && b.stage === a.stage

/** The lines of a stage while many changes are made to them: none goes through them all to find its line. */
class LinesOpen {
  readonly lines: Line[]
  readonly #at: Map<string, number>

  constructor({ lines }: Stage) {
    this.lines = [...lines]
    this.#at = new Map(lines.map(({ id }, at) => [id, at]))
  }

  /** Does as `put`, and gives the same inverse. */
  put(id: string, value: Line | undefined, index?: number): Put<Line>['inverse'] {
    const { lines } = this
    const at = this.#at.get(id)
    const inverse = at === undefined ? {} : { value: lines[at]!, index: at }
    const last = lines.length - (at === undefined ? 0 : 1)
    const to = Math.max(0, Math.min(index ?? at ?? last, last))
    if (value && at === to) lines[at] = value
    else {
      if (at !== undefined) lines.splice(at, 1)
      if (value) lines.splice(to, 0, value)
      this.#at.delete(id)
      for (let i = Math.min(at ?? to, to); i < lines.length; i++) this.#at.set(lines[i]!.id, i)
    }
    return inverse
  }
}

/** Lines of one stage changed one after the other, and the changes that take them back, the first one first. */
function applyToLines(
  workbook: Workbook,
  changes: readonly LineChange[],
): { workbook: Workbook; inverse: readonly Change[] } {
  const [{ formula: id, stage: stageId }] = changes as readonly [LineChange]
  const formula = need(workbook.formulas, id, 'formula')
  const stage = need(formula.stages, stageId, 'stage')
  const open = changes.length > 1 ? new LinesOpen(stage) : undefined
  let { lines } = stage
  const inverse = changes.map(({ index, value, ...place }): Change => {
    if (open) return { ...place, ...open.put(place.id, value, index) }
    const one = put(lines, place.id, value, index)
    lines = one.list
    return { ...place, ...one.inverse }
  })
  const edited = { ...stage, lines: open?.lines ?? lines }
  const stages = formula.stages.map(s => (s.id === stageId ? edited : s))
  return { workbook: inFormula(workbook, id, f => ({ ...f, stages })), inverse }
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
  for (let at = 0; at < changes.length; ) {
    const change = changes[at]!
    const run: LineChange[] = []
    if (change.of === 'line')
      for (let next: Change | undefined = change; isOneStages(change, next); next = changes[at + run.length])
        run.push(next)
    const done = change.of === 'line' ? applyToLines(now, run) : applyOne(now, change)
    now = done.workbook
    for (const back of [done.inverse].flat()) inverse.push(back)
    at += run.length || 1
  }
  return { workbook: now, inverse: inverse.reverse() }
}
