import { type CSSResultGroup, html, nothing, type PropertyDeclarations, type TemplateResult } from 'lit'
import { type Larder, larderOf } from '../../src/dough/document/larder.js'
import { emptyWorkbook, type Workbook } from '../../src/dough/document/workbook.js'
import { BaseElement } from '../base/base-element.js'
import { focusedIn } from '../typed/focused-in.js'
import { dialogStyles, stillPage } from './dialog-styles.js'
import { tellOver } from './over-page.js'
import { dialogWords } from './words.js'

document.adoptedStyleSheets.push(stillPage)

const standing = new Set<TbDialog>() // one may open before the `close` of another has come

/**
 * What the dialogs share: a modal with a heading, a part that scrolls and a row of actions. Escape closes
 * it, and asks first when something typed would be lost. Its contents are there only while it is open.
 */
export abstract class TbDialog extends BaseElement {
  static override properties: PropertyDeclarations = {
    workbook: { attribute: false },
    larder: { attribute: false },
    opened: { state: true },
    asking: { state: true },
    told: { state: true },
  }

  declare workbook: Workbook
  declare larder: Larder // all that is known: the usual and the baker's own
  declare protected opened: boolean
  declare protected asking: boolean // whether what was typed may be lost
  declare protected told: string // what was done, for those who look and those who listen

  #before: HTMLElement | undefined // where the focus was when the question was asked

  constructor() {
    super()
    this.workbook = emptyWorkbook
    this.larder = larderOf([])
    this.opened = false
    this.asking = false
    this.told = ''
  }

  protected abstract heading(): string
  protected abstract body(): TemplateResult
  protected actions(): TemplateResult | typeof nothing {
    return nothing
  }

  /** Whether closing would lose something the baker typed. */
  protected unsaved(): boolean {
    return false
  }

  /** Where Escape and the close button lead: out, unless an element has somewhere nearer to go back to. */
  protected back(): void {
    this.close()
  }

  /** Opens as a modal; the browser gives the focus back to where it was on closing. */
  protected open(): void {
    this.told = ''
    this.asking = false
    this.opened = true
    tellOver(this, {
      leave: () => {
        this.leave()
        return !this.opened
      },
    })
  }

  /** Closes at once, whatever was typed. */
  close(): void {
    this.opened = false // before `close` is told of, or an update in between would open it again
    this.dialog?.close()
    this.#holdPage(false)
    tellOver(this)
  }

  protected get dialog(): HTMLDialogElement | null {
    return this.renderRoot.querySelector('dialog')
  }

  /** Puts the focus where reading or typing begins: `[data-first]`, or else the heading. */
  protected focusFirst(): void {
    const heading = this.renderRoot.querySelector<HTMLElement>('h2')
    const first = this.renderRoot.querySelector<HTMLElement>('[data-first]')
    // A field in focus brings up the keyboard of a phone, over half of what is to be read.
    const field = matchMedia('(pointer: coarse)').matches ? null : first
    ;(field ?? heading)?.focus()
  }

  override updated(): void {
    const dialog = this.dialog
    if (!this.opened || !dialog || dialog.open) return
    dialog.showModal()
    this.#holdPage(true)
    this.focusFirst()
  }

  override render() {
    if (!this.opened) return html`<dialog></dialog>`
    return html`<dialog
      aria-labelledby="heading"
      @keydown=${this.#key}
      @cancel=${this.#cancel}
      @close=${this.#closed}
    >
      <header role="none">
        <h2 id="heading" tabindex="-1">${this.heading()}</h2>
        <button class="close" aria-label=${dialogWords.close} @click=${this.leave}>
          <svg viewBox="0 0 16 16" aria-hidden="true"><path d="M3 3l10 10M13 3L3 13" /></svg>
        </button>
      </header>
      ${this.body()}
      <footer role="none">
        ${this.asking ? this.#question() : this.actions()}
        <p class="told" role="status">${this.told}</p>
      </footer>
    </dialog>`
  }

  #question() {
    return html`<p class="question" id="question">${dialogWords.leaveUnsaved}</p>
      <button class="main" aria-describedby="question" @click=${this.#stay}>${dialogWords.stay}</button>
      <button class="lined" @click=${this.#lose}>${dialogWords.lose}</button>`
  }

  /** Goes back, or asks first when that would lose something. */
  protected leave = (): void => {
    if (!this.unsaved()) {
      this.back()
      return
    }
    if (this.asking) return
    this.#before = focusedIn(this)
    this.asking = true
    void this.updateComplete.then(() => this.renderRoot.querySelector<HTMLElement>('footer .main')?.focus())
  }

  #stay = (): void => {
    this.asking = false
    this.#before?.focus()
  }

  #lose = (): void => {
    this.asking = false
    this.back()
  }

  // Chromium closes a dialog on a second Escape in a row without asking `cancel`, so the key is taken here.
  #key = (event: KeyboardEvent): void => {
    if (event.key !== 'Escape' || event.isComposing || event.keyCode === 229) return
    event.preventDefault()
    event.stopPropagation()
    if (this.asking) this.#stay()
    else this.leave()
  }

  // The back gesture of Android comes as `cancel` without a key.
  #cancel = (event: Event): void => {
    if (event.target !== this.dialog) return // a file picker that was closed says `cancel` too
    event.preventDefault()
    this.leave()
  }

  // `close` comes late: by then it may have been opened anew.
  #closed = (event: Event): void => {
    if (event.target !== this.dialog || this.dialog?.open) return
    this.opened = false
    this.asking = false
    this.#holdPage(false)
    tellOver(this)
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback()
    this.#holdPage(false)
  }

  /** The page behind a modal stays where it is, whatever key or wheel is meant to scroll. */
  #holdPage(hold: boolean): void {
    if (hold) standing.add(this)
    else standing.delete(this)
    const page = document.documentElement
    const scrolls = page.scrollHeight > page.clientHeight // another has no bar whose room is to be kept
    page.toggleAttribute('still', standing.size > 0 && scrolls)
  }

  static override styles: CSSResultGroup = dialogStyles
}
