import type { Formula, Problem } from '../../dough/document/formula.js'
import type { Larder } from '../../dough/document/larder.js'
import type { Workbook } from '../../dough/document/workbook.js'
import { hasColumns } from '../csv/any-cells.js'
import { columnOf } from '../csv/columns.js'
import { readFormulas } from '../csv/read-formulas.js'
import { tooLarge, withoutTooLarge } from '../data/too-long.js'
import { readWorkbookFile } from '../data/workbook-file.js'
import { pageText } from '../page/page-text.js'
import {
  type RecipeLine,
  type RecipeRead,
  type RecipeStep,
  type RestOfRecipe,
  readRecipe,
} from '../recipe/index.js'
import type { ToldText } from '../steps/told-row.js'
import {
  type ForeignRow,
  type ForeignTable,
  type Guess,
  guessTable,
  headingsKey,
  headingUse,
  isAmountUse,
  type Mapping,
  type RowRead,
  readTable,
  type TableRead,
  type TotalCheck,
  type Watch,
} from '../tables/index.js'
import { ownTextReader } from '../text/own-text.js'
import { laidAlong } from './crosswise.js'
import { type RememberedColumns, rememberedMapping } from './remembered-columns.js'
import { type ArrivedRow, ownRows, recipeRows, tableRows } from './rows.js'
import { arrivingProblem } from './words.js'

/** What a text can be: formulas as Tarebook writes them, a table from elsewhere, a recipe in words, a whole workbook. */
export type ArrivalKind = 'formulas' | 'table' | 'recipe' | 'workbook'

/** How a text is to be read; what is left out is worked out. */
export interface Way {
  readonly as?: ArrivalKind
  readonly mapping?: Mapping // of a table
  readonly batch?: number // of several whose amounts stand side by side, from 0
}

/** A table from elsewhere, as far as it is shown: the first rows with what became of each. */
export interface TableLook {
  readonly key: string // of its headings
  readonly headings: readonly string[]
  readonly guessed: Mapping
  readonly mapping: Mapping // as it was read
  readonly isRemembered: boolean // it was read as tables with these headings were read before
  readonly guesses: readonly Guess[]
  readonly first: readonly { readonly cells: readonly string[]; readonly read: RowRead }[]
  readonly counts: Readonly<Partial<Record<RowRead['became'], number>>> // rows
}

/** What a text came to; plain data, so that it can come from a worker. */
export type Arrived =
  | { readonly as: 'formulas'; readonly formulas: readonly Formula[]; readonly problems: readonly Problem[] }
  | {
      readonly as: 'table'
      readonly formulas: readonly Formula[]
      readonly problems: readonly Problem[]
      readonly totals: readonly TotalCheck[]
      readonly look: TableLook
      readonly batches: readonly string[]
      readonly batch: number
    }
  | {
      readonly as: 'recipe'
      readonly formulas: readonly [Formula]
      readonly problems: readonly Problem[]
      readonly lines: readonly RecipeLine[]
      readonly steps: readonly RecipeStep[] // of the formula's methods, each beside its words
      readonly rest: readonly RestOfRecipe[]
      readonly batches: readonly string[] // for which its amounts stand side by side, by what they begin with; none of most
      readonly batch: number // that was read
    }
  | {
      readonly as: 'workbook'
      readonly workbook?: Workbook
      readonly savedAt?: string
      readonly problems: readonly Problem[]
    }
  | { readonly as: 'refused'; readonly why: string }

const longestRecipe = 200_000 // characters
const mostRows = 2000 // … with text on them
const mostPieces = 10_000 // words, numbers and signs: some twenty pages
const firstRows = 12
const longestCell = 200 // characters of it that are shown

function isLongerThanRecipe(text: string): boolean {
  const hasMore = (most: number, pattern: RegExp) => {
    for (let count = 0; pattern.test(text); count += 1) if (count === most) return true
    return false
  }
  if (text.length > longestRecipe || hasMore(mostRows, /\S.*/g)) return true
  return hasMore(mostPieces, /[\p{L}\d]+|[^\s\p{L}\d]/gu)
}

/** A text that arrives: what it is is worked out, and can be said otherwise as often as wanted. Never throws. */
export class Arrival {
  #last: Arrived | undefined
  #tableRows: readonly RowRead[] = [] // of the last reading, where it was a table
  #table: ForeignTable | undefined
  #asGuessed: TableRead | undefined // the table by its guessed mapping
  readonly #recipes: (RecipeRead | undefined)[] = [] // of each batch
  #page: { readonly text: ToldText | undefined } | undefined // where it is of a page
  #along: { readonly text: string | undefined } | undefined // where it is a table that lies across

  constructor(
    readonly text: string,
    readonly larder: Larder,
    readonly remembered: RememberedColumns = {},
  ) {}

  read(way: Way = {}, watch: Watch = {}): Arrived {
    const arrived = this.#read(way, watch)
    this.#last = arrived.as === 'formulas' || arrived.as === 'table' ? withoutTooLarge(arrived) : arrived
    return this.#last
  }

