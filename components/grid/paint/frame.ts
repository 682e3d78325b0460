import { html, nothing, type TemplateResult } from 'lit'
import { repeat } from 'lit/directives/repeat.js'
import type { Column, RowGroup, Table } from '../table/table.js'
import { addStageLabel, gridName, headings, helpByKeys, helpByTouch, helpOnTyped } from './words.js'

/** What the grid's events come to. */
export interface Handlers {
  readonly keydown: (event: KeyboardEvent) => void
  readonly input: () => void
  readonly beforeInput: (event: InputEvent) => void
  readonly pointerDown: (event: PointerEvent) => void
  readonly mouseDown: (event: MouseEvent) => void
  readonly click: (event: MouseEvent) => void
  readonly doubleClick: (event: MouseEvent) => void
  readonly focusIn: (event: FocusEvent) => void
  readonly focusOut: (event: FocusEvent) => void
  readonly addStage: () => void
}

/** The table with its heads, and what stands after it. */
export function frameTemplate(
  name: string,
  table: Table,
  columns: readonly Column[],
  readOnly: boolean,
  paint: (group: RowGroup) => unknown,
  busy: boolean,
  handlers: Handlers,
): TemplateResult {
  return html`<table
      role="grid"
      class="${table.batch ? 'with-batch' : ''} ${table.heavy ? 'heavy' : ''} ${table.rows.length > 100 ? 'long' : ''}"
      style="--columns:${columns.map(c => `var(--${c})`).join(' ')}"
      aria-label=${gridName(name)}
      aria-describedby="help"
      aria-multiselectable="true"
      aria-readonly=${readOnly ? 'true' : nothing}
      aria-busy=${busy ? 'true' : nothing}
      @keydown=${handlers.keydown}
      @input=${handlers.input}
      @beforeinput=${handlers.beforeInput}
      @pointerdown=${handlers.pointerDown}
      @mousedown=${handlers.mouseDown}
      @click=${handlers.click}
      @dblclick=${handlers.doubleClick}
      @focusin=${handlers.focusIn}
      @focusout=${handlers.focusOut}
    >
      <colgroup>${columns.map(c => html`<col style="width:var(--${c})" />`)}</colgroup>
      <thead role="rowgroup">
        <tr role="row">${columns.map(c => html`<th role="columnheader" scope="col" class=${c}>${headings[c]}</th>`)}</tr>
      </thead>
      ${repeat(table.groups, group => group.key, paint)}
    </table>
    ${
      readOnly
        ? nothing
        : html`<div class="after">
          <button class="lined" @click=${handlers.addStage}>${addStageLabel}</button>
          <p id="help">
            <b>${helpOnTyped}</b> <span class="by-keys">${helpByKeys}</span><span class="by-touch">${helpByTouch}</span>
          </p>
        </div>`
    }`
}
