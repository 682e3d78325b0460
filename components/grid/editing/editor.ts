import { html, nothing, type TemplateResult } from 'lit'
import type { NumberStyle } from '../../base/numbers.js'
import { asTheyWrite, showNumber } from '../../base/numbers.js'
import { fieldId } from '../table/elements.js'
import { type Column, isAmount, type Row, type Spot } from '../table/table.js'
import { type Choice, choiceId, choiceList } from './choices.js'
import { listNames } from './words.js'

/** An open editor. Replaced whenever something of it changes; the field itself holds the text. */
export interface Editing {
  readonly row: string // key
  readonly column: Column
  readonly was: string // what the cell held; leaving it so is no edit
  readonly begin: string // what the field begins with: '' when a character is on its way
  readonly movesOn: boolean // an arrow key keeps the text and moves on, as after typing
  readonly refusal: string // why the text was not taken, in a sentence
  readonly choices: readonly Choice[]
  readonly chosen: number // index of the choice the arrow keys are at, -1: none
  readonly textKeys: boolean // on touch: letters rather than digits
  readonly completes: 'ingredient' | 'names' | undefined // from the larder and the stages, or within an amount
}

/** What a cell holds as text to be edited. */
export function textOf(row: Row, column: Column, style: NumberStyle): string {
  if (row.kind === 'stage') return row.stage.name
  if (row.kind !== 'line') return ''
  const { line, figures } = row
  if (column === 'ingredient') return line.ingredient
  if (column === 'note') return line.note
  if (!isAmount(column)) return ''
  if (figures.typedIn === column) return asTheyWrite(figures.typed, style)
  const figure = figures[column]
  return figure === undefined ? '' : showNumber(column === 'weight' ? figure : figure * 100, style)
}

/** What the text of an editor is kept under while it is not entered. */
export const typedAs = ({ row, column }: Spot): string => `cell ${column} ${row}`

/** The editor of a cell. It lies over the cell and is as wide as it needs; the cell keeps its place below. */
export function editorTemplate(editing: Editing, label: string): TemplateResult {
  const { column, was, refusal, choices, chosen, textKeys, completes } = editing
  const typed = typedAs(editing)
  const invalid = refusal ? 'true' : nothing
  const described = refusal ? 'refusal' : nothing
  return html`<div class="editor ${column}">
    ${
      column === 'note'
        ? html`<textarea
          class="field"
          id=${fieldId}
          data-typed=${typed}
          .defaultValue=${was}
          rows="1"
          aria-label=${label}
          aria-invalid=${invalid}
          aria-describedby=${described}
          enterkeyhint="done"
        ></textarea>`
        : html`<input
          class="field"
          id=${fieldId}
          data-typed=${typed}
          .defaultValue=${was}
          aria-label=${label}
          aria-invalid=${invalid}
          aria-describedby=${described}
          role=${completes ? 'combobox' : nothing}
          aria-autocomplete=${completes ? 'list' : nothing}
          aria-expanded=${completes ? String(choices.length > 0) : nothing}
          aria-controls=${completes ? 'choices' : nothing}
          aria-activedescendant=${chosen < 0 ? nothing : choiceId(chosen)}
          inputmode=${isAmount(column) && !textKeys ? 'decimal' : 'text'}
          enterkeyhint="next"
          autocomplete="off"
          autocapitalize="off"
          spellcheck="false"
        />`
    }
    ${refusal ? html`<p class="refusal" id="refusal">${refusal}</p>` : nothing}
    ${completes ? choiceList(choices, chosen, listNames[completes]) : nothing}
  </div>`
}
