import { isFields } from '../../dough/data/fields.js'
import { readFormulaData } from '../../dough/data/formula-data.js'
import { readIngredientData } from '../../dough/data/ingredient-data.js'
import { isPlain } from '../../dough/data/plain.js'
import type { Day } from '../../dough/document/day.js'
import { newId } from '../../dough/document/formula.js'
import { sameData } from '../../dough/document/same-data.js'
import { clearedFor, emptyWorkbook, optionsOf, type Workbook } from '../../dough/document/workbook.js'
import type { PartChanges } from '../disk/parts.js'
import type { Damage } from './damage.js'
import { hasTexts, nameIn, optionsIn, type ReadData, readPart, readUnread } from './read-part.js'
import { type TypedText, typedIn, typedKey } from './typed-texts.js'

/** The key of the part that holds everything but the formulas and the days, and their order. */
export const headKey = 'workbook'
/** The key of the edits a page left behind when it went away. */
export const unsavedKey = (page: string): string => `unsaved ${page}`
/** The key of the edits that can be taken back. */
export const stepsKey = 'steps'
/** The key of something damaged that was put aside. */
const asideKey = (what: string): string => `damaged ${what}`
/** What has a record each. What is cleared away and what was baked has no order, and is read whole or not at all. */
type Recorded = 'formula' | 'day' | 'cleared' | 'bake'
const keyOf = (what: Recorded, id = ''): string => `${what} ${id}`
const formatName = 'tarebook workbook'
const formatVersion = 1

/** The part at `headKey`. A field this version does not know stays in it. */
interface Head {
  readonly format: typeof formatName
  readonly version: number
  readonly revision: number // counts the saves
  readonly mark: string // of this one save: two saves can count alike after the site's data were deleted
  readonly savedAt: string // ISO 8601, UTC
  readonly name: string
  readonly shelf: readonly string[] // ids of formulas, in their order
  readonly larder: readonly unknown[]
  readonly days?: unknown // ids of days, in their order; left out: none
  readonly scale?: unknown // left out: the usual one
  readonly leeway?: unknown // likewise
  readonly currency?: unknown
  readonly later?: unknown // the workbook's
}

/** A workbook as it is stored, or as it would be. */
export interface Stored {
  readonly workbook: Workbook
  readonly head: Head | undefined // undefined when nothing is stored, or nothing that can be read
  readonly damagedHead?: unknown
  readonly damagedFormulas: readonly string[] // ids; what is stored of them is left alone
  readonly damagedDays: readonly string[] // likewise
  readonly damagedCleared: readonly string[] // likewise
  readonly damagedBakes: readonly string[] // likewise
  readonly damagedIngredients: readonly unknown[] // written back as they were
  readonly mended: ReadonlySet<string> // keys of what reading made something else of; written anew at the next save
  readonly damaged: ReadonlyMap<string, unknown> // by key: what was read in part, as it was; put aside at the next save
  readonly aside: ReadonlyMap<string, unknown> // by key: what was put aside at earlier ones
  readonly outdated: readonly string[] // keys of what was deleted so long ago that it goes for good
  readonly unsaved: ReadonlyMap<string, unknown> // by key: edits that pages left behind
  readonly typed: readonly TypedText[] // what was being typed when it was last written
  readonly steps?: unknown // edits that led to it and can be taken back, as they are stored
  readonly newer: boolean // written by a version of Tarebook that this one must not write over
  readonly damage: readonly Damage[]
}

export const nothingStored: Stored = {
  workbook: emptyWorkbook,
  head: undefined,
  damagedFormulas: [],
  damagedDays: [],
  damagedIngredients: [],
  mended: new Set(),
  damaged: new Map(),
  aside: new Map(),
  damagedCleared: [],
  damagedBakes: [],
  outdated: [],
  unsaved: new Map(),
  typed: [],
  newer: false,
  damage: [],
}

