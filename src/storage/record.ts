import type { Scale } from '../dough/document/batch.js'
import { scaleProblem } from '../dough/document/checks.js'
import { type Formula, newId, type Problem, usualFlourWeight } from '../dough/document/formula.js'
import type { Ingredient } from '../dough/document/larder.js'
import { sameData } from '../dough/document/same-data.js'
import { emptyWorkbook, optionsOf, type Workbook } from '../dough/document/workbook.js'
import type { PartChanges } from './parts.js'
import { type StorageDiagnostic, storageProblem } from './words.js'

/** The key of the part that holds everything but the formulas, and the formulas' order. */
export const headKey = 'workbook'
/** The key of the edits a page left behind when it went away. */
export const unsavedKey = (page: string): string => `unsaved ${page}`
const formulaKey = (id: string): string => `formula ${id}`
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
  readonly scale?: unknown // left out: the usual one
  readonly later?: unknown // the workbook's
}

/** A workbook as it is stored, or as it would be. */
export interface Stored {
  readonly workbook: Workbook
  readonly head: Head | undefined // undefined when nothing is stored, or nothing that can be read
  readonly damagedHead?: unknown
  readonly damagedFormulas: readonly string[] // ids; what is stored of them is left alone
  readonly damagedIngredients: readonly unknown[] // written back as they were
  readonly unsaved: ReadonlyMap<string, unknown> // by key: edits that pages left behind
  readonly newer: boolean // written by a version of Tarebook that this one must not write over
  readonly problems: readonly Problem[]
}

export const nothingStored: Stored = {
  workbook: emptyWorkbook,
  head: undefined,
  damagedFormulas: [],
  damagedIngredients: [],
  unsaved: new Map(),
  newer: false,
  problems: [],
}

type Fields = Readonly<Record<string, unknown>>

export const isFields = (value: unknown): value is Fields =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

export const hasTexts = (value: unknown, ...names: readonly string[]): value is Fields =>
  isFields(value) && names.every(name => typeof value[name] === 'string')

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

const isLine = (value: unknown): boolean => hasTexts(value, 'id', 'ingredient', 'amount')

const isStage = (value: unknown): boolean =>
  hasTexts(value, 'id', 'name') && Array.isArray(value.lines) && value.lines.every(isLine)

/** What a formula has when its record, of an earlier version, does not say. */
const usualFormula = { note: '', flourWeight: usualFlourWeight, meanings: [], keptSettings: [] }

/** A jotting as it was stored; undefined when it is not one. */
const readJotting = (value: unknown): unknown => (hasTexts(value, 'id', 'name', 'text') ? value : undefined)

function readState(value: unknown): unknown {
  if (!hasTexts(value, 'id', 'name', 'keptAt') || !hasTexts(value.formula, 'id')) return undefined
  const formula = readFormula(value.formula, String(value.formula.id))
  return formula && { ...value, formula }
}

/**
 * What a formula can do without, so that one jotting or kept state that cannot be read does not take the
 * formula with it. Those are kept in `unread`, a field that nothing else looks at, and written back with it.
 */
function readAsides(part: Fields): Fields {
  const known = isFields(part.unread) ? part.unread : {}
  const asides: Record<string, unknown> = {}
  const unread: Record<string, unknown> = { ...known }
  for (const [name, readOne] of [
    ['jottings', readJotting],
    ['states', readState],
  ] as const) {
    if (part[name] === undefined) continue
    const list: readonly unknown[] = Array.isArray(part[name]) ? part[name] : [part[name]]
    const damaged = list.filter(item => readOne(item) === undefined)
    asides[name] = list.map(readOne).filter(item => item !== undefined)
    const before = known[name]
    if (damaged.length) unread[name] = [...(Array.isArray(before) ? before : []), ...damaged]
  }
  return Object.keys(unread).length ? { ...asides, unread } : asides
}

/** Whether something of a formula in its record could not be read this time. */
const lostSome = (formula: Formula, part: unknown): boolean =>
  'unread' in formula && !(isFields(part) && sameData(formula.unread, part.unread))

/** The formula a record holds; undefined when it is not one. */
export function readFormula(part: unknown, id: string): Formula | undefined {
  if (!hasTexts(part, 'id', 'name') || part.id !== id) return undefined
  const formula = { ...usualFormula, ...part, ...readAsides(part) } as unknown as Formula
  const whole =
    Array.isArray(formula.stages) &&
    formula.stages.length > 0 &&
    formula.stages.every(isStage) &&
    Array.isArray(formula.meanings) &&
    Array.isArray(formula.keptSettings) &&
    (formula.holds === undefined || Array.isArray(formula.holds)) &&
    Number.isFinite(formula.flourWeight)
  return whole ? formula : undefined
}