  /** The lines of the last reading, in the order they stand in. */
  rows(): ArrivedRow[] {
    const arrived = this.#last
    switch (arrived?.as) {
      case 'recipe':
        return recipeRows(arrived.formulas[0], arrived.lines)
      case 'table':
        return tableRows(this.#table!, this.#tableRows)
      case 'formulas':
        return ownRows(arrived.formulas)
      case 'workbook':
        return ownRows(arrived.workbook?.formulas ?? [])
      default:
        return []
    }
  }

  #read(way: Way, watch: Watch): Arrived {
    switch (way.as ?? this.#kind(watch)) {
      case 'workbook':
        return { as: 'workbook', ...readWorkbookFile(this.text) }
      case 'formulas': {
        const { text, larder } = this
        const read = ownTextReader(text)
        return { as: 'formulas', ...(read ? read(text) : readFormulas(text, larder)) }
      }
      case 'recipe':
        return this.#recipe(way.batch)
      case 'table':
        return this.#readTable(way, watch)
    }
  }

  #recipe(batch = 0): Arrived {
    if (isLongerThanRecipe(this.#seen))
      return { as: 'refused', why: arrivingProblem({ code: 'longerThanRecipe' }).message }
    const { formula, lines, steps, rest, problems, batches } = this.#recipeOf(batch)
    const why = tooLarge(formula)
    if (why) return { as: 'refused', why: why.message }
    const each = batches > 1 ? Array.from({ length: batches }, (_, nth) => this.#recipeOf(nth)) : []
    const named = each.map(read =>
      read.lines
        .slice(0, 2)
        .map(l => `${l.amount} ${l.ingredient}`)
        .join(', '),
    )
    return { as: 'recipe', formulas: [formula], lines, steps, rest, problems, batches: named, batch }
  }

  get #ofPage(): ToldText | undefined {
    this.#page ??= { text: pageText(this.text) }
    return this.#page.text
  }

  /** What is to be read as a recipe or a table: of a page what is seen of it, or its data. */
  get #seen(): string {
    this.#along ??= { text: laidAlong(this.#ofPage?.text ?? this.text, this.larder) }
    return this.#along.text ?? this.#ofPage?.text ?? this.text
  }

