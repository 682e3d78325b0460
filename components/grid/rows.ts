import { html, nothing, type TemplateResult } from 'lit'
import { type NumberStyle, showPercent } from '../numbers.js'
import { type Editing, editorTemplate } from './editor.js'
import {
  type AddRow,
  type Column,
  causeName,
  type LineRow,
  type Row,
  type Shown,
  type StageRow,
  type SumRow,
} from './table.js'

/** What a row's template needs besides the row: equal values mean there is nothing to paint. */
export interface RowState {
  readonly active: Column | undefined // of the cell that takes the focus
  readonly from: number // first and last selected column, as in `columns`; -1: none
  readonly to: number
  readonly editing: Editing | undefined
}

/** What all rows have in common. */
export interface View {
  readonly columns: readonly Column[]
  readonly narrow: boolean
  readonly readOnly: boolean
  readonly style: NumberStyle
  readonly label: (row: Row, column: Column) => string // of an editor
}

const tab = (at: RowState, column: Column) => (at.active === column ? '0' : '-1')
const selected = (at: RowState, view: View, column: Column) => {
  const index = view.columns.indexOf(column)
  return index >= at.from && index <= at.to ? 'true' : nothing
}
const problemId = (row: { readonly key: string }) => `problem ${row.key}`.replaceAll(' ', '-')
const editorIn = (row: Row, at: RowState, view: View, ...columns: readonly Column[]) =>
  at.editing && columns.includes(at.editing.column)
    ? editorTemplate(at.editing, view.label(row, at.editing.column))
    : nothing
const editing = (at: RowState, ...columns: readonly Column[]) =>
  at.editing && columns.includes(at.editing.column) ? 'editing' : ''

export function rowTemplate(row: Row, at: RowState, view: View): TemplateResult {
  switch (row.kind) {
    case 'stage':
      return stageTemplate(row, at, view)
    case 'line':
      return lineTemplate(row, at, view)
    case 'add':
      return addTemplate(row, at, view)
    case 'sum':
      return sumTemplate(row, at, view)
  }
}

const dots = html`<svg aria-hidden="true" width="18" height="18" fill="currentColor">
  <circle cx="3.5" cy="9" r="1.5" /><circle cx="9" cy="9" r="1.5" /><circle cx="14.5" cy="9" r="1.5" />
</svg>`

const actionsCell = (row: Row, name: string, at: RowState, view: View) =>
  view.readOnly
    ? nothing
    : html`<td class="actions" data-column="actions" aria-selected=${selected(at, view, 'actions')}><button
        class="dots"
        tabindex=${tab(at, 'actions')}
        aria-haspopup="menu"
        aria-label=${`Actions for ${name}`}
        data-row-actions=${row.key}
      >${dots}</button></td>`

/** A row's problem, over the whole width beneath it. The cells it is about point to it. */
const problemRow = (row: StageRow | LineRow, view: View) =>
  row.problem
    ? html`<tr class="problem"><td colspan=${view.columns.length}>
        <p id=${problemId(row)}><b>Check</b> ${row.problem}</p>
      </td></tr>`
    : nothing

const stageTemplate = (row: StageRow, at: RowState, view: View) => html`
  <tr class="stage ${row.problem ? 'troubled' : ''}" data-row=${row.key}>
    <th
      scope="rowgroup"
      colspan=${view.columns.length - (view.readOnly ? 0 : 1)}
      data-column="ingredient"
      class=${editing(at, 'ingredient')}
      tabindex=${tab(at, 'ingredient')}
      aria-selected=${selected(at, view, 'ingredient')}
      aria-readonly=${view.readOnly ? 'true' : nothing}
      aria-describedby=${row.problem ? problemId(row) : nothing}
    ><div class="held"><span class="name">${row.stage.name}</span>${row.words ? html` <small>${row.words}</small>` : nothing}</div>${editorIn(row, at, view, 'ingredient')}</th>
    ${actionsCell(row, row.stage.name, at, view)}
  </tr>
  ${problemRow(row, view)}
`

