import { html, nothing, type TemplateResult } from 'lit'
import type { FigureSheet } from '../../../src/dough/sheet/figures.js'
import type { NumberStyle } from '../../base/numbers.js'
import { asTheyWrite } from '../../base/numbers.js'
import { showNumber } from '../../base/typed-numbers.js'
import { fieldId } from '../table/elements.js'
import { type Column, isAmount, type Row } from '../table/table.js'
import { type Choice, choiceId, choiceList } from './choices.js'

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

export const columnNames: Readonly<Record<Column, string>> = {
  ingredient: 'ingredient',
  percent: '% of flour',
  weight: 'grams',
  wholeDough: '% whole dough',
  batch: 'batch, grams',
  note: 'note',
  actions: 'actions',
}

/** The name of a row for those who listen. */
export function rowName(row: Row, sheet: FigureSheet): string {
  if (row.kind === 'stage') return row.stage.name
  if (row.kind === 'line') return row.line.ingredient || 'line without an ingredient'
  const stage = sheet.formula.stages.find(s => s.id === row.stage)?.name ?? ''
  return row.kind === 'add' ? `new line of ${stage}` : `sum of ${stage}`
}

/** The editor of a cell. It lies over the cell and is as wide as it needs; the cell keeps its place below. */
export function editorTemplate(editing: Editing, label: string): TemplateResult {
  const { column, refusal, choices, chosen, textKeys, completes } = editing
  const invalid = refusal ? 'true' : nothing
  const described = refusal ? 'refusal' : nothing
  return html`<div class="editor ${column}">
    ${
      column === 'note'
        ? html`<textarea
          class="field"
          id=${fieldId}
          rows="1"
          aria-label=${label}
          aria-invalid=${invalid}
          aria-describedby=${described}
          enterkeyhint="done"
        ></textarea>`
        : html`<input
          class="field"
          id=${fieldId}
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
    ${completes ? choiceList(choices, chosen, completes === 'names' ? 'Names' : 'Ingredients') : nothing}
  </div>`
}

/** Signs and units a number pad lacks, in a strip above the keyboard of a touch screen. */
const pad: readonly { readonly shows: string; readonly types: string; readonly name: string }[] = [
  { shows: '%', types: '%', name: 'per cent' },
  { shows: 'g', types: ' g', name: 'grams' },
  { shows: 'tsp', types: ' tsp', name: 'teaspoons' },
  { shows: 'tbsp', types: ' tbsp', name: 'tablespoons' },
  { shows: 'cup', types: ' cup', name: 'cups' },
  { shows: '½', types: '½', name: 'a half' },
  { shows: '+', types: '+', name: 'plus' },
  { shows: '−', types: '-', name: 'minus' },
  { shows: '×', types: '*', name: 'times' },
  { shows: '÷', types: '/', name: 'divided by' },
  { shows: '(', types: '(', name: 'open bracket' },
  { shows: ')', types: ')', name: 'close bracket' },
]

export const padTemplate = (editing: Editing): TemplateResult => html`
  <div class="pad" id="pad" popover="manual" role="group" aria-label="Signs and units">
    ${pad.map(
      key => html`<button tabindex="-1" data-types=${key.types} aria-label=${key.name}>${key.shows}</button>`,
    )}
    <button tabindex="-1" data-pad="keys">${editing.textKeys ? '123' : 'abc'}</button>
    <button tabindex="-1" data-pad="next" class="main">Next</button>
  </div>
`

/** Puts text where the caret of the field is, as a key would; native undo takes it back. */
export function insertText(field: HTMLInputElement | HTMLTextAreaElement, text: string): void {
  // The one way to insert that the field's own undo knows; where it is gone, setRangeText does without.
  if (document.execCommand('insertText', false, text)) return
  field.setRangeText(text, field.selectionStart ?? 0, field.selectionEnd ?? 0, 'end')
  field.dispatchEvent(new Event('input', { bubbles: true }))
}

/** Opens the editor's list and its refusal upwards where the window ends below, and the list within its sides. */
export function placeEditor(field: HTMLElement | null): void {
  const editor = field?.closest<HTMLElement>('.editor')
  if (!field || !editor) return
  const end = visualViewport?.height ?? innerHeight
  editor.classList.toggle('up', field.getBoundingClientRect().bottom + 240 > end)
  const list = editor.querySelector('ul')
  if (!list || list.hidden) return
  editor.style.removeProperty('--list-shift')
  const { left, right } = list.getBoundingClientRect()
  const over = Math.min(0, left - 8) + Math.max(0, right - document.documentElement.clientWidth + 8)
  if (over) editor.style.setProperty('--list-shift', `${over}px`)
}
