import { type Scale, usualScale } from '../../src/dough/document/batch.js'
import type { Formula } from '../../src/dough/document/formula.js'
import type { Larder } from '../../src/dough/document/larder.js'
import type { Transaction, Workbook } from '../../src/dough/document/workbook.js'
import { followBuilds } from '../../src/dough/edits/following-builds.js'
import { larderWith } from '../../src/dough/larder/usual-larder.js'
import { takeAhead } from '../../src/dough/sheet/ahead.js'
import type { FigureSheet } from '../../src/dough/sheet/figures.js'
import { hasSoaker } from '../../src/dough/sheet/ranges.js'
import { openSheet } from '../../src/dough/sheet/sheet.js'
import { allTouched, bothTouched, type Touched, untouched } from '../../src/dough/sheet/touched.js'
import { History, type HistoryEvent } from '../../src/storage/index.js'
import type { NumberStyle } from '../base/numbers.js'
import type { GridPlace } from '../grid/tb-grid.js'
import { type ShelfReading, ShelfReadings, shelfReadingOf } from './shelf-readings.js'

/** Where something is edited: a place of the grid, or a day by its id. */
export type EditPlace = Partial<GridPlace> & { readonly day?: string }

/** Where the baker was when an edit was made. */
export interface DeskPlace {
  readonly formula: string // id
  readonly at: EditPlace | undefined // undefined: neither in the grid nor on a day
}

/** What happened on the desk: the step, and how the open formula read before it. `said.ts` puts it in a sentence. */
export interface DeskEvent {
  readonly event: HistoryEvent<DeskPlace>
  readonly before: ({ readonly formula: string; readonly soaked: boolean } & ShelfReading) | undefined
}

/** The workbook being worked on: its history, the open formula with its figures, the readings of the shelf. */
export class Desk {
  readonly history: History<DeskPlace>
  readonly numbers: NumberStyle
  sheet: FigureSheet | undefined // of the open formula; undefined when the shelf is empty
  touched: Touched = allTouched // of the sheet, since it was last shown
  larder: Larder
  #own: Workbook['larder']
  readonly #shelf: ShelfReadings

  /**
   * `onEvent` hears of every change of the workbook, `onReadings` of readings of the shelf that came later; `open` is the
   * formula to begin with, by its id. No other is worked out at once.
   */
  constructor(
    workbook: Workbook,
    numbers: NumberStyle,
    onEvent: (event: DeskEvent) => void,
    onReadings: () => void,
    open = '',
  ) {
    this.history = new History<DeskPlace>(workbook)
    this.numbers = numbers
    this.#own = workbook.larder
    this.larder = larderWith(workbook.larder)
    this.#shelf = new ShelfReadings(this.larder, onReadings)
    this.open(open)
    this.history.subscribe(event => {
      const { sheet } = this
      const before = sheet && {
        formula: sheet.formula.id,
        soaked: hasSoaker(sheet),
        ...shelfReadingOf(sheet),
      }
      this.#follow(event.workbook)
      onEvent({ event, before })
    })
  }

  get workbook(): Workbook {
    return this.history.workbook
  }

  get formula(): Formula | undefined {
    return this.sheet?.formula
  }

  /** Opens a formula, or the first one where there is none of that id. */
  open(id: string): void {
    const { formulas } = this.workbook
    const formula = formulas.find(f => f.id === id) ?? formulas[0]
    if (formula && formula.id === this.formula?.id) return
    const ahead = formula && takeAhead(formula.id)
    if (formula) ahead?.update(formula, this.larder, this.#scale)
    this.sheet = formula && (ahead ?? openSheet(formula, this.larder, this.#scale))
    this.touched = allTouched
  }

  /** To be called when the sheet is shown as it stands: what is touched begins anew. */
  shown(): void {
    this.touched = untouched
  }

  get #scale(): Scale {
    return this.workbook.scale ?? usualScale
  }

  edit(transaction: Transaction, place?: EditPlace): void {
    this.history.apply(followBuilds(this.workbook, transaction), {
      formula: place?.formula ?? this.formula?.id ?? '',
      at: place,
    })
  }

  /** What the shelf says of a formula; undefined while that is still to be worked out. */
  readonly shelfReading = (formula: Formula): ShelfReading | undefined =>
    formula === this.formula ? shelfReadingOf(this.sheet!) : this.#shelf.of(formula)

  /** Brings larder, open formula and sheet to the workbook as it is now. */
  #follow(workbook: Workbook): void {
    const larderChanged = workbook.larder !== this.#own
    if (larderChanged) {
      this.#own = workbook.larder
      this.larder = larderWith(workbook.larder)
      this.#shelf.useLarder(this.larder)
    }
    const before = this.formula
    const now = workbook.formulas.find(f => f.id === before?.id)
    if (now && this.sheet) {
      this.touched = bothTouched(this.touched, this.sheet.update(now, this.larder, this.#scale))
      return
    }
    // The open formula is gone. One of its name stands for it: the same workbook came from another tab.
    const namesake = workbook.formulas.find(f => f.name === before?.name)
    this.sheet = undefined
    this.open(namesake?.id ?? '')
  }
}
