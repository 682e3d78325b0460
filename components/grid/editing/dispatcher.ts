import type { Formula } from '../../../src/dough/document/formula.js'
import { askEdit, type Edit, say } from '../../base/events.js'
import type { MovingContext } from '../moving/selection.js'
import { type Column, rowAt, type Spot, stageOf } from '../table/table.js'

/** Where the baker is in a formula: what an edit carries, and undo gives back. Ids; '' for no line. */
export interface GridPlace {
  readonly formula: string
  readonly stage: string
  readonly line: string
  readonly column: Column
}

/** What tells of edits more than was typed is fetched later, or when it is first wanted. */
export interface DispatcherContext extends MovingContext {
  withFurther(act: (further: { sayReleases(before: Formula, typedIn: string): void }) => void): void
}

/** Asks the app for edits, each with the place it was asked at. */
export class Dispatcher {
  #context: DispatcherContext

  constructor(context: DispatcherContext) {
    this.#context = context
  }

  #placeOf(spot: Spot): GridPlace {
    const { table, selection, grid } = this.#context
    const row = rowAt(table, spot.row)
    const line = !row || row.kind === 'line' ? spot.row : '' // a line being begun has no row yet
    const near = row ?? rowAt(table, selection.active.row)
    return { formula: grid.sheet.formula.id, stage: near ? stageOf(near) : '', line, column: spot.column }
  }

  /** Makes the edit; returns the sentence of a refusal, which has been said. */
  edit(edit: Edit, at: Spot): string | undefined {
    const { grid } = this.#context
    const before = grid.sheet.formula
    const refusal = askEdit(grid, edit, this.#placeOf(at))
    if (refusal) say(grid, refusal)
    else if (grid.sheet.formula.holds !== before.holds)
      this.#context.withFurther(further => further.sayReleases(before, at.row))
    return refusal
  }

  /** Makes the edit where the baker is, and goes to the row `goTo`; false: it was refused, which has been said. */
  editHere(edit: Edit, goTo?: string): boolean {
    const { grid, selection } = this.#context
    const { column } = selection.active
    if (this.edit(edit, selection.active)) return false
    if (goTo) selection.moveTo({ row: goTo, column })
    grid.focus()
    return true
  }
}
