import { html, nothing, type PropertyDeclarations, type PropertyValues, type TemplateResult } from 'lit'
import { BaseElement } from '../base/base-element.js'
import { tellOver } from '../controls/over-page.js'
import { keepOwnPaper, ownPaper, type PaperName, paperMargin, papers, printOn } from './paper.js'
import { barWords, paperWords } from './words.js'

const almost = 0.995 // of the page's height: fonts come out a little different on paper

/**
 * Something as it is printed. While it is open the page of the app is that and nothing else, so that what is seen is what is
 * printed; `tb-alone` tells the app of it, with true as detail, and of the end with false.
 */
export abstract class PrintedPage extends BaseElement {
  static override properties: PropertyDeclarations = {
    shown: { state: true },
    paper: { state: true },
    pages: { state: true },
  }

  declare protected shown: boolean
  declare protected paper: PaperName
  declare protected pages: number

  #before:
    | { readonly focus: HTMLElement | undefined; readonly scroll: number; readonly title: string }
    | undefined

  constructor() {
    super()
    this.shown = false
    this.paper = 'a4'
    this.pages = 1
  }

  /** What is printed: what its file is called, and what stands with the number at the foot of each page, where that is numbered; undefined where it is no longer there, which closes the page. */
  protected abstract get printed(): { readonly name: string; readonly foot?: string } | undefined
  /** What can be chosen about it, in the bar above the page. */
  protected abstract choices(): TemplateResult
  /** Each begins on a paper of its own. */
  protected abstract papers(): readonly TemplateResult[]
  /** Sets the type of a paper as large as a page takes, with `pagesOf`, and says how many pages it is. */
  protected abstract fit(paper: HTMLElement): number

  /** Opens it; the name of what is printed becomes that of the file, where it is printed to one. */
  protected async open(): Promise<void> {
    this.#before = { focus: focused(), scroll: scrollY, title: document.title }
    this.paper = ownPaper(this.numbers.language)
    this.shown = true
    this.#tell(true)
    document.title = this.printed?.name ?? document.title
    await this.updateComplete
    scrollTo(0, 0)
    this.renderRoot.querySelector<HTMLElement>('.main')?.focus()
  }

  close = (): void => {
    if (!this.shown) return
    this.shown = false
    printOn(undefined)
    this.#tell(false)
    const { focus, scroll = 0, title = '' } = this.#before ?? {}
    document.title = title
    scrollTo(0, scroll)
    focus?.focus({ preventScroll: true })
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback()
    this.close()
  }

  #tell(alone: boolean): void {
    const leave = (): boolean => {
      this.close()
      return true
    }
    tellOver(this, alone ? { leave } : undefined)
    this.dispatchEvent(new CustomEvent('tb-alone', { detail: alone, bubbles: true, composed: true }))
  }

  protected override willUpdate(_changed: PropertyValues): void {
    if (!this.shown) return
    if (this.printed) printOn(this.paper, this.printed.foot)
    else this.close() // deleted meanwhile, perhaps in another tab
  }

  protected override updated(changed: PropertyValues): void {
    if (changed.size === 1 && changed.has('pages')) return // which follow from the rest
    const papers = [...this.renderRoot.querySelectorAll<HTMLElement>('.paper')]
    // Once: each other number on the way would have the page drawn and fitted again, for ever.
    if (this.shown) this.pages = papers.reduce((sum, paper) => sum + this.fit(paper), 0)
  }

  /** px of what is laid out that one page holds. */
  protected heightOfPage(paper: HTMLElement): number {
    const { width, height } = papers[this.paper]
    const pixels = paper.getBoundingClientRect().width / (width - 2 * paperMargin) // a millimetre
    return (height - 2 * paperMargin) * almost * pixels
  }

  /** Pages that the paper takes as it is laid out. */
  protected pagesOf(paper: HTMLElement): number {
    return Math.ceil(paper.getBoundingClientRect().height / this.heightOfPage(paper))
  }

  override render() {
    if (!this.shown || !this.printed) return nothing
    const { width, height } = papers[this.paper]
    const { name } = this.printed
    const all = this.papers()
    return html`<div class="around" @keydown=${this.#key}>
      ${this.#bar()}
      <main aria-label=${name} style=${`--width: ${width}; --height: ${height}; --margin: ${paperMargin}`}>
        ${all.length > 1 ? html`<h1 class="unseen">${name}</h1>` : nothing}
        ${all.map(paper => html`<article class="paper">${paper}</article>`)}
      </main>
    </div>`
  }

  #bar() {
    return html`<section class="bar" aria-label=${barWords.bar}>
      <button class="lined" @click=${this.close}>${barWords.back}</button>
      <label class="choice">
        <span class="unseen">${barWords.paper}</span>
        <select @change=${this.#choosePaper}>
          ${(['a4', 'letter'] as const).map(
            name => html`<option value=${name} ?selected=${name === this.paper}>${paperWords[name]}</option>`,
          )}
        </select>
      </label>
      ${this.choices()}
      <p class="pages" role="status">${barWords.pages(this.pages)}</p>
      <button class="main" @click=${() => print()}>${barWords.print}</button>
      ${this.more()}
    </section>`
  }

  /** More of what can be chosen, in a row of its own. */
  protected more(): TemplateResult | typeof nothing {
    return nothing
  }

  /** A box to tick in the bar. */
  protected box(words: string, on: boolean, change: (on: boolean) => void): TemplateResult {
    return html`<label class="choice">
      <input
        type="checkbox"
        .checked=${on}
        @change=${(e: Event) => change((e.target as HTMLInputElement).checked)}
      />${words}
    </label>`
  }

  #choosePaper = (event: Event): void => {
    this.paper = (event.target as HTMLSelectElement).value as PaperName
    keepOwnPaper(this.paper)
  }

  // Undo and redo would change what is not in sight.
  #key = (event: KeyboardEvent): void => {
    if (event.key === 'Escape' && !event.isComposing) this.close()
    else if (!((event.ctrlKey || event.metaKey) && /^[zy]$/i.test(event.key))) return
    event.preventDefault()
    event.stopPropagation()
  }
}

/** The element that has the focus, through all shadow roots. */
function focused(): HTMLElement | undefined {
  let at = document.activeElement
  while (at?.shadowRoot?.activeElement) at = at.shadowRoot.activeElement
  return at instanceof HTMLElement ? at : undefined
}
