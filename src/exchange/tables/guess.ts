import type { Larder } from '../../dough/document/larder.js'
import { larderWith } from '../../dough/larder/usual-larder.js'
import { numberIn, readCell } from '../values/amount-cells.js'
import {
  folded,
  headingName,
  isOfTotals,
  isRemark,
  isStageName,
  isTotalWord,
  labelOf,
  titleName,
} from '../values/labels.js'
import { unitWord } from '../values/written-weights.js'
import { besideIn, ColumnGuesser, looksOf } from './column-uses.js'
import { isOwn } from './read.js'
import { type Names, namesIn, type Row, RowSorter, type View } from './row-features.js'
import { type RowKind, RowKinds } from './row-kinds.js'
import { decimalOf, inSaidUnit, isAmountUse, isBlankRow, split } from './table-cells.js'
import {
  type ColumnUse,
  type ForeignRow,
  type ForeignTable,
  type Guess,
  isStopped,
  type Limits,
  type Mapping,
  type StageMarks,
  usualLimits,
  type Watch,
} from './types.js'
import { stacked, viewsOf } from './views.js'
import { headingUse, isSize, isWeighed } from './vocabulary.js'
import { type Reason, tableReason } from './words.js'

// what the columns hold, and how stages are told, shows in the first of many rows
const sampleRows = 600
const sortedRows = 5000

/**
 * Takes a table apart and guesses how it is to be read, each guess with its reason. Whatever is too large or
 * no text at all is `refused` with a sentence. Never throws.
 */
export function guessTable(
  text: string,
  given: Larder = larderWith([]),
  watch: Watch = {},
  limits: Limits = usualLimits,
): ForeignTable {
  const taken = split(text, limits)
  if ('refused' in taken) return { ...noTable(text), refused: tableReason(taken.refused).message }
  const { rows, delimiter, width } = taken
  const names = namesIn(given)
  if (isStopped(watch, 0, rows.length)) return { ...noTable(text), stopped: true }
  const heading = findHeadings(rows, names)
  const bare = rows[heading]?.cells ?? []
  const stagesAbove = stagesOver(rows[heading - 1], bare)
  const withStage = (cell: string, at: number) => [stagesAbove[at], cell].filter(Boolean).join(': ')
  const headings = stagesAbove.length === 0 ? bare : bare.map(withStage)
  // headings within the table, below the lines of a first stage
  const isWithin = rows.slice(0, Math.max(heading, 0)).some(row => isLine(row, names))
  const top = isWithin ? 0 : heading + 1
  const above = rows.slice(0, Math.max(top - 1, 0)).filter(row => !isBlankRow(row))
  const body = rows.slice(top)
  const sample = body.slice(0, sampleRows).filter(row => !isBlankRow(row) && !row.broken)
  const found = columnsOf(headings, bare, sample, delimiter, names)
  const isBegun = top > 0 && above.every(row => /^sep=/.test(row.cells[0] ?? ''))
  const uses = inSaidUnit(found.uses, found.guesses, rows)
  const { decimal, guess } = decimalOf(body, uses)
  const columns: Mapping = { ...noMapping, columns: uses, headingRows: top, decimal }
  const sorter = new RowSorter(columns, headings, delimiter)
  const views = viewsOf(columns, headings)
  // as if the columns of stages were several of one dough
  const together: View = { uses: found.uses.map(use => (use === 'of a stage' ? 'amount' : use)), part: 'all' }
  const seen = found.uses.includes('of a stage') ? [together] : views
  const sorted = stacked(
    body.slice(0, sortedRows).map(row => seen.map(view => sorter.sort(row, view))),
    seen,
  )
  if (isStopped(watch, rows.length, rows.length)) return { ...noTable(text), stopped: true }
  const kinds = new RowKinds(sorted, 'headings', names, undefined)
  const rowKinds = sorted.map((row, at) => ({ row, ...kinds.of(at) }))
  const title = titleOf(above, rowKinds, found.uses, names)
  const headingRows = Math.max(top, title?.row ?? 0)
  const below = rowKinds.filter(({ row }) => row.row > headingRows)
  const stages = guessStages(below, found.uses, views)
  const headingsReason: Reason = heading < 0 ? { code: 'noHeadings' } : { code: 'headings', row: heading + 1 }
  return {
    text,
    rows,
    delimiter,
    width,
    headings,
    mapping: { ...columns, headingRows, stages: stages.stages, formulaName: title?.name ?? '' },
    guesses: [
      { about: 'delimiter', ask: !taken.isSure && width > 1, reason: taken.reason },
      { about: 'headings', ask: heading < 0 && rows.length > 0, reason: headingsReason },
      ...found.guesses,
      ...(found.batches.length > 0
        ? [{ about: 'batch', ask: true, reason: { code: 'batches', count: found.batches.length } } as const]
        : []),
      guess,
      ...(title ? [{ about: 'formula', ask: false, reason: { code: 'title', ...title } } as const] : []),
      { about: 'stages', ask: stages.ask, reason: stages.reason },
    ],
    batches: found.batches,
    own: isBegun && isOwn(headings, found.uses, sorted, names),
    stopped: false,
  }
}

