import { stepWords } from '../../day/method/words.js'
import type { ListName } from '../../dough/larder/allergen-lists.js'
import type { FigureSheet } from '../../dough/sheet/figures.js'
import { safeCell } from '../values/safe-cell.js'
import { cautionsSaid, usualList } from './cautions-said.js'
import { cautionsHeading } from './plain-cells.js'
import { inColumn, type PrintedStage, printedOf, readingSaid } from './printed.js'

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

const text = (cell: string): string => `<td ${left}>${plain(cell)}</td>`
/** A figure; below nothing with a sign that no office program takes for the start of a formula. */
const figure = (cell = '–'): string => `<td ${right}>${cell.replace(/^-/, '−')}</td>`
const heading = (cell: string, style: string): string => `<th scope="col" ${style}>${cell}</th>`
const tableOf = (head: readonly string[], rows: readonly string[]): string =>
  `<table style="border-collapse:collapse"><thead><tr>${head.join('')}</tr></thead><tbody>${rows.join('')}</tbody></table>`

function stageTable({ name, facts, lines, method }: PrintedStage, hasBatch: boolean): string {
  const showsTyped = lines.some(line => !line.isPlain)
  const [percent, grams, batch] = [
    inColumn(
      lines.map(l => l.percent),
      '%',
    ),
    inColumn(
      lines.map(l => l.grams),
      'g',
    ),
    inColumn(
      lines.map(l => l.batch),
      'g',
    ),
  ]
  const rows = lines.map((line, at) =>
    [
      '<tr>',
      text(line.ingredient),
      figure(percent[at]),
      figure(grams[at]),
      hasBatch ? figure(batch[at]) : '',
      showsTyped ? text(line.isPlain ? '' : line.typed) : '',
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
  const steps = method.map(step => `<li>${plain(stepWords(step))}</li>`)
  return `<h3>${plain(name)}</h3>${told}${tableOf(head, rows)}${steps.length ? `<ol>${steps.join('')}</ol>` : ''}`
}

/** A formula as HTML for the clipboard: real tables with the little style that survives pasting, with allergens of `list`. Whatever it is made of is text. */
export function writeHtml(sheet: FigureSheet, list: ListName = usualList): string {
  const { name, note, stages, readings, making, holds, jottings, hasBatch } = printedOf(sheet)
  const paragraphs = note
    .split(/\r\n?|\n/)
    .filter(line => line.trim() !== '')
    .map(line => `<p>${plain(line)}</p>`)
  const items = [
    ...making,
    ...holds.map(hold => `Held: ${hold}`),
    ...jottings.map(({ name, text, said }) => `${name} = ${text} (${said})`),
  ]
  const readingRows = readings.map(r => {
    const weighed = r.weighed === undefined ? undefined : readingSaid(r, r.weighed)
    return `<tr>${text(r.label)}${figure(readingSaid(r, r.value))}${hasBatch ? figure(weighed) : ''}</tr>`
  })
  const readingHead = [
    heading('Reading', left),
    heading('As written', right),
    hasBatch ? heading('As weighed', right) : '',
  ]
  return [
    '<meta charset="utf-8">',
    `<h2>${plain(name)}</h2>`,
    ...paragraphs,
    ...stages.map(stage => stageTable(stage, hasBatch)),
    readings.length ? `<h3>Readings</h3>${tableOf(readingHead, readingRows)}` : '',
    items.length ? `<ul>${items.map(item => `<li>${plain(item)}</li>`).join('')}</ul>` : '',
    `<h3>${cautionsHeading}</h3>`,
    ...cautionsSaid(sheet, list).map(said => `<p>${plain(said)}</p>`),
  ].join('\n')
}
