import { isSpokenRead, mayBeSaid } from '../../../src/dough/amounts/spoken-reader.js'
import { areRareCellsThere } from '../../../src/dough/cells/rare-cells.js'
import { newId } from '../../../src/dough/document/formula.js'
import { fetchRareCells, fetchSpoken } from '../../base/fetched-for.js'
import { partNotFetched } from '../../base/words.js'
import { arrowOf, isComposing, isRightToLeft, type Leave } from '../moving/key-map.js'
import type { Field } from '../table/elements.js'
import {
  addKey,
  type Column,
  homeOf,
  isAmount,
  type Row,
  rowAt,
  type Spot,
  stageOf,
  takesTyping,
} from '../table/table.js'
import type * as AmountNames from './amount-names.js'
import { enterInCell } from './cell-edits.js'
import { type Choice, choicesFor, knownSpelling } from './choices.js'
import type { Dispatcher, DispatcherContext } from './dispatcher.js'
import { type Editing, textOf } from './editor.js'
import { fit, insertText } from './field.js'

export interface EditingContext extends DispatcherContext {
  readonly dispatcher: Dispatcher
  readonly session: EditSession
}

/**
 * The one open editor: what it holds is kept on leaving, by whatever way but Escape. A refused text stays
 * in the open field with the reason beside it.
 */
export class EditSession {
  state: Editing | undefined
  #context: EditingContext
  #touched = false // nothing typed, nothing kept
  #begin: 'all' | 'end' | undefined // how the field takes the focus when it is there
  #lineBegun = '' // id of the line the last Tab out of the row for another ingredient began
  #amountNames: typeof AmountNames | undefined

  constructor(context: EditingContext) {
    this.#context = context
  }

  /**
   * Opens the editor of a cell, where there is one. `typing`: a character is on its way and replaces the text; `end`,
   * `all`: the text stays, caret or selection there.
   */
  start(spot: Spot, how: 'typing' | 'end' | 'all'): boolean {
    const { grid, table, columns, selection } = this.#context
    const row = rowAt(table, spot.row)
    if (grid.readOnly || !row || !takesTyping(row, spot.column)) return false
    const column = row.kind === 'stage' ? 'ingredient' : spot.column
    selection.moveTo({ row: spot.row, column: homeOf(column, columns) })
    this.#open({ row: spot.row, column }, row, how)
    return true
  }

  #open(spot: Spot, row: Row, how: 'typing' | 'end' | 'all'): void {
    const was = textOf(row, spot.column, this.#context.grid.numbers)
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
    this.#context.grid.requestUpdate()
  }

  /** To be called when the field has been rendered; says whether it took the focus anew. */
  rendered(): boolean {
    const field = this.#context.elements.field
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
    this.#context.grid.requestUpdate()
  }

