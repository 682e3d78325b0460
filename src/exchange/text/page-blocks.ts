import type { FormulasRead } from '../csv/row-reader.js'
import { pageText, stepOfWords } from './page-cells.js'
import { cell, nothing, stageLine, titleLine } from './plain-cells.js'
import { headings, stepHeadings } from './plain-text.js'
import { readPlainLines, type TextLine } from './read-plain-text.js'

/** A part of a page, its texts as they are meant, with the line of the page it begins at. */
export type PageBlock = PageWords | PageTable | PageList

interface PageWords {
  readonly row: number
  readonly is: 'title' | 'heading' | 'paragraph'
  readonly text: string
}

interface PageTable {
  readonly row: number
  readonly is: 'table'
  readonly rows: readonly (readonly string[])[]
  readonly at: readonly number[] // the line of each row
}

interface PageList {
  readonly row: number
  readonly is: 'items'
  readonly isNumbered: boolean
  readonly items: readonly string[]
}

/** The heads of the tables that pages have besides those of stages. */
export const pageHeads = { readings: 'Reading', settings: 'Setting' } as const

const [does, kind, typed, note] = stepHeadings
const stageColumns = [headings.ingredient, headings.typed, headings.note]

/** The line of a stage's table as plain text has it. */
function lineOf(head: readonly string[], row: readonly string[]): string {
  const at = (name: string) => row[head.indexOf(name)] ?? ''
  const [amount, grams] = [pageText(at(headings.typed)), at(headings.grams)]
  const text = at(headings.typed) !== '' ? amount : grams === '' || grams === nothing ? '' : `${grams} g`
  const isNone = at(headings.typed) === nothing
  return [pageText(at(headings.ingredient)), isNone ? '' : text, pageText(at(headings.note))]
    .map(cell)
    .join('  ')
}

/** A setting's row: its name, then the cells of its value, as they are typed into a plain text. */
const settingOf = ([key = '', ...cells]: readonly string[]): string => {
  const last = cells.findLastIndex(value => value !== '')
  return `${key}: ${cells
    .slice(0, last + 1)
    .map(value => cell(pageText(value)))
    .join('  ')}`
}

/** Writes the blocks of pages as the plain text they would be, line by line. */
class Lines {
  readonly lines: TextLine[] = []
  #note: string[] | undefined // the paragraphs of a formula's note, until a heading ends them
  #inStage = false
  #isRead = true // what follows is read, and not passed over

  put(row: number, ...texts: readonly string[]): void {
    for (const text of texts) this.lines.push({ row, text })
  }

  #endNote(row: number): void {
    const note = this.#note?.join('\n') ?? ''
    this.#note = undefined
    if (note !== '') this.put(row, `Note: ${cell(note)}`)
  }

  add(block: PageBlock, next: PageBlock | undefined): void {
    const { row } = block
    if (block.is === 'title') {
      this.put(row, '', cell(pageText(block.text)), titleLine.repeat(3))
      this.#note = []
      this.#inStage = false
      this.#isRead = true
    } else if (block.is === 'heading') {
      this.#endNote(row)
      this.#inStage = next !== undefined
      this.#isRead = next !== undefined
      if (next) this.put(row, '', cell(pageText(block.text)), stageLine.repeat(3))
    } else if (block.is === 'table') this.#table(block)
    else if (block.is === 'items') {
      if (this.#isRead) this.#items(block)
    } else this.#note?.push(block.text) // beneath a stage's name are its weights, which are not read
  }

  #table({ row, rows, at }: PageTable): void {
    const [head = [], ...others] = rows
    if (head[0] === pageHeads.settings) {
      this.put(row, '')
      for (const [i, one] of others.entries()) this.put(at[i + 1] ?? row, settingOf(one))
    } else if (this.#inStage && head[0] === headings.ingredient) {
      this.put(row, stageColumns.join('  '))
      for (const [i, one] of others.entries()) this.put(at[i + 1] ?? row, lineOf(head, one))
    }
  }

  #items({ row, isNumbered, items }: PageList): void {
    if (!isNumbered) return this.put(row, ...items.map(item => (this.#inStage ? settingItem(item) : item)))
    if (!this.#inStage) return
    this.put(row, [does, kind, typed, note].join('  '))
    for (const item of items) {
      const step = stepOfWords(item)
      this.put(row, step ? [cell(step.does), step.kind, cell(step.text), cell(step.note)].join('  ') : item)
    }
  }
}

/** `Base: Sunflower seeds` beneath a stage's name. */
const settingItem = (item: string): string => {
  const [, key, value] = /^([^:]+): (.*)$/s.exec(item) ?? []
  return key === undefined ? item : `${key}: ${cell(pageText(value!))}`
}

/** Whether blocks are a page that Tarebook wrote: a title, and beneath a heading the table of a stage. */
export const isOwnPage = (blocks: readonly PageBlock[]): boolean =>
  blocks.some(block => block.is === 'title') &&
  blocks.some(block => block.is === 'table' && isStageHead(block.rows[0] ?? []))

const isStageHead = ([ingredient, percent, grams]: readonly string[]): boolean =>
  ingredient === headings.ingredient && percent === headings.percent && grams === headings.grams

/** The formulas of a page that Tarebook wrote. What was typed is read, the figures beside it are not. */
export function readBlocks(blocks: readonly PageBlock[]): FormulasRead {
  const lines = new Lines()
  blocks.forEach((block, i) => {
    // a stage's heading stands over its table; what is over another table or none is no stage
    const end = blocks.findIndex((other, at) => at > i && (other.is === 'heading' || other.is === 'title'))
    const table = blocks.slice(i + 1, end < 0 ? undefined : end).find(other => other.is === 'table')
    lines.add(block, table?.is === 'table' && isStageHead(table.rows[0] ?? []) ? table : undefined)
  })
  return readPlainLines(lines.lines)
}