  #tableOf(watch: Watch): ForeignTable {
    this.#table ??= guessTable(this.#seen, this.larder, watch)
    return this.#table
  }

  // What was read to find out what the text is has not to be read again.
  #tableRead(table: ForeignTable, mapping: Mapping, watch: Watch): TableRead {
    if (mapping !== table.mapping) return readTable(table, mapping, this.larder, watch)
    if (this.#asGuessed) return this.#asGuessed
    const read = readTable(table, mapping, this.larder, watch)
    if (!read.stopped) this.#asGuessed = read
    return read
  }

  #recipeOf(batch = 0): RecipeRead {
    this.#recipes[batch] ??= readRecipe(this.#seen, this.larder, batch, this.#ofPage?.told)
    return this.#recipes[batch]
  }

  get #weighedInRecipe(): number {
    const { lines, rest } = this.#recipeOf()
    const again = rest.filter(({ why }) => why?.code === 'saidBefore')
    return lines.filter(({ amount }) => amount !== '').length + again.length
  }

  #readTable({ mapping: asked, batch = 0 }: Way, watch: Watch): Arrived {
    const table = this.#tableOf(watch)
    if (table.refused !== undefined) return { as: 'refused', why: table.refused }
    const remembered = asked ? undefined : rememberedMapping(table, this.remembered)
    const mapping = asked ?? (batch > 0 ? ofBatch(table, batch) : (remembered ?? table.mapping))
    const { formulas, problems, totals, rows } = this.#tableRead(table, mapping, watch)
    this.#tableRows = rows
    const look: TableLook = {
      key: headingsKey(table),
      headings: table.headings,
      guessed: table.mapping,
      mapping,
      isRemembered: remembered !== undefined,
      guesses: table.guesses,
      first: firstOf(table.rows, rows),
      counts: countsOf(rows),
    }
    const { batches, headings } = table
    const named = batches.map(at => headings[at] || firstAmounts(table, at))
    const read = batches.findIndex(at => isAmountUse(mapping.columns[at]))
    return { as: 'table', formulas, problems, totals, look, batches: named, batch: Math.max(read, 0) }
  }

  /** Works out what the text is. */
  #kind(watch: Watch): ArrivalKind {
    if (/^\ufeff?\s*\{/.test(this.text.slice(0, 2000))) return this.#ofPage ? 'recipe' : 'workbook'
    if (ownTextReader(this.text)) return 'formulas'
    if (this.#ofPage && this.#ofPage.told.size > 0) return 'recipe'
    const text = this.#seen
    if (!hasColumns(text) && !text.includes('\0')) return 'recipe'
    const table = this.#tableOf(watch)
    if (table.refused !== undefined) return 'table'
    if (isOurs(table)) return 'formulas'
    if (isLongerThanRecipe(text)) return 'table'
    const asTable = this.#tableRead(table, table.mapping, watch)
    const lines = asTable.formulas
      .flatMap(({ stages }) => stages.flatMap(stage => stage.lines))
      .filter(line => line.amount !== '')
    const added = asTable.problems.filter(({ code }) => code === 'noLineTakes').length
    const byTable = lines.length - added
    if (this.#ofPage && this.#recipeOf().steps.length > 0 && this.#weighedInRecipe >= byTable) return 'recipe'
    const headed = table.headings.length > 0 ? headedColumns(table) + table.batches.length : 0
    const begins = headed > 1 && table.rows[0]?.cells === table.headings
    // a list of one stage stands over the table of another
    const isWithin = table.guesses.some(
      ({ reason }) => reason.code === 'headings' && reason.row > table.mapping.headingRows,
    )
    const isOne = !isWithin && (headed > 0 || table.delimiter !== ',') && isEven(table)
    const cells = table.rows.map(row => row.cells.filter(Boolean)).filter(said => said.length > 1)
    if (cells.filter(isSideBySide).length * 2 > cells.length) return 'recipe'
    if (byTable > 0 && (begins || isOne)) return 'table'
    const byRecipe = this.#weighedInRecipe
    if (byTable + byRecipe === 0) return table.headings.length > 0 ? 'table' : 'recipe'
    const isWhole = added === 0 && asTable.rows.every(row => row.became !== 'not understood')
    // `Flour – 250 g (single), 500 g (double)` is no table
    const isGlued = table.rows.filter(({ cells }) =>
      /\p{L}.*\d ?(?:k?g|ml|oz|lbs?)\b/u.test(cells[0] ?? ''),
    ).length
    if (isGlued * 2 > table.rows.length) return 'recipe'
    // `500 g salt, fine` has names in it that its cells have not
    const known = lines.filter(({ ingredient }) => this.larder.find(ingredient)).length
    const isSame = known >= this.#recipeOf().lines.filter(line => line.known).length
    const isAsGood = byTable === byRecipe && isWhole && isSame && !isWithin
    return byTable > byRecipe || isAsGood ? 'table' : 'recipe'
  }
}

/** The mapping that reads another batch's column in place of the first's. */
function ofBatch({ mapping, batches }: ForeignTable, batch: number): Mapping {
  const [first, other] = [batches[0], batches[batch]]
  const use = mapping.columns[first ?? -1] ?? 'leave out'
  const columns = mapping.columns.map((now, at) => (at === first ? 'leave out' : at === other ? use : now))
  return other === undefined ? mapping : { ...mapping, columns }
}

/** What a column without a heading begins with. */
const firstAmounts = ({ rows, mapping }: ForeignTable, at: number): string =>
  rows
    .slice(mapping.headingRows)
    .filter(({ cells }) => cells[at])
    .slice(0, 2)
    .map(({ cells }) => `${cells[at]} ${cells[mapping.columns.indexOf('ingredient')] ?? ''}`.trim())
    .join(', ')

/** A formula file, also where somebody added a column of their own to it. */
function isOurs({ own, headings }: ForeignTable): boolean {
  const columns = headings.map(columnOf)
  return (
    own ||
    (columns.includes('ingredient') &&
      columns.includes('amount') &&
      (columns.includes('setting') || columns.includes('counts as')))
  )
}

/** How many columns a row names by their usual names. */
const headedColumns = ({ headings }: ForeignTable): number =>
  headings.filter(heading => headingUse(heading) !== undefined).length

/** `2 cups rye flour | 1 tbsp caraway`: an ingredient with its amount in each cell. */
const isSideBySide = (cells: readonly string[]): boolean =>
  cells.length === 2 && cells.every(cell => /^[\d¼-¾⅐-⅞].*\p{L}{4}/u.test(cell))

/** Whether most rows below the headings have more than one cell, as those of a text with a stray tab have not. */
function isEven({ rows, mapping }: ForeignTable): boolean {
  const filled = rows
    .slice(mapping.headingRows)
    .map(({ cells }) => cells.filter(cell => cell.trim() !== '').length)
    .filter(n => n > 0)
  return filled.filter(n => n > 1).length >= filled.length * 0.7
}

function firstOf(rows: readonly ForeignRow[], reads: readonly RowRead[]): TableLook['first'] {
  const first: { cells: readonly string[]; read: RowRead }[] = []
  for (const [at, read] of reads.entries()) {
    if (first.length === firstRows) break
    if (read.became === 'blank' || read.became === 'headings') continue
    const cells = (rows[at]?.cells ?? []).map(cell =>
      cell.length > longestCell ? `${cell.slice(0, longestCell)}…` : cell,
    )
    first.push({ cells, read })
  }
  return first
}

function countsOf(reads: readonly RowRead[]): TableLook['counts'] {
  const counts: Partial<Record<RowRead['became'], number>> = {}
  for (const { became } of reads) counts[became] = (counts[became] ?? 0) + 1
  return counts
}
