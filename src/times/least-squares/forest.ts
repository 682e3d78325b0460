/**
 * The links in force, as trees over the bodies: each tree moves as one, and the tree of body 0 stands still.
 * Arrays are by body.
 */
export class Forest {
  readonly order: Int32Array // each body after the one it hangs on
  readonly parent: Int32Array // -1 for the body that a tree grows from
  readonly parentLink: Int32Array // place among the links
  readonly tree: Int32Array // the body that its tree grows from
  readonly #first: Int32Array
  readonly #next: Int32Array // by half link: 2 × place, and 1 more seen from the other end

  constructor(size: number) {
    this.order = new Int32Array(size)
    this.parent = new Int32Array(size)
    this.parentLink = new Int32Array(size)
    this.tree = new Int32Array(size)
    this.#first = new Int32Array(size)
    this.#next = new Int32Array(2 * size)
  }

  /** Grows the trees anew; `from` and `to` are the ends of arcs, `links` the first `count` arcs in force. */
  grow(links: Int32Array, count: number, from: Int32Array, to: Int32Array): void {
    const { order, parent, parentLink, tree } = this
    const first = this.#first.fill(-1)
    const next = this.#next
    for (let link = 0; link < count; link++) {
      const arc = links[link]!
      const a = from[arc]!
      const b = to[arc]!
      next[2 * link] = first[a]!
      first[a] = 2 * link
      next[2 * link + 1] = first[b]!
      first[b] = 2 * link + 1
    }
    tree.fill(-1)
    let filled = 0
    for (let start = 0; start < order.length; start++) {
      if (tree[start] !== -1) continue
      tree[start] = start
      parent[start] = -1
      parentLink[start] = -1
      let at = filled
      order[filled++] = start
      for (; at < filled; at++) {
        const body = order[at]!
        for (let half = first[body]!; half !== -1; half = next[half]!) {
          const arc = links[half >> 1]!
          const other = half & 1 ? from[arc]! : to[arc]!
          if (tree[other] !== -1) continue
          tree[other] = start
          parent[other] = body
          parentLink[other] = half >> 1
          order[filled++] = other
        }
      }
    }
  }
}