const noMapping: Mapping = { columns: [], headingRows: 0, decimal: '.', stages: 'none', formulaName: '' }

const noTable = (text: string): ForeignTable => ({
  text,
  rows: [],
  delimiter: ',',
  width: 0,
  headings: [],
  mapping: noMapping,
  guesses: [],
  batches: [],
  own: false,
  stopped: false,
})

/** The row that names the columns, among the first that say anything; -1 where there is none. */
function findHeadings(rows: readonly ForeignRow[], names: Names): number {
  let [seen, corner] = [0, -1]
  for (let at = 0; at < rows.length && seen < 15; at++) {
    const row = rows[at]!
    if (isBlankRow(row) || row.broken) continue
    seen++
    const cells = row.cells.filter(Boolean)
    const uses = cells.map(headingUse).filter(use => use !== undefined)
    const [only] = uses
    const isOfCounts = row.cells
      .slice(1)
      .every(cell => !cell || cell === '%' || (isSize(cell) && !isWeighed(cell)))
    const isOfBatches =
      row.cells[0] === '' ||
      (isOfCounts && !names.isIngredient(cells[0]!)) ||
      (['ingredient', 'formula'].includes(only!) && !names.isIngredient(cells[0]!))
    const isNumber = (cell: string) =>
      /^[\d¼-¾⅐-⅞]/.test(cell) || (numberIn(cell) !== undefined && cell !== '%')
    // `Produit : | Pains au lait`
    const isSaid = cells.length === 2 && cells[0]!.endsWith(':') && !isAmountUse(headingUse(cells[1]!))
    // a unit alone, over the numbers behind names
    const isCorner = cells.length === 1 && !row.cells[0] && isUnitOver(row, rows.slice(at + 1))
    if (isCorner) return at
    if (cells.length < 2 || isSaid || cells.some(cell => isNumber(cell) && !(isOfBatches && isSize(cell))))
      continue
    // `Build 1 | Build 2` over the headings of their columns
    const next = rows[at + 1]?.cells.map(headingUse) ?? []
    if (isOfStages(row) && next.filter(use => use === 'ingredient').length > 1) continue
    const isAlone =
      only === 'ingredient' ||
      only === 'amount' ||
      only === 'percent' ||
      only === 'grams' ||
      cells.some(cell => unitWord(cell) !== undefined)
    if (uses.length > 1 || isAlone) return at
    if (corner >= 0 && isOfStages(rows[corner]!)) return corner
    if (corner < 0 && (isOfStages(row) || isOverNumbers(row, rows.slice(at + 1)))) corner = at
  }
  return corner
}

/** Does a row say an ingredient and how much of it? */
const isLine = ({ cells, broken }: ForeignRow, names: Names): boolean => {
  const [first = '', ...others] = cells.filter(Boolean)
  const { is, name } = labelOf(first)
  const isAmount = (cell: string) => readCell(cell, 'g', '.').is === 'quantity'
  const isDay = folded(name) === 'date' && others.every(cell => /^[\d/.-]+$/.test(cell)) // 3/14
  return !broken && is === 'other' && !isDay && names.isIngredient(name) && others.some(isAmount)
}

/** Names of different stages, perhaps with what they come to, and nothing else. */
function isOfStages({ cells }: ForeignRow): boolean {
  const said = cells.filter(Boolean)
  const stages = said.filter(cell => isStageName(headingName(cell).name))
  return new Set(stages).size > 1 && said.every(cell => stages.includes(cell) || isOfTotal(cell))
}

