import {
  type Formula,
  finalDoughOf,
  type Stage,
  type Step,
  usualFlourWeight,
} from '../../dough/document/formula.js'
import type { ListName } from '../../dough/larder/allergen-lists.js'
import type { FigureSheet } from '../../dough/sheet/figures.js'
import { makeText } from '../values/batch-text.js'
import { countsAsText } from '../values/counts-as.js'
import { distinct } from '../values/distinct.js'
import { holdSetting, holdText } from '../values/hold-text.js'
import { withOwnMeanings } from '../values/own-meanings.js'
import { gramsText, percentText } from '../values/written-weights.js'
import { cautionsSaid, usualList } from './cautions-said.js'
import {
  aligned,
  block,
  cautionsHeading,
  cell,
  inLines,
  nothing,
  sentence,
  stageLine,
  titleLine,
} from './plain-cells.js'
import { inColumn, type PrintedStage, printedOf, readingSaid } from './printed.js'

const underlined = (text: string, sign: string): string[] => [
  text,
  sign.repeat(Math.max(3, Math.min(60, [...text].length))),
]

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)

/** The headings over a stage's lines; the reader finds its cells by them. */
export const headings = {
  ingredient: 'Ingredient',
  percent: '%',
  grams: 'Grams',
  batch: 'Batch',
  typed: 'As typed',
  note: 'Note',
} as const

/** The headings over a stage's method. No line of a stage reads so: its second cell is a percentage or nothing. */
export const stepHeadings: readonly string[] = ['Method', 'Kind', 'As typed', 'Note']

function stageText({ stage, name, facts, lines, method }: PrintedStage, hasBatch: boolean): string[] {
  const names = distinct(lines.map(({ ingredient }) => ingredient))
  const percent = inColumn(
    lines.map(l => l.percent),
    '%',
  )
  const grams = inColumn(
    lines.map(l => l.grams),
    'g',
  )
  const batch = inColumn(
    lines.map(l => l.batch),
    'g',
  )
  const with_ = (figure: string | undefined, unit: string) =>
    figure === undefined ? nothing : `${figure} ${unit}`
  const rows = lines.map((line, at) => [
    cell(line.ingredient),
    with_(percent[at], '%'),
    with_(grams[at], 'g'),
    ...(hasBatch ? [with_(batch[at], 'g')] : []),
    cell(line.typed),
    line.note === '' ? '' : cell(line.note),
  ])
  const { ingredient, typed, note } = headings
  const head = [
    ingredient,
    headings.percent,
    headings.grams,
    ...(hasBatch ? [headings.batch] : []),
    typed,
    note,
  ]
  return [
    ...underlined(cell(name), stageLine),
    ...(facts.length ? [`Weighs: ${facts.join(', ')}`] : []),
    ...settingsOf(stage),
    ...stage.lines.flatMap((line, at) => (line.base ? [`Base: ${cell(names[at]!)}`] : [])),
    ...aligned([head, ...rows], new Set(hasBatch ? [1, 2, 3] : [1, 2])),
    ...methodText(method),
  ]
}

function methodText(method: readonly Step[]): string[] {
  if (method.length === 0) return []
  const rows = method.map(({ does, kind, text, note }) => [
    cell(does),
    kind,
    cell(text),
    note === '' ? '' : cell(note),
  ])
  return aligned([stepHeadings, ...rows], new Set())
}

/** What is set for a stage. */
function settingsOf({ ferments, keepBack, loss }: Stage): string[] {
  const settings: string[] = []
  if (ferments !== undefined) settings.push(`Ferments: ${ferments ? 'yes' : 'no'}`)
  if (keepBack !== undefined)
    settings.push(`Keep-back: ${keepBack === 'seed' ? keepBack : gramsText(keepBack)}`)
  if (loss !== undefined) settings.push(`Loss: ${percentText(loss)}`)
  return settings
}

/** What is set for the whole formula, in words that are read again. */
function ownSettings(formula: Formula): string[] {
  const { flourWeight, batch, holds = [], meanings, jottings = [], keptSettings } = formula
  const lines: string[] = []
  if (flourWeight !== usualFlourWeight) lines.push(`Flour weight: ${flourWeight} g`)
  if (batch && batch.make === 'all of')
    lines.push(`Make: all of ${gramsText(batch.grams)}  ${cell(batch.ingredient)}`)
  else if (batch && batch.make !== 'as written') lines.push(`Make: ${makeText(batch)}`)
  if (batch?.loss !== undefined) lines.push(`Loss: ${percentText(batch.loss)}`)
  if (batch?.bakeLoss !== undefined) lines.push(`Bake loss: ${percentText(batch.bakeLoss)}`)
  const final = finalDoughOf(formula)
  const names = distinct(final.lines.map(({ ingredient }) => ingredient))
  for (const hold of holds) {
    const name = names[final.lines.findIndex(({ id }) => id === hold.line)]
    if (name !== undefined)
      lines.push(`${capital(holdSetting(hold))}: ${holdText(hold)}  ${cell(name)}  gives`)
  }
  for (const { ingredient, countsAs } of meanings)
    lines.push(`Counts as ${countsAsText(countsAs)}: ${cell(ingredient)}`)
  for (const { name, text } of jottings) lines.push(`Jotting: ${cell(name)}  is  ${cell(text)}`)
  for (const { stage, setting, amount, note, ingredient } of keptSettings) {
    const cells = [stage, setting, amount, note, ...(ingredient === undefined ? [] : [ingredient])]
    lines.push(`Kept setting: ${cells.map(cell).join('  ')}`)
  }
  return lines
}

function noteText(note: string): string[] {
  if (note === '') return []
  const lines = block(note)
  return ['', ...(lines ? ['Note:', ...lines] : [`Note: ${cell(note)}`])]
}

/**
 * A formula as aligned plain text, to be read by people and again by `readPlainText`: name, note, stages in order with
 * percentages, grams and what is weighed for the batch, the amount as typed, readings, then what is to be made and held.
 * At the end stand allergens, of `list`, and cautions. Numbers of settings to fifteen digits; kept states stay behind.
 */
export function writePlainText(sheet: FigureSheet, list: ListName = usualList): string {
  const printed = printedOf(sheet)
  const { hasBatch } = printed
  const readings = printed.readings.map(r => [
    `> ${r.label}`,
    readingSaid(r, r.value),
    ...(r.weighed === undefined ? [] : [`${readingSaid(r, r.weighed)} as weighed`]),
  ])
  const settings = ownSettings(withOwnMeanings(sheet.formula, sheet.larder))
  const lines = [
    ...underlined(cell(printed.name), titleLine),
    ...noteText(printed.note),
    ...printed.stages.flatMap(stage => ['', ...stageText(stage, hasBatch)]),
    ...(readings.length ? ['', 'Readings:', ...aligned(readings, new Set([1]))] : []),
    ...(settings.length ? ['', ...settings] : []),
    '',
    `${cautionsHeading}:`,
    ...cautionsSaid(sheet, list).flatMap(said => inLines(sentence(said)).map(line => `> ${line}`)),
  ]
  return `${lines.join('\n')}\n`
}
