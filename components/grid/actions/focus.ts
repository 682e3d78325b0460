import { typedAs } from '../editing/editor.js'
import type { EditingContext } from '../editing/session.js'
import { spotOf } from '../table/elements.js'

/** The focus as it comes to cells and leaves the open editor. */
export class Focus {
  #context: EditingContext

  constructor(context: EditingContext) {
    this.#context = context
  }

  readonly comes = (event: FocusEvent): void => {
    const { selection, session } = this.#context
    const spot = spotOf(event.target)
    if (!spot || session.state) return
    const { row, column } = selection.cell
    if (spot.row === row && spot.column === column) return
    const { block } = selection
    const inBlock = block && spot.column === 'actions' && selection.extent.rows.some(r => r.key === spot.row)
    selection.moveTo(spot, inBlock ? block : undefined)
  }

  readonly goes = (event: FocusEvent): void => {
    const { grid, session, elements } = this.#context
    if (!session.state || event.target !== elements.field) return
    // The window lost the focus and the field did not: it goes on where it was.
    if (elements.focused === elements.field) return
    // It makes way for the editor of another cell, which is open already.
    if (elements.field?.dataset.typed !== typedAs(session.state)) return
    const kept = session.keep()
    const stays = event.relatedTarget instanceof Node && elements.has(event.relatedTarget)
    if (!kept && stays) grid.focus()
  }
}
