import { html, nothing, type TemplateResult } from 'lit'
import { type Bake, type FigureName, figureNames, minutesOf, tasteNames } from '../../src/day/bench/bake.js'
import { bakesIn } from '../../src/day/bench/bake-data.js'
import { keepAsBaked } from '../../src/day/bench/bake-formula.js'
import { type BakeRecord, bakedWith, bakeRecord, beside } from '../../src/day/bench/bake-record.js'
import { changeBake, removeBake } from '../../src/day/bench/bench-edits.js'
import { clockText, lengthText, localOf } from '../../src/day/course/clock.js'
import { dateText } from '../../src/day/out/day-text.js'
import { boundsText } from '../../src/day/plan/words.js'
import type { Larder } from '../../src/dough/document/larder.js'
import type { Workbook } from '../../src/dough/document/workbook.js'
import { databaseOfPage } from '../base/asked-of-page.js'
import { BaseElement } from '../base/base-element.js'
import { askEdit, type Edit, say } from '../base/events.js'
import { goTo } from '../base/hash.js'
import { gramDigits, showDecimals, showNumber } from '../base/numbers.js'
import { partNotFetched } from '../base/words.js'
import { showBeside } from '../card/beside-app.js'
import '../controls/tb-grow.js'
import { databasePhotographs } from '../../src/storage/photographs/photographs.js'
import { readNumber } from '../typed/typed-numbers.js'
import { bakeStyles } from './bake-styles.js'
import './photographs/tb-photographs.js'
import { bakesOfWords, bakeWords, figureWords, tasteWords } from './words.js'

/** A bake: what was done when, what went in, what was measured, how it was; beside the formula, or another bake of it. */
export class TbBake extends BaseElement {
  static override properties = {
    workbook: { attribute: false },
    larder: { attribute: false },
    bake: { attribute: false },
    other: { state: true },
    sure: { state: true },
  }

  declare workbook: Workbook
  declare larder: Larder
  declare bake: Bake
  declare private other: string // id of the bake it is set beside; '' for the formula
  declare private sure: boolean // whether it is to be deleted is being asked

  #shown = ''

  constructor() {
    super()
    this.other = ''
    this.sure = false
  }

  protected override willUpdate(): void {
    if (this.bake.id === this.#shown) return
    this.#shown = this.bake.id
    this.other = ''
    this.sure = false
  }

  #record(bake: Bake): BakeRecord {
    const { workbook, larder } = this
    return bakeRecord(bake, larder, workbook.scale, bakedWith(bake, bakesIn(workbook)))
  }