/** The head in a part, with what is usual in place of what cannot be read; undefined where it is none. */
function headIn(part: unknown): Head | undefined {
  if (!isPlain(part) || !hasTexts(part, 'mark') || part.format !== formatName) return undefined
  if (!Number.isInteger(part.version)) return undefined
  const { revision, savedAt, name, shelf, larder } = part
  const head = {
    ...part,
    revision: Number.isInteger(revision) ? revision : 0,
    savedAt: typeof savedAt !== 'string' || Number.isNaN(Date.parse(savedAt)) ? '' : savedAt,
    name: typeof name === 'string' ? name : '',
    shelf: Array.isArray(shelf) ? shelf.filter(id => typeof id === 'string') : [],
    larder: Array.isArray(larder) ? larder : [],
  }
  return (sameData(head, part) ? part : head) as unknown as Head
}

const isNewer = (part: unknown): boolean =>
  isFields(part) &&
  part.format === formatName &&
  typeof part.version === 'number' &&
  part.version > formatVersion

const keysOf = (parts: ReadonlyMap<string, unknown>, prefix: string): string[] =>
  [...parts.keys()].filter(key => key.startsWith(prefix))

/** Whether the parts may hold days, which it takes a reader of its own to read. */
export const holdDays = (parts: ReadonlyMap<string, unknown>): boolean =>
  [keyOf('day'), unsavedKey('')].some(prefix => keysOf(parts, prefix).length > 0)

/** How things are found that are kept in a record each. */
interface Records<T> {
  readonly order?: unknown // ids, as the head has them; left out: as they are stored
  readonly known?: readonly T[] | undefined // where one of these is equal, it is the object
  readonly read: ReadData<T>
}

/** What is gathered while parts are read. */
interface Found {
  readonly damage: Damage[]
  readonly mended: Set<string>
  readonly damaged: Map<string, unknown>
}

/** The things in their records: those that the head names in its order, then those that it does not. */
function recordsIn<T extends { readonly id: string; readonly name?: unknown }>(
  what: Recorded,
  parts: ReadonlyMap<string, unknown>,
  { order, known = [], read }: Records<T>,
  found: Found,
): { readonly items: readonly T[]; readonly damaged: readonly string[] } {
  const stored = keysOf(parts, keyOf(what)).map(at => at.slice(keyOf(what).length))
  const named = (Array.isArray(order) ? order : []).filter(id => typeof id === 'string')
  const before = new Map(known.map(item => [item.id, item]))
  const damaged: string[] = []
  const items = [...new Set([...named, ...stored])].flatMap(id => {
    const at = keyOf(what, id)
    if (!parts.has(at)) {
      found.damage.push({ code: `${what as 'day'}Missing` })
      return []
    }
    const part = parts.get(at)
    const { item, left } = readPart(part, read)
    if (item?.id !== id) {
      damaged.push(id)
      found.damage.push({ code: `${what}Unreadable`, ...nameIn(part) })
      return []
    }
    if (item !== part) found.mended.add(at)
    if (left.length > 0) {
      found.damaged.set(at, part)
      found.damage.push({ code: `${what as 'day'}Damaged`, name: String(item.name), left })
    }
    return [sameData(before.get(id), item) ? before.get(id)! : item]
  })
  return { items, damaged }
}

/** The larder in the head; what of it can be read in part is mended, and the rest stays as it is. */
function larderIn(head: Head | undefined, { damage, damaged }: Found) {
  const damagedIngredients: unknown[] = []
  const larder = (head?.larder ?? []).flatMap(part => {
    const { item, left } = readPart(part, readIngredientData)
    if (!item) {
      damagedIngredients.push(part)
      damage.push({ code: 'ingredientUnreadable', ...nameIn(part) })
      return []
    }
    if (left.length > 0) {
      damaged.set(`ingredient ${item.id}`, part)
      damage.push({ code: 'ingredientDamaged', name: item.name, left })
    }
    return [item]
  })
  return { larder, damagedIngredients }
}

