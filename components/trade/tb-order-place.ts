import { html, nothing, type PropertyDeclarations, type TemplateResult } from 'lit'
import { changeBreads, changeFormulas, commonCount, type HowMany } from '../../src/day/trade/order-edits.js'
import { unevenOn } from '../../src/day/trade/uneven.js'
import type { Day } from '../../src/dough/document/day.js'
import type { Larder } from '../../src/dough/document/larder.js'
import type { Workbook } from '../../src/dough/document/workbook.js'
import { newDay } from '../../src/dough/edits/fetched/day-edits.js'
import { batchProse } from '../batch/batch-prose.js'
import '../batch/tb-how-many.js'
import { today } from '../../src/day/out/next-day.js'
import { BaseElement } from '../base/base-element.js'
import { wish } from '../base/events.js'
import { hashFrom } from '../base/hash.js'
import { DayPlanner } from '../day/day-planner.js'
import { factsInWords } from '../day/facts-in-words.js'
import { costsList } from './costs-list.js'
import { listedBuilds, notesSaid } from './listed-builds.js'
import { hasPrices, needsTable } from './needs-table.js'
import './orders/tb-orders.js'
import './tb-trade-out.js'
import './tb-weigh-lists.js'
import { orderPages, orderPlaceStyles } from './order-place-styles.js'
import { sayRound } from './trade-figures.js'
import { type TradeShown, tradeShown } from './trade-shown.js'
import { costWords, needWords, orderPlaceWords, tradeOutWords, unevenWords, weighWords } from './words.js'

/** What is shown: a day, or one formula by itself as a day of its own. */
interface Shown {
  readonly day: Day
  readonly isDay: boolean
}

/** What to weigh and order for the day or the formula that the address names. */
export class TbOrderPlace extends BaseElement {
  static override properties: PropertyDeclarations = {
    workbook: { attribute: false },
    larder: { attribute: false },
  }

  declare workbook: Workbook
  declare larder: Larder

  readonly #planner = new DayPlanner(() => this.requestUpdate())
  #address = ''
  #alone: { readonly of: unknown; readonly day: Day } | undefined // the day of a formula by itself

