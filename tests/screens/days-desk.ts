import '../../components/day/tb-days'
import type { TbDays } from '../../components/day/tb-days'
import type { Day } from '../../src/dough/document/day'
import type { Workbook } from '../../src/dough/document/workbook'
import { workedWheat } from '../day/worked-bread'
import { textOf } from './mount'
import { Opened } from './opened'

/** The bread of the worked check of a day's times. */
export const wheat = () => workedWheat('Work in')

export const asleep = [{ from: '22:30', until: '6:00' }]

/** The days of a workbook on the page. */
export class DaysOpened extends Opened<TbDays> {
  constructor(workbook: Partial<Workbook>, at: Day | undefined, more: object = {}) {
    location.hash = at ? `days/${at.id}` : 'days'
    super(document.createElement('tb-days'), workbook, () => more)
  }

  get days(): TbDays {
    return this.element
  }

  get day(): Day {
    return this.around.history.workbook.days![0]!
  }

  /** The rows by the clock: `6:00 Mix`. */
  get rows(): string[] {
    return this.all('tb-by-clock').flatMap(list =>
      [...list.shadowRoot!.querySelectorAll('li')].map(
        li => `${textOf(li.querySelector('.when'))} ${textOf(li.querySelector('.does'))}`,
      ),
    )
  }

  time = (what: string | RegExp) =>
    this.find('button.time', typeof what === 'string' ? new RegExp(`^${what}: `) : what)
}
