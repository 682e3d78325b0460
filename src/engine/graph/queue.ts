import { grown } from './slots.js'

/** The end of a level's cells; 0 would be a cell that does not wait. */
const END = -1

/**
 * Cells waiting to be worked out, lowest level first. What is put in while a level is being worked through
 * must be of a higher one. Putting and taking allocate nothing.
 */
export class LevelQueue {
  /** How many levels have cells waiting. */
  filled = 0
  #heads = new Int32Array(64) // level → the first cell waiting there
  #bits = new Int32Array(2) // one bit a level, so that empty levels cost little however many there are
  #next = new Int32Array(64) // cell → the next one waiting at its level, or END
  #word = 0 // no bit is set in the words before

  /** Makes room for cells below the first number, of levels up to the second. To be called before `put`. */
  reserve(cells: number, highest: number): void {
    if (cells > this.#next.length) this.#next = grown(this.#next, cells * 1.5)
    if (highest < this.#heads.length) return
    this.#heads = grown(this.#heads, highest * 2)
    this.#bits = grown(this.#bits, (highest >> 4) + 1)
  }

  /** Puts the cell in unless it waits already. */
  put(id: number, level: number): void {
    if (this.#next[id] !== 0) return
    const head = this.#heads[level]!
    this.#heads[level] = id
    if (head !== 0) this.#next[id] = head
    else this.#open(id, level)
  }

  #open(id: number, level: number): void {
    this.#next[id] = END
    const word = level >> 5
    this.#bits[word]! |= 1 << (level & 31)
    if (word < this.#word || this.filled === 0) this.#word = word
    this.filled++
  }

  /** Takes all that wait at the lowest level: gives the first, or 0, and `after` gives the others. */
  takeLevel(): number {
    if (this.filled === 0) return 0
    let word = this.#word
    while (this.#bits[word] === 0) word++
    this.#word = word
    const bits = this.#bits[word]!
    this.#bits[word] = bits & (bits - 1)
    this.filled--
    const level = (word << 5) + 31 - Math.clz32(bits & -bits)
    const id = this.#heads[level]!
    this.#heads[level] = 0
    return id
  }

  /** The cell that was taken along with this one, or 0. To be asked once. */
  after(id: number): number {
    const next = this.#next[id]!
    this.#next[id] = 0
    return next === END ? 0 : next
  }

  /** Empties it, `rest` being what of a taken level was not asked for yet. */
  clear(rest: number): void {
    for (let id = rest; id; id = this.after(id));
    for (let head = this.takeLevel(); head; head = this.takeLevel())
      for (let id = head; id; id = this.after(id));
  }
}