  #set(change: Partial<Editing>): void {
    if (this.state) this.state = { ...this.state, ...change }
    this.#context.grid.requestUpdate()
  }

  #ingredients(text: string, row: Row): readonly Choice[] {
    const { sheet, names } = this.#context.grid
    return choicesFor(text, sheet.formula, stageOf(row), names)
  }

  /** Fetches what offers names in amounts. */
  async fetchNames(): Promise<void> {
    this.#amountNames ??= await import('./amount-names.js')
  }

  #names(field: Field, row: Row): readonly Choice[] {
    const known = this.#amountNames
    if (!known) {
      this.fetchNames().then(
        () => this.state?.completes === 'names' && this.input(),
        () => {}, // without it none are offered
      )
      return []
    }
    const typed = known.nameAt(field.value, field.selectionStart ?? field.value.length)
    return typed ? known.namesFor(typed.text, this.#context.grid.sheet, row) : []
  }

  /** Puts a name where it is being typed; the amount goes on from there. */
  #insertName({ name }: Choice): void {
    const field = this.#context.elements.field
    const caret = field?.selectionStart ?? 0
    const typed = field && this.#amountNames?.nameAt(field.value, caret)
    if (!field || !typed) return
    field.setSelectionRange(typed.from, caret)
    insertText(field, name)
    this.#set({ choices: [], chosen: -1 })
  }

  input(): void {
    const field = this.#context.elements.field
    const row = this.state && rowAt(this.#context.table, this.state.row)
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
    const field = this.#context.elements.field
    const row = state && rowAt(this.#context.table, state.row)
    if (this.#waits(() => this.keep())) return undefined
    if (!state || !field || !row) {
      this.close()
      return { at: { row: state?.row ?? '', column: state?.column ?? 'ingredient' } }
    }
    const choice = state.completes === 'ingredient' ? state.choices[state.chosen] : undefined
    const typed = choice?.name ?? (this.#touched ? field.value : state.was)
    const { sheet, names, numbers } = this.#context.grid
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
    const refusal = this.#context.dispatcher.edit(edit, at)
    if (refusal) {
      this.state = { ...state, refusal, choices: [], chosen: -1 }
      if (choice) field.value = choice.name
      this.#context.grid.requestUpdate()
      return undefined
    }
    this.#context.grid.requestUpdate()
    return { at }
  }

  /** Whether an amount has to wait for what reads it or works it out, as in the first moments of a page; `then` is done when that is there. */
  #waits(then: () => unknown): boolean {
    const column = this.state?.column
    if (!column || !isAmount(column)) return false
    const typed = this.#context.elements.field?.value.trim() ?? ''
    const isHold = column === 'wholeDough' && typed !== '' && !areRareCellsThere()
    if (!isHold && (isSpokenRead() || !mayBeSaid(typed))) return false
    const fetched = isHold ? fetchRareCells() : fetchSpoken()
    fetched.then(then, () => this.#set({ refusal: partNotFetched }))
    return true
  }

  keepAndGo(to: Leave): boolean {
    const { state } = this
    if (!state) return false
    const name = state.completes === 'names' ? state.choices[state.chosen] : undefined
    if (name) this.#insertName(name)
    if (this.#waits(() => this.keepAndGo(to))) return true
    const kept = this.keep()
    if (!kept) return true
    const began = kept.at.row !== state.row
    if (began && (to === 'next' || to === 'previous')) this.#lineBegun = kept.at.row
    if (to === 'down' && !began && state.row === this.#lineBegun) {
      this.#lineBegun = ''
      const row = rowAt(this.#context.table, state.row)
      if (row) return this.#leave({ row: addKey(stageOf(row)), column: 'ingredient' }, 'stay')
    }
    return this.#leave(kept.at, to)
  }

  pick(index: number): void {
    const choice = this.state?.choices[index]
    if (choice && this.state?.completes === 'names') return this.#insertName(choice)
    this.#set({ chosen: index })
    this.keepAndGo('next')
  }

  /** Goes on from an edited cell. False: past the last cell, the key is the browser's. */
  #leave(from: Spot, to: Leave): boolean {
    const { grid, selection, elements } = this.#context
    const next = selection.onward(from, to)
    selection.moveTo(next ?? from)
    // At once: so that Tab goes on from here, and since a field that goes while it has the focus costs a layout.
    elements.cell(selection.cell)?.focus()
    if (next) grid.focus() // where its row is still to come
    return next !== undefined
  }

  /** A key of the strip above a touch keyboard. */
  pad(types: string | undefined, key: string | undefined): void {
    const field = this.#context.elements.field
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
      return this.#leave(state, 'stay')
    }
    if (key === 'F2') {
      this.#set({ movesOn: !state.movesOn })
      return true
    }
    if (key === 'Enter') {
      const choice = state.completes === 'names' && state.choices[state.chosen]
      if (choice) this.#insertName(choice)
      else if (altKey && state.column === 'note') insertText(this.#context.elements.field!, '\n')
      else this.keepAndGo(shiftKey ? 'up' : 'down')
      return true
    }
    if (key === 'Tab') return this.keepAndGo(shiftKey ? 'previous' : 'next')
    const arrow = arrowOf(event, isRightToLeft(this.#context.grid))
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