  override render() {
    const { bake, workbook, readOnly } = this
    const all = bakesIn(workbook).filter(one => one.id !== bake.id && one.formula.id === bake.formula.id)
    const other = all.find(({ id }) => id === this.other)
    const record = this.#record(bake)
    const against = other && this.#record(other)
    return html`<main class="two">
      <nav>
        <a class="all" href="#days">${bakeWords.days}</a>
        <a href="#bench">${bakeWords.all}</a>
        <a href="#bench/of/${bake.formula.id}">${bakesOfWords.ofBread(bake.name)}</a>
      </nav>
      <h1>${bake.name}</h1>
      <p class="soft">${dateText(bake.at.slice(0, 10), this.numbers.language)}</p>
      ${
        all.length
          ? html`<label class="pick">${bakeWords.besides}
              <select @change=${this.#pick}>
                <option value="" ?selected=${!other}>${bakeWords.formula}</option>
                ${all.map(one => html`<option value=${one.id} ?selected=${one === other}>${this.#named(one)}</option>`)}
              </select>
            </label>`
          : nothing
      }
      <div class="left">${this.#steps(record, against, bake, other)} ${this.#weights(record, against)}</div>
      <div class="right">
        ${this.#said()}
        <tb-photographs .bake=${bake.id} .numbers=${this.numbers} ?readOnly=${readOnly}></tb-photographs>
        ${this.#figures(record, against)}
      </div>
      ${
        readOnly
          ? nothing
          : html`<div class="do">
              <button class="lined" @click=${() => this.#again(record)}>${bakeWords.again}</button>
              <button class="lined" @click=${this.#print}>${bakeWords.print}</button>
              ${
                this.sure
                  ? html`<span role="alert">${bakeWords.sure}</span>
                      <button class="lined" @click=${this.#remove}>${bakeWords.remove}</button>
                      <button class="lined" @click=${() => this.#ask(false)}>${bakeWords.keep}</button>`
                  : html`<button @click=${() => this.#ask(true)}>${bakeWords.remove}</button>`
              }
            </div>`
      }
    </main>`
  }

  #named = (bake: Bake): string =>
    bakeWords.bakeOf(
      dateText(bake.at.slice(0, 10), this.numbers.language),
      this.#clock(minutesOf(bake.at), bake),
    )

  #pick = (event: Event): void => {
    this.other = (event.target as HTMLSelectElement).value
  }

  #ask(sure: boolean): void {
    this.sure = sure
  }

  #clock = (instant: number, { zone }: Bake): string => clockText(localOf(instant, zone).minutes)

  #steps(
    record: BakeRecord,
    against: BakeRecord | undefined,
    bake: Bake,
    other: Bake | undefined,
  ): TemplateResult {
    const clock = (instant: number | undefined, of: Bake | undefined) =>
      instant === undefined || !of ? '–' : this.#clock(instant, of)
    const long = (minutes: number | undefined) => (minutes === undefined ? '–' : lengthText(minutes))
    return html`<h2 id="steps">${bakeWords.steps}</h2>
      <table aria-labelledby="steps">
        <thead>
          <tr>
            <th scope="col">${bakeWords.step}</th><th scope="col">${bakeWords.began}</th><th scope="col">${bakeWords.took}</th>
            <th scope="col">${other ? bakeWords.tookThere : bakeWords.written}</th>
          </tr>
        </thead>
        <tbody>
          ${beside(record.steps, against?.steps ?? []).map(([here, there]) => {
            const one = (here ?? there)!
            const planned =
              here?.planned !== undefined && here.at !== undefined && Math.abs(here.planned - here.at) > 0.75
                ? bakeWords.planned(clock(here.planned, bake))
                : ''
            return html`<tr>
              <th scope="row">${one.name}<small>${one.stage}</small></th>
              <td>${clock(here?.at, bake)}<small>${planned}</small></td>
              <td>${long(here?.took)}</td>
              <td class="soft">${against ? long(there?.took) : one.written ? boundsText(one.written) : '–'}</td>
            </tr>`
          })}
        </tbody>
      </table>`
  }

