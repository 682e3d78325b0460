import { html, nothing, type TemplateResult } from 'lit'
import type { NumberStyle } from '../../base/numbers.js'
import type { WeighedShown } from '../../batch/weighed-shown.js'
import { type Editing, editorTemplate } from '../editing/editor.js'
import { editorName } from '../editing/words.js'
import { type AmountColumn, type Column, homeOf, type LineRow, type Row, type Shown } from '../table/table.js'
import { figureWords } from './words.js'

/** What a row's template needs besides the row: equal values mean there is nothing to paint. */
export interface RowState {
  readonly active: Column | undefined // of the cell that takes the focus
  readonly from: number // first and last selected column, as in `columns`; -1: none
  readonly to: number
  readonly editing: Editing | undefined
  readonly lit: boolean // part of the working that is shown
}

/** What all rows have in common. */
export interface View {
  readonly columns: readonly Column[]
  readonly readOnly: boolean
  readonly style: NumberStyle
}

export const tab = (at: RowState, column: Column) => (at.active === column ? '0' : '-1')
export const selected = (at: RowState, view: View, column: Column) => {
  const index = view.columns.indexOf(column)
  return index >= at.from && index <= at.to ? 'true' : nothing
}
export const problemId = (row: { readonly key: string }) => `problem ${row.key}`.replaceAll(' ', '-')

/** Whether the editor is open over a cell: its own, or that of a column which is not shown. */
const isEditedIn = (column: Column, at: RowState, view: View) =>
  at.editing !== undefined && homeOf(at.editing.column, view.columns) === column
export const editing = (column: Column, at: RowState, view: View) =>
  isEditedIn(column, at, view) ? 'editing' : ''
export const editorIn = (row: Row, column: Column, at: RowState, view: View) =>
  at.editing && isEditedIn(column, at, view)
    ? editorTemplate(at.editing, editorName(row, at.editing.column))
    : nothing

/**
 * A figure in one piece, for those who listen, and unseen digits behind it for those it has not, so that the decimal
 * marks of a column stand under each other.
 */
export function figure(text: string, style: NumberStyle): TemplateResult {
  return html`${digitsOf(text)}<span class="rest" data-rest=${restOf(text, style)}></span>`
}

const digitsOf = (text: string) =>
  text.replace(/\D/g, '').length > 5 ? html`<span class="many">${text}</span>` : text

