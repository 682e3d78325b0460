import '../../components/day/tb-days'
import type { TbDays } from '../../components/day/tb-days'
import type { Day } from '../../src/dough/document/day'
import type { Workbook } from '../../src/dough/document/workbook'
import { larderWith } from '../../src/dough/larder/usual-larder'
import { waitUntil } from '../assert'
import { workedWheat } from '../day/worked-bread'
import { press, type } from '../keys'
import { Around, english, textOf } from './mount'

/** The bread of the worked check of a day's times. */
export const wheat = () => workedWheat('Work in')

export const asleep = [{ from: '22:30', until: '6:00' }]

/** The days of a workbook on the page, worked with real keys. */
export class DaysOpened {
  readonly around: Around
  readonly days: TbDays

  constructor(workbook: Partial<Workbook>, at: Day | undefined, more: object = {}) {
    location.hash = at ? `days/${at.id}` : 'days'
    this.around = new Around(workbook)
    this.days = document.createElement('tb-days')
    this.days.style.cssText = '--edge: 16px; --head: 57px' // as the page has them
    const give = (now: Workbook) =>
      Object.assign(this.days, { workbook: now, larder: larderWith(now.larder), numbers: english, ...more })
    this.around.onEdit = give
    this.around.history.subscribe(({ workbook: now }) => give(now))
    give(this.around.history.workbook)
    this.around.hold(this.days)
  }

  get day(): Day {
    return this.around.history.workbook.days![0]!
  }

  /** All that match, through all shadow roots, with a text or a name in them. */
  all<E extends HTMLElement>(selector: string, words: string | RegExp = ''): E[] {
    const found: E[] = []
    const walk = (root: ParentNode): void => {
      for (const element of root.querySelectorAll<E>('*')) {
        const said = [textOf(element), element.getAttribute('aria-label') ?? '']
        if (
          element.matches(selector) &&
          said.some(s => (typeof words === 'string' ? s.includes(words) : words.test(s)))
        )
          found.push(element)
        if (element.shadowRoot) walk(element.shadowRoot)
      }
    }
    walk(this.days.shadowRoot!)
    return found
  }

  find<E extends HTMLElement = HTMLElement>(selector: string, words: string | RegExp = ''): Promise<E> {
    return waitUntil(() => this.all<E>(selector, words)[0], `there is ${selector} saying ${words}`)
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

  /** Types into a field by its label, and leaves it. */
  async enter(label: string | RegExp, text: string): Promise<void> {
    const field = await this.find<HTMLInputElement>('input', label)
    field.focus()
    field.select()
    await (text ? type(text) : press('Delete'))
    await press('Enter')
    await this.days.updateComplete
  }

  get focused(): Element | null {
    let at = document.activeElement
    while (at?.shadowRoot?.activeElement) at = at.shadowRoot.activeElement
    return at
  }

  remove(): void {
    this.days.remove()
  }
}
