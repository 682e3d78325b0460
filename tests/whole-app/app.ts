import { sendMouse, setViewport } from '@web/test-runner-commands'
import type { TbApp } from '../../components/page/tb-app.js'
import { waitUntil } from '../assert.js'
import { press } from '../keys.js'

/** The built app in a frame, found by what it shows and used with the real mouse and keys. */
export class OpenApp {
  readonly frame = document.createElement('iframe')

  private constructor(readonly database: string) {}

  /**
   * Opens the app over a database of that name and waits until it has drawn a sheet, an empty shelf or days. `page` is its
   * address, without its offline worker unless another is given.
   */
  static async open(
    database: string,
    { page = '/site/index.html?offline=no&', width = 1280, height = 860 } = {},
  ): Promise<OpenApp> {
    await setViewport({ width, height })
    const app = new OpenApp(database)
    app.frame.style.cssText = `position: fixed; inset: 0; width: ${width}px; height: ${height}px; border: 0; z-index: 9`
    app.frame.src = `${page}database=${database}`
    document.body.append(app.frame)
    await app.#drawn()
    return app
  }

  /** Loads the page anew, as after a crash or the next morning. */
  async reload(): Promise<void> {
    const before = this.frame.contentDocument
    this.frame.contentWindow!.location.reload()
    await waitUntil(() => this.frame.contentDocument !== before, 'the page is loaded anew')
    await this.#drawn()
  }

  async #drawn(): Promise<void> {
    await waitUntil(
      () => this.maybe('tb-grid, tb-empty-shelf, tb-day-list, tb-day, tb-bench, tb-order-place'),
      'the app has drawn its place',
    )
    const app = this.frame.contentDocument!.querySelector('tb-app') as TbApp
    await app.furnished // nothing that is done waits for what is fetched late
  }

  /** Pastes a text on the page, where no field has the focus. */
  async paste(text: string): Promise<void> {
    await navigator.clipboard.writeText(text)
    await this.click('button', 'Help')
    await this.find('dialog[open]')
    await press('Escape')
    await waitUntil(() => !this.maybe('dialog[open]'), 'the focus is on a button of the page')
    await press('Control+v')
  }

  /** Begins a blank formula from the shelf; its name has the focus. */
  async beginBlank(): Promise<void> {
    await this.click('button', 'New formula')
    await this.find('[role=menuitem]', /^Blank/)
    await press('Enter')
    await waitUntil(
      () => this.focused?.getAttribute('aria-label') === 'Name of the formula',
      'its name has the focus',
    )
  }

  close(): void {
    this.frame.remove()
  }

  /** The shown elements that match, through all shadow roots, in the order of the page. */
  all(selector: string, text?: string | RegExp): HTMLElement[] {
    const found: HTMLElement[] = []
    const walk = (root: Document | ShadowRoot) => {
      for (const element of root.querySelectorAll<HTMLElement>('*')) {
        if (element.matches(selector) && isShown(element) && (text === undefined || says(element, text)))
          found.push(element)
        if (element.shadowRoot) walk(element.shadowRoot)
      }
    }
    const { contentDocument } = this.frame
    if (contentDocument) walk(contentDocument)
    return found
  }

  maybe(selector: string, text?: string | RegExp): HTMLElement | undefined {
    return this.all(selector, text)[0]
  }

  /** Waits for the first that is shown. */
  find(selector: string, text?: string | RegExp): Promise<HTMLElement> {
    return waitUntil(() => this.maybe(selector, text), `there is ${selector}${text ? ` saying ${text}` : ''}`)
  }

  /** Clicks the middle of it with the mouse. */
  async click(selector: string, text?: string | RegExp): Promise<HTMLElement> {
    const element = await this.find(selector, text)
    const { left, top, width, height } = await inPlace(element)
    await sendMouse({ type: 'click', position: [Math.round(left + width / 2), Math.round(top + height / 2)] })
    return element
  }

  /** The element that has the focus, through all shadow roots. */
  get focused(): HTMLElement | null {
    let at = this.frame.contentDocument?.activeElement ?? null
    while (at?.shadowRoot?.activeElement) at = at.shadowRoot.activeElement
    return at as HTMLElement | null
  }

  /** A cell of the grid by its stage, ingredient and the heading of its column. */
  cell(stage: string, ingredient: string, column: RegExp): HTMLElement | undefined {
    const grid = this.maybe('table[role=grid]') as HTMLTableElement | undefined
    const at = [...(grid?.tHead?.rows[0]?.cells ?? [])].findIndex(th => column.test(th.textContent ?? ''))
    const body = [...(grid?.tBodies ?? [])].find(b => says(b.rows[0]?.cells[0], new RegExp(`^${stage}`)))
    const row = [...(body?.rows ?? [])].find(r => says(r.cells[0], new RegExp(`^${ingredient}`)))
    return row?.cells[at]
  }

  #aside = 12 // px from the left at which a cell is clicked

  /** Clicks a cell of the grid. */
  async goTo(stage: string, ingredient: string, column: RegExp): Promise<void> {
    const cell = await waitUntil(
      () => this.cell(stage, ingredient, column),
      `${ingredient} in ${stage} has ${column}`,
    )
    this.focused?.blur() // as the pointer will: until then WebKit scrolls back to a field that was typed in
    // What is fetched late may move the cell from under the pointer; then it is clicked where it is now.
    for (let hit = false, tries = 0; !hit && tries < 5; tries++) {
      const { left, top, height } = await inPlace(cell)
      // Not where the last click was: two at one place are a double one, which opens the cell.
      this.#aside = 40 - this.#aside
      const at: [number, number] = [Math.round(left + this.#aside), Math.round(top + height / 2)]
      hit = await this.#hits(cell, () => sendMouse({ type: 'click', position: at }))
    }
    await waitUntil(() => this.focused === cell, `${ingredient} in ${stage} is reached`)
  }

  /** Whether what the pointer does falls on the element. */
  async #hits(element: Element, act: () => Promise<unknown>): Promise<boolean> {
    let hit = false
    const look = (event: Event) => {
      hit = event.composedPath().includes(element)
    }
    const page = this.frame.contentWindow!
    page.addEventListener('pointerdown', look, true)
    await act()
    page.removeEventListener('pointerdown', look, true)
    return hit
  }
}

/** Where an element is once it is in sight and what is around it has stopped moving. */
async function inPlace(element: HTMLElement): Promise<DOMRect> {
  let last: DOMRect | undefined
  return waitUntil(() => {
    element.scrollIntoView({ block: 'center', behavior: 'instant' })
    const now = element.getBoundingClientRect()
    // Firefox: where half a pixel is left over, each scrolling to the middle goes a pixel to and fro.
    const isSteady = now.left === last?.left && Math.abs(now.top - last.top) <= 1 && now.width === last.width
    last = now
    return isSteady ? now : undefined
  }, 'it stays where it is')
}

const textOf = (element: Element | undefined) => (element?.textContent ?? '').replace(/\s+/g, ' ').trim()

function says(element: Element | undefined, text: string | RegExp): boolean {
  if (!element) return false
  const named = element.getAttribute('aria-label')
  return [textOf(element), ...(named ? [named] : [])].some(said =>
    typeof text === 'string' ? said === text : text.test(said),
  )
}

function isShown(element: HTMLElement): boolean {
  const { width, height } = element.getBoundingClientRect()
  return width > 0 && height > 0 && element.checkVisibility({ visibilityProperty: true })
}
