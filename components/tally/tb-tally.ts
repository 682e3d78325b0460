import { html, nothing, type PropertyValues, type TemplateResult } from 'lit'
import { keyed } from 'lit/directives/keyed.js'
import { type ReadingName, readingNames } from '../../src/dough/document/reading-names.js'
import { releaseHold } from '../../src/dough/edits/edits.js'
import type { FigureSheet } from '../../src/dough/sheet/figures.js'
import { type Hydration, hasSoaker, leadingHydration, usualRanges } from '../../src/dough/sheet/ranges.js'
import { fetchWhenIdle } from '../base/after-paint.js'
import { SheetElement } from '../base/base-element.js'
import { askEdit, say, wish } from '../base/events.js'
import { heldToType, readingUnit, showRange, showReading, showWeighed } from '../base/reading-shown.js'
import { readingInSentence, readingWords } from '../base/words.js'
import type { Asked } from '../working/open-working.js'
import { canGive, heldAt } from './holds.js'
import { rangeScale, rangeScaleStyles } from './range-scale.js'
import { tallyStyles } from './tally-styles.js'
import { besideWords, heldWords, rangeWords, stripWords, tallyWords, weighedWords } from './words.js'

const always = ['levainOnFlour', 'totalFlour', 'totalWater', 'doughWeight'] as const
const wherePresent = ['fat', 'sugar', 'egg', 'milk'] as const

/**
 * The readings of the open formula, each with its working and the hold on it, and what the sheet noticed;
 * `compact`: the three main ones in a strip.
 */
export class TbTally extends SheetElement {
  static override properties = {
    asked: { attribute: false },
    apart: { type: Boolean },
    compact: { type: Boolean, reflect: true },
    holding: { state: true },
  }

  declare asked: Asked | undefined // the working that is open
  declare apart: boolean // the open working lies somewhere else on the page
  declare compact: boolean
  declare holding: ReadingName | undefined // the form to hold it is open

  #lead: Hydration = 'trueHydration' // what says most of this dough
  #saidWhy = new Set<string>() // reasons given so far, while rendering
  #focusOn: ReadingName | undefined // its hold, as soon as it is there

