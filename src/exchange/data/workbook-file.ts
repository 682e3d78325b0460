import { readBakeData } from '../../day/bench/bake-data.js'
import { readClearedData } from '../../dough/data/cleared-data.js'
import { readDayData } from '../../dough/data/day-data.js'
import { type Fields, isFields, type Tell } from '../../dough/data/fields.js'
import { readFormulaData } from '../../dough/data/formula-data.js'
import { readIngredientData } from '../../dough/data/ingredient-data.js'
import type { LeftOut } from '../../dough/data/left-out.js'
import { isCurrency, isLeeway, isScale } from '../../dough/document/checks.js'
import { type Formula, newId, type Problem } from '../../dough/document/formula.js'
import {
  type Cleared,
  optionsOf,
  type Unread,
  type Workbook,
  withList,
} from '../../dough/document/workbook.js'
import type { Worded } from '../../engine/index.js'
import { whyHostile } from './hostile.js'
import { tooLarge } from './too-long.js'
import { type DataDiagnostic, type DataItem, dataProblem } from './words.js'

const formatName = 'tarebook workbook file'
const formatVersion = 1
const mostCharacters = 64e6
const mostItems = 10_000
const mostProblems = 100

/** What brings a file of version n + 1 to version n + 2, at place n. */
const migrations: readonly ((file: Fields) => Fields)[] = []

/** What a workbook file came to; no workbook where nothing of it can be used. */
export interface WorkbookRead {
  readonly workbook?: Workbook // fields that this version does not know are still in it: the file's own as `later`
  readonly savedAt?: string // as the file says
  readonly problems: Problem[]
}

/**
 * Everything of a workbook as one JSON file. Writing what was read from it, with the same `savedAt` (ISO 8601),
 * gives the same text, byte for byte, fields of later versions included.
 */
export function writeWorkbookFile(workbook: Workbook, savedAt = new Date().toISOString()): string {
  const { name, scale, leeway, currency, formulas, larder, days, bakes, cleared, later } = workbook
  const file = {
    format: formatName,
    version: formatVersion,
    savedAt,
    name,
    scale,
    leeway,
    currency,
    formulas,
    larder,
    days,
    bakes,
    cleared,
    ...later,
  }
  return `${JSON.stringify(file, null, 1)}\n`
}

const refused = (why: Worded<DataDiagnostic>): WorkbookRead => ({
  problems: [{ ...why, where: {}, severity: 'error' }],
})

/** The JSON of a text, or why it is not to be read. */
function parsed(json: string): { readonly value: unknown } | Worded<DataDiagnostic> {
  if (json.length > mostCharacters)
    return dataProblem({ code: 'fileTooLong', characters: json.length, most: mostCharacters })
  if (json.trim() === '') return dataProblem({ code: 'fileEmpty' })
  let value: unknown
  try {
    value = JSON.parse(json.replace(/^\ufeff/, ''))
  } catch {
    return dataProblem({ code: 'fileNotJson' })
  }
  return whyHostile(value) ?? { value }
}

/** Collects problems, up to a number that a baker may still read through. */
class Told {
  readonly problems: Problem[] = []
  #more = 0

  say(severity: Problem['severity'], diagnostic: DataDiagnostic, formula?: string): void {
    if (this.problems.length >= mostProblems) this.#more++
    else
      this.problems.push({
        ...dataProblem(diagnostic),
        where: formula === undefined ? {} : { formula },
        severity,
      })
  }

