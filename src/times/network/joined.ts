/** Numbers joined into sets, each known by its least. */
export class Joined {
  readonly #above: Int32Array

  constructor(size: number) {
    this.#above = Int32Array.from({ length: size }, (_, at) => at)
  }

  /** The least of the set that holds `at`. */
  of(at: number): number {
    let above = this.#above[at]!
    while (above !== this.#above[above]!) above = this.#above[above]!
    this.#above[at] = above
    return above
  }

  join(a: number, b: number): void {
    const first = this.of(a)
    const second = this.of(b)
    this.#above[Math.max(first, second)] = Math.min(first, second)
  }
}
