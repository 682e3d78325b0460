import { newId, type Problem } from '../dough/document/formula.js'
import { sameData } from '../dough/document/same-data.js'
import { emptyWorkbook, optionsOf, type Workbook, withDays } from '../dough/document/workbook.js'
import type { PartChanges } from './disk/parts.js'
import {
  hasTexts,
  isDay,
  isFields,
  isIngredient,
  lostSome,
  nameIn,
  optionsIn,
  readFormula,
} from './read-part.js'
import { type TypedText, typedIn, typedKey } from './typed-texts.js'
import { type StorageDiagnostic, storageProblem } from './words.js'

/** The key of the part that holds everything but the formulas and the days, and their order. */
export const headKey = 'workbook'
/** The key of the edits a page left behind when it went away. */
export const unsavedKey = (page: string): string => `unsaved ${page}`
const formulaKey = (id: string): string => `formula ${id}`
const dayKey = (id: string): string => `day ${id}`
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
  readonly later?: unknown // the workbook's
}

/** A workbook as it is stored, or as it would be. */
export interface Stored {
  readonly workbook: Workbook
  readonly head: Head | undefined // undefined when nothing is stored, or nothing that can be read
  readonly damagedHead?: unknown
  readonly damagedFormulas: readonly string[] // ids; what is stored of them is left alone
  readonly damagedDays: readonly string[] // likewise
  readonly damagedIngredients: readonly unknown[] // written back as they were
  readonly unsaved: ReadonlyMap<string, unknown> // by key: edits that pages left behind
  readonly typed: readonly TypedText[] // what was being typed when it was last written
  readonly newer: boolean // written by a version of Tarebook that this one must not write over
  readonly problems: readonly Problem[]
}

export const nothingStored: Stored = {
  workbook: emptyWorkbook,
  head: undefined,
  damagedFormulas: [],
  damagedDays: [],
  damagedIngredients: [],
  unsaved: new Map(),
  typed: [],
  newer: false,
  problems: [],
}

const isHead = (part: unknown): part is Head =>
  hasTexts(part, 'mark', 'savedAt', 'name') &&
  part.format === formatName &&
  Number.isInteger(part.version) &&
  Number.isInteger(part.revision) &&
  Array.isArray(part.shelf) &&
  Array.isArray(part.larder)

const isNewer = (part: unknown): boolean =>
  isFields(part) &&
  part.format === formatName &&
  typeof part.version === 'number' &&
  part.version > formatVersion

/** How things are found that are kept in a record each. */
interface Records<T> {
  readonly key: (id: string) => string
  readonly order: unknown // ids, as the head has them
  readonly known: readonly T[] // where one of these is equal, it is the object
  readonly read: (part: unknown, id: string) => T | undefined
  readonly missing: () => void
  readonly damaged: (id: string, part: unknown) => void
}

/** The things in their records: those that the head names in its order, then those that it does not. */
function recordsIn<T extends { readonly id: string }>(
  parts: ReadonlyMap<string, unknown>,
  { key, order, known, read, missing, damaged }: Records<T>,
): T[] {
  const stored = [...parts.keys()].filter(at => at.startsWith(key(''))).map(at => at.slice(key('').length))
  const named = (Array.isArray(order) ? order : []).filter(id => typeof id === 'string')
  const before = new Map(known.map(item => [item.id, item]))
  return [...new Set([...named, ...stored])].flatMap(id => {
    if (!parts.has(key(id))) {
      missing()
      return []
    }
    const item = read(parts.get(key(id)), id)
    if (item) return [sameData(before.get(id), item) ? before.get(id)! : item]
    damaged(id, parts.get(key(id)))
    return []
  })
}

/**
 * The workbook in the stored parts. What cannot be read is a problem and stays stored as it is; the rest
 * loads. Formulas equal to those of `known` are the same objects, so that nobody takes them for changed.
 */