/**
 * The workbook in the stored parts. What cannot be read is told and stays stored as it is; the rest loads, of a damaged thing
 * what can be read of it. Formulas equal to those of `known` are the same objects, so that nobody takes them for changed.
 */
export function readStored(
  parts: ReadonlyMap<string, unknown>,
  known: Stored = nothingStored,
  readDay: ReadData<Day> = () => undefined,
): Stored {
  const part = parts.get(headKey)
  const head = headIn(part)
  const found: Found = { damage: [], mended: new Set(), damaged: new Map() }
  if (part !== undefined && part !== head && !isNewer(part)) found.damage.push({ code: 'shelfUnreadable' })
  if (head && part !== head) found.damaged.set(headKey, part)

  const before = known.workbook
  const formulas = recordsIn(
    'formula',
    parts,
    { order: head?.shelf, known: before.formulas, read: readFormulaData },
    found,
  )
  const days = recordsIn('day', parts, { order: head?.days, known: before.days, read: readDay }, found)
  const { larder, damagedIngredients } = larderIn(head, found)
  const cleared = recordsIn('cleared', parts, { known: before.cleared, read: readUnread }, found)
  const bakes = recordsIn('bake', parts, { known: before.bakes, read: readUnread }, found)
  const limit = new Date(Date.now() - clearedFor).toISOString()
  const left = cleared.items.filter(({ at }) => at >= limit)
  const having = (prefix: string) => new Map(keysOf(parts, prefix).map(key => [key, parts.get(key)]))

  return {
    workbook: {
      name: head?.name ?? '',
      formulas: formulas.items,
      larder: sameData(before.larder, larder) ? before.larder : larder,
      ...optionsIn(head),
      ...(days.items.length > 0 && { days: days.items }),
      ...(left.length > 0 && { cleared: left }),
      ...(bakes.items.length > 0 && { bakes: bakes.items }),
    },
    head,
    ...(part !== undefined && !head ? { damagedHead: part } : {}),
    damagedFormulas: formulas.damaged,
    damagedDays: days.damaged,
    damagedIngredients,
    mended: found.mended,
    damaged: found.damaged,
    aside: having(asideKey('')),
    damagedCleared: cleared.damaged,
    damagedBakes: bakes.damaged,
    outdated: cleared.items.filter(item => !left.includes(item)).map(({ id }) => keyOf('cleared', id)),
    unsaved: having(unsavedKey('')),
    typed: typedIn(parts.get(typedKey)),
    ...stepsOf(parts.get(stepsKey), head),
    newer: isNewer(part),
    // The same object as before: who was told of it need not be told again.
    damage: found.damage.map(one => known.damage.find(before => sameData(before, one)) ?? one),
  }
}

/** The steps of the save that is stored: another may have been made by a tab that knew of none. */
const stepsOf = (part: unknown, head: Head | undefined): { readonly steps?: unknown } =>
  isFields(part) && part.mark === head?.mark ? { steps: part.steps } : {}

/** Everything stored that could not be read, or not all of it, by its key and as it is. */
export function damagedParts(
  {
    aside,
    damaged,
    damagedHead,
    damagedIngredients,
    damagedFormulas,
    damagedDays,
    damagedCleared,
    damagedBakes,
  }: Stored,
  parts: ReadonlyMap<string, unknown>,
): ReadonlyMap<string, unknown> {
  const whole = [
    ...damagedFormulas.map(id => keyOf('formula', id)),
    ...damagedDays.map(id => keyOf('day', id)),
    ...damagedCleared.map(id => keyOf('cleared', id)),
    ...damagedBakes.map(id => keyOf('bake', id)),
  ]
  return new Map([
    ...aside,
    ...damaged,
    ...(damagedHead === undefined ? [] : [[headKey, damagedHead] as const]),
    ...whole.map(key => [key, parts.get(key)] as const),
    ...damagedIngredients.map((part, at) => [`ingredient ${at + 1}`, part] as const),
  ])
}

