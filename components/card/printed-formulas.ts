import type { PropertyDeclarations, PropertyValues } from 'lit'
import type { Formula } from '../../src/dough/document/formula.js'
import { type Larder, larderOf } from '../../src/dough/document/larder.js'
import { emptyWorkbook, type Workbook } from '../../src/dough/document/workbook.js'
import type { FigureSheet } from '../../src/dough/sheet/figures.js'
import { openSheet } from '../../src/dough/sheet/sheet.js'
import { PrintedPage } from './printed-page.js'

/** Formulas of the workbook as they are printed, one or several together. */
export abstract class PrintedFormulas extends PrintedPage {
  static override properties: PropertyDeclarations = {
    workbook: { attribute: false },
    larder: { attribute: false },
    chosen: { state: true },
  }

  declare workbook: Workbook
  declare larder: Larder
  declare protected chosen: readonly string[] // ids of formulas

  #sheets = new WeakMap<Formula, FigureSheet>()

  constructor() {
    super()
    this.workbook = emptyWorkbook
    this.larder = larderOf([])
    this.chosen = []
  }

  /** Shows the formula with that id, or several. */
  async show({
    formula,
    formulas = formula ? [formula] : [],
  }: {
    formula?: string
    formulas?: readonly string[]
  }) {
    if (this.shown) return
    this.chosen = formulas
    this.begin()
    if (this.printed) await this.open()
  }

  /** Lets go of what was said of those that were shown before. */
  protected begin(): void {}

  protected get formulas(): readonly Formula[] {
    return this.workbook.formulas.filter(f => this.chosen.includes(f.id))
  }

  protected sheetOf(of: Formula): FigureSheet {
    const known = this.#sheets.get(of) ?? openSheet(of, this.larder, this.workbook.scale)
    this.#sheets.set(of, known)
    return known
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('larder')) this.#sheets = new WeakMap()
    super.willUpdate(changed)
  }
}