  override connectedCallback(): void {
    super.connectedCallback()
    window.addEventListener('hashchange', this.#followAddress)
    document.adoptedStyleSheets.push(orderPages)
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback()
    window.removeEventListener('hashchange', this.#followAddress)
    this.#planner.close()
    document.adoptedStyleSheets = document.adoptedStyleSheets.filter(sheet => sheet !== orderPages)
  }

  #followAddress = (): void => {
    if (location.hash.startsWith('#order')) this.requestUpdate()
  }

  get #shown(): Shown | undefined {
    const day = this.workbook.days?.find(({ id }) => id === this.#address)
    if (day) return { day, isDay: true }
    const formula = this.workbook.formulas.find(({ id }) => id === this.#address)
    if (!formula) return undefined
    if (this.#alone?.of !== formula) {
      const { id, name, batch = { make: 'as written' } } = formula
      const zone = Intl.DateTimeFormat().resolvedOptions().timeZone || 'UTC'
      const alone = newDay({ name, date: today(), zone, asleep: [], breads: [{ id, formula: id, batch }] })
      this.#alone = { of: formula, day: { ...alone, id } }
    }
    return { day: this.#alone!.day, isDay: false }
  }

  protected override willUpdate(): void {
    const address = hashFrom('#order/'.length)
    if (address !== this.#address) scrollTo({ top: 0 })
    this.#address = address
    const shown = this.#shown
    if (shown?.isDay && shown.day.breads.length) this.#planner.plan(shown.day, this.workbook, this.larder)
  }

  protected override updated(): void {
    document.title = orderPlaceWords.title(this.#shown?.day.name ?? '')
  }

  override render() {
    const shown = this.#shown
    if (!shown)
      return html`<main>
        <h1>${orderPlaceWords.heading}</h1>
        <p>${orderPlaceWords.gone} <a href="#days">${orderPlaceWords.allDays}</a></p>
      </main>`
    const { day, isDay } = shown
    const { opened, lastGood } = this.#planner.state
    const conflict = isDay ? opened?.conflict : undefined
    // Times that no longer hold are none to mix by.
    const planned = !isDay || conflict ? undefined : opened?.plan ? opened : lastGood
    const trade = tradeShown(day, this.workbook, this.larder, this.numbers, planned)
    return html`<main>
      <a class="back" href=${isDay ? `#days/${day.id}` : `#${day.id}`}>${day.name}</a>
      <h1>${orderPlaceWords.heading}</h1>
      <p class="said">${this.#said(shown, trade)}</p>
      ${trade.needs.all.length ? html`<tb-trade-out class="near" paper .shown=${trade} .numbers=${this.numbers} ?alone=${!isDay}></tb-trade-out>` : nothing}
      ${
        conflict
          ? html`<p class="unfit">${orderPlaceWords.doesNotFit} <a href="#days/${day.id}">${orderPlaceWords.toDay}</a></p>`
          : nothing
      }
      ${this.#howMuch(shown)} ${this.#needs(trade, isDay, conflict !== undefined)}
    </main>`
  }

  /** What is made: the day in a sentence, or how much of the one formula. */
  #said({ day, isDay }: Shown, { sheetOf }: TradeShown): TemplateResult | string {
    if (isDay) return factsInWords({ ...day, asleep: [] }, this.workbook, this.numbers) // which nobody weighs by
    const sheet = sheetOf(day.id)
    return sheet ? html`${batchProse(sheet, this.numbers)}` : ''
  }

  #howMuch({ day, isDay }: Shown): TemplateResult | typeof nothing {
    if (this.readOnly) return nothing
    const count = commonCount(day.breads.map(({ batch }) => batch)) ?? day.people
    const edit = (howMany: HowMany) => (workbook: Workbook) =>
      isDay ? changeBreads(workbook, day.id, howMany) : changeFormulas(workbook, [day.id], howMany)
    return html`<section class="much" aria-label=${orderPlaceWords.howMuch}>
      ${isDay ? html`<tb-orders .day=${day} .workbook=${this.workbook} .numbers=${this.numbers}></tb-orders>` : nothing}
      ${
        day.breads.length
          ? html`<tb-how-many kind="order ${day.id} many" .count=${count} .edit=${edit} .numbers=${this.numbers}></tb-how-many>`
          : nothing
      }
    </section>`
  }

  #needs(trade: TradeShown, isDay: boolean, isUnfit: boolean): TemplateResult {
    const { made, needs, costs, style, nameOf, isTimed } = trade
    const { day, formulas, missing } = made
    if (day.breads.length === 0) return html`<p>${orderPlaceWords.none}</p>`
    const notes = notesSaid(trade)
    const uneven = unevenOn(day, formulas, costs)
    const isWrong = uneven.some(({ code }) => code !== 'loadNotFull') // an oven that is not full is none the worse
    const weigh = (grams: number) => sayRound(grams, this.numbers)
    const choose = (ingredient: string) => wish(this, { want: 'define', ingredient })
    return html`${missing ? html`<p class="remark">${orderPlaceWords.missing(missing)}</p>` : nothing}
      ${
        uneven.length
          ? html`<ul class="uneven ${isWrong ? 'wrong' : ''}" aria-label=${orderPlaceWords.toKnow}>
              ${uneven.map(one => html`<li>${unevenWords(one, weigh)}</li>`)}
            </ul>`
          : nothing
      }
      ${
        needs.all.length === 0
          ? html`<p>${orderPlaceWords.nothingToWeigh}</p>`
          : html`<section aria-labelledby="needs">
                <h2 id="needs">${needWords.heading}</h2>
                ${needsTable(needs, style, choose)}
              </section>
              ${
                hasPrices(needs)
                  ? html`<section aria-labelledby="costs">
                      <h2 id="costs">${costWords.heading}</h2>
                      ${costsList(costs, style, nameOf)}
                    </section>`
                  : nothing
              }
              <section class="weigh" aria-labelledby="weigh">
                <h2 id="weigh">${weighWords.heading}</h2>
                <p class="hint">${isTimed ? weighWords.order : isUnfit ? weighWords.unfit : isDay ? weighWords.noTimes : weighWords.written}</p>
                ${notes ? html`<p class="notes">${notes}</p>` : nothing}
                <tb-weigh-lists .of=${day.id} .builds=${listedBuilds(trade)} .numbers=${this.numbers}></tb-weigh-lists>
              </section>
              <section class="out" aria-labelledby="out">
                <h2 id="out">${tradeOutWords.heading}</h2>
                <tb-trade-out .shown=${trade} .numbers=${this.numbers} ?alone=${!isDay}></tb-trade-out>
              </section>`
      }`
  }

  static override styles = orderPlaceStyles
}
customElements.define('tb-order-place', TbOrderPlace)

declare global {
  interface HTMLElementTagNameMap {
    'tb-order-place': TbOrderPlace
  }
}
