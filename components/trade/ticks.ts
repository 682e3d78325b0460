import { remembered } from '../../src/storage/disk/remembered.js'

const kept = remembered('weighed')

/** What is ticked off of the weighing lists of a day or a formula; it lasts over a reload, in this browser. */
export class Ticks {
  readonly #of: string
  readonly #ticked: Set<string>

  /** `of`: the id of the day or the formula. */
  constructor(of: string) {
    this.#of = of
    const before = kept.all()[of]
    this.#ticked = new Set(Array.isArray(before) ? before.filter(key => typeof key === 'string') : [])
  }

  /** Of a line with its weight: where another is to be weighed by now, it is not ticked off. */
  has(line: string): boolean {
    return this.#ticked.has(line)
  }

  put(line: string, isTicked: boolean): void {
    if (isTicked) this.#ticked.add(line)
    else this.#ticked.delete(line)
    if (this.#ticked.size > 0) kept.put(this.#of, [...this.#ticked])
    else kept.forget(this.#of)
  }

  clear(): void {
    this.#ticked.clear()
    kept.forget(this.#of)
  }
}
