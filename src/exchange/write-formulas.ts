import { type Formula, type Line, nameKey, usualFlourWeight } from '../dough/formula.js'
import { type Larder, larderOf } from '../dough/larder.js'
import { usualLarder } from '../dough/usual-larder.js'
import { columns, isFormulaSetting, isStageSetting, unnamed } from './columns.js'
import { countsAsText } from './counts-as.js'
import { plainAmount, plainNumbers } from './decimals.js'
import { writeTable } from './table.js'

/** What a line comes to, for people who read the file: grams, and fractions of 1. */
export interface WrittenFigures {
  readonly grams?: number | undefined
  readonly percent?: number | undefined // of its stage's base
  readonly wholeDough?: number | undefined // of all flour in the dough
}

export interface WriteOptions {
  readonly larder?: Larder // says what ingredients count as; the usual one when left out
  readonly figures?: (formula: Formula) => (lineId: string) => WrittenFigures | undefined
}

type Cells = Partial<Record<(typeof columns)[number], string>>

/** Six significant digits and whole numbers in full: what a reader can use, without the noise of doubles. */
function figure(value: number | undefined): string {
  if (value === undefined || !(value >= 0 && value < Infinity)) return ''
  const maximumSignificantDigits = value < 1e6 ? 6 : 15
  const rounded = value < 1e6 ? value : Math.round(value)
  return rounded.toLocaleString('en', { maximumSignificantDigits, useGrouping: false })
}

const percent = (value: number | undefined): string => figure(value === undefined ? undefined : value * 100)

/** Names that differ once the file is read back: `Levain`, `Levain (2)`. */
function distinct(names: readonly string[]): string[] {
  const taken = new Set(names.map(nameKey))
  const used = new Set<string>()
  return names.map(name => {
    let free = name
    for (let n = 2; used.has(nameKey(free)); n++)
      if (!taken.has(nameKey(`${name} (${n})`)) || used.has(nameKey(`${name} (${n - 1})`)))
        free = `${name} (${n})`
    used.add(nameKey(free))
    return free
  })
}

const named = (name: string, otherwise: string): string => (name.trim() === '' ? otherwise : name)

const isBlankLine = ({ ingredient, amount, note, base }: Line): boolean =>
  `${ingredient}${amount}${note}`.trim() === '' && !base

function rowsOf(
  formula: Formula,
  larder: Larder,
  figures?: (lineId: string) => WrittenFigures | undefined,
): Cells[] {
  const rows: Cells[] = []
  if (formula.note !== '') rows.push({ setting: 'note', amount: formula.note })
  if (formula.flourWeight !== usualFlourWeight)
    rows.push({ setting: 'flour weight', amount: `${formula.flourWeight} g` })
  const meanings = new Map(
    formula.meanings.map(({ ingredient, countsAs }) => [nameKey(ingredient), countsAs]),
  )
  const last = formula.stages.length - 1
  const names = distinct(
    formula.stages.map(({ name }, at) => named(name, at === last ? unnamed.stage : `Stage ${at + 1}`)),
  )
  const earlier = new Set<string>()
  formula.stages.forEach((stage, at) => {
    const name = names[at]!
    const lines = stage.lines.filter(line => !isBlankLine(line))
    if (lines.length === 0) rows.push({ stage: name })
    if (stage.ferments !== undefined)
      rows.push({ stage: name, setting: 'ferments', amount: stage.ferments ? 'yes' : 'no' })
    for (const line of lines) {
      const ingredient = named(line.ingredient, unnamed.ingredient)
      const key = nameKey(ingredient)
      const countsAs = earlier.has(key) ? undefined : (meanings.get(key) ?? larder.find(ingredient)?.countsAs)
      const amount = plainAmount(line.amount, '.').text
      const shown = amount === '' ? undefined : figures?.(line.id)
      rows.push({
        stage: name,
        ingredient,
        amount,
        note: line.note,
        'counts as': countsAs ? countsAsText(countsAs) : '',
        grams: figure(shown?.grams),
        percent: percent(shown?.percent),
        'whole dough percent': percent(shown?.wholeDough),
      })
      if (line.base) rows.push({ stage: name, setting: 'base', amount: ingredient })
    }
    earlier.add(nameKey(name))
  })
  for (const { stage, setting, amount, note } of formula.keptSettings) {
    const key = nameKey(setting)
    const known = key !== 'note' && (stage.trim() === '' ? isFormulaSetting(key) : isStageSetting(key))
    const plain = known ? plainNumbers(amount, '.').text : amount
    rows.push({ stage, setting: named(setting, unnamed.setting), amount: plain, note })
  }
  // a formula of which there is nothing to say is still there
  return rows.length > 0 ? rows : [{ stage: unnamed.stage }]
}

/**
 * Formulas as CSV (RFC 4180): commas, CRLF, decimal points. Writing what was read from the result gives
 * the same text, byte for byte.
 *
 * - `counts as` says what each ingredient means: the formula's own meaning, or else the larder's. The
 *   meanings of ingredients that are in no line are not written.
 * - The columns for readers (`grams`, `percent`, `whole dough percent`) hold what `figures` says, and
 *   nothing on lines without an amount, for which they would be read.
 * - Text that could start a formula in an office program gets an apostrophe, which reading takes away.
 * - Lines without anything are left out. Nameless formulas, stages and ingredients get a name, and
 *   namesakes a number, since in a file only the name tells them apart.
 */
export function writeFormulas(formulas: readonly Formula[], options: WriteOptions = {}): string {
  const larder = options.larder ?? larderOf(usualLarder)
  const names = distinct(formulas.map(({ name }) => named(name, unnamed.formula)))
  const rows = formulas.flatMap((formula, at) =>
    rowsOf(formula, larder, options.figures?.(formula)).map(cells =>
      columns.map(column => (column === 'formula' ? names[at]! : (cells[column] ?? ''))),
    ),
  )
  return writeTable([columns, ...rows])
}