function restOf(text: string, { decimal }: NumberStyle): string {
  const mark = /^[−-]?[\d\s.,'’]+$/.test(text) ? text.lastIndexOf(decimal) : -1
  return `${decimal}00`.slice(mark < 0 ? 0 : text.length - mark)
}

/**
 * The way to a number's working, in its cell while that has the focus: before the number, or behind it where it
 * leaves the room of its decimals empty.
 */
export const how = (at: RowState, column: Column, text: string, style: NumberStyle) =>
  at.active === column && !at.editing && /\d/.test(text)
    ? html`<button
        class="how ${text.includes(style.decimal) ? '' : 'behind'}"
        tabindex="-1"
        data-how
        aria-label=${figureWords.howWorkedOut(text)}
      >${figureWords.how}</button>`
    : nothing

const lookOf = ({ is, typed }: Shown, word: TemplateResult | undefined): string =>
  is === 'raw' ? 'typed raw' : `figure ${is === 'computed' && word && !typed ? 'gives' : is}`

function figureIn({ is, text }: Shown, style: NumberStyle) {
  if (is === 'raw') return text
  return is === 'stale' ? html`<s>${figure(text, style)}</s>` : digitsOf(text)
}

/** What stands behind a figure, or beneath it. */
function besideFigure(shown: Shown, word: TemplateResult | undefined) {
  if (shown.is === 'typed') return html`<span class="unseen">${figureWords.typed}</span>`
  if (shown.is === 'stale') return word ?? nothing
  if (shown.is !== 'computed') return nothing
  return shown.typed ? html`<small class="typed expression">${shown.typed}</small>` : (word ?? nothing)
}

/** The word at the weight of a line that gives; its percentage only follows, and says it to those who listen. */
function wordOf(row: LineRow, column: AmountColumn): TemplateResult | undefined {
  if (!row.gives || column === 'wholeDough') return undefined
  const word = row.figures.isStale ? figureWords.lastGood : figureWords.gives
  if (column === 'percent') return html`<span class="unseen"> ${word}</span>`
  const what = row.figures.isStale ? figureWords.staleForHold(row.gives) : figureWords.forHold(row.gives)
  return html`<small class="word">${word}<span class="unseen">${what}</span></small>`
}

/** A cell of an amount: as typed, or as it follows. */
export function numberCell(row: LineRow, column: AmountColumn, at: RowState, view: View): TemplateResult {
  const shown = row[column]
  const typed = shown.is === 'typed' || shown.typed !== ''
  const wrong = row.problem && (typed || shown.is === 'raw' || shown.is === 'missing' || shown.is === 'stale')
  const waits = shown.is === 'missing' || shown.is === 'stale' ? row.waitsFor : undefined
  const reason = wrong ? row : waits
  const isOpen = !view.readOnly && (column !== 'wholeDough' || row.isFinal)
  const word = wordOf(row, column)
  const hasRest = shown.is !== 'raw' && shown.is !== 'stale'
  const isFollowing = shown.is === 'computed' || shown.is === 'stale'
  // All that every cell has is in one template: a formula of thousands of lines has many.
  return html`<td
    role="gridcell"
    class="number ${editing(column, at, view)}"
    data-column=${column}
    tabindex=${tab(at, column)}
    title=${word ? figureWords.lineGivesFor(row.line.ingredient, row.gives) : nothing}
    aria-selected=${selected(at, view, column)}
    aria-readonly=${isOpen ? nothing : 'true'}
    aria-invalid=${wrong ? 'true' : nothing}
    aria-describedby=${reason ? problemId(reason) : nothing}
  ><span class=${lookOf(shown, word)}>${figureIn(shown, view.style)}<span
      class=${hasRest ? 'rest' : ''}
      data-rest=${hasRest ? restOf(shown.text, view.style) : nothing}
    ></span></span>${besideFigure(shown, word)}${
      isFollowing ? how(at, column, shown.text, view.style) : nothing
    }${editorIn(row, column, at, view)}</td>`
}

/** Grams as written, beneath those of the batch. */
function writtenTemplate(shown: Shown, style: NumberStyle): TemplateResult {
  const isTyped = shown.is === 'typed' || shown.is === 'raw' || shown.typed !== ''
  const text = shown.typed || (shown.is === 'raw' ? shown.text : figure(shown.text, style))
  const said =
    shown.is === 'stale' ? figureWords.writtenStale : isTyped ? figureWords.writtenTyped : figureWords.written
  return html`<small class="written"><span class="${isTyped ? 'typed' : ''} ${shown.is === 'stale' ? 'struck' : ''}">${text}</span><span class="unseen">${said}</span></small>`
}

/** The weight as the scale shows it; where the grams as written have no column, they stand beneath. */
export function batchCell(
  row: Row,
  weighed: WeighedShown | undefined,
  written: Shown | undefined,
  at: RowState,
  view: View,
): TemplateResult {
  const text = weighed?.text ?? '–'
  const beneath = written && !view.columns.includes('weight') && written.text !== '–' ? written : undefined
  return html`<td
    role="gridcell"
    class="number batch ${editing('batch', at, view)}"
    data-column="batch"
    tabindex=${tab(at, 'batch')}
    title=${weighed?.exact || nothing}
    aria-selected=${selected(at, view, 'batch')}
    aria-readonly="true"
  ><span class="figure ${text === '–' ? 'missing' : 'weighed'}">${figure(text, view.style)}</span>${
    beneath ? writtenTemplate(beneath, view.style) : nothing
  }${how(at, 'batch', text, view.style)}${editorIn(row, 'batch', at, view)}</td>`
}
