import type { PropertyDeclarations } from 'lit'
import type { DaySheet } from '../../src/day/plan/open-day.js'
import type { Day } from '../../src/dough/document/day.js'
import { emptyWorkbook, type Workbook } from '../../src/dough/document/workbook.js'
import { paperStyles } from '../card/paper-styles.js'
import { PrintedPage } from '../card/printed-page.js'
import { dayPage } from './day-page.js'
import { dayPageStyles } from './day-page-styles.js'
import { dayPageWords } from './words.js'

const types = [0, 1, 2, 3] as const // steps of the type; the last is the smallest that is read from a wall

/** A planned day as a page for the wall: on one page where it fits, otherwise each date on its own, otherwise on as many as it takes. */
export class TbDayPrint extends PrintedPage {
  static override properties: PropertyDeclarations = {
    opened: { attribute: false },
    workbook: { attribute: false },
    weights: { state: true },
  }

  declare opened: DaySheet | undefined
  declare workbook: Workbook
  declare private weights: boolean

  constructor() {
    super()
    this.workbook = emptyWorkbook
    this.weights = true
  }

  async show(): Promise<void> {
    if (!this.shown && this.printed) await this.open()
  }

  protected override get printed(): Day | undefined {
    return this.opened?.plan ? this.opened.day : undefined
  }

  protected override papers() {
    const { opened, numbers, weights } = this
    const { formulas } = this.workbook
    return [dayPage({ opened: opened!, plan: opened!.plan!, formulas, numbers, weights })]
  }

  protected override choices() {
    return this.box(dayPageWords.weights, this.weights, on => {
      this.weights = on
    })
  }

  protected override fit(paper: HTMLElement): number {
    paper.classList.remove('dated', 'apart')
    paper.classList.add('fitted')
    const pagesWith = (type: number): number => {
      paper.dataset.type = `${type}`
      return this.pagesOf(paper)
    }
    const isWhole = types.some(type => pagesWith(type) === 1)
    const pages = isWhole ? 1 : (this.#byDates(paper, pagesWith) ?? pagesWith(1))
    paper.classList.remove('fitted')
    return pages
  }

  /** A page for each date, in the largest type in which each fits on one: how many pages; undefined where one does not fit. */
  #byDates(paper: HTMLElement, pagesWith: (type: number) => number): number | undefined {
    for (const type of types) {
      pagesWith(type)
      const pages = this.#dated(paper)
      if (pages) return pages
    }
    return undefined
  }

  /** The same in the type it is set in now. */
  #dated(paper: HTMLElement): number | undefined {
    const heights = [...paper.querySelectorAll('header, section')].map(e => e.getBoundingClientRect().height)
    const [header, ...dates] = heights as [number, ...number[]]
    const end = dates.pop()!
    const page = this.heightOfPage(paper)
    if (dates.some((date, i) => date + (i === 0 ? header : 0) > page)) return undefined
    const isApart = dates.at(-1)! + end > page
    paper.classList.add('dated')
    paper.classList.toggle('apart', isApart)
    return dates.length + (isApart ? Math.ceil(end / page) : 0)
  }

  static override styles = [paperStyles, dayPageStyles]
}
customElements.define('tb-day-print', TbDayPrint)

declare global {
  interface HTMLElementTagNameMap {
    'tb-day-print': TbDayPrint
  }
}
