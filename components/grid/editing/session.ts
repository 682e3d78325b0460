import { newId } from '../../../src/dough/document/formula.js'
import type { Edit } from '../../base/events.js'
import { arrowOf, isComposing, type Leave } from '../moving/key-map.js'
import type { Field } from '../table/elements.js'
import {
  addKey,
  type Column,
  type Given,
  isAmount,
  type Row,
  rowAt,
  type Spot,
  stageOf,
  type Table,
} from '../table/table.js'
import { nameAt, namesFor } from './amount-names.js'
import { enterInCell } from './cell-edits.js'
import { type Choice, choicesFor, knownSpelling } from './choices.js'
import { type Editing, insertText, textOf } from './editor.js'

/** What the session asks of the grid around it. */
export interface SessionHost {
  readonly given: Given
  rtl(): boolean
  table(): Table
  field(): Field | null
  changed(): void
  /** Makes the edit; returns the sentence of a refusal. */
  edit(edit: Edit, line: Spot): string | undefined
  /** Goes on from a cell; false: there is nowhere further to go. */
  leave(from: Spot, to: Leave): boolean
}

/**
 * The one open editor: what it holds is kept on leaving, by whatever way but Escape. A refused text stays
 * in the open field with the reason beside it.
 */
export class EditSession {
  state: Editing | undefined
  #host: SessionHost
  #touched = false // nothing typed, nothing kept
  #begin: 'all' | 'end' | undefined // how the field takes the focus when it is there
  #lineBegun = '' // id of the line the last Tab out of the row for another ingredient began

  constructor(host: SessionHost) {
    this.#host = host
  }

