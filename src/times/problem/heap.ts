/** A queue that gives the least first. */
export class Heap<T> {
  readonly #items: T[] = []
  readonly #before: (a: T, b: T) => boolean

  constructor(before: (a: T, b: T) => boolean) {
    this.#before = before
  }

  get first(): T | undefined {
    return this.#items[0]
  }

  push(item: T): void {
    const items = this.#items
    let at = items.length
    items.push(item)
    while (at > 0) {
      const above = (at - 1) >> 1
      if (!this.#before(item, items[above]!)) break
      items[at] = items[above]!
      at = above
    }
    items[at] = item
  }

  pop(): T | undefined {
    const items = this.#items
    const first = items[0]
    const item = items.pop()
    if (item === undefined || items.length === 0) return first
    let at = 0
    for (;;) {
      let below = 2 * at + 1
      if (below >= items.length) break
      if (below + 1 < items.length && this.#before(items[below + 1]!, items[below]!)) below += 1
      if (!this.#before(items[below]!, item)) break
      items[at] = items[below]!
      at = below
    }
    items[at] = item
    return first
  }
}
