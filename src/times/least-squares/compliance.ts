/** How far each body gives way to a force on each other one: a symmetric matrix, changed in place. */
export class Compliance {
  readonly #size: number
  readonly #matrix: Float64Array
  readonly #moved: Int32Array // scratch of addSquare

  constructor(size: number) {
    this.#size = size
    this.#matrix = new Float64Array(size * size)
    this.#moved = new Int32Array(size)
  }

  copy(other: Compliance): void {
    this.#matrix.set(other.#matrix)
  }

  clear(): void {
    this.#matrix.fill(0)
  }

  set(i: number, j: number, value: number): void {
    this.#matrix[i * this.#size + j] = value
  }

  /** Where each body goes when `to` is pushed forward and `from` back. */
  pull(from: number, to: number, into: Float64Array): void {
    const a = from * this.#size
    const b = to * this.#size
    for (let i = 0; i < into.length; i++) into[i] = this.#matrix[b + i]! - this.#matrix[a + i]!
  }

  /** Where each body goes under a force on each. */
  give(force: Float64Array, into: Float64Array): void {
    into.fill(0)
    for (let j = 0; j < force.length; j++) {
      const by = force[j]!
      if (by === 0) continue
      const row = j * this.#size
      for (let i = 0; i < into.length; i++) into[i]! += this.#matrix[row + i]! * by
    }
  }

  /** Makes two bodies one: no force between them moves them any more. `response` is what `pull` gives for them. */
  tie(from: number, to: number, response: Float64Array): void {
    this.#addSquare(response, -1 / (response[to]! - response[from]!))
  }

  /** Lets bodies move together along `way`, which springs of that stiffness resist. */
  loosen(way: Float64Array, stiffness: number): void {
    this.#addSquare(way, 1 / stiffness)
  }

  /**
   * Lets bodies move together along `way`, which nothing resists, and in the same breath makes two bodies one that
   * it moves apart. `response` is what `pull` gives for them.
   */
  exchange(way: Float64Array, from: number, to: number, response: Float64Array): void {
    const apart = way[to]! - way[from]!
    const own = (response[to]! - response[from]!) / (apart * apart)
    // own·w·wᵀ − (r·wᵀ + w·rᵀ) ÷ apart, as a difference of two squares
    const mixed = way.map((value, i) => own * value - (2 * response[i]!) / apart)
    const sum = way.map((value, i) => (value + mixed[i]!) / 2)
    const difference = way.map((value, i) => (value - mixed[i]!) / 2)
    this.#addSquare(sum, 1)
    this.#addSquare(difference, -1)
  }

  /** Adds a multiple of the square of a way. Most ways move few bodies: only those that share springs or links. */
  #addSquare(way: Float64Array, factor: number): void {
    const moved = this.#moved
    const matrix = this.#matrix
    let count = 0
    for (let i = 0; i < way.length; i++) if (way[i] !== 0) moved[count++] = i
    for (let a = 0; a < count; a++) {
      const scaled = way[moved[a]!]! * factor
      const row = moved[a]! * this.#size
      for (let b = 0; b < count; b++) matrix[row + moved[b]!]! += scaled * way[moved[b]!]!
    }
  }
}
