import { html, nothing, type TemplateResult } from 'lit'
import type { Step } from '../../../src/dough/document/formula.js'
import { showPercent } from '../../base/numbers.js'
import { rowId } from '../table/elements.js'
import {
  type AddRow,
  type Column,
  causeName,
  isAmount,
  type LineRow,
  type Row,
  type StageRow,
  type SumRow,
} from '../table/table.js'
import {
  batchCell,
  editing,
  editorIn,
  figure,
  how,
  numberCell,
  problemId,
  type RowState,
  selected,
  tab,
  type View,
} from './row-cells.js'
import { rowWords } from './words.js'

export type { RowState, View } from './row-cells.js'

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

const actionsCell = (row: Row, name: string, at: RowState, view: View) =>
  view.readOnly
    ? nothing
    : html`<td role="gridcell" class="actions" data-column="actions" aria-selected=${selected(at, view, 'actions')}><button
        class="dots"
        tabindex=${tab(at, 'actions')}
        aria-haspopup="menu"
        aria-label=${rowWords.actionsFor(name)}
        data-row-actions=${row.key}
      >•••</button></td>`

/** A row's problem, over the whole width beneath it. The cells it is about point to it. */
const problemRow = (row: StageRow | LineRow, view: View) =>
  row.problem
    ? html`<tr role="row" class="problem"><td role="gridcell" colspan=${view.columns.length}>
        <p id=${problemId(row)}><b>${rowWords.check}</b> ${row.problem}</p>
      </td></tr>`
    : nothing

const stageTemplate = (row: StageRow, at: RowState, view: View) => html`
  <tr role="row" class="stage ${row.problem ? 'troubled' : ''}" id=${rowId(row.key)} data-row=${row.key}>
    <th
      role="rowheader"
      scope="rowgroup"
      colspan=${view.columns.length - (view.readOnly ? 0 : 1)}
      data-column="ingredient"
      class=${at.editing ? 'editing' : ''}
      tabindex=${tab(at, 'ingredient')}
      aria-selected=${selected(at, view, 'ingredient')}
      aria-readonly=${view.readOnly ? 'true' : nothing}
      aria-describedby=${row.problem ? problemId(row) : nothing}
    ><div class="held"><span class="name">${row.stage.name}</span>${row.words ? html` <small>${row.words}</small>` : nothing}</div>${editorIn(row, 'ingredient', at, view)}</th>
    ${actionsCell(row, row.stage.name, at, view)}
  </tr>
  ${problemRow(row, view)}
`

/** What is said of an ingredient beside its name. */
function marks(row: LineRow, view: View) {
  const { is, starterHydration, isBase, gives } = row.figures
  const hydration = starterHydration === undefined ? '' : showPercent(starterHydration, view.style)
  const waits = row.waitsFor && !gives
  const isUnknown = is === 'unknown' && row.line.ingredient
  const isMarkedBase = row.flourless && isBase
  if (!waits && !hydration && !isMarkedBase && !isUnknown && !row.gives) return nothing
  return html`${
    waits
      ? html` <small class="waits">${rowWords.waitsFor(causeName(row.waitsFor, row.stage))}</small>`
      : nothing
  }${
    hydration
      ? html` <small class="hydration">${rowWords.hydration(hydration.replace(/[.,]0+$/, ''))}</small>`
      : nothing
  }${isMarkedBase ? html` <small class="tag">${rowWords.base}</small>` : nothing}${
    isUnknown
      ? html` <small class="tag unknown">${rowWords.notInLarder}</small>${
          view.readOnly
            ? nothing
            : html`<button class="define" tabindex="-1" data-define=${row.line.ingredient}
              >${rowWords.define}<span class="unseen"> ${row.line.ingredient}</span></button>`
        }`
      : nothing
  }${row.gives ? html`<small class="for">${rowWords.givesFor(row.gives)}</small>` : nothing}`
}

const noteBeneath = (row: LineRow, view: View) =>
  row.line.note && !view.columns.includes('note')
    ? html`<small class="note">${row.line.note}</small>`
    : nothing

const noteCell = (row: LineRow, at: RowState, view: View) => html`<td
  role="gridcell"
  class="note ${editing('note', at, view)}"
  data-column="note"
  tabindex=${tab(at, 'note')}
  aria-selected=${selected(at, view, 'note')}
  aria-readonly=${view.readOnly ? 'true' : nothing}
><span class="held">${row.line.note}</span>${editorIn(row, 'note', at, view)}</td>`

function lineCell(row: LineRow, column: Column, at: RowState, view: View) {
  if (!view.columns.includes(column)) return nothing
  if (isAmount(column)) return numberCell(row, column, at, view)
  if (column === 'batch') return batchCell(row, row.batch, row.weight, at, view)
  if (column === 'note') return noteCell(row, at, view)
  return actionsCell(row, row.line.ingredient || rowWords.thisLine, at, view)
}

