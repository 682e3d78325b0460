import { type Scale, usualScale } from '../../src/dough/document/batch.js'
import { type Formula, finalDoughOf, type Hold } from '../../src/dough/document/formula.js'
import type { Larder } from '../../src/dough/document/larder.js'
import { holdWords } from '../../src/dough/document/words.js'
import type { Change, Transaction, Workbook } from '../../src/dough/document/workbook.js'
import { larderWith } from '../../src/dough/larder/usual-larder.js'
import type { FigureSheet } from '../../src/dough/sheet/figures.js'
import { openSheet } from '../../src/dough/sheet/sheet.js'
import { allTouched, bothTouched, type Touched, untouched } from '../../src/dough/sheet/touched.js'
import { History, type HistoryEvent } from '../../src/storage/index.js'
import { type NumberStyle, showGrams, showPercent } from '../base/numbers.js'
import type { GridPlace } from '../grid/tb-grid.js'
import { type ShelfReading, ShelfReadings } from './shelf-readings.js'
import { deskWords } from './words.js'

/** Where something is edited: a place of the grid, or a day by its id. */
export type EditPlace = Partial<GridPlace> & { readonly day?: string }

/** Where the baker was when an edit was made. */
export interface DeskPlace {
  readonly formula: string // id
  readonly at: EditPlace | undefined // undefined: neither in the grid nor on a day
}

/** What happened on the desk: the step, and a sentence that says it. */
export interface DeskEvent {
  readonly event: HistoryEvent<DeskPlace>
  readonly sentence: string
}

interface HydrationShown {
  readonly of: string // formula's id
  readonly percent: string // as it is shown
}

/** How things stood before an edit. */
interface Before {
  readonly hydration: HydrationShown | undefined
  readonly holds: readonly Hold[]
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
      const before = { hydration: this.#hydration(), holds: this.formula?.holds ?? [] }
      this.#follow(event.workbook)
      onEvent({ event, sentence: this.#sentence(event, before) })
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
    this.sheet = formula && openSheet(formula, this.larder, this.#scale)
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
    this.history.apply(transaction, { formula: place?.formula ?? this.formula?.id ?? '', at: place })
  }

  /** What the shelf says of a formula; undefined while that is still to be worked out. */
  readonly shelfReading = (formula: Formula): ShelfReading | undefined => {
    if (formula !== this.formula) return this.#shelf.of(formula)
    const { sheet } = this
    return {
      trueHydration: sheet!.reading('trueHydration'),
      prefermentedFlour: sheet!.reading('prefermentedFlour'),
    }
  }

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

  #hydration(): HydrationShown | undefined {
    const value = this.sheet?.reading('trueHydration')
    return value === undefined
      ? undefined
      : { of: this.formula!.id, percent: `${showPercent(value, this.numbers)} %` }
  }

  /** `Water 700 g; true hydration 73.3 %` */
  #sentence({ transaction, way }: HistoryEvent, before: Before): string {
    const { label } = transaction
    const now = this.#hydration()
    const held = way === 'do' ? this.#newlyHeld(transaction.changes, before.holds) : undefined
    const first =
      way === 'undo'
        ? deskWords.undone(label)
        : way === 'redo'
          ? deskWords.doneAgain(label)
          : ((held ? this.#holdInWords(held) : this.#lineInWords(transaction.changes)) ?? label)
    const moved = now && now.of === before.hydration?.of && now.percent !== before.hydration.percent
    return moved && held?.reading !== 'trueHydration' ? deskWords.withHydration(first, now.percent) : first
  }

  /** The hold that an edit of nothing else has put on a reading. */
  #newlyHeld([change, ...others]: readonly Change[], before: readonly Hold[]): Hold | undefined {
    if (others.length || change?.of !== 'fields' || change.formula !== this.formula?.id) return undefined
    return change.value.holds?.find(hold => !before.includes(hold))
  }

  /** `Salt held at 2 %; Salt gives, 22.3 g` */
  #holdInWords(hold: Hold): string | undefined {
    const line = finalDoughOf(this.formula!).lines.find(l => l.id === hold.line)
    if (!line) return undefined
    const { weight, problem } = this.sheet!.line(line.id)
    if (problem || weight === undefined) return problem?.message
    return deskWords.held(holdWords(hold, line.ingredient), line.ingredient, showGrams(weight, this.numbers))
  }

  #lineInWords(changes: readonly Change[]): string | undefined {
    const [change] = changes
    if (changes.length !== 1 || change?.of !== 'line' || !change.value || !this.sheet) return undefined
    if (change.formula !== this.formula?.id || change.value.amount === '') return undefined
    const { weight, problem } = this.sheet.line(change.id)
    const { ingredient } = change.value
    if (weight !== undefined) return deskWords.lineWeighs(ingredient, showGrams(weight, this.numbers))
    return problem && deskWords.lineProblem(ingredient, problem.message)
  }
}
