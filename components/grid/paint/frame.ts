import { html, nothing, type TemplateResult } from 'lit'
import { repeat } from 'lit/directives/repeat.js'
import type { Column, Row, Table } from '../table/table.js'

/** What the grid's events come to. */
export interface Hands {
  readonly keydown: (event: KeyboardEvent) => void
  readonly input: () => void
  readonly beforeInput: (event: InputEvent) => void
  readonly pointerDown: (event: PointerEvent) => void
  readonly mouseDown: (event: MouseEvent) => void
  readonly click: (event: MouseEvent) => void
  readonly doubleClick: (event: MouseEvent) => void
  readonly focusIn: (event: FocusEvent) => void
  readonly focusOut: (event: FocusEvent) => void
  readonly copy: (event: ClipboardEvent) => void
  readonly cut: (event: ClipboardEvent) => void
  readonly paste: (event: ClipboardEvent) => void
  readonly addStage: () => void
}

const headings: Readonly<Record<Column, unknown>> = {
  ingredient: 'Ingredient',
  percent: '% of flour',
  weight: 'Grams',
  wholeDough: '% whole dough',
  batch: html`Batch<small class="above">grams</small><small class="beneath">written below</small>`,
  note: 'Note',
  actions: html`<span class="unseen">Actions</span>`,
}

/** The table with its heads, and what stands after it. */
export function frameTemplate(
  name: string,
  table: Table,
  columns: readonly Column[],
  readOnly: boolean,
  paint: (row: Row) => unknown,
  hands: Hands,
): TemplateResult {
  return html`<table
      role="grid"
      class=${table.batch ? 'with-batch' : ''}
      style="--columns:${columns.map(c => `var(--${c})`).join(' ')}"
      aria-label=${`${name}, stages and lines`}
      aria-describedby="help"
      aria-multiselectable="true"
      aria-readonly=${readOnly ? 'true' : nothing}
      @keydown=${hands.keydown}
      @input=${hands.input}
      @beforeinput=${hands.beforeInput}
      @pointerdown=${hands.pointerDown}
      @mousedown=${hands.mouseDown}
      @click=${hands.click}
      @dblclick=${hands.doubleClick}
      @focusin=${hands.focusIn}
      @focusout=${hands.focusOut}
      @copy=${hands.copy}
      @cut=${hands.cut}
      @paste=${hands.paste}
    >
      <colgroup>${columns.map(c => html`<col style="width:var(--${c})" />`)}</colgroup>
      <thead role="rowgroup">
        <tr role="row">${columns.map(c => html`<th role="columnheader" scope="col" class=${c}>${headings[c]}</th>`)}</tr>
      </thead>
      ${repeat(
        table.groups,
        group => group.stage.id,
        group => html`<tbody role="rowgroup">${repeat(group.rows, row => row.key, paint)}</tbody>`,
      )}
    </table>
    ${
      readOnly
        ? nothing
        : html`<div class="after">
          <button class="lined" @click=${hands.addStage}>Add a stage</button>
          <p id="help">
            <span class="by-keys"
              >Type to replace, Enter to edit, Alt+Enter to see how a number is worked out. Escape, then Tab leaves the
              sheet.</span
            ><span class="by-touch">Tap a cell, then tap it again to change it.</span>
          </p>
        </div>`
    }`
}
