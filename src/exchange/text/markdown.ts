import type { ListName } from '../../dough/larder/allergen-lists.js'
import type { FigureSheet } from '../../dough/sheet/figures.js'
import { withOwnMeanings } from '../values/counts-as.js'
import { cautionsSaid, usualList } from './cautions-said.js'
import { formulaSettings, type OwnSetting, settingLine, stageSettings, withSaid } from './own-settings.js'
import { pageHeads } from './page-blocks.js'
import { heldCell, type PageText, pageCell, stepOnPage, typedCells } from './page-cells.js'
import { cautionsHeading, cell } from './plain-cells.js'
import { figureColumns, type PrintedStage, printedOf, readingSaid } from './printed.js'
import { markdownText } from './read-markdown.js'

const entities: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '|': '&#124;' }

/** A text on one line that means nothing else in Markdown, nor starts a formula where the result is pasted. */
function plain(text: string): string {
  return text
    .replace(/[\p{Cc}\p{Cs}\u2028\u2029]+/gu, ' ')
    .trim()
    .replace(/[\\`*_[\]~$#!]/g, '\\$&')
    .replace(/[&<>|]/g, sign => entities[sign]!)
    .replace(/^[=+\-@＝＋－＠]/, sign => (sign <= '~' ? `\\${sign}` : `&#${sign.charCodeAt(0)};`))
    .replace(/^(\d+)([.)])/, '$1\\$2')
    .replace(/:(?=\/\/)/g, '\\:') // no address becomes a link by itself
}

/** Paragraphs; a line break within one stays. */
const paragraphs = (text: string): string[] =>
  text
    .split(/(?:\r\n?|\n)\s*(?:\r\n?|\n)/)
    .map(paragraph =>
      paragraph
        .split(/\r\n?|\n/)
        .map(plain)
        .filter(line => line !== '')
        .join('  \n'),
    )
    .filter(paragraph => paragraph !== '')

/** A row of a table. */
export const row = (cells: readonly string[]): string => `| ${cells.join(' | ')} |`.replace(/ {2,}/g, ' ')

/** Texts as Markdown has them; of several spaces all but the first are spelled, or they would be one. */
const page: PageText = {
  write: text => plain(text).replace(/(?<= ) /g, '&#32;'),
  read: markdownText,
}
/** A text as a cell of a table or a heading has it. */
export const shown = (text: string): string => pageCell(text, page)

function stageText({ stage, name, facts, lines, method }: PrintedStage, hasBatch: boolean): string[] {
  const { percent, grams, batch } = figureColumns(lines)
  const typed = typedCells(lines, grams, page)
  const showsTyped = typed.some(text => text !== '')
  const only = (isShown: boolean, text: string): string[] => (isShown ? [text] : [])
  const rows = lines.map((line, at) =>
    row([
      shown(line.ingredient),
      percent[at] ?? '–',
      grams[at] ?? '–',
      ...only(hasBatch, batch[at] ?? '–'),
      ...only(showsTyped, typed[at]!),
      shown(line.note),
    ]),
  )
  const settings = stageSettings(stage).map(setting => `* ${heldCell(settingLine(setting), page)}`)
  return [
    `## ${shown(name)}`,
    ...(facts.length ? ['', plain(facts.join(', '))] : []),
    ...(settings.length ? ['', ...settings] : []),
    '',
    row(['Ingredient', '%', 'Grams', ...only(hasBatch, 'Batch, g'), ...only(showsTyped, 'As typed'), 'Note']),
    row(['---', '---:', '---:', ...only(hasBatch, '---:'), ...only(showsTyped, '---'), '---']),
    ...rows,
    ...(method.length ? [''] : []),
    ...method.map((step, at) => `${at + 1}. ${stepOnPage(step, page)}`),
  ]
}

/** A note's paragraphs, and whether they say all of it: its blanks may be more than paragraphs keep. */
function noteText(note: string): { written: string[]; isWhole: boolean } {
  const written = paragraphs(note)
  const read = written.map(paragraph =>
    paragraph
      .split('\n')
      .map(line => markdownText(line.trim()))
      .join('\n'),
  )
  return { written, isWhole: read.join('\n\n') === note }
}

function settingsTable(settings: readonly OwnSetting[]): string[] {
  if (settings.length === 0) return []
  const columns = Math.max(...settings.map(({ cells }) => cells.length))
  const filled = (cells: readonly string[]) => Array.from({ length: columns }, (_, at) => cells[at] ?? '')
  return [
    '',
    '## Settings',
    '',
    row([pageHeads.settings, ...filled(['As typed'])]),
    row(['---', ...filled([]).map(() => '---')]),
    ...settings.map(({ key, cells }) =>
      row([page.write(key), ...filled(cells.map(value => heldCell(value, page)))]),
    ),
  ]
}

/**
 * A formula as Markdown with tables (CommonMark and GitHub's tables), for people, with allergens of `list`; no text of it is
 * markup. `readMarkdown` reads it again. Amounts stand as typed where the grams beside them do not say the same.
 */
export function writeMarkdown(sheet: FigureSheet, list: ListName = usualList): string {
  const { name, note, stages, readings, jottings, hasBatch } = printedOf(sheet)
  const { written, isWhole } = noteText(note)
  const settings: OwnSetting[] = [
    ...(isWhole ? [] : [{ key: 'Note', cells: [cell(note)] }]),
    ...withSaid(formulaSettings(withOwnMeanings(sheet.formula, sheet.larder)), jottings),
  ]
  const lines = [
    `# ${shown(name)}`,
    ...written.flatMap(paragraph => ['', paragraph]),
    ...stages.flatMap(stage => ['', ...stageText(stage, hasBatch)]),
    ...(readings.length ? ['', '## Readings', ''] : []),
    ...(readings.length
      ? [
          row([pageHeads.readings, 'As written', ...(hasBatch ? ['As weighed'] : [])]),
          row(['---', '---:', ...(hasBatch ? ['---:'] : [])]),
          ...readings.map(r =>
            row([
              r.label,
              readingSaid(r, r.value),
              ...(hasBatch ? [r.weighed === undefined ? '–' : readingSaid(r, r.weighed)] : []),
            ]),
          ),
        ]
      : []),
    ...settingsTable(settings),
    '',
    `## ${cautionsHeading}`,
    ...cautionsSaid(sheet, list).flatMap(said => ['', plain(said)]),
  ]
  return `${lines.join('\n')}\n`
}
