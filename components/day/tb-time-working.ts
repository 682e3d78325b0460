import { html, nothing, type PropertyValues } from 'lit'
import { lengthText } from '../../src/day/course/clock.js'
import type { DaySheet } from '../../src/day/plan/open-day.js'
import type { TimePart, TimeWorking } from '../../src/day/plan/time-working.js'
import { BaseElement } from '../base/base-element.js'
import { onEscape, slip } from '../working/slip.js'
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
    this.addEventListener('keydown', onEscape(this.#close))
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
    return slip(this, {
      way: trail.slice(0, -1).map(moment => this.#of(moment)?.title ?? workingWords.gone),
      title: working?.title ?? workingWords.gone,
      describedBy: 'words',
      body: working ? this.#slip(working) : html`<p id="words" class="words">${timeWorkingWords.gone}</p>`,
      text: working && [working.title, working.words || working.anchor, ...working.because].join('\n'),
      back: this.#return,
      close: this.#close,
    })
  }

  #slip({ anchor, after, parts, words, because }: TimeWorking) {
    return html`<p id="words" class="words">${words || anchor}</p>
      ${
        parts.length
          ? html`<ul class="sources" aria-label=${workingWords.sources}>
            <li><div class="source"><span class="what">${timeWorkingWords.from}</span><span class="figure">${anchor}</span></div></li>
            ${parts.map(part => html`<li>${this.#part(part, after)}</li>`)}
          </ul>`
          : nothing
      }
      ${because.map(sentence => html`<p class="words because">${sentence}</p>`)}`
  }

  #part({ words, minutes, moment }: TimePart, after: boolean) {
    const said = html`<span class="what">${words}</span
      ><span class="figure">${timeWorkingWords.signed(lengthText(Math.abs(minutes)), after === minutes >= 0)}</span>`
    if (moment === undefined) return html`<div class="source">${said}</div>`
    return html`<button class="source" @click=${() => this.#follow(moment)}>
      ${said}<span class="on" aria-hidden="true">›</span>
    </button>`
  }

  #follow(moment: string): void {
    const before = this.trail.indexOf(moment)
    if (before >= 0) return this.#return(before)
    this.trail = [...this.trail, moment]
    this.#toHeading = true
  }

  #return = (index: number): void => {
    this.trail = this.trail.slice(0, index + 1)
    this.#toHeading = true
  }

  #close = (): void => {
    this.dispatchEvent(new CustomEvent('tb-close'))
  }

  static override styles = workingStyles
}
customElements.define('tb-time-working', TbTimeWorking)

declare global {
  interface HTMLElementTagNameMap {
    'tb-time-working': TbTimeWorking
  }
}
