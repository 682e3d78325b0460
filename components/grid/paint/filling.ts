import { afterPaint } from '../../base/after-paint.js'
import type { RowGroup } from '../table/table.js'
import type { TableContext } from '../table/table-context.js'

// Rows, to the end of their group.
const atOnce = 60 // more than a window shows
const leastSlice = 100
const slice = 200 // milliseconds from one slice to the next: each goes through all that stands, so few are sooner done

/**
 * Many rows that arrive together are not all painted at once: the first ones are, and whatever the baker goes to; the
 * others follow slice by slice after the paint, the nearest to the window first. Before printing all are there.
 */
export class Filling {
  #context: TableContext
  #known = new Set<string>() // keys of the groups there are
  #waiting = new Set<string>() // of those whose rows are still to come
  #isRunning = false // from slice to slice

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
    const come = groups.filter(({ key }) => !this.#known.has(key))
    this.#known = new Set(groups.map(({ key }) => key))
    for (const key of this.#waiting) if (!this.#known.has(key)) this.#waiting.delete(key)
    for (const { key } of come) this.#waiting.add(key)
    // Many that come among others all wait: what is in sight stands, and where the baker goes is wanted.
    const first = firstOf(come, atOnce)
    const areAmong = come.length < groups.length && first.length < come.length
    this.#fill([...(areAmong ? [] : first), ...wanted])
    if (this.isGoingOn && !this.#isRunning) void this.#goOn()
  }

  waits({ key }: RowGroup): boolean {
    return this.#waiting.has(key)
  }

  /** Whether rows are still to come. */
  get isGoingOn(): boolean {
    return this.#waiting.size > 0
  }

  #fill(groups: readonly RowGroup[]): void {
    for (const { key } of groups) this.#waiting.delete(key)
  }

  async #goOn(): Promise<void> {
    const { grid } = this.#context
    this.#isRunning = true
    let rows = leastSlice
    await afterPaint()
    while (this.isGoingOn && grid.isConnected) {
      const began = performance.now()
      this.#fill(firstOf(this.#nearest(), rows))
      grid.requestUpdate()
      await afterPaint()
      rows = Math.max(leastSlice, rows * Math.min(2, slice / (performance.now() - began)))
    }
    this.#isRunning = false
  }

  /** The groups that wait, from the window outwards. */
  #nearest(): readonly RowGroup[] {
    const { table, elements } = this.#context
    const away = ({ key }: RowGroup) => {
      const box = elements.group(key)?.getBoundingClientRect()
      return box ? Math.max(box.top - innerHeight, -box.bottom, 0) : 0
    }
    const far = table.groups.flatMap(group => (this.waits(group) ? [{ group, away: away(group) }] : []))
    return far.sort((a, b) => a.away - b.away).map(({ group }) => group)
  }

  #fillAll = (): void => {
    if (!this.isGoingOn) return
    this.#waiting.clear()
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