export function readStored(parts: ReadonlyMap<string, unknown>, known: Stored = nothingStored): Stored {
  const part = parts.get(headKey)
  const head = isHead(part) ? part : undefined
  const problems: Problem[] = []
  const tell = (diagnostic: StorageDiagnostic, where: Problem['where'] = {}) =>
    problems.push({ ...storageProblem(diagnostic), where, severity: 'error' })

  if (part !== undefined && !head && !isNewer(part)) tell({ code: 'shelfUnreadable' })

  const damagedFormulas: string[] = []
  const formulas = recordsIn(parts, {
    key: formulaKey,
    order: head?.shelf,
    known: known.workbook.formulas,
    read: (stored, id) => {
      const formula = readFormula(stored, id)
      if (formula && lostSome(formula, stored))
        tell({ code: 'asidesUnreadable', name: formula.name }, { formula: id })
      return formula
    },
    missing: () => tell({ code: 'formulaMissing' }),
    damaged: (id, stored) => {
      damagedFormulas.push(id)
      tell({ code: 'formulaUnreadable', ...nameIn(stored) }, { formula: id })
    },
  })
  const damagedDays: string[] = []
  const days = recordsIn(parts, {
    key: dayKey,
    order: head?.days,
    known: known.workbook.days ?? [],
    read: (stored, id) => (isDay(stored) && stored.id === id ? stored : undefined),
    missing: () => tell({ code: 'dayMissing' }),
    damaged: (id, stored) => {
      damagedDays.push(id)
      tell({ code: 'dayUnreadable', ...nameIn(stored) })
    },
  })

  const larder = (head?.larder ?? []).filter(isIngredient)
  const damagedIngredients = (head?.larder ?? []).filter(ingredient => !isIngredient(ingredient))
  if (damagedIngredients.length > 0) tell({ code: 'ingredientsUnreadable' })

  return {
    workbook: withDays(
      {
        name: head?.name ?? '',
        formulas,
        larder: sameData(known.workbook.larder, larder) ? known.workbook.larder : larder,
        ...optionsIn(head),
      },
      days,
    ),
    head,
    ...(part !== undefined && !head ? { damagedHead: part } : {}),
    damagedFormulas,
    damagedDays,
    damagedIngredients,
    unsaved: new Map([...parts].filter(([key]) => key.startsWith(unsavedKey('')))),
    typed: typedIn(parts.get(typedKey)),
    newer: isNewer(part),
    problems,
  }
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
  const known = isHead(head)
    ? origins.find(origin => origin.head?.mark === head.mark)
    : origins.find(origin => origin.head === undefined && sameData(origin.damagedHead, head))
  // With nothing stored any more, as after "delete site data", there is nothing to write over.
  const origin = known ?? (head === undefined ? nothingStored : undefined)
  if (!origin) throw new ChangedElsewhere()

  const { scale: _scale, leeway: _leeway, later: _later, days: _days, ...others } = origin.head ?? {}
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
  if (origin.damagedHead !== undefined) puts.set(`damaged ${nextHead.mark}`, origin.damagedHead)
  const removes = [
    ...putRecords(puts, formulaKey, origin.workbook.formulas, workbook.formulas),
    ...putRecords(puts, dayKey, origin.workbook.days, workbook.days),
    ...takenIn,
  ]

  const { damagedHead: _putAside, ...rest } = origin
  return { puts, removes, stored: { ...rest, workbook, head: nextHead } }
}

/** Puts the records of things that are other objects than before; the keys of those that are gone. */
function putRecords<T extends { readonly id: string }>(
  puts: Map<string, unknown>,
  key: (id: string) => string,
  before: readonly T[] = [],
  after: readonly T[] = [],
): string[] {
  const same = new Set(before)
  for (const item of after) if (!same.has(item)) puts.set(key(item.id), item)
  const there = new Set(after.map(({ id }) => id))
  return before.filter(({ id }) => !there.has(id)).map(({ id }) => key(id))
}
