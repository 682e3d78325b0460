import { stepWords } from '../../day/method/words.js'
import type { ListName } from '../../dough/larder/allergen-lists.js'
import type { FigureSheet } from '../../dough/sheet/figures.js'
import { cautionsSaid, usualList } from './cautions-said.js'
import { cautionsHeading } from './plain-cells.js'
import { inColumn, type PrintedStage, printedOf, readingSaid } from './printed.js'

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

const row = (cells: readonly string[]): string => `| ${cells.join(' | ')} |`.replace(/ {2,}/g, ' ')

function stageText({ name, facts, lines, method }: PrintedStage, hasBatch: boolean): string[] {
  const showsTyped = lines.some(line => !line.isPlain)
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
  const only = (shown: boolean, text: string): string[] => (shown ? [text] : [])
  const rows = lines.map((line, at) =>
    row([
      plain(line.ingredient),
      percent[at] ?? '–',
      grams[at] ?? '–',
      ...only(hasBatch, batch[at] ?? '–'),
      ...only(showsTyped, line.isPlain ? '' : plain(line.typed)),
      plain(line.note),
    ]),
  )
  return [
    `## ${plain(name)}`,
    ...(facts.length ? ['', plain(facts.join(', '))] : []),
    '',
    row(['Ingredient', '%', 'Grams', ...only(hasBatch, 'Batch, g'), ...only(showsTyped, 'As typed'), 'Note']),
    row(['---', '---:', '---:', ...only(hasBatch, '---:'), ...only(showsTyped, '---'), '---']),
    ...rows,
    ...(method.length ? [''] : []),
    ...method.map((step, at) => `${at + 1}. ${plain(stepWords(step))}`),
  ]
}

/** A formula as Markdown with tables (CommonMark and GitHub's tables), for people, with allergens of `list`; no text of it is markup. */
export function writeMarkdown(sheet: FigureSheet, list: ListName = usualList): string {
  const { name, note, stages, readings, making, holds, jottings, hasBatch } = printedOf(sheet)
  const lists = [
    ...making,
    ...holds.map(hold => `Held: ${hold}`),
    ...jottings.map(({ name, text, said }) => `${name} = ${text} (${said})`),
  ]
  const lines = [
    `# ${plain(name)}`,
    ...paragraphs(note).flatMap(paragraph => ['', paragraph]),
    ...stages.flatMap(stage => ['', ...stageText(stage, hasBatch)]),
    ...(readings.length ? ['', '## Readings', ''] : []),
    ...(readings.length
      ? [
          row(['Reading', 'As written', ...(hasBatch ? ['As weighed'] : [])]),
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
    ...(lists.length ? ['', ...lists.map(item => `* ${plain(item)}`)] : []),
    '',
    `## ${cautionsHeading}`,
    ...cautionsSaid(sheet, list).flatMap(said => ['', plain(said)]),
  ]
  return `${lines.join('\n')}\n`
}
