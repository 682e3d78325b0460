import { grown } from './slots.js'

/** Cells waiting to be worked out, lowest level first. Putting and taking allocate nothing. */
export class LevelQueue {
  size = 0
  #heads = new Int32Array(64) // level → the first cell waiting there
  #filled = new Int32Array(2) // one bit a level, so that empty levels cost little however many there are
  #next = new Int32Array(64) // cell → the next one waiting at its level
  #word = 0 // no bit is set in the words before

  put(id: number, level: number): void {
    if (id >= this.#next.length) this.#next = grown(this.#next, id * 1.5)
    if (level >= this.#heads.length) {
      this.#heads = grown(this.#heads, level * 2)
      this.#filled = grown(this.#filled, (level >> 4) + 1)
    }
    const head = this.#heads[level]!
    this.#next[id] = head
    this.#heads[level] = id
    const word = level >> 5
    if (head === 0) this.#filled[word]! |= 1 << (level & 31)
    if (word < this.#word || this.size === 0) this.#word = word
    this.size++
  }

  /** The next cell, or 0. */
  take(): number {
    if (this.size === 0) return 0
    const filled = this.#filled
    let word = this.#word
    while (filled[word] === 0) word++
    this.#word = word
    const bits = filled[word]!
    const level = (word << 5) + 31 - Math.clz32(bits & -bits)
    const id = this.#heads[level]!
    const after = this.#next[id]!
    this.#heads[level] = after
    if (after === 0) filled[word] = bits & (bits - 1)
    this.size--
    return id
  }
}
