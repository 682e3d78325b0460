import { openDay } from '../../src/day/plan/open-day'
import type { PlannedDay } from '../../src/day/plan/planned'
import type { Day } from '../../src/dough/document/day'
import type { Formula } from '../../src/dough/document/formula'
import type { Workbook } from '../../src/dough/document/workbook'
import { larderWith } from '../../src/dough/larder/usual-larder'
import { readFormulas } from '../../src/exchange/index'
import { saturday } from '../day/notation'
import { Around, english } from './mount'

/** The formulas of files of examples, as text. */
export const formulasOf = (...texts: readonly string[]): Formula[] =>
  texts.flatMap(text => readFormulas(text).formulas)

/** A Saturday of these breads in a workbook, with its plan worked out anew after each edit. */
export class PlannedSaturday {
  readonly around: Around

  constructor(formulas: readonly Formula[], more: Partial<Day> = {}) {
    const days = [
      saturday(
        formulas.map(f => [f, 3]),
        more,
      ),
    ]
    this.around = new Around({ formulas, days })
  }

  get workbook(): Workbook {
    return this.around.history.workbook
  }
  get day(): Day {
    return this.workbook.days![0]!
  }
  get plan(): PlannedDay | undefined {
    return openDay(this.day, this.workbook.formulas, larderWith([])).plan
  }

  /** Puts an element that shows the day on the page, and keeps it as the day is. */
  show<E extends HTMLElement & { updateComplete: Promise<boolean> }>(element: E, more: object = {}): E {
    const give = () => {
      const { day, plan, workbook } = this
      Object.assign(element, { day, plan, workbook, larder: larderWith([]), numbers: english, ...more })
    }
    give()
    this.around.onEdit = give
    return this.around.hold(element)
  }
}