const isOfTotal = (cell: string): boolean => isTotalWord(cell) || isOfTotals(cell)

/** `kg` over a column of numbers without units, and nothing else. */
function isUnitOver({ cells }: ForeignRow, rows: readonly ForeignRow[]): boolean {
  const column = cells.findIndex(Boolean)
  const use = headingUse(cells[column]!)
  const below = rows.filter(row => !isBlankRow(row) && !row.broken).slice(0, mostBelow)
  const numbers = below.filter(row => /^[\d.,]+$/.test(row.cells[column] ?? ''))
  return use !== undefined && isAmountUse(use) && numbers.length * 2 > below.length
}

const mostBelow = 8 // rows that are looked at

/** Words, each but the first over a column of numbers: `Flour | Small | Large` is none, `Recipe | Small | Large` is. */
function isOverNumbers({ cells }: ForeignRow, rows: readonly ForeignRow[]): boolean {
  const below = rows.filter(row => !isBlankRow(row) && !row.broken).slice(0, mostBelow)
  const isOver = (at: number) => below.filter(row => /\d/.test(row.cells[at] ?? '')).length * 2 > below.length
  const filled = [...cells.keys()].filter(at => cells[at] !== '' && at > 0)
  return below.length > 1 && !isOver(0) && filled.every(isOver)
}

/** In a row over the headings that names stages, the one over each column; empty where it is no such row. */
function stagesOver(row: ForeignRow | undefined, headings: readonly string[]): readonly string[] {
  const cells = row?.cells ?? []
  const said = cells.filter(cell => cell !== '')
  const stages = said.filter(cell => isStageName(cell))
  if (new Set(stages).size < 2 || said.some(cell => /\d/.test(cell) && !isStageName(cell))) return []
  // as many as there are tables side by side: one each, though it may stand a column further
  const starts = [...headings.keys()].filter(at => headingUse(headings[at]!) === 'ingredient')
  if (starts.length === said.length && stages.length === said.length)
    return headings.map((_, at) => said[starts.findLastIndex(start => start <= at)] ?? '')
  let over = ''
  return cells.map(cell => (over = cell || over))
}

/** As many columns as the headings, or as most rows have; without headings as the widest row has, but between commas, of which one may be decimal. */
function columnsWidth(headings: readonly string[], sample: readonly ForeignRow[], delimiter: string): number {
  const all = sample.map(({ cells }) => cells.findLastIndex(Boolean) + 1)
  const count = (width: number) => all.filter(one => one === width).length
  const [widest = 0, ...widths] = [...new Set(all)].sort((a, b) => b - a)
  const usual = widths.reduce((best, width) => (count(width) > count(best) ? width : best), widest)
  if (headings.length > 0)
    return all.filter(one => one > headings.length).length * 2 > sample.length ? widest : headings.length
  return delimiter === ',' ? usual : widest
}

function columnsOf(
  headings: readonly string[],
  bare: readonly string[], // without the stages above
  sample: readonly ForeignRow[],
  delimiter: string,
  names: Names,
): Pick<ColumnGuesser, 'uses' | 'guesses' | 'batches'> {
  const width = columnsWidth(headings, sample, delimiter)
  const looks = looksOf(sample, width, names)
  const [first, ...others] = besideIn(bare, looks)
  if (first === undefined) return new ColumnGuesser(headings, sample, looks, delimiter, names)
  const reasons = others.map((at): Guess => {
    const reason = { code: 'besideTheFirst', column: { heading: headings[at] ?? '', at } } as const
    return { about: 'column', column: at, ask: true, reason }
  })
  const size = others[0]! - first
  const taken = (cells: readonly string[], start: number, end: number) => [
    ...cells.slice(0, first),
    ...Array.from({ length: end - start }, (_, i) => cells[start + i] ?? ''),
  ]
  const guessOf = (starts: readonly number[], of: number) => {
    const rows = starts.flatMap(start =>
      sample.map(row => ({ ...row, cells: taken(row.cells, start, start + of) })),
    )
    const own = taken(bare, starts[0]!, starts[0]! + of)
    return new ColumnGuesser(own, rows, looksOf(rows, first + of, names), delimiter, names)
  }
  // those of one shape hold the same things: one guess for all, by the rows of all
  if (others.every((at, nth) => at === first + (nth + 1) * size && isLike(bare, first, at, size))) {
    const { uses, guesses } = guessOf([first, ...others], size)
    const again = Array.from({ length: width - uses.length }, (_, i) => uses[first + (i % size)]!)
    return { uses: [...uses, ...again], guesses: [...guesses, ...reasons], batches: [] }
  }
  const { uses, guesses } = guessOf([first], size)
  const each = others.flatMap((at, nth) => {
    const of = (others[nth + 1] ?? width) - at
    return guessOf([at], of).uses.slice(first)
  })
  return { uses: [...uses, ...each], guesses: [...guesses, ...reasons], batches: [] }
}

