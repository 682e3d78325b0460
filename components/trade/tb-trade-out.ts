import { css, html, nothing, type PropertyDeclarations } from 'lit'
import { writeTradeText } from '../../src/day/trade/trade-text.js'
import { writeTotals } from '../../src/exchange/csv/day-totals.js'
import { BaseElement } from '../base/base-element.js'
import { copyText } from '../base/copy-text.js'
import { downloadFile } from '../base/download.js'
import { say, wish } from '../base/events.js'
import type { TradeShown } from './trade-shown.js'
import { textsOf } from './trade-texts.js'
import { tradeOutWords } from './words.js'

/** What to weigh and order, for an office program, for a message, on paper. */
export class TbTradeOut extends BaseElement {
  static override properties: PropertyDeclarations = {
    shown: { attribute: false },
    alone: { type: Boolean },
    paper: { type: Boolean },
    text: { state: true },
  }

  declare shown: TradeShown | undefined
  declare alone: boolean // it is of one formula, not of a day
  declare paper: boolean // only what is printed
  declare private text: string // to be copied by hand, where the browser does not do it

  constructor() {
    super()
    this.alone = false
    this.paper = false
    this.text = ''
  }

  override render() {
    const other = html`<button class="lined" @click=${this.#file}>${tradeOutWords.file}</button>
      <button class="lined" @click=${this.#copy}>${tradeOutWords.copy}</button>`
    return html`<div class="row">
        ${this.paper ? nothing : other}
        <button class="lined" @click=${() => print()}>${tradeOutWords.print}</button>
        <button class="lined" @click=${this.#handOut}>${tradeOutWords.handout}</button>
      </div>
      ${this.text ? html`<textarea readonly rows="8" aria-label=${tradeOutWords.text} .value=${this.text}></textarea>` : nothing}`
  }

  #file = (): void => {
    const { needs, style, made } = this.shown!
    const text = writeTotals(needs, { decimal: style.numbers.decimal, currency: style.currency })
    const file = `${tradeOutWords.fileName(made.day.date)}.csv`
    downloadFile(text, 'text/csv', file)
    say(this, tradeOutWords.downloaded(file))
  }

  #handOut = (): void => {
    const { id } = this.shown!.made.day
    wish(this, { want: 'handout', ...(this.alone ? { formulas: [id] } : { day: id }) })
  }

  #copy = async (): Promise<void> => {
    const text = writeTradeText(textsOf(this.shown!))
    const isCopied = await copyText(text)
    this.text = isCopied ? '' : text
    say(this, isCopied ? tradeOutWords.copied : tradeOutWords.notCopied)
    if (isCopied) return
    await this.updateComplete
    this.renderRoot.querySelector('textarea')?.select()
  }

  static override styles = css`
    :host {
      display: block;
    }
    .row {
      display: flex;
      flex-wrap: wrap;
      gap: 8px 12px;
    }
    textarea {
      width: 100%;
      margin-top: 12px;
    }
    @media print {
      :host {
        display: none;
      }
    }
  `
}
customElements.define('tb-trade-out', TbTradeOut)

declare global {
  interface HTMLElementTagNameMap {
    'tb-trade-out': TbTradeOut
  }
}