const lineTemplate = (row: LineRow, at: RowState, view: View) => html`
  <tr role="row" class="line ${row.problem ? 'troubled' : ''} ${at.lit ? 'lit' : ''}" id=${rowId(row.key)} data-row=${row.key}>
    <th
      role="rowheader"
      scope="row"
      data-column="ingredient"
      class=${editing('ingredient', at, view)}
      title=${row.line.source ? rowWords.readFrom(row.line.source) : nothing}
      tabindex=${tab(at, 'ingredient')}
      aria-selected=${selected(at, view, 'ingredient')}
      aria-readonly=${view.readOnly ? 'true' : nothing}
      aria-describedby=${row.problem ? problemId(row) : nothing}
    ><div class="held"><span class="name">${row.line.ingredient || html`<i class="quiet">${rowWords.noIngredient}</i>`}</span>${marks(row, view)}${noteBeneath(row, view)}</div>${
      at.lit ? html`<span class="unseen">${rowWords.partOfWorking}</span>` : nothing
    }${editorIn(row, 'ingredient', at, view)}</th>
    ${lineCell(row, 'percent', at, view)}${lineCell(row, 'weight', at, view)}${lineCell(row, 'wholeDough', at, view)}${lineCell(
      row,
      'batch',
      at,
      view,
    )}${lineCell(row, 'note', at, view)}${lineCell(row, 'actions', at, view)}
  </tr>
  ${problemRow(row, view)}
  ${
    row.isOpen && !view.readOnly
      ? html`<tr role="row" class="problem offers"><td role="gridcell" colspan=${view.columns.length}><tb-offers .row=${row}></tb-offers></td></tr>`
      : nothing
  }
`

const addTemplate = (row: AddRow, at: RowState, view: View) => html`
  <tr role="row" class="add" id=${rowId(row.key)} data-row=${row.key}>
    <th
      role="rowheader"
      scope="row"
      data-column="ingredient"
      class=${editing('ingredient', at, view)}
      tabindex=${tab(at, 'ingredient')}
      aria-selected=${selected(at, view, 'ingredient')}
    ><div class="held"><span class="plus" aria-hidden="true">+</span> ${rowWords.addIngredient}<span class="unseen">${rowWords.addTo(row.stageName)}</span></div>${editorIn(row, 'ingredient', at, view)}</th>
    ${view.columns.slice(1).map(
      column => html`<td
        role="gridcell"
        class=${`${column === 'note' ? 'note' : 'number'} ${editing(column, at, view)}`}
        data-column=${column}
        tabindex=${tab(at, column)}
        aria-selected=${selected(at, view, column)}
        aria-readonly=${(column === 'wholeDough' && !row.isFinal) || column === 'batch' || column === 'actions' ? 'true' : nothing}
      >${editorIn(row, column, at, view)}</td>`,
    )}
  </tr>
`

function sumCell(row: SumRow, column: Column, at: RowState, view: View) {
  const written = { text: row.weight, is: 'computed', typed: '' } as const
  if (column === 'batch') return batchCell(row, row.batch, written, at, view)
  const text = column === 'percent' || column === 'weight' ? row[column] : ''
  return html`<td
    role="gridcell"
    class="number"
    data-column=${column}
    tabindex=${tab(at, column)}
    aria-selected=${selected(at, view, column)}
    aria-readonly="true"
  >${text ? html`<span class="figure computed">${figure(text, view.style)}</span>` : nothing}${how(at, column, text, view.style)}</td>`
}

const stepWords = ({ does, kind, text }: Step): string => `${does || kind} ${text}`

/** What is done with the stage, in a line over the whole width; its steps stand beneath the sheet. No key goes there. */
const methodRow = ({ method, stage, stageName }: SumRow, view: View) =>
  method?.length
    ? html`<tr role="row" class="problem method"><td role="gridcell" colspan=${view.columns.length}><button
        tabindex="-1"
        data-method=${stage}
      ><span><span class="unseen">${rowWords.methodOf(stageName)}</span>${method.map(stepWords).join('\u00a0· ')}</span></button></td></tr>`
    : nothing

const sumTemplate = (row: SumRow, at: RowState, view: View) => html`
  <tr role="row" class="sum ${row.figures.isFinal ? 'final' : ''}" id=${rowId(row.key)} data-row=${row.key}>
    <th
      role="rowheader"
      scope="row"
      data-column="ingredient"
      tabindex=${tab(at, 'ingredient')}
      aria-selected=${selected(at, view, 'ingredient')}
      aria-readonly="true"
    >${row.figures.isFinal ? rowWords.dough : html`${rowWords.sum}<span class="unseen">${rowWords.sumOf(row.stageName)}</span>`}</th>
    ${view.columns.slice(1).map(column => sumCell(row, column, at, view))}
  </tr>
  ${methodRow(row, view)}
`

/** Which columns of a row are selected, by their place. */
export function selectedColumns(extent: readonly Column[], columns: readonly Column[]): [number, number] {
  const places = extent.map(c => columns.indexOf(c))
  return places.length ? [places[0]!, places[places.length - 1]!] : [-1, -1]
}
