import { isFields } from '../../dough/data/fields.js'
import { readFormulaData } from '../../dough/data/formula-data.js'
import { readIngredientData } from '../../dough/data/ingredient-data.js'
import { isPlain } from '../../dough/data/plain.js'
import type { Day } from '../../dough/document/day.js'
import type { Formula } from '../../dough/document/formula.js'
import type { Ingredient } from '../../dough/document/larder.js'
import {
  type Cleared,
  optionsOf,
  type Unread,
  type Workbook,
  type WorkbookOptions,
  withList,
} from '../../dough/document/workbook.js'
import { type Merged, merge } from './merge.js'
import { hasTexts, optionsIn, type ReadData, readPart, readUnread } from './read-part.js'
import type { Stored } from './record.js'

const formatName = 'tarebook unsaved edits'
const formatVersion = 1

/** One side of an edit: all of it but the formulas that are the same on the other side. */
interface Side extends Pick<Workbook, keyof WorkbookOptions> {
  readonly name: string
  readonly larder: readonly Ingredient[]
  readonly shelf: readonly string[] // ids of all formulas, in their order
  readonly formulas: readonly Formula[]
  readonly days?: readonly Day[] // all of them; left out: none
  readonly cleared?: readonly Cleared[] // likewise
  readonly bakes?: readonly Unread[] // likewise
}

/**
 * Edits left behind by a page that goes away. A save has to read before it writes, and a page being reloaded
 * or left for another of its site does not live to see the answer (Chromium 156: 0 of 5 such saves were
 * kept, against 5 of 5 writes that read nothing). So a page that goes also writes these, under a key of its own
 * where there is nothing to write over, and whoever edits next takes them in.
 */
export function unsavedEdits(mine: Workbook, stored: Stored, underWay: readonly Stored[]) {
  const base = stored.workbook
  const others = [base, ...underWay.map(save => save.workbook)].map(({ formulas }) => new Set(formulas))
  const shared = new Set(mine.formulas.filter(formula => others.every(formulas => formulas.has(formula))))
  return {
    format: formatName,
    version: formatVersion,
    base: sideOf(base, shared),
    mine: sideOf(mine, shared),
    after: underWay.flatMap(save => save.head?.mark ?? []), // saves that mine comes after, should they be stored
  }
}

const sideOf = (workbook: Workbook, shared: ReadonlySet<Formula>): Side => ({
  name: workbook.name,
  larder: workbook.larder,
  ...optionsOf(workbook),
  ...(workbook.days && { days: workbook.days }),
  ...(workbook.cleared && { cleared: workbook.cleared }),
  ...(workbook.bakes && { bakes: workbook.bakes }),
  shelf: workbook.formulas.map(formula => formula.id),
  formulas: workbook.formulas.filter(formula => !shared.has(formula)),
})

/** A side in data of which nothing is known; undefined where a part of it cannot be read at all. */
function sideIn(value: unknown, readDay: ReadData<Day>): Side | undefined {
  if (!isPlain(value) || !hasTexts(value, 'name')) return undefined
  const each = <T>(list: unknown, read: ReadData<T>): readonly T[] | undefined => {
    const items = Array.isArray(list) ? list.map(item => readPart(item, read).item) : [undefined]
    return items.every(item => item !== undefined) ? items : undefined
  }
  const larder = each(value.larder, readIngredientData)
  const formulas = each(value.formulas, readFormulaData)
  const days = value.days === undefined ? [] : each(value.days, readDay)
  const cleared = value.cleared === undefined ? [] : each(value.cleared, readUnread)
  const bakes = value.bakes === undefined ? [] : each(value.bakes, readUnread)
  const { shelf } = value
  if (!larder || !formulas || !days || !cleared || !bakes || !Array.isArray(shelf)) return undefined
  return {
    name: String(value.name),
    larder,
    formulas,
    shelf: shelf.filter(id => typeof id === 'string'),
    ...optionsIn(value),
    ...(days.length > 0 && { days }),
    ...(cleared.length > 0 && { cleared }),
    ...(bakes.length > 0 && { bakes }),
  }
}

/** The formulas in edits that were left behind, as they are after them. */
export const unsavedFormulas = ({ unsaved }: Stored): readonly Formula[] =>
  [...unsaved.values()].flatMap(edits =>
    isFields(edits) && isFields(edits.mine) && Array.isArray(edits.mine.formulas)
      ? edits.mine.formulas.flatMap(formula => readPart(formula, readFormulaData).item ?? [])
      : [],
  )

/** `now` with the edits left behind in it, merged as `merge` does; undefined when they cannot be read. */
export function takeIn(
  edits: unknown,
  stored: Stored,
  now: Workbook,
  readDay: ReadData<Day>,
): Merged | undefined {
  if (!isFields(edits) || edits.format !== formatName || edits.version !== formatVersion) return undefined
  const [base, mine] = [sideIn(edits.base, readDay), sideIn(edits.mine, readDay)]
  const { after } = edits
  if (!base || !mine || !Array.isArray(after)) return undefined
  const from = after.includes(stored.head?.mark) ? stored.workbook : filled(base, now)
  return merge(from, filled(mine, now), now)
}

/** A side as a workbook: what the edit did not touch is as it is now. */
function filled(side: Side, now: Workbook): Workbook {
  const formulas = new Map([...now.formulas, ...side.formulas].map(formula => [formula.id, formula]))
  const workbook = {
    name: side.name,
    larder: side.larder,
    ...optionsIn(side),
    formulas: side.shelf.flatMap(id => formulas.get(id) ?? []),
  }
  const planned = withList(workbook, 'days', side.days ?? [])
  return withList(withList(planned, 'cleared', side.cleared ?? []), 'bakes', side.bakes ?? [])
}
