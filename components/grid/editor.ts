import { html, nothing, type TemplateResult } from 'lit'
import type { FormulaSheet } from '../../src/dough/figures.js'
import type { NumberStyle } from '../numbers.js'
import { showNumber } from '../typed-numbers.js'
import { type Choice, choiceId, choiceList } from './choices.js'
import { asTheyWrite, type Column, type Row } from './table.js'

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
  readonly isName: boolean // names an ingredient: completes from the larder and the stages
}

/** What a cell holds as text to be edited. */
export function textOf(row: Row, column: Column, style: NumberStyle): string {
  if (row.kind === 'stage') return row.stage.name
  if (row.kind !== 'line') return ''
  const { line, figures } = row
  if (column === 'ingredient') return line.ingredient
  if (column === 'note') return line.note
  if (column !== 'percent' && column !== 'weight') return ''
  if (figures.typedIn === column) return asTheyWrite(figures.typed, style)
  const figure = column === 'percent' ? figures.percent : figures.weight
  return figure === undefined ? '' : showNumber(column === 'percent' ? figure * 100 : figure, style)
}

export const columnNames: Readonly<Record<Column, string>> = {
  ingredient: 'ingredient',
  percent: '% of flour',
  weight: 'grams',
  wholeDough: '% whole dough',
  note: 'note',
  actions: 'actions',
}

/** The name of a row for those who listen. */
export function rowName(row: Row, sheet: FormulaSheet): string {
  if (row.kind === 'stage') return row.stage.name
  if (row.kind === 'line') return row.line.ingredient || 'line without an ingredient'
  const stage = sheet.formula.stages.find(s => s.id === row.stage)?.name ?? ''
  return row.kind === 'add' ? `new line of ${stage}` : `sum of ${stage}`
}

/** The editor of a cell. It lies over the cell and is as wide as it needs; the cell keeps its place below. */
export function editorTemplate(editing: Editing, label: string): TemplateResult {
  const { column, refusal, choices, chosen, textKeys, isName } = editing
  const invalid = refusal ? 'true' : nothing
  const described = refusal ? 'refusal' : nothing
  return html`<div class="editor ${column}">
    ${
      column === 'note'
        ? html`<textarea
          class="field"
          rows="1"
          aria-label=${label}
          aria-invalid=${invalid}
          aria-describedby=${described}
          enterkeyhint="done"
        ></textarea>`
        : html`<input
          class="field"
          aria-label=${label}
          aria-invalid=${invalid}
          aria-describedby=${described}
          role=${isName ? 'combobox' : nothing}
          aria-autocomplete=${isName ? 'list' : nothing}
          aria-expanded=${isName ? String(choices.length > 0) : nothing}
          aria-controls=${isName ? 'choices' : nothing}
          aria-activedescendant=${chosen < 0 ? nothing : choiceId(chosen)}
          inputmode=${(column === 'percent' || column === 'weight') && !textKeys ? 'decimal' : 'text'}
          enterkeyhint="next"
          autocomplete="off"
          autocapitalize="off"
          spellcheck="false"
        />`
    }
    ${refusal ? html`<p class="refusal" id="refusal">${refusal}</p>` : nothing}
    ${isName ? choiceList(choices, chosen) : nothing}
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
  <div class="pad" popover="manual" role="group" aria-label="Signs and units">
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

/** Opens the editor's list and its refusal upwards where the window ends below. */
export function placeEditor(field: HTMLElement | null): void {
  const editor = field?.closest<HTMLElement>('.editor')
  if (!field || !editor) return
  const end = visualViewport?.height ?? innerHeight
  editor.classList.toggle('up', field.getBoundingClientRect().bottom + 240 > end)
}
