import type { Formula } from '../../src/dough/document/formula.js'
import type { Larder } from '../../src/dough/document/larder.js'
import type { FigureSheet } from '../../src/dough/sheet/figures.js'
import { openSheet } from '../../src/dough/sheet/sheet.js'
import { afterPaint } from '../base/after-paint.js'

/** What the shelf says of a formula, fractions of 1; undefined where there is no number. */
export interface ShelfReading {
  readonly trueHydration: number | undefined
  readonly moistureHydration: number | undefined
  readonly prefermentedFlour: number | undefined
}

/** What the shelf says of the formula of a sheet. */
export const shelfReadingOf = (sheet: FigureSheet): ShelfReading => ({
  trueHydration: sheet.reading('trueHydration'),
  moistureHydration: sheet.reading('moistureHydration'),
  prefermentedFlour: sheet.reading('prefermentedFlour'),
})

const slice = 8 // milliseconds of work between two paints

/**
 * The readings of the formulas on the shelf, worked out once for each state of a formula, a few at a time
 * after the page is painted, so that a long shelf does not hold up the open formula.
 */
export class ShelfReadings {
  readonly #onMore: () => void
  #known = new WeakMap<Formula, ShelfReading>()
  readonly #wanted = new Set<Formula>()
  #larder: Larder
  #waits = false

  /** `onMore` is called when readings asked for before have been worked out. */
  constructor(larder: Larder, onMore: () => void) {
    this.#larder = larder
    this.#onMore = onMore
  }

  /** The readings of a formula; undefined while they are still to be worked out. */
  of(formula: Formula): ShelfReading | undefined {
    const known = this.#known.get(formula)
    if (!known) {
      this.#wanted.add(formula)
      this.#workLater()
    }
    return known
  }

  #workLater(): void {
    if (this.#waits) return
    this.#waits = true
    void afterPaint().then(this.#work)
  }

  useLarder(larder: Larder): void {
    this.#larder = larder
    this.#known = new WeakMap()
  }

  readonly #work = (): void => {
    this.#waits = false
    const end = performance.now() + slice
    for (const formula of this.#wanted) {
      this.#known.set(formula, shelfReadingOf(openSheet(formula, this.#larder)))
      this.#wanted.delete(formula)
      if (performance.now() > end) break
    }
    if (this.#wanted.size) this.#workLater()
    this.#onMore()
  }
}
