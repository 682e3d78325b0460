import { html, nothing, type PropertyValues, type TemplateResult } from 'lit'
import { type CellName, type Source, type Working, workingText } from '../../src/dough/workings/working.js'
import { workingOf } from '../../src/dough/workings/workings.js'
import { SheetElement } from '../base/base-element.js'
import { wish } from '../base/events.js'
import { onEscape, slip } from './slip.js'
import { workingWords } from './words.js'
import { workingStyles } from './working-styles.js'

/** A step of the way back to what was typed. */
interface Step {
  readonly cell: CellName
  readonly words: string // what it was called where it was followed; '' for the first: its title
}

/**
 * How a number came about, as a slip beside it: the arithmetic with its figures, and where each came from, to be
 * followed further. It follows the edits while it is open, and asks for the lines it speaks of to be lit.
 */
export class TbWorking extends SheetElement {
  static override properties = {
    cell: {},
    foot: { type: Boolean, reflect: true },
    trail: { state: true },
  }

  declare cell: CellName | undefined
  declare foot: boolean // lies at the foot of the page, above what is there
  declare trail: readonly Step[] // from the cell asked for to the one shown

  #lit = ''
  #focus: 'heading' | string | undefined // the next to have it: the heading, or the source of that cell

  constructor() {
    super()
    this.foot = false
    this.trail = []
    this.addEventListener('keydown', onEscape(this.#close))
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (!changed.has('cell')) return
    this.trail = this.cell ? [{ cell: this.cell, words: '' }] : []
    this.#focus = 'heading'
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback()
    if (this.foot) document.documentElement.style.removeProperty('--working')
  }

  protected override updated(): void {
    // What has the focus is scrolled clear of the foot.
    if (this.foot) document.documentElement.style.setProperty('--working', `${this.offsetHeight}px`)
    const to = this.#focus
    this.#focus = undefined
    if (to) {
      const button = this.renderRoot.querySelector<HTMLElement>(`[data-cell="${CSS.escape(to)}"]`)
      const target = button ?? this.renderRoot.querySelector<HTMLElement>('h3')
      target?.focus()
      if (!this.foot) this.scrollIntoView({ block: 'nearest' })
    }
    const lines = this.#lines()
    if (lines.join() === this.#lit) return
    this.#lit = lines.join()
    wish(this, { want: 'light', lines })
  }

  /** The working of a cell, or undefined when the cell is no longer in the formula. */
  #of(cell: CellName | undefined): Working | undefined {
    if (!cell) return undefined
    try {
      return this.sheet && workingOf(this.sheet.workedOut, cell)
    } catch (error) {
      if (error instanceof RangeError) return undefined
      throw error
    }
  }

  /** Ids of the lines that the figures in sight came from, and the line whose figure it is. */
  #lines(): readonly string[] {
    const cell = this.trail.at(-1)?.cell
    const own = cell && /^line (.*) \w+$/.exec(cell)?.[1]
    const working = this.#of(cell)
    const lines = [...(working && own ? [own] : []), ...(working?.sources ?? []).flatMap(s => s.line ?? [])]
    return [...new Set(lines)]
  }

  override render() {
    const { trail } = this
    const at = trail.at(-1)
    if (!at) return nothing
    const working = this.#of(at.cell)
    return slip(this, {
      way: trail
        .slice(0, -1)
        .map(step => capital(step.words) || this.#of(step.cell)?.title || workingWords.gone),
      title: working?.title ?? workingWords.gone,
      describedBy: 'words figures',
      body: working
        ? this.#slip(working)
        : html`<p id="figures" class="words">${workingWords.goneBecause}</p>`,
      text: working && workingText(working),
      back: this.#return,
      close: this.#close,
    })
  }

  #slip({ words, figures, problem, sources }: Working): TemplateResult {
    return html`
      <p id="words" class="words">${words}</p>
      <div id="figures">
        ${figures ? html`<p class="figures">${equation(figures)}</p>` : nothing}
        ${problem ? html`<p class="problem">${problem.message}</p>` : nothing}
      </div>
      ${
        sources.length
          ? html`<ul class="sources" aria-label=${workingWords.sources}>
            ${sources.map(source => html`<li>${this.#source(source)}</li>`)}
          </ul>`
          : nothing
      }
    `
  }

  #source({ words, figure, how, cell }: Source): TemplateResult {
    const said = html`<span class="what">${capital(words)}</span><span class="figure">${joined(figure)}</span
      >${how ? html`<span class="how">${joined(how)}</span>` : nothing}`
    if (!cell || cell === this.trail.at(-1)?.cell) return html`<div class="source">${said}</div>`
    return html`<button class="source" data-cell=${cell} @click=${() => this.#follow(cell, words)}>
      ${said}<span class="on" aria-hidden="true">›</span>
    </button>`
  }

  #follow(cell: CellName, words: string): void {
    // A number that was come by already is gone back to, so that the way never turns in a circle.
    const before = this.trail.findIndex(step => step.cell === cell)
    if (before >= 0) return this.#return(before)
    this.trail = [...this.trail, { cell, words }]
    this.#focus = 'heading'
  }

  #return = (index: number): void => {
    this.#focus = this.trail[index + 1]?.cell ?? 'heading'
    this.trail = this.trail.slice(0, index + 1)
  }

  #close = (): void => wish(this, { want: 'close-working' })

  static override styles = workingStyles
}
customElements.define('tb-working', TbWorking)

const capital = (words: string): string => words.slice(0, 1).toUpperCase() + words.slice(1)

/** A number stays on one line with its unit. */
const joined = (text: string): string => text.replace(/ (?=(?:%|g)(?![\p{L}\p{N}]))/gu, '\u00a0')

/** `a ÷ b` and, on a line of its own, `= c`. */
function equation(figures: string): TemplateResult {
  const cut = figures.lastIndexOf(' = ')
  if (cut < 0) return html`<span class="end">${joined(figures)}</span>`
  const [left, right] = [figures.slice(0, cut), figures.slice(cut + 3)]
  return html`<span class="left">${joined(left)}</span> <span class="end">= ${joined(right)}</span>`
}

declare global {
  interface HTMLElementTagNameMap {
    'tb-working': TbWorking
  }
}
