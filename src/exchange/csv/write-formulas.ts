import {
  type Formula,
  finalDoughOf,
  isInProportion,
  type Line,
  nameKey,
  type Stage,
  usualFlourWeight,
} from '../../dough/document/formula.js'
import type { Larder } from '../../dough/document/larder.js'
import { larderWith } from '../../dough/larder/usual-larder.js'
import { makeText } from '../values/batch-text.js'
import { countsAsText } from '../values/counts-as.js'
import { plainAmount } from '../values/decimals.js'
import { distinct } from '../values/distinct.js'
import { holdSetting, holdText } from '../values/hold-text.js'
import { gramsText, percentText } from '../values/written-weights.js'
import { columns, isFormulaSetting, isStageSetting, unnamed } from './columns.js'
import { writeTable } from './csv-table.js'
import { settingKey, settingNumbers } from './row.js'

/** What a line comes to, for people who read the file: grams, and fractions of 1. */
export interface WrittenFigures {
  readonly grams?: number | undefined
  readonly percent?: number | undefined // of its stage's base
  readonly wholeDough?: number | undefined // of all flour in the dough
  readonly batch?: number | undefined // grams weighed of it in the batch, where there is one
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

const named = (name: string, otherwise: string): string => (name.trim() === '' ? otherwise : name)

/** The lines of a stage of which there is something to say. */
function linesOf({ lines }: Stage, { holds = [] }: Formula): readonly Line[] {
  const gives = new Set(holds.map(hold => hold.line))
  return lines.filter(
    ({ id, ingredient, amount, note, base }) =>
      `${ingredient}${amount}${note}`.trim() !== '' || base || gives.has(id),
  )
}

const ingredientOf = (line: Line): string => named(line.ingredient, unnamed.ingredient)

/** What is set for the whole formula. */
function ownRows(formula: Formula): Cells[] {
  const rows: Cells[] = []
  const { note, group, flourWeight, batch, holds = [], jottings = [] } = formula
  if (note !== '') rows.push({ setting: 'note', amount: note })
  if (group) rows.push({ setting: 'group', amount: group })
  if (flourWeight !== usualFlourWeight) rows.push({ setting: 'flour weight', amount: `${flourWeight} g` })
  if (batch && batch.make !== 'as written') rows.push({ setting: 'make', amount: makeText(batch) })
  if (batch?.loss) rows.push({ setting: 'loss', amount: percentText(batch.loss) })
  if (batch?.bakeLoss) rows.push({ setting: 'bake loss', amount: percentText(batch.bakeLoss) })
  const lines = linesOf(finalDoughOf(formula), formula)
  const names = distinct(lines.map(ingredientOf))
  for (const hold of holds) {
    const ingredient = isInProportion(hold) ? '' : names[lines.findIndex(line => line.id === hold.line)]
    if (ingredient !== undefined)
      rows.push({ setting: holdSetting(hold), ingredient, amount: holdText(hold) })
  }
  for (const { name, text } of jottings) {
    const setting = `jotting ${name}`
    rows.push({ setting, amount: settingNumbers(setting, text, '.').text })
  }
  return rows
}

/** What is set for a stage. */
function stageRows({ ferments, keepBack, loss, build }: Stage, stage: string): Cells[] {
  const rows: Cells[] = []
  if (ferments !== undefined) rows.push({ stage, setting: 'ferments', amount: ferments ? 'yes' : 'no' })
  if (keepBack)
    rows.push({ stage, setting: 'keep-back', amount: keepBack === 'seed' ? 'seed' : gramsText(keepBack) })
  if (loss) rows.push({ stage, setting: 'loss', amount: percentText(loss) })
  if (build) rows.push({ stage, setting: 'build', amount: build })
  return rows
}

/** Settings kept from a file, but for those that the formula has by now said itself. */
function keptRows({ keptSettings }: Formula, rows: readonly Cells[]): Cells[] {
  const key = ({ stage = '', setting = '', ingredient = '' }: Cells) => settingKey(stage, setting, ingredient)
  const said = new Set(rows.filter(row => row.setting).map(key))
  return keptSettings.flatMap(({ stage, setting, amount, note, ingredient }) => {
    const name = nameKey(setting)
    const isText = name === 'note' || name === 'group'
    const known = !isText && (stage.trim() === '' ? isFormulaSetting(name) : isStageSetting(name))
    const plain = known ? settingNumbers(setting, amount, '.').text : amount
    const row = {
      stage,
      setting: named(setting, unnamed.setting),
      ingredient: ingredient ?? '',
      amount: plain,
      note,
    }
    return said.has(key(row)) ? [] : [row]
  })
}

function rowsOf(
  formula: Formula,
  larder: Larder,
  figures?: (lineId: string) => WrittenFigures | undefined,
): Cells[] {
  const rows = ownRows(formula)
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
    const lines = linesOf(stage, formula)
    if (lines.length === 0) rows.push({ stage: name })
    rows.push(...stageRows(stage, name))
    for (const line of lines) {
      const ingredient = ingredientOf(line)
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
        'batch grams': figure(shown?.batch),
      })
      if (line.base) rows.push({ stage: name, setting: 'base', amount: ingredient })
    }
    for (const { does, kind, text, note } of stage.method ?? [])
      rows.push({ stage: name, setting: 'step', ingredient: does, amount: text, note, 'counts as': kind })
    earlier.add(nameKey(name))
  })
  rows.push(...keptRows(formula, rows))
  // a formula of which there is nothing to say is still there
  return rows.length > 0 ? rows : [{ stage: unnamed.stage }]
}

/**
 * Formulas as CSV (RFC 4180): commas, CRLF, decimal points. Writing what was read from the result gives
 * the same text, byte for byte.
 *
 * - `counts as` says what each ingredient means: the formula's own meaning, or else the larder's. The
 *   meanings of ingredients that are in no line are not written.
 * - The columns for readers (`grams`, `percent`, `whole dough percent`, `batch grams`) hold what `figures` says, and
 *   nothing on lines without an amount, for which they would be read. `batch grams` is there only where it says something.
 * - Settings kept from a file are written unless the formula says the same thing itself. A hold whose line is
 *   gone is not written, and kept states are not.
 * - The steps of a stage's method come after its lines, in their order.
 * - Text that could start a formula in an office program gets an apostrophe, which reading takes away.
 * - Lines without anything are left out. Nameless formulas, stages and ingredients get a name, and
 *   namesakes a number, since in a file only the name tells them apart.
 */
export function writeFormulas(formulas: readonly Formula[], options: WriteOptions = {}): string {
  const larder = options.larder ?? larderWith([])
  const names = distinct(formulas.map(({ name }) => named(name, unnamed.formula)))
  const rows = formulas.flatMap((formula, at) =>
    rowsOf(formula, larder, options.figures?.(formula)).map(
      (cells): Cells => ({ ...cells, formula: names[at]! }),
    ),
  )
  const isThere = (column: (typeof columns)[number]) =>
    column !== 'batch grams' || rows.some(cells => cells[column])
  const shown = columns.filter(isThere)
  return writeTable([shown, ...rows.map(cells => shown.map(column => cells[column] ?? ''))])
}