/** Thrown when what is stored is not what the save set out from. */
export class ChangedElsewhere extends Error {}
/** Thrown when a newer version of Tarebook has written the workbook. */
export class WrittenByNewer extends Error {}

/**
 * What to write so that `workbook` is stored, given the part now at `headKey` and the states it may have
 * come from: the last known to be stored, and those of saves whose end was not heard of. Only parts that are
 * other objects than before are written; `takenIn` are keys of unsaved edits that are in it by now. Throws ChangedElsewhere or WrittenByNewer, for nothing to be written.
 */
export function changesTo(
  workbook: Workbook,
  head: unknown,
  origins: readonly Stored[],
  takenIn: readonly string[],
): PartChanges & { readonly stored: Stored } {
  if (isNewer(head)) throw new WrittenByNewer()
  const now = headIn(head)
  const known = now
    ? origins.find(origin => origin.head?.mark === now.mark)
    : origins.find(origin => origin.head === undefined && sameData(origin.damagedHead, head))
  // With nothing stored any more, as after "delete site data", there is nothing to write over.
  const origin = known ?? (head === undefined ? nothingStored : undefined)
  if (!origin) throw new ChangedElsewhere()

  const {
    scale: _scale,
    leeway: _leeway,
    currency: _currency,
    later: _later,
    days: _days,
    ...others
  } = origin.head ?? {}
  const days = [...(workbook.days ?? []).map(({ id }) => id), ...origin.damagedDays]
  const nextHead: Head = {
    ...others,
    format: formatName,
    version: formatVersion,
    revision: (origin.head?.revision ?? 0) + 1,
    mark: newId(),
    savedAt: new Date().toISOString(),
    name: workbook.name,
    shelf: [...workbook.formulas.map(({ id }) => id), ...origin.damagedFormulas],
    larder: [...workbook.larder, ...origin.damagedIngredients],
    ...(days.length > 0 && { days }),
    ...optionsOf(workbook),
  }
  const puts = new Map<string, unknown>([[headKey, nextHead]])
  const aside = new Map(origin.aside)
  const putAside = (key: string, part: unknown) => {
    const at = asideKey(`${nextHead.mark} ${key}`)
    puts.set(at, part)
    aside.set(at, part)
  }
  if (origin.damagedHead !== undefined) putAside(headKey, origin.damagedHead)
  for (const [key, part] of origin.damaged) putAside(key, part)
  const removes = [
    ...putRecords('formula', puts, origin, origin.workbook.formulas, workbook.formulas),
    ...putRecords('day', puts, origin, origin.workbook.days, workbook.days),
    ...putRecords('cleared', puts, origin, origin.workbook.cleared, workbook.cleared),
    ...putRecords('bake', puts, origin, origin.workbook.bakes, workbook.bakes),
    ...origin.outdated,
    ...takenIn,
  ]

  const { damagedHead: _putAside, ...rest } = origin
  return {
    puts,
    removes,
    stored: { ...rest, mended: new Set(), damaged: new Map(), aside, outdated: [], workbook, head: nextHead },
  }
}

/** Puts the records of things that are other objects than before, or were mended; the keys of those that are gone. */
function putRecords<T extends { readonly id: string }>(
  what: Recorded,
  puts: Map<string, unknown>,
  { mended }: Stored,
  before: readonly T[] = [],
  after: readonly T[] = [],
): string[] {
  const same = new Set(before)
  for (const item of after)
    if (!same.has(item) || mended.has(keyOf(what, item.id))) puts.set(keyOf(what, item.id), item)
  const there = new Set(after.map(({ id }) => id))
  return before.filter(({ id }) => !there.has(id)).map(({ id }) => keyOf(what, id))
}