  all(): Problem[] {
    if (this.#more === 0) return this.problems
    const more = dataProblem({ code: 'moreUnreadable', count: this.#more })
    return [...this.problems, { ...more, where: {}, severity: 'error' }]
  }
}

/** The items of a list that can be read, each under an id of its own; the list itself where all can. */
function readItems<T extends { readonly id: string }>(
  value: unknown,
  item: DataItem['item'],
  readOne: (item: unknown, tell: Tell) => T | undefined,
  told: Told,
): readonly T[] {
  if (value !== undefined && !Array.isArray(value)) told.say('error', { code: 'listUnreadable', item })
  if (!Array.isArray(value)) return []
  const ids = new Set<string>()
  const items = value.flatMap((one: unknown, at): T[] => {
    const named = isFields(one) && isFields(one.thing) ? one.thing : one
    const of: DataItem =
      isFields(named) && typeof named.name === 'string' ? { item, name: named.name } : { item, place: at + 1 }
    const asides: LeftOut[] = []
    const read = readOne(one, aside => asides.push(aside))
    if (!read) {
      told.say('error', { code: 'itemDamaged', ...of })
      return []
    }
    const own = ids.has(read.id) ? { ...read, id: newId() } : read
    ids.add(own.id)
    for (const aside of asides) told.say('warning', { ...aside, ...of }, own.id)
    return [own]
  })
  return items.length === value.length && items.every((item, i) => item === value[i]) ? value : items
}

/** Why a file of this format cannot be read by this version; undefined when it can. */
function versionProblem(version: unknown): Worded<DataDiagnostic> | undefined {
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1)
    return dataProblem({ code: 'fileWithoutVersion' })
  if (version > formatVersion)
    return dataProblem({ code: 'fileOfNewerVersion', version, known: formatVersion })
  return undefined
}

function readFormula(value: unknown, tell: Tell): Formula | undefined {
  const formula = readFormulaData(value, tell)
  return formula && !tooLarge(formula) ? formula : undefined
}

/**
 * The workbook in the text of a workbook file. Each field is looked at: a formula, an ingredient of the larder, a day or a bake
 * that is damaged is left out with a problem, and what it can do without is left out of it. Never throws.
 */
export function readWorkbookFile(text: string): WorkbookRead {
  const json = parsed(text)
  if ('code' in json) return refused(json)
  let file = json.value
  if (!isFields(file) || file.format !== formatName) return refused(dataProblem({ code: 'fileNotWorkbook' }))
  const problem = versionProblem(file.version)
  if (problem) return refused(problem)
  for (const migrate of migrations.slice(Number(file.version) - 1)) file = migrate(file as Fields)

  const {
    format: _format,
    version: _version,
    savedAt,
    name,
    scale,
    leeway,
    currency,
    formulas,
    larder,
    days,
    bakes,
    cleared,
    ...later
  } = file as Fields
  for (const [list, items] of [
    [formulas, 'formulas'],
    [larder, 'ingredients'],
    [days, 'days'],
    [bakes, 'bakes'],
    [cleared, 'deleted things'],
  ] as const)
    if (Array.isArray(list) && list.length > mostItems)
      return refused(dataProblem({ code: 'tooManyItems', items, count: list.length, most: mostItems }))

  const told = new Told()
  if (!Array.isArray(formulas)) told.say('error', { code: 'withoutFormulas' })
  if (name !== undefined && typeof name !== 'string') told.say('warning', { code: 'nameUnreadable' })
  if (scale !== undefined && !isScale(scale)) told.say('warning', { code: 'scaleUnreadable' })
  const waits = typeof leeway === 'number' && isLeeway(leeway) ? leeway : undefined
  if (leeway !== undefined && waits === undefined) told.say('warning', { code: 'leewayUnreadable' })
  if (currency !== undefined && !isCurrency(currency)) told.say('warning', { code: 'currencyUnreadable' })
  const workbook = {
    name: typeof name === 'string' ? name : '',
    ...optionsOf({
      scale: isScale(scale) ? scale : undefined,
      leeway: waits,
      currency: isCurrency(currency) ? currency : undefined,
      later: Object.keys(later).length > 0 ? later : undefined,
    }),
    formulas: Array.isArray(formulas) ? readItems(formulas, 'formula', readFormula, told) : [],
    larder: readItems(larder, 'ingredient', readIngredientData, told),
  }
  const planned = withList(workbook, 'days', readItems(days, 'day', readDayData, told))
  const deleted = readItems(cleared, 'deleted thing', readClearedData, told) as readonly unknown[]
  const baked = readItems(bakes, 'bake', readBakeData, told) as readonly unknown[] as readonly Unread[]
  return {
    workbook: withList(withList(planned, 'cleared', deleted as readonly Cleared[]), 'bakes', baked),
    ...(typeof savedAt === 'string' ? { savedAt } : {}),
    problems: told.all(),
  }
}