  constructor() {
    super()
    this.asked = undefined
    this.apart = false
    this.compact = false
    this.holding = undefined
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('sheet') || this.readOnly) this.holding = undefined
  }

  protected override firstUpdated(): void {
    if (!this.compact)
      void fetchWhenIdle(async () => {
        const [{ typeOver }, { printedTallyStyles }] = await Promise.all([
          import('./tb-hold.js'),
          import('./printed-tally-styles.js'),
          import('./tb-remarks.js'),
        ])
        typeOver(this)
        this.shadowRoot!.adoptedStyleSheets.push(printedTallyStyles.styleSheet!)
      })
  }

  protected override updated(): void {
    const reading = this.#focusOn
    this.#focusOn = undefined
    if (reading) this.renderRoot.querySelector<HTMLElement>(`[data-hold="${reading}"]`)?.focus()
  }

  override render() {
    const { sheet, asked } = this
    if (!sheet) return nothing
    const lead = leadingHydration(name => sheet.reading(name))
    this.#lead = lead
    if (this.compact) {
      return html`<section aria-label=${tallyWords.mainReadings}>
        <dl class="strip">${([lead, 'salt', 'prefermentedFlour'] as const).map(name => this.#strip(sheet, name))}</dl>
      </section>`
    }
    this.#saidWhy = new Set()
    const present = wherePresent.filter(
      name => (sheet.reading(name) ?? 0) > 0 || heldAt(sheet, name) || this.holding === name,
    )
    const isByMoisture = lead === 'moistureHydration'
    const beside: readonly (keyof typeof besideWords)[] = [
      ...(isByMoisture ? (['trueHydration'] as const) : []),
      'listedHydration',
      ...(hasSoaker(sheet) ? (['hydrationWithoutSoakers'] as const) : []),
    ]
    const ofReading = asked && (readingNames as readonly string[]).includes(asked.cell)
    return html`
      <h2>${tallyWords.tally}</h2>
      ${asked && !ofReading ? this.#working(sheet, asked) : nothing}
      <dl class="lead">
        ${this.#reading(sheet, lead)}
        <div class="listed">
          ${beside.map(
            name => html`<dt title=${readingWords[name].means}>${besideWords[name]}</dt>
            ${this.#value(sheet, name)}${this.#words(sheet, name)}`,
          )}
        </div>
      </dl>
      ${this.#under(sheet, [lead, ...beside])}
      <dl class="pair">${this.#reading(sheet, 'salt')}${this.#reading(sheet, 'prefermentedFlour')}</dl>
      ${this.#under(sheet, ['salt', 'prefermentedFlour'])}
      <dl class="ledger">
        ${[...(isByMoisture ? [] : (['moistureHydration'] as const)), ...always, ...present].map(name => this.#reading(sheet, name, this.#under(sheet, [name])))}
      </dl>
      <tb-remarks .sheet=${sheet} .version=${this.version} ?readOnly=${this.readOnly}></tb-remarks>
    `
  }

  #strip(sheet: FigureSheet, name: keyof typeof stripWords): TemplateResult {
    const why = sheet.reading(name) === undefined ? sheet.readingProblem(name)?.message : undefined
    return html`<div class=${name}>
      <dt>${stripWords[name]}</dt>
      <dd>
        ${this.#figure(sheet, name)}${why ? html`<span class="unseen">${why}</span>` : nothing}
        ${heldAt(sheet, name) ? html` <span class="held">${tallyWords.held}</span>` : nothing}
      </dd>
    </div>`
  }

  #reading(sheet: FigureSheet, name: ReadingName, under?: TemplateResult[]): TemplateResult {
    return html`<div class="reading">
      <dt title=${readingWords[name].means}>${readingWords[name].name}</dt>
      ${this.#value(sheet, name)}${this.#words(sheet, name)}
      ${under ? html`<dd class="under">${under}</dd>` : nothing}
    </div>`
  }

  /** The value, which opens its working, and the way to hold it. */
  #value(sheet: FigureSheet, name: ReadingName): TemplateResult {
    if (this.holding === name) return html`<dd class="value">${this.#form(sheet, name)}</dd>`
    const kept = heldAt(sheet, name)
    const canHold = !this.readOnly && !kept && canGive(sheet)
    return html`<dd class="value">
      ${this.#figure(sheet, name)}
      ${kept ? html`<span class="held">${tallyWords.held}</span>` : nothing}
      ${
        canHold
          ? html`<button
            class="hold"
            data-hold=${name}
            aria-label=${tallyWords.holdThis(readingInSentence(name))}
            @click=${() => this.#openForm(name)}
          >
            ${tallyWords.hold}
          </button>`
          : nothing
      }
    </dd>`
  }

  #figure(sheet: FigureSheet, name: ReadingName): TemplateResult {
    const value = sheet.reading(name)
    const unit = readingUnit(name)
    const shown = value === undefined ? undefined : showReading(name, value, this.numbers)
    const spoken = readingInSentence(name)
    const figure = shown === undefined ? tallyWords.noFigure : `${shown}\u00a0${unit}`
    return html`<button
      class="how"
      aria-label=${tallyWords.howFigure(figure, spoken)}
      aria-expanded=${this.asked?.cell === name}
      title=${tallyWords.how(spoken)}
      @click=${this.#askHow}
      data-reading=${name}
    >
      ${
        shown === undefined
          ? html`<span class="figure none">–</span>`
          : html`<span class="figure">${shown}</span><span class="unit">&nbsp;${unit}</span>`
      }
    </button>`
  }

  /** The usual range where there is one, or why there is no number; how it will be as weighed. */
  #words(sheet: FigureSheet, name: ReadingName) {
    const value = sheet.reading(name)
    const isHydration = name === 'trueHydration' || name === 'moistureHydration'
    const usual = isHydration && name !== this.#lead ? undefined : usualRanges[name]
    if (value === undefined) {
      const why = sheet.readingProblem(name)?.message ?? tallyWords.notKnown
      const again = this.#saidWhy.has(why)
      this.#saidWhy.add(why)
      return html`<dd class=${again ? 'unseen' : 'words why'}>${why}</dd>`
    }
    const weighed = showWeighed(sheet, name, this.numbers)
    const asWeighed =
      weighed && html`<span class="weighed">${weighedWords(weighed, readingUnit(name))}</span>`
    if (!usual) return asWeighed ? html`<dd class="words">${asWeighed}</dd>` : nothing
    const side = value < usual[0] ? 'below' : value > usual[1] ? 'above' : 'within'
    return html`<dd class="words ${side === 'within' ? '' : 'outside'}">
      ${rangeScale(name, value, usual)}<span>${rangeWords[side](showRange(usual, this.numbers))}</span> ${asWeighed}
    </dd>`
  }

  /** What belongs under readings: the holds on them, the form that is open for one, the working of one. */
  #under(sheet: FigureSheet, names: readonly ReadingName[]) {
    const { asked, holding } = this
    return names.map(
      name =>
        html`${holding === name ? nothing : this.#held(sheet, name, names.length === 1)}${
          asked?.cell === name ? this.#working(sheet, asked) : nothing
        }`,
    )
  }

  #held(sheet: FigureSheet, name: ReadingName, under: boolean) {
    const kept = heldAt(sheet, name)
    if (!kept) return nothing
    const spoken = readingInSentence(name)
    const value = `${heldToType(name, kept.hold.value, this.numbers)}\u00a0${readingUnit(name)}`
    const called = under ? undefined : readingWords[name].name
    return html`<p class="kept">
      <span>${heldWords.held(called, value, kept.line?.ingredient)}</span>
      ${
        this.readOnly
          ? nothing
          : html`<span class="do"
            ><button
              data-hold=${name}
              aria-label=${heldWords.changeThis(spoken)}
              @click=${() => this.#openForm(name)}
            >
              ${heldWords.change}</button
            ><button aria-label=${heldWords.releaseThis(spoken)} @click=${() => this.#release(name)}>${heldWords.release}</button></span
          >`
      }
    </p>`
  }

  #form(sheet: FigureSheet, name: ReadingName): TemplateResult {
    void import('./tb-hold.js') // fetched when first wanted; an element may stand there before
    return html`${keyed(
      name,
      html`<tb-hold
        .sheet=${sheet}
        .version=${this.version}
        .numbers=${this.numbers}
        .reading=${name}
        @tb-done=${this.#closeForm}
      ></tb-hold>`,
    )}`
  }

  #working(sheet: FigureSheet, asked: Asked) {
    if (this.apart) return nothing
    return keyed(
      asked,
      html`<tb-working .sheet=${sheet} .version=${this.version} .cell=${asked.cell}></tb-working>`,
    )
  }

  #askHow = (event: Event): void => {
    const button = event.currentTarget as HTMLElement
    const cell = button.dataset.reading as ReadingName
    button.focus() // Safari does not on a click
    if (this.asked?.cell === cell) wish(button, { want: 'close-working' })
    else wish(button, { want: 'working', cell })
  }

  #openForm(name: ReadingName): void {
    if (this.holding === name) this.#closeForm()
    else this.holding = name
  }

  #closeForm = (): void => {
    this.#focusOn = this.holding
    this.holding = undefined
  }

  #release(name: ReadingName): void {
    const { id } = this.sheet!.formula
    const refusal = askEdit(this, workbook => releaseHold(workbook, id, hold => hold.reading === name))
    if (refusal) say(this, refusal)
    this.#focusOn = name
    this.requestUpdate()
  }

  static override styles = [rangeScaleStyles, tallyStyles]
}
customElements.define('tb-tally', TbTally)

declare global {
  interface HTMLElementTagNameMap {
    'tb-tally': TbTally
  }
}
