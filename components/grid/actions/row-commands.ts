import type { Formula } from '../../../src/dough/document/formula.js'
import { holdWords } from '../../../src/dough/document/words.js'
import { addLine, moveLine, moveStage, newLine } from '../../../src/dough/edits/edits.js'
import type { FigureSheet } from '../../../src/dough/sheet/figures.js'
import type { CellName } from '../../../src/dough/workings/working.js'
import { askEdit, type Edit, say, wish } from '../../base/events.js'
import type { Blocks } from '../blocks/blocks.js'
import type { Walk } from '../moving/selection.js'
import {
  type Column,
  type Given,
  type LineRow,
  type Row,
  rowAt,
  type Spot,
  stageOf,
  type Table,
} from '../table/table.js'
import type { Action, Actor } from './action.js'

/** Where the baker is in a formula: what an edit carries, and undo gives back. Ids; '' for no line. */
export interface GridPlace {
  readonly formula: string
  readonly stage: string
  readonly line: string
  readonly column: Column
}

/** What the deeds ask of the grid around them. */
export interface DeedsHost {
  readonly given: Given & EventTarget
  readonly walk: Walk
  blocks(): Blocks
  columns(): readonly Column[]
  table(): Table
  startEditing(spot: Spot, how: 'typing' | 'end' | 'all'): boolean
  wantFocus(): void
  /** Opens a menu of other actions where the last one was. */
  offer(label: string, actions: readonly Action[]): void
}

/** What is done to lines and stages whole: each an edit the app is asked for, with the place it was asked at. */
export class Deeds implements Actor {
  readonly hasClipboard = 'clipboard' in navigator
  #host: DeedsHost

  constructor(host: DeedsHost) {
    this.#host = host
  }

  get sheet(): FigureSheet {
    return this.#host.given.sheet
  }

  get columns(): readonly Column[] {
    return this.#host.columns()
  }

  get formula(): Formula {
    return this.sheet.formula
  }

  #placeOf(spot: Spot): GridPlace {
    const row = rowAt(this.#host.table(), spot.row)
    const line = !row || row.kind === 'line' ? spot.row : '' // a line being begun has no row yet
    const near = row ?? rowAt(this.#host.table(), this.#host.walk.active.row)
    return { formula: this.formula.id, stage: near ? stageOf(near) : '', line, column: spot.column }
  }

  /** Makes the edit; returns the sentence of a refusal, which has been said. */
  edit(edit: Edit, at: Spot): string | undefined {
    const before = this.formula
    const refusal = askEdit(this.#host.given, edit, this.#placeOf(at))
    if (refusal) say(this.#host.given, refusal)
    else this.#tellReleases(before, at.row)
    return refusal
  }

  /** A line that gave and has now been given an amount gives no more: that is more than was typed. */
  #tellReleases(before: Formula, typedIn: string): void {
    const { formula } = this
    if (before.id !== formula.id || before.holds === formula.holds) return
    const line = formula.stages.flatMap(s => s.lines).find(l => l.id === typedIn)
    const released = before.holds?.filter(
      hold =>
        hold.line === line?.id &&
        !formula.holds?.some(h => h.line === hold.line && h.reading === hold.reading),
    )
    if (!line || !released?.length) return
    const { ingredient, amount } = line
    const now = formula.holds?.some(h => h.line === line.id)
      ? 'gives for what was typed'
      : `is ${amount || 'empty'}`
    const words = released.map(h => holdWords(h, ingredient)).join(', ')
    say(this.#host.given, `${ingredient} ${now}; released: ${words}.`)
  }

  act(edit: Edit, goTo?: string): boolean {
    const { walk } = this.#host
    if (this.edit(edit, walk.active)) return false
    if (goTo) walk.stand({ row: goTo, column: walk.active.column })
    this.#host.wantFocus()
    return true
  }

  /** Moves the line or the stage. */
  shift(row: Row, by: -1 | 1): void {
    const formula = this.formula.id
    if (row.kind === 'stage') this.act(wb => moveStage(wb, { formula, stage: row.stage.id }, by), row.key)
    if (row.kind === 'line')
      this.act(wb => moveLine(wb, { formula, stage: row.stage, line: row.key }, by), row.key)
  }

  addLine(row: LineRow, by: 0 | 1): void {
    const stage = this.formula.stages.find(s => s.id === row.stage)
    const index = stage?.lines.findIndex(l => l.id === row.key) ?? -1
    if (index >= 0) this.#addLineAt(row.stage, index + by)
  }

  /** Adds a line below any row: in the row for another ingredient it is that row that is opened. */
  addBelow(row: Row): void {
    if (row.kind === 'line') this.addLine(row, 1)
    else if (row.kind === 'stage') this.#addLineAt(row.stage.id, 0)
    else this.#host.startEditing({ row: row.key, column: 'ingredient' }, 'end')
  }

  #addLineAt(stage: string, index: number): void {
    const line = newLine()
    const spot: Spot = { row: line.id, column: 'ingredient' }
    if (this.edit(() => addLine({ formula: this.formula.id, stage }, line, index), spot)) return
    this.#host.startEditing(spot, 'all')
  }

  startEditing(row: string, column: Column): void {
    this.#host.startEditing({ row, column }, 'all')
  }

  ask(cell: CellName): void {
    wish(this.#host.given, { want: 'working', cell })
  }

  offer(label: string, actions: readonly Action[]): void {
    this.#host.offer(label, actions)
  }

  define(ingredient: string): void {
    wish(this.#host.given, { want: 'define', ingredient })
  }

  copy(): void {
    const { walk } = this.#host
    void this.#host.blocks().write(walk.block ? walk.extent : walk.wholeRow)
  }

  paste(): void {
    const { walk } = this.#host
    if (!walk.block) walk.stand({ row: walk.active.row, column: 'ingredient' })
    void this.#host.blocks().read()
  }
}
