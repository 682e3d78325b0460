import type { Workbook } from '../../src/dough/document/workbook'
import { larderWith } from '../../src/dough/larder/usual-larder'
import { waitUntil } from '../assert'
import { press, type } from '../keys'
import { Around, dressPage, english, textOf } from './mount'

/** An element of the app on the page with a workbook, given it anew with each edit, and worked with real keys. */
export class Opened<E extends HTMLElement & { readonly updateComplete: Promise<boolean> }> {
  readonly around: Around
  readonly element: E

  /** `more`: what the element is given besides. */
  constructor(element: E, workbook: Partial<Workbook>, more: (around: Around) => object = () => ({})) {
    dressPage()
    this.element = element
    const around = new Around(workbook)
    this.around = around
    element.style.cssText = '--edge: 16px; --head: 57px' // as the page has them
    const give = (now: Workbook) =>
      Object.assign(element, {
        workbook: now,
        larder: larderWith(now.larder),
        numbers: english,
        ...more(around),
      })
    around.history.subscribe(({ workbook: now }) => give(now))
    give(around.history.workbook)
    around.hold(element)
  }

  /** All that match and are shown, through all shadow roots, with a text or a name in them. */
  all<F extends HTMLElement>(selector: string, words: string | RegExp = ''): F[] {
    const found: F[] = []
    const walk = (root: ParentNode): void => {
      for (const element of root.querySelectorAll<F>('*')) {
        const said = [textOf(element), element.getAttribute('aria-label') ?? '']
        if (
          element.matches(selector) &&
          element.checkVisibility({ visibilityProperty: true }) &&
          said.some(s => (typeof words === 'string' ? s.includes(words) : words.test(s)))
        )
          found.push(element)
        if (element.shadowRoot) walk(element.shadowRoot)
      }
    }
    walk(this.element.shadowRoot!)
    return found
  }

  find<F extends HTMLElement = HTMLElement>(selector: string, words: string | RegExp = ''): Promise<F> {
    return waitUntil(() => this.all<F>(selector, words)[0], `there is ${selector} saying ${words}`)
  }

  /** Types into a field by its label, and leaves it. */
  async enter(label: string | RegExp, text: string): Promise<void> {
    const field = await this.find<HTMLInputElement>('input', label)
    field.focus()
    field.select()
    await (text ? type(text) : press('Delete'))
    await press('Enter')
    await this.element.updateComplete
  }

  get focused(): Element | null {
    let at = document.activeElement
    while (at?.shadowRoot?.activeElement) at = at.shadowRoot.activeElement
    return at
  }

  remove(): void {
    this.element.remove()
  }
}