  /** `typing`: a character is on its way and replaces the text; `end`, `all`: the text stays, caret or selection there. */
  open(spot: Spot, how: 'typing' | 'end' | 'all'): void {
    const row = rowAt(this.#host.table(), spot.row)
    if (!row) return
    const was = textOf(row, spot.column, this.#host.given.numbers)
    const begin = how === 'typing' ? '' : was
    const isName = spot.column === 'ingredient' && row.kind !== 'stage'
    const isSum = spot.column === 'percent' || spot.column === 'weight' // a share of the whole dough is a number
    this.state = {
      ...spot,
      was,
      begin,
      movesOn: how === 'typing',
      refusal: '',
      choices: isName && begin === '' && how !== 'typing' ? this.#ingredients('', row) : [],
      chosen: -1,
      textKeys: false,
      completes: isName ? 'ingredient' : isSum ? 'names' : undefined,
    }
    this.#touched = false
    this.#begin = how === 'all' ? 'all' : 'end'
    this.#host.changed()
  }

  /** To be called when the field has been rendered; says whether it took the focus anew. */
  rendered(): boolean {
    const field = this.#host.field()
    if (!field || !this.state || !this.#begin) return false
    field.value = this.state.begin
    field.focus()
    if (this.#begin === 'all') field.select()
    else field.setSelectionRange(field.value.length, field.value.length)
    fit(field)
    this.#begin = undefined
    return true
  }

  close(): void {
    this.state = undefined
    this.#host.changed()
  }

  #set(change: Partial<Editing>): void {
    if (this.state) this.state = { ...this.state, ...change }
    this.#host.changed()
  }

  #ingredients(text: string, row: Row): readonly Choice[] {
    return choicesFor(text, this.#host.given.sheet.formula, stageOf(row), this.#host.given.names)
  }

  #names(field: Field, row: Row): readonly Choice[] {
    const typed = nameAt(field.value, field.selectionStart ?? field.value.length)
    return typed ? namesFor(typed.text, this.#host.given.sheet, row) : []
  }

  /** Puts a name where it is being typed; the amount goes on from there. */
  #insertName({ name }: Choice): void {
    const field = this.#host.field()
    const caret = field?.selectionStart ?? 0
    const typed = field && nameAt(field.value, caret)
    if (!field || !typed) return
    field.setSelectionRange(typed.from, caret)
    insertText(field, name)
    this.#set({ choices: [], chosen: -1 })
  }

  input(): void {
    const field = this.#host.field()
    const row = this.state && rowAt(this.#host.table(), this.state.row)
    if (!field || !row || !this.state) return
    this.#touched = true
    fit(field)
    const { completes } = this.state
    const choices =
      completes === 'ingredient'
        ? this.#ingredients(field.value, row)
        : completes === 'names'
          ? this.#names(field, row)
          : []
    this.#set({ choices, chosen: -1, refusal: '' })
  }

  /** Keeps what was typed and closes; false: it was refused and the editor is still open. `line`: where it is kept. */
  keep(): { readonly at: Spot } | undefined {
    const { state } = this
    const field = this.#host.field()
    const row = state && rowAt(this.#host.table(), state.row)
    if (!state || !field || !row) {
      this.close()
      return { at: { row: state?.row ?? '', column: state?.column ?? 'ingredient' } }
    }
    const choice = state.completes === 'ingredient' ? state.choices[state.chosen] : undefined
    const typed = choice?.name ?? (this.#touched ? field.value : state.was)
    const { sheet, names, numbers } = this.#host.given
    const text =
      state.completes === 'ingredient'
        ? knownSpelling(typed, sheet.formula, names)
        : state.column === 'note'
          ? typed
          : typed.trim()
    const asBefore = followsOnly(row, state.column) ? !this.#touched || text === '' : text === state.was
    if (asBefore) {
      this.close()
      return { at: state }
    }
    const begun = newId()
    const at: Spot = { row: row.kind === 'add' ? begun : state.row, column: state.column }
    const edit = enterInCell(sheet.formula.id, row, state.column, text, numbers.decimal, begun)
    this.state = undefined // the edit may bring on a blur, which must find nothing to keep
    const refusal = this.#host.edit(edit, at)
    if (refusal) {
      this.state = { ...state, refusal, choices: [], chosen: -1 }
      if (choice) field.value = choice.name
      this.#host.changed()
      return undefined
    }
    this.#host.changed()
    return { at }
  }

  keepAndGo(to: Leave): boolean {
    const { state } = this
    if (!state) return false
    const name = state.completes === 'names' ? state.choices[state.chosen] : undefined
    if (name) this.#insertName(name)
    const kept = this.keep()
    if (!kept) return true
    const began = kept.at.row !== state.row
    if (began && (to === 'next' || to === 'previous')) this.#lineBegun = kept.at.row
    if (to === 'down' && !began && state.row === this.#lineBegun) {
      this.#lineBegun = ''
      const row = rowAt(this.#host.table(), state.row)
      if (row) return this.#host.leave({ row: addKey(stageOf(row)), column: 'ingredient' }, 'stay')
    }
    return this.#host.leave(kept.at, to)
  }

  pick(index: number): void {
    const choice = this.state?.choices[index]
    if (choice && this.state?.completes === 'names') return this.#insertName(choice)
    this.#set({ chosen: index })
    this.keepAndGo('next')
  }

  /** A key of the strip above a touch keyboard. */
  pad(types: string | undefined, key: string | undefined): void {
    const field = this.#host.field()
    if (!field) return
    if (types !== undefined) insertText(field, types)
    else if (key === 'next') this.keepAndGo('down')
    else this.#set({ textKeys: !this.state?.textKeys })
  }

  key(event: KeyboardEvent): void {
    const { state } = this
    if (!state || isComposing(event)) return
    const went = this.#byKey(event, state)
    if (went) event.preventDefault()
  }

  #byKey(event: KeyboardEvent, state: Editing): boolean {
    const { key, shiftKey, altKey } = event
    if (key === 'Escape') {
      this.close()
      return this.#host.leave(state, 'stay')
    }
    if (key === 'F2') {
      this.#set({ movesOn: !state.movesOn })
      return true
    }
    if (key === 'Enter') {
      const choice = state.completes === 'names' && state.choices[state.chosen]
      if (choice) this.#insertName(choice)
      else if (altKey && state.column === 'note') insertText(this.#host.field()!, '\n')
      else this.keepAndGo(shiftKey ? 'up' : 'down')
      return true
    }
    if (key === 'Tab') return this.keepAndGo(shiftKey ? 'previous' : 'next')
    const arrow = arrowOf(event, this.#host.rtl())
    if (!arrow) return false
    if (state.choices.length && (arrow === 'up' || arrow === 'down')) {
      const steps = state.choices.length + 1 // the text itself is one of the places
      const chosen = (state.chosen + 1 + (arrow === 'down' ? 1 : steps - 1)) % steps
      this.#set({ chosen: chosen - 1 })
      return true
    }
    if (!state.movesOn) return false
    this.keepAndGo(arrow)
    return true
  }
}

/** A cell whose figure only follows from the other one: typing the same there says that it is meant. */
const followsOnly = (row: Row, column: Column): boolean =>
  row.kind === 'line' && isAmount(column) && row.figures.typedIn !== column

/** `field-sizing: content` is not in every browser yet: a note's field grows by hand. */
function fit(field: Field): void {
  if (!(field instanceof HTMLTextAreaElement)) return
  field.style.height = 'auto'
  field.style.height = `${field.scrollHeight + 2}px`
}
