import { html, nothing, type PropertyValues } from 'lit'
import { lengthText } from '../../src/day/course/clock.js'
import type { DaySheet } from '../../src/day/plan/open-day.js'
import type { TimeWorking } from '../../src/day/plan/time-working.js'
import { BaseElement } from '../base/base-element.js'
import { copyText } from '../base/copy-text.js'
import { say } from '../base/events.js'
import { workingWords } from '../working/words.js'
import { workingStyles } from '../working/working-styles.js'
import { timeWorkingWords } from './words.js'

/**
 * How a time came about, as the slip beside a number of the sheet: from the time that was typed through each length to it. Each
 * part is followed to its own time. Tells by `tb-close` that it is to be closed.
 */
export class TbTimeWorking extends BaseElement {
  static override properties = {
    sheet: { attribute: false },
    moment: {},
    trail: { state: true },
  }

  declare sheet: DaySheet | undefined
  declare moment: string
  declare trail: readonly string[] // moments from the one asked for to the one shown

  #toHeading = false

  constructor() {
    super()
    this.moment = ''
    this.trail = []
    this.addEventListener('keydown', this.#key)
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (!changed.has('moment')) return
    this.trail = [this.moment]
    this.#toHeading = true
  }

  protected override updated(): void {
    if (!this.#toHeading) return
    this.#toHeading = false
    this.renderRoot.querySelector<HTMLElement>('h3')?.focus()
    this.scrollIntoView({ block: 'nearest' })
  }

  #of(moment: string | undefined): TimeWorking | undefined {
    const isThere = this.sheet?.moments.some(({ name }) => name === moment)
    return isThere ? this.sheet!.working(moment!) : undefined
  }

  override render() {
    const { trail } = this
    const working = this.#of(trail.at(-1))
    return html`<section aria-labelledby="title">
      <div class="top">
        <div>
          ${
            trail.length > 1
              ? html`<ol class="way" aria-label=${workingWords.followedFrom}>
                ${trail.slice(0, -1).map((moment, i) => html`<li><button @click=${() => this.#return(i)}>${this.#of(moment)?.title ?? workingWords.gone}</button></li>`)}
              </ol>`
              : nothing
          }
          <h3 id="title" tabindex="-1" aria-describedby="words">${working?.title ?? workingWords.gone}</h3>
        </div>
        <button class="close" aria-label=${workingWords.closeThis} title=${workingWords.close} @click=${this.#close}>
          <span aria-hidden="true">✕</span>
        </button>
      </div>
      ${working ? this.#slip(working) : html`<p id="words" class="words">${timeWorkingWords.gone}</p>`}
      <div class="do">
        ${trail.length > 1 ? html`<button class="back" @click=${() => this.#return(trail.length - 2)}>${workingWords.back}</button>` : nothing}
        ${working ? html`<button @click=${() => this.#copy(working)}>${workingWords.copy}</button>` : nothing}
      </div>
    </section>`
  }

  #slip({ anchor, after, parts, words, because }: TimeWorking) {
    return html`<p id="words" class="words">${words || anchor}</p>
      ${
        parts.length
          ? html`<ul class="sources" aria-label=${workingWords.sources}>
            <li><div class="source"><span class="what">${timeWorkingWords.from}</span><span class="figure">${anchor}</span></div></li>
            ${parts.map(
              ({ words: part, minutes, moment }) => html`<li>
                <button class="source" @click=${() => this.#follow(moment)}>
                  <span class="what">${part}</span
                  ><span class="figure">${timeWorkingWords.signed(lengthText(Math.abs(minutes)), after === minutes >= 0)}</span
                  ><span class="on" aria-hidden="true">›</span>
                </button>
              </li>`,
            )}
          </ul>`
          : nothing
      }
      ${because.map(sentence => html`<p class="words because">${sentence}</p>`)}`
  }

  #follow(moment: string): void {
    const before = this.trail.indexOf(moment)
    if (before >= 0) return this.#return(before)
    this.trail = [...this.trail, moment]
    this.#toHeading = true
  }

  #return(index: number): void {
    this.trail = this.trail.slice(0, index + 1)
    this.#toHeading = true
  }

  async #copy({ title, words, anchor, because }: TimeWorking): Promise<void> {
    const copied = await copyText([title, words || anchor, ...because].join('\n'))
    say(this, copied ? workingWords.copied : workingWords.notCopied)
  }

  #close = (): void => {
    this.dispatchEvent(new CustomEvent('tb-close'))
  }

  #key = (event: KeyboardEvent): void => {
    if (event.key !== 'Escape' || event.isComposing || event.defaultPrevented) return
    event.preventDefault()
    event.stopPropagation()
    this.#close()
  }

  static override styles = workingStyles
}
customElements.define('tb-time-working', TbTimeWorking)

declare global {
  interface HTMLElementTagNameMap {
    'tb-time-working': TbTimeWorking
  }
}
