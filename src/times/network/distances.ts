import { type Arc, sameTime } from '../problem/constraints.js'

/** The tightest bound on x[to] − x[from] that follows from all arcs, for each two nodes. */
export class Distances {
  readonly #size: number
  readonly #least: Float64Array
  #possible = true

  constructor(size: number, arcs: Iterable<Arc>) {
    this.#size = size
    this.#least = new Float64Array(size * size).fill(Infinity)
    for (let i = 0; i < size; i++) this.#least[i * size + i] = 0
    for (const { from, to, limit } of arcs) {
      const at = from * size + to
      if (limit < this.#least[at]!) this.#least[at] = limit
    }
    this.#close()
  }

  /** That no cycle of arcs is negative. */
  get possible(): boolean {
    return this.#possible
  }

  of(from: number, to: number): number {
    return this.#least[from * this.#size + to]!
  }

  /** That the arc cannot hold together with the others. */
  excludes({ from, to, limit }: Arc): boolean {
    return limit === -Infinity || limit + this.of(to, from) < -sameTime
  }

  /** That the arc holds whenever the others do. */
  implies({ from, to, limit }: Arc): boolean {
    return this.of(from, to) <= limit
  }

  add(arc: Arc): void {
    if (this.implies(arc)) return
    if (this.excludes(arc)) {
      this.#possible = false
      return
    }
    const size = this.#size
    const least = this.#least
    for (let i = 0; i < size; i++) {
      const begin = least[i * size + arc.from]! + arc.limit
      if (begin === Infinity) continue
      for (let j = 0; j < size; j++) {
        const length = begin + least[arc.to * size + j]!
        if (length < least[i * size + j]! && i !== j) least[i * size + j] = length
      }
    }
  }

  /** Floyd and Warshall's. A cycle that only rounding makes negative counts as none. */
  #close(): void {
    const size = this.#size
    const least = this.#least
    for (let k = 0; k < size; k++) {
      for (let i = 0; i < size; i++) {
        const begin = least[i * size + k]!
        if (begin === Infinity || i === k) continue
        if (begin + least[k * size + i]! < -sameTime) {
          this.#possible = false
          return
        }
        for (let j = 0; j < size; j++) {
          const length = begin + least[k * size + j]!
          if (length < least[i * size + j]! && i !== j) least[i * size + j] = length
        }
      }
    }
  }
}
