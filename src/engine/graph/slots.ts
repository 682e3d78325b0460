const ROOM = 256

/**
 * One pool for what every cell takes from. A cell's slots lie side by side, as compiled expressions read them;
 * each slot is also a link in the list of users of the cell it takes from, doubly linked so that it
 * leaves the list at once however long that is. Slot 0 is no slot.
 */
export class Slots {
  takes = new Int32Array(ROOM) // slot → the cell taken from
  owner = new Int32Array(ROOM) // slot → the cell that takes
  next = new Int32Array(ROOM) // slot → next slot that takes from the same cell
  prev = new Int32Array(ROOM)
  #end = 1
  readonly #free: number[] = [] // room class → first free block, chained through `next`

  /** The first of `count` slots side by side, from freed room if there is any. */
  claim(count: number): number {
    if (count === 0) return 0
    const room = roomFor(count)
    const freed = this.#free[room]
    if (freed) {
      this.#free[room] = this.next[freed]!
      return freed
    }
    const from = this.#end
    this.#end += room
    if (this.#end > this.takes.length) this.#grow()
    return from
  }

  /** Gives back a block got from `claim`, unlinked. */
  free(from: number, count: number): void {
    if (count === 0) return
    const room = roomFor(count)
    this.next[from] = this.#free[room] ?? 0
    this.#free[room] = from
  }

  #grow(): void {
    const length = Math.max(this.#end, this.takes.length * 1.5) | 0
    this.takes = grown(this.takes, length)
    this.owner = grown(this.owner, length)
    this.next = grown(this.next, length)
    this.prev = grown(this.prev, length)
  }
}

// Small blocks are kept to the slot; from nine on they round up to a power of two, so that a sum that
// gains a line now and then finds room that others left.
function roomFor(count: number): number {
  return count <= 8 ? count : 2 ** Math.ceil(Math.log2(count))
}

/** A longer copy; the added places are 0. */
export function grown<T extends Int32Array | Float64Array | Uint8Array>(column: T, length: number): T {
  const longer = new (column.constructor as new (length: number) => T)(length)
  longer.set(column)
  return longer
}