export const isIngredient = (part: unknown): part is Ingredient =>
  hasTexts(part, 'id', 'name', 'kind', 'note') &&
  Array.isArray(part.otherNames) &&
  hasTexts(part.countsAs, 'kind') &&
  (part.allergens === undefined || isFields(part.allergens))

const isScale = (part: unknown): part is Scale =>
  isFields(part) &&
  ['step', 'fineStep', 'fineBelow'].every(name => typeof part[name] === 'number') &&
  scaleProblem(part as unknown as Scale) === undefined

/** What a workbook may have in a stored part, where it can be read; a scale that cannot is the usual one. */
export const optionsIn = ({
  scale,
  later,
}: {
  readonly scale?: unknown
  readonly later?: unknown
} = {}): ReturnType<typeof optionsOf> =>
  optionsOf({ scale: isScale(scale) ? scale : undefined, later: isFields(later) ? later : undefined })

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

  const stored = [...parts.keys()]
    .filter(key => key.startsWith(formulaKey('')))
    .map(key => key.slice(formulaKey('').length))
  const shelf = (head?.shelf ?? []).filter(id => typeof id === 'string')
  const knownFormulas = new Map(known.workbook.formulas.map(formula => [formula.id, formula]))
  const damagedFormulas: string[] = []
  const formulas = [...new Set([...shelf, ...stored])].flatMap(id => {
    if (!parts.has(formulaKey(id))) {
      tell({ code: 'formulaMissing' })
      return []
    }
    const formula = readFormula(parts.get(formulaKey(id)), id)
    if (formula && lostSome(formula, parts.get(formulaKey(id))))
      tell({ code: 'asidesUnreadable', name: formula.name }, { formula: id })
    if (formula) return [sameData(knownFormulas.get(id), formula) ? knownFormulas.get(id)! : formula]
    damagedFormulas.push(id)
    tell({ code: 'formulaUnreadable', ...nameIn(parts.get(formulaKey(id))) }, { formula: id })
    return []
  })

  const larder = (head?.larder ?? []).filter(isIngredient)
  const damagedIngredients = (head?.larder ?? []).filter(ingredient => !isIngredient(ingredient))
  if (damagedIngredients.length > 0) tell({ code: 'ingredientsUnreadable' })

  return {
    workbook: {
      name: head?.name ?? '',
      formulas,
      larder: sameData(known.workbook.larder, larder) ? known.workbook.larder : larder,
      ...optionsIn(head),
    },
    head,
    ...(part !== undefined && !head ? { damagedHead: part } : {}),
    damagedFormulas,
    damagedIngredients,
    unsaved: new Map([...parts].filter(([key]) => key.startsWith(unsavedKey('')))),
    newer: isNewer(part),
    problems,
  }
}

const nameIn = (part: unknown): { readonly name?: string } =>
  hasTexts(part, 'name') ? { name: String(part.name) } : {}

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

  const before = new Map(origin.workbook.formulas.map(formula => [formula.id, formula]))
  const after = new Map(workbook.formulas.map(formula => [formula.id, formula]))
  const { scale: _scale, later: _later, ...others } = origin.head ?? {}
  const nextHead: Head = {
    ...others,
    format: formatName,
    version: formatVersion,
    revision: (origin.head?.revision ?? 0) + 1,
    mark: newId(),
    savedAt: new Date().toISOString(),
    name: workbook.name,
    shelf: [...after.keys(), ...origin.damagedFormulas],
    larder: [...workbook.larder, ...origin.damagedIngredients],
    ...optionsOf(workbook),
  }
  const puts = new Map<string, unknown>([[headKey, nextHead]])
  if (origin.damagedHead !== undefined) puts.set(`damaged ${nextHead.mark}`, origin.damagedHead)
  for (const [id, formula] of after) if (before.get(id) !== formula) puts.set(formulaKey(id), formula)
  const removes = [...[...before.keys()].filter(id => !after.has(id)).map(formulaKey), ...takenIn]

  const { damagedHead: _putAside, ...rest } = origin
  return { puts, removes, stored: { ...rest, workbook, head: nextHead } }
}
