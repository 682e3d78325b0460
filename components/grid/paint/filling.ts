import { afterPaint } from '../../base/after-paint.js'
import type { RowGroup } from '../table/table.js'
import type { TableContext } from '../table/table-context.js'

// Rows, to the end of their group.
const atOnce = 60 // more than a window shows
const inSlice = 40 // of some ten milliseconds

/**
 * Many rows that arrive together are not all painted at once: the first ones are, and whatever the baker goes to; the
 * others follow slice by slice after the paint, the nearest to the window first. Before printing all are there.
 *
 * Each group is laid out once, in the frame it is filled in, also out of sight: so its size is known from then on, and
 * Chromium, at every focus, goes through the styles of what it has skipped and never laid out.
 */
export class Filling {
  #context: TableContext
  #filled = new Set<string>() // keys of groups
  #fresh = new Set<string>() // of those, filled since the last paint
  #isGoingOn = false

  constructor(context: TableContext) {
    this.#context = context
  }

  connect(): void {
    window.addEventListener('beforeprint', this.#fillAll)
  }

  disconnect(): void {
    window.removeEventListener('beforeprint', this.#fillAll)
  }

  /** To be called before rows are painted. `wanted`: the groups in which something is going on. */
  begin(groups: readonly RowGroup[], wanted: ReadonlySet<RowGroup>): void {
    const before = this.#filled
    this.#filled = new Set(groups.flatMap(({ key }) => (before.has(key) ? [key] : [])))
    const missing = groups.filter(({ key }) => !before.has(key))
    if (!missing.length) return
    this.#fill(firstOf(missing, atOnce))
    this.#fill([...wanted])
    if (!this.#isGoingOn) void this.#goOn()
  }

  waits(group: RowGroup): boolean {
    return !this.#filled.has(group.key)
  }

  isFresh(group: RowGroup): boolean {
    return this.#fresh.has(group.key)
  }

  /** Whether rows are still to come. */
  get isGoingOn(): boolean {
    return this.#waiting.length > 0
  }

  get #waiting(): readonly RowGroup[] {
    return this.#context.table.groups.filter(group => this.waits(group))
  }

  #fill(groups: readonly RowGroup[]): void {
    for (const { key } of groups) {
      if (this.#filled.has(key)) continue
      this.#filled.add(key)
      this.#fresh.add(key)
    }
  }

  async #goOn(): Promise<void> {
    const { grid } = this.#context
    this.#isGoingOn = true
    while (this.#fresh.size) {
      await afterPaint()
      if (!grid.isConnected) break
      this.#fresh.clear()
      this.#fill(firstOf(this.#nearest(), inSlice))
      grid.requestUpdate()
    }
    this.#isGoingOn = false
  }

  /** The groups that wait, from the window outwards. */
  #nearest(): readonly RowGroup[] {
    const away = (group: RowGroup) => {
      const box = this.#context.elements.group(group.key)?.getBoundingClientRect()
      return box ? Math.max(box.top - innerHeight, -box.bottom, 0) : 0
    }
    const far = this.#waiting.map(group => ({ group, away: away(group) }))
    return far.sort((a, b) => a.away - b.away).map(({ group }) => group)
  }

  #fillAll = (): void => {
    const waiting = this.#waiting
    if (!waiting.length) return
    this.#fill(waiting)
    this.#context.grid.renderNow()
  }
}

/** Of groups the first, until they have so many rows. */
function firstOf(groups: readonly RowGroup[], rows: number): readonly RowGroup[] {
  let left = rows
  return groups.filter(group => {
    const isIn = left > 0
    left -= group.rows.length
    return isIn
  })
}