/** A figure in two parts, so that the decimal marks of a column stand under each other. */
function figure(text: string, style: NumberStyle): TemplateResult {
  const mark = /^[−-]?[\d\s.,'’]+$/.test(text) ? text.lastIndexOf(style.decimal) : -1
  const whole = mark < 0 ? text : text.slice(0, mark)
  return html`<span class="whole">${whole}</span><span class="part">${mark < 0 ? '' : text.slice(mark)}</span>`
}

function shownTemplate(shown: Shown, style: NumberStyle): TemplateResult {
  if (shown.is === 'raw') return html`<span class="typed raw">${shown.text}</span>`
  const number = html`<span class="figure ${shown.is}">${figure(shown.text, style)}</span>`
  if (shown.is === 'typed') return html`${number}<span class="unseen"> typed</span>`
  return shown.typed ? html`${number}<small class="typed expression">${shown.typed}</small>` : number
}

function numberCell(row: LineRow, column: 'percent' | 'weight', at: RowState, view: View): TemplateResult {
  const shown = row[column]
  const typed = shown.is === 'typed' || shown.typed !== ''
  const wrong = row.problem && (typed || shown.is === 'raw' || shown.is === 'missing')
  const reason = wrong ? row : shown.is === 'missing' ? row.waitsFor : undefined
  return html`<td
    class="number ${editing(at, column)}"
    data-column=${column}
    tabindex=${tab(at, column)}
    aria-selected=${selected(at, view, column)}
    aria-readonly=${view.readOnly ? 'true' : nothing}
    aria-invalid=${wrong ? 'true' : nothing}
    aria-describedby=${reason ? problemId(reason) : nothing}
  ><div class="held">${shownTemplate(shown, view.style)}</div>${editorIn(row, at, view, column)}</td>`
}

/** What is said of an ingredient beside its name. */
function marks(row: LineRow, view: View): TemplateResult {
  const { is, starterHydration, isBase } = row.figures
  const hydration = starterHydration === undefined ? '' : showPercent(starterHydration, view.style)
  return html`${row.waitsFor ? html` <small class="waits">waits for ${causeName(row.waitsFor, row.stage)}</small>` : nothing}${
    hydration
      ? html` <small class="hydration">${hydration.replace(/[.,]0+$/, '')} % hydration</small>`
      : nothing
  }${row.flourless && isBase ? html` <small class="tag">base</small>` : nothing}${
    is === 'unknown' && row.line.ingredient
      ? html` <small class="tag unknown">not in the larder</small>${
          view.readOnly
            ? nothing
            : html`<button class="define" tabindex="-1" data-define=${row.line.ingredient}
              >Define<span class="unseen"> ${row.line.ingredient}</span></button>`
        }`
      : nothing
  }`
}

const lineTemplate = (row: LineRow, at: RowState, view: View) => html`
  <tr class="line ${row.problem ? 'troubled' : ''}" data-row=${row.key}>
    <th
      scope="row"
      data-column="ingredient"
      class=${view.narrow ? editing(at, 'ingredient', 'note') : editing(at, 'ingredient')}
      tabindex=${tab(at, 'ingredient')}
      aria-selected=${selected(at, view, 'ingredient')}
      aria-readonly=${view.readOnly ? 'true' : nothing}
      aria-describedby=${row.problem ? problemId(row) : nothing}
    ><div class="held"><span class="name">${row.line.ingredient || html`<i class="quiet">no ingredient yet</i>`}</span>${marks(row, view)}${
      view.narrow && row.line.note ? html`<small class="note">${row.line.note}</small>` : nothing
    }</div>${editorIn(row, at, view, 'ingredient')}${view.narrow ? editorIn(row, at, view, 'note') : nothing}</th>
    ${numberCell(row, 'percent', at, view)}
    ${numberCell(row, 'weight', at, view)}
    ${
      view.narrow
        ? nothing
        : html`<td
          class="number"
          data-column="wholeDough"
          tabindex=${tab(at, 'wholeDough')}
          aria-selected=${selected(at, view, 'wholeDough')}
          aria-readonly="true"
        ><span class="figure computed">${figure(row.wholeDough, view.style)}</span></td>
        <td
          class="note ${editing(at, 'note')}"
          data-column="note"
          tabindex=${tab(at, 'note')}
          aria-selected=${selected(at, view, 'note')}
          aria-readonly=${view.readOnly ? 'true' : nothing}
        ><div class="held">${row.line.note}</div>${editorIn(row, at, view, 'note')}</td>`
    }
    ${actionsCell(row, row.line.ingredient || 'this line', at, view)}
  </tr>
  ${problemRow(row, view)}
`

const addTemplate = (row: AddRow, at: RowState, view: View) => html`
  <tr class="add" data-row=${row.key}>
    <th
      scope="row"
      data-column="ingredient"
      class=${editing(at, 'ingredient')}
      tabindex=${tab(at, 'ingredient')}
      aria-selected=${selected(at, view, 'ingredient')}
    ><div class="held"><span class="plus" aria-hidden="true">+</span> Add an ingredient<span class="unseen"> to ${row.stageName}</span></div>${editorIn(row, at, view, 'ingredient')}</th>
    ${view.columns.slice(1).map(
      column => html`<td
        class=${`${column === 'note' ? 'note' : 'number'} ${editing(at, column)}`}
        data-column=${column}
        tabindex=${tab(at, column)}
        aria-selected=${selected(at, view, column)}
        aria-readonly=${column === 'wholeDough' || column === 'actions' ? 'true' : nothing}
      >${editorIn(row, at, view, column)}</td>`,
    )}
  </tr>
`

const sumTemplate = (row: SumRow, at: RowState, view: View) => html`
  <tr class="sum ${row.figures.isFinal ? 'final' : ''}" data-row=${row.key}>
    <th
      scope="row"
      data-column="ingredient"
      tabindex=${tab(at, 'ingredient')}
      aria-selected=${selected(at, view, 'ingredient')}
      aria-readonly="true"
    >${row.figures.isFinal ? 'Dough' : html`Sum<span class="unseen"> of ${row.stageName}</span>`}</th>
    ${view.columns.slice(1).map(
      column => html`<td
        class="number"
        data-column=${column}
        tabindex=${tab(at, column)}
        aria-selected=${selected(at, view, column)}
        aria-readonly="true"
      >${
        column === 'percent' || column === 'weight'
          ? html`<span class="figure computed">${figure(row[column], view.style)}</span>`
          : nothing
      }</td>`,
    )}
  </tr>
`

/** Which columns of a row are selected, by their place. */
export function selectedColumns(extent: readonly Column[], columns: readonly Column[]): [number, number] {
  const places = extent.map(c => columns.indexOf(c))
  return places.length ? [places[0]!, places[places.length - 1]!] : [-1, -1]
}