  #weights(record: BakeRecord, against: BakeRecord | undefined): TemplateResult {
    const grams = (value: number | undefined) =>
      value === undefined ? '–' : showDecimals(value, this.numbers, gramDigits(value), 0)
    return html`<h2 id="weights">${bakeWords.weights}</h2>
      <table aria-labelledby="weights">
        <thead>
          <tr>
            <th scope="col">${bakeWords.ingredient}</th><th scope="col">${bakeWords.wentIn}</th>
            <th scope="col">${against ? bakeWords.wentInThere : bakeWords.wanted}</th>
          </tr>
        </thead>
        <tbody>
          ${beside(record.weights, against?.weights ?? []).map(([here, there]) => {
            const one = (here ?? there)!
            const shown = against ? there?.grams : one.wanted
            const differs =
              here?.grams !== undefined && shown !== undefined && Math.abs(here.grams - shown) > 0.05
            return html`<tr>
              <th scope="row">${one.ingredient}<small>${one.stage}</small></th>
              <td class=${differs ? 'differs' : ''}>${grams(here?.grams)}</td>
              <td class="soft">${grams(shown)}</td>
            </tr>`
          })}
        </tbody>
      </table>`
  }

  #figures(record: BakeRecord, against: BakeRecord | undefined): TemplateResult | typeof nothing {
    const rows = beside(record.figures, against?.figures ?? [])
    const shown = (what: FigureName, value: number | undefined) =>
      value === undefined ? '–' : `${showNumber(value, this.numbers)} ${figureWords[what].unit}`
    const { bake, readOnly } = this
    return html`<h2 id="figures">${bakeWords.figures}</h2>
      ${
        rows.length
          ? html`<table aria-labelledby="figures">
              <tbody>
                ${rows.map(([here, there]) => {
                  const one = (here ?? there)!
                  return html`<tr>
                    <th scope="row">${figureWords[one.what].name}<small>${bakeWords.atStep(one.at, one.stage)}</small></th>
                    <td>${shown(one.what, here?.value)}</td>
                    ${against ? html`<td class="soft">${shown(one.what, there?.value)}</td>` : nothing}
                  </tr>`
                })}
              </tbody>
            </table>`
          : nothing
      }
      ${
        readOnly
          ? nothing
          : html`<p class="soft afterwards">${bakeWords.figuresAfterwards}</p>
              <div class="figures">
              ${figureNames.map(what => {
                const own = bake.figures.find(one => one.what === what && one.moment === '')
                return html`<label>${figureWords[what].name}
                  <span><input
                    inputmode="decimal"
                    autocomplete="off"
                    data-typed=${`bake ${bake.id} ${what}`}
                    .defaultValue=${own ? showNumber(own.value, this.numbers) : ''}
                    .value=${own ? showNumber(own.value, this.numbers) : ''}
                    @change=${(event: Event) => this.#measure(what, event.target as HTMLInputElement)}
                  />${figureWords[what].unit}</span>
                </label>`
              })}
            </div>`
      }`
  }

  /** A figure that was measured at no step, or is written down afterwards. */
  #measure(what: FigureName, input: HTMLInputElement): void {
    const typed = input.value.trim()
    const value = typed === '' ? undefined : readNumber(typed, this.numbers)
    if (typed !== '' && value === undefined) return say(this, bakeWords.noNumber(typed))
    const others = this.bake.figures.filter(one => one.what !== what || one.moment !== '')
    this.#edit(workbook =>
      changeBake(workbook, this.bake.id, {
        figures: [...others, ...(value === undefined ? [] : [{ moment: '', what, value }])],
      }),
    )
  }

  #said(): TemplateResult {
    const { bake, readOnly } = this
    const text = (field: 'verdict' | 'note', label: string, hint: string) => html`<tb-grow
      class="said"
      manyLines
      label=${label}
      field=${`bake ${bake.id} ${field}`}
      hint=${readOnly ? '' : hint}
      .value=${bake[field]}
      ?readOnly=${readOnly}
      @tb-entered=${(event: CustomEvent<string>) => this.#edit(w => changeBake(w, bake.id, { [field]: event.detail }))}
    ></tb-grow>`
    return html`<h2>${bakeWords.howItWas}</h2>
      ${text('verdict', bakeWords.verdict, bakeWords.verdictHint)}
      <div class="tastes">
        ${tasteNames.map(name => {
          const { name: words, ends } = tasteWords[name]
          const chosen = bake.tastes?.[name]
          return html`<fieldset>
            <legend>${words}</legend>
            <span class="soft">${ends[0]}</span>
            ${[1, 2, 3, 4, 5].map(
              value => html`<label
                ><input
                  type="radio"
                  name=${name}
                  ?disabled=${readOnly}
                  .checked=${chosen === value}
                  aria-label=${bakeWords.taste(words, value)}
                  @change=${() => this.#edit(w => changeBake(w, bake.id, { tastes: { ...bake.tastes, [name]: value } }))}
              /></label>`,
            )}
            <span class="soft">${ends[1]}</span>
          </fieldset>`
        })}
      </div>
      ${text('note', bakeWords.note, bakeWords.noteHint)}`
  }

  #edit(edit: Edit): boolean {
    const refusal = askEdit(this, edit)
    if (refusal) say(this, refusal)
    return !refusal
  }

  #again(record: BakeRecord): void {
    const { bake } = this
    const name = bakeWords.state(dateText(bake.at.slice(0, 10), this.numbers.language))
    const isThere = this.workbook.formulas.some(({ id }) => id === bake.formula.id)
    if (this.#edit(workbook => keepAsBaked(workbook, bake, record, name)))
      say(this, isThere ? bakeWords.keptAsState(bake.name, name) : bakeWords.keptAsFormula(bake.name))
  }

  #remove = (): void => {
    const { id, name } = this.bake
    if (!this.#edit(workbook => removeBake(workbook, id))) return
    const photographs = databasePhotographs(databaseOfPage())
    void photographs.removeOf(id).finally(() => photographs.close())
    say(this, bakeWords.removed(name))
    goTo('bench')
  }

  #print = async (): Promise<void> => {
    try {
      await import('./tb-bake-print.js')
    } catch {
      return say(this, partNotFetched)
    }
    const { bake, numbers } = this
    const page = document.createElement('tb-bake-print')
    Object.assign(page, { bake, numbers, record: this.#record(bake) })
    await showBeside(this, page)
  }

  static override styles = bakeStyles
}
customElements.define('tb-bake', TbBake)

declare global {
  interface HTMLElementTagNameMap {
    'tb-bake': TbBake
  }
}
