import type { EditSession } from '../editing/session.js'
import type { Walk } from '../moving/selection.js'
import type { Elements } from '../table/elements.js'
import { spotOf } from './pointers.js'

/** What the focus asks of the grid around it. */
export interface FocusHost {
  readonly walk: Walk
  readonly session: EditSession
  readonly elements: Elements
  root(): DocumentOrShadowRoot & Node
  wantFocus(): void
}

/** The focus as it comes to cells and leaves the open editor. */
export class Focus {
  #host: FocusHost

  constructor(host: FocusHost) {
    this.#host = host
  }

  readonly comes = (event: FocusEvent): void => {
    const { walk, session } = this.#host
    const spot = spotOf(event.target)
    if (!spot || session.state) return
    const { row, column } = walk.cellOf(walk.active)
    if (spot.row === row && spot.column === column) return
    const inBlock = walk.block && spot.column === 'actions' && walk.extent.rows.some(r => r.key === spot.row)
    walk.stand(spot, inBlock ? walk.block : undefined)
  }

  readonly goes = (event: FocusEvent): void => {
    const { session, elements } = this.#host
    if (!session.state || event.target !== elements.field) return
    const root = this.#host.root()
    // The window lost the focus and the field did not: it goes on where it was.
    if (root.activeElement === elements.field) return
    const kept = session.keep()
    const stays = event.relatedTarget instanceof Node && root.contains(event.relatedTarget)
    if (!kept && stays) this.#host.wantFocus()
  }
}
