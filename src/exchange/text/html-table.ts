import type { ListName } from '../../dough/larder/allergen-lists.js'
import type { FigureSheet } from '../../dough/sheet/figures.js'
import { withOwnMeanings } from '../values/counts-as.js'
import { safeCell } from '../values/safe-cell.js'
import { cautionsSaid, usualList } from './cautions-said.js'
import { formulaSettings, type OwnSetting, settingLine, stageSettings, withSaid } from './own-settings.js'
import { pageHeads } from './page-blocks.js'
import { heldCell, type PageText, pageCell, stepOnPage, typedCells } from './page-cells.js'
import { cautionsHeading, cell } from './plain-cells.js'
import { figureColumns, type PrintedStage, printedOf, readingSaid } from './printed.js'
import { htmlText } from './read-html.js'

const entities: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
  '`': '&#96;',
}

/** A text on one line, as text: nothing in it is markup, and pasted into an office program it is no formula. */
const plain = (text: string): string =>
  safeCell(
    text
      .replace(/[\p{Cc}\p{Cs}\u2028\u2029]+/gu, ' ')
      .trim()
      .replace(/^[-+]\s+/, '• '),
  ).replace(/[&<>"'`]/g, sign => entities[sign]!)

const cellStyle = 'padding:2px 10px 2px 0;border-bottom:1px solid #bbb;vertical-align:top'
const left = `style="${cellStyle};text-align:left"`
const right = `style="${cellStyle};text-align:right;white-space:nowrap"`

/** Texts as HTML has them; of several spaces all but the first are spelled, or they would be one. */
const page: PageText = {
  write: text => plain(text).replace(/(?<= ) /g, '&#32;'),
  read: htmlText,
}
const shown = (text: string): string => pageCell(text, page)

const text = (cell: string): string => `<td ${left}>${shown(cell)}</td>`
const ready = (cell: string): string => `<td ${left}>${cell}</td>`
/** A figure; below nothing with a sign that no office program takes for the start of a formula. */
const figure = (cell = '–'): string => `<td ${right}>${cell.replace(/^-/, '−')}</td>`
const heading = (cell: string, style: string): string => `<th scope="col" ${style}>${cell}</th>`
const tableOf = (head: readonly string[], rows: readonly string[]): string =>
  `<table style="border-collapse:collapse"><thead><tr>${head.join('')}</tr></thead><tbody>${rows.join('')}</tbody></table>`

function stageTable({ stage, name, facts, lines, method }: PrintedStage, hasBatch: boolean): string {
  const { percent, grams, batch } = figureColumns(lines)
  const typed = typedCells(lines, grams, page)
  const showsTyped = typed.some(words => words !== '')
  const rows = lines.map((line, at) =>
    [
      '<tr>',
      text(line.ingredient),
      figure(percent[at]),
      figure(grams[at]),
      hasBatch ? figure(batch[at]) : '',
      showsTyped ? ready(typed[at]!) : '',
      text(line.note),
      '</tr>',
    ].join(''),
  )
  const head = [
    heading('Ingredient', left),
    heading('%', right),
    heading('Grams', right),
    hasBatch ? heading('Batch, g', right) : '',
    showsTyped ? heading('As typed', left) : '',
    heading('Note', left),
  ]
  const told = facts.length ? `<p>${plain(facts.join(', '))}</p>` : ''
  const settings = listOf(
    'ul',
    stageSettings(stage).map(setting => heldCell(settingLine(setting), page)),
  )
  const steps = listOf(
    'ol',
    method.map(step => stepOnPage(step, page)),
  )
  return `<h3>${shown(name)}</h3>${told}${settings}${tableOf(head, rows)}${steps}`
}

const listOf = (element: 'ol' | 'ul', items: readonly string[]): string =>
  items.length ? `<${element}>${items.map(item => `<li>${item}</li>`).join('')}</${element}>` : ''

function settingsTable(settings: readonly OwnSetting[]): string {
  if (settings.length === 0) return ''
  const columns = Math.max(...settings.map(({ cells }) => cells.length))
  const rows = settings.map(
    ({ key, cells }) =>
      `<tr>${[key, ...Array.from({ length: columns }, (_, at) => cells[at] ?? '')].map(value => ready(heldCell(value, page))).join('')}</tr>`,
  )
  const head = [pageHeads.settings, 'As typed', ...Array.from({ length: columns - 1 }, () => '')]
  return `<h3>Settings</h3>${tableOf(
    head.map(words => heading(words, left)),
    rows,
  )}`
}

/**
 * A formula as HTML for the clipboard: real tables with the little style that survives pasting, with allergens of `list`. Whatever
 * it is made of is text. `readHtml` reads it again.
 */
export function writeHtml(sheet: FigureSheet, list: ListName = usualList): string {
  const { name, note, stages, readings, jottings, hasBatch } = printedOf(sheet)
  const lines = note === '' ? [] : note.split(/\r\n?|\n/).map(page.write)
  const isWhole = lines.map(htmlText).join('\n') === note
  const settings: OwnSetting[] = [
    ...(isWhole ? [] : [{ key: 'Note', cells: [cell(note)] }]),
    ...withSaid(formulaSettings(withOwnMeanings(sheet.formula, sheet.larder)), jottings),
  ]
  const readingRows = readings.map(r => {
    const weighed = r.weighed === undefined ? undefined : readingSaid(r, r.weighed)
    return `<tr>${text(r.label)}${figure(readingSaid(r, r.value))}${hasBatch ? figure(weighed) : ''}</tr>`
  })
  const readingHead = [
    heading(pageHeads.readings, left),
    heading('As written', right),
    hasBatch ? heading('As weighed', right) : '',
  ]
  return [
    '<meta charset="utf-8">',
    `<h2>${shown(name)}</h2>`,
    ...lines.map(line => `<p>${line}</p>`),
    ...stages.map(stage => stageTable(stage, hasBatch)),
    readings.length ? `<h3>Readings</h3>${tableOf(readingHead, readingRows)}` : '',
    settingsTable(settings),
    `<h3>${cautionsHeading}</h3>`,
    ...cautionsSaid(sheet, list).map(said => `<p>${plain(said)}</p>`),
  ].join('\n')
}