/** Do two stretches of headings say the same? */
const isLike = (headings: readonly string[], a: number, b: number, size: number): boolean =>
  Array.from({ length: size }, (_, i) => i).every(
    i => headingUse(headings[a + i] ?? '') === headingUse(headings[b + i] ?? ''),
  )

type Seen = RowKind & { readonly row: Row }

/** The name of the bread: the first row over the headings, or a row on top that names nothing else. */
function titleOf(
  above: readonly ForeignRow[],
  rows: readonly Seen[],
  uses: readonly ColumnUse[],
  names: Names,
): { row: number; name: string } | undefined {
  const isStage = (cell: string) => isStageName(headingName(cell).name)
  for (const { row, cells } of above) {
    const said = cells.filter(Boolean)
    const [first = '', second = ''] = said
    if (said.length === 1 && !isRemark(first) && !isStage(first) && !/^sep=/.test(first))
      return { row, name: titleName(first) }
    if (said.length === 2 && headingUse(first) === 'formula') return { row, name: second }
  }
  if (above.length > 0 || uses.includes('formula') || uses.includes('stage')) return undefined
  const [first, ...others] = rows.filter(({ kind }) => kind !== 'blank' && kind !== 'headings')
  if (first?.row.is !== 'name' || first.row.label.isRemark) return undefined
  const name = titleName(first.row.name)
  if (isStageName(name) || names.isIngredient(name)) return undefined
  // two names in a row, or the only heading there is
  const isOnly =
    first.kind === 'stage' && others[0]?.row.is === 'line' && !others.some(({ kind }) => kind === 'stage')
  return first.kind === 'formula' || isOnly ? { row: first.row.row, name } : undefined
}

/** How the table tells its stages. */
function guessStages(
  rows: readonly Seen[],
  uses: readonly ColumnUse[],
  views: readonly View[],
): { stages: StageMarks; ask: boolean; reason: Reason } {
  const as = (stages: StageMarks, ask: boolean, reason: Reason) => ({ stages, ask, reason })
  if (uses.includes('of a stage')) return as('columns', true, { code: 'stagesInColumns' })
  if (views.some(({ stage }) => stage !== undefined)) return as('columns', true, { code: 'stagesSideBySide' })
  if (uses.includes('stage')) return as('column', false, { code: 'stagesInAColumn' })
  const said = rows.filter(({ kind }) => kind !== 'blank')
  const heads = said.flatMap(({ kind, row }, at) =>
    kind === 'stage' && said[at + 1]?.row.is === 'line' ? [row.label] : [],
  )
  if (heads.length > 0) {
    const ask = !heads.every(({ isStage }) => isStage)
    const named = [...new Set(heads.map(({ name }) => name))]
    return as('headings', ask, { code: 'stagesByHeadings', names: named })
  }
  const parts = rows.map(({ row: { is } }) => (is === 'line' ? 'l' : is === 'blank' ? ' ' : ''))
  const blocks = parts.join('').match(/l+/g) ?? []
  return blocks.filter(lines => lines.length > 1).length > 1
    ? as('blocks', true, { code: 'stagesByBlanks', blocks: blocks.length })
    : as('none', false, { code: 'oneDough' })
}

/** What tables with the same headings have in common, so that a mapping once corrected can be found again. */
export function headingsKey({ headings, mapping, delimiter }: ForeignTable): string {
  const names = headings.map(folded)
  return JSON.stringify(names.length > 0 ? names : ['', mapping.columns.length, delimiter])
}
