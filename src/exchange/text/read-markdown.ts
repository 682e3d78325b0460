import type { FormulasRead } from '../csv/row-reader.js'
import { isOwnPage, type PageBlock, readBlocks } from './page-blocks.js'

const entities: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>' }

/** What a text of Markdown says, without the signs that keep it from being markup. */
export const markdownText = (written: string): string =>
  written.replace(
    /\\([!-/:-@[-`{-~])|&(?:(amp|lt|gt)|#(\d{1,6}));/g,
    (_, sign?: string, name?: string, code?: string) =>
      sign ?? (name === undefined ? String.fromCharCode(Number(code)) : entities[name]!),
  )

const cellsOf = (row: string): string[] =>
  row
    .replace(/^\s*\||\|\s*$/g, '')
    .split('|')
    .map(cell => markdownText(cell.trim()))

const isRule = (row: string): boolean => /^\s*\|(?:\s*:?-+:?\s*\|)+\s*$/.test(row)

/** The parts of a text of Markdown; what this does not know is a paragraph. */
export function markdownBlocks(text: string): PageBlock[] {
  const blocks: PageBlock[] = []
  const lines = text.replace(/^\ufeff/, '').split(/\r\n?|\n/)
  let paragraph: { row: number; lines: string[] } | undefined
  const end = () => {
    if (paragraph) blocks.push({ is: 'paragraph', row: paragraph.row, text: paragraph.lines.join('\n') })
    paragraph = undefined
  }
  for (let at = 0; at < lines.length; at++) {
    const line = lines[at]!
    const row = at + 1
    const [, hashes, heading] = /^(#{1,2}) +(.*?)\s*$/.exec(line) ?? []
    const [, numbered] = /^(?:(\d+)\. |\* )/.exec(line) ?? []
    if (hashes !== undefined) {
      end()
      blocks.push({ is: hashes === '#' ? 'title' : 'heading', row, text: markdownText(heading!) })
    } else if (line.startsWith('|')) {
      end()
      const from = at
      while (lines[at + 1]?.startsWith('|')) at++
      const rows = lines.slice(from, at + 1).map((one, i) => ({ one, row: from + i + 1 }))
      const kept = rows.filter(({ one }) => !isRule(one))
      blocks.push({
        is: 'table',
        row,
        rows: kept.map(({ one }) => cellsOf(one)),
        at: kept.map(one => one.row),
      })
    } else if (/^(?:\d+\.|\*) /.test(line)) {
      end()
      const mark = numbered === undefined ? /^\* +/ : /^\d+\. +/
      const from = at
      while (mark.test(lines[at + 1] ?? '')) at++
      const items = lines.slice(from, at + 1).map(one => markdownText(one.replace(mark, '').trimEnd()))
      blocks.push({ is: 'items', row, isNumbered: numbered !== undefined, items })
    } else if (line.trim() === '') {
      if (paragraph) paragraph.lines.push('')
    } else {
      paragraph ??= { row, lines: [] }
      paragraph.lines.push(markdownText(line.trim()))
    }
  }
  end()
  return blocks.map(block => (block.is === 'paragraph' ? { ...block, text: block.text.trim() } : block))
}

/** Whether a text is Markdown that `writeMarkdown` wrote. */
export const isOwnMarkdown = (text: string): boolean =>
  /^#\s/m.test(text) &&
  /^\|\s*Ingredient\s*\|\s*%\s*\|\s*Grams\s*\|/m.test(text) &&
  isOwnPage(markdownBlocks(text))

/** The formulas of a text that `writeMarkdown` wrote, with all but ids and kept states. Never throws. */
export const readMarkdown = (text: string): FormulasRead => readBlocks(markdownBlocks(text))
