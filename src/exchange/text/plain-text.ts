import type { Step } from '../../dough/document/formula.js'
import type { ListName } from '../../dough/larder/allergen-lists.js'
import type { FigureSheet } from '../../dough/sheet/figures.js'
import { withOwnMeanings } from '../values/counts-as.js'
import { cautionsSaid, usualList } from './cautions-said.js'
import { formulaSettings, settingLine, stageSettings } from './own-settings.js'
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
import { figureColumns, type PrintedStage, printedOf, readingSaid } from './printed.js'

const underlined = (text: string, sign: string): string[] => [
  text,
  sign.repeat(Math.max(3, Math.min(60, [...text].length))),
]

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
  const { percent, grams, batch } = figureColumns(lines)
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
    ...stageSettings(stage).map(settingLine),
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
  const settings = formulaSettings(withOwnMeanings(sheet.formula, sheet.larder)).map(settingLine)
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
