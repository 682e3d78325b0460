import type { ReactiveControllerHost } from 'lit'
import type { FigureSheet } from '../../src/dough/sheet/figures.js'
import type { CellName } from '../../src/dough/workings/working.js'

/** One asking for a working; asking again is another one. */
export interface Asked {
  readonly cell: CellName
}

const none: ReadonlySet<string> = new Set()

/** The working that lies open on the page, the lines it lights, and where the focus goes when it is closed. */
export class OpenWorking {
  asked: Asked | undefined
  lit: ReadonlySet<string> = none // ids of lines
  #sheet: FigureSheet | undefined
  #from: HTMLElement | undefined

  constructor(private readonly page: Pick<ReactiveControllerHost, 'requestUpdate'>) {}

  /** Opens the working of a cell of the sheet, asked for by something on the page. */
  ask(cell: CellName, sheet: FigureSheet | undefined, from: EventTarget | undefined): void {
    void import('./tb-working.js') // fetched when first asked for; an element may stand there before
    this.#from = focusIn(from)
    this.asked = { cell }
    this.#sheet = sheet
    this.page.requestUpdate()
  }

  light(lines: readonly string[]): void {
    if (!this.asked) return
    this.lit = new Set(lines)
    this.page.requestUpdate()
  }

  close(): void {
    const from = this.#from
    this.#forget()
    this.page.requestUpdate()
    if (from?.isConnected) from.focus()
  }

  /** A working of another formula than the one that is open says nothing of it. */
  stayWith(sheet: FigureSheet | undefined): void {
    if (sheet !== this.#sheet) this.#forget()
  }

  #forget(): void {
    this.asked = undefined
    this.lit = none
    this.#from = undefined
  }
}

/** The element with the focus in `from`, through shadow roots; `from` itself where there is none. */
function focusIn(from: EventTarget | undefined): HTMLElement | undefined {
  if (!(from instanceof HTMLElement)) return undefined
  let at: HTMLElement = from
  for (;;) {
    const inner = at.shadowRoot?.activeElement
    if (!(inner instanceof HTMLElement)) return at
    at = inner
  }
}
