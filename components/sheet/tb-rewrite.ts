import { css, html, nothing } from 'lit'
import { writeInGrams, writeInPercentages } from '../../src/dough/edits/fetched/rebase.js'
import type { FigureSheet } from '../../src/dough/sheet/figures.js'
import { SheetElement } from '../base/base-element.js'
import { askEdit } from '../base/events.js'
import { insideStyles } from '../styles/inside-styles.js'
import { rewriteWords } from './rewrite-words.js'

const ways = [
  { words: rewriteWords.grams, write: writeInGrams },
  { words: rewriteWords.percentages, write: writeInPercentages },
] as const

/** Writes the whole formula anew, in grams or in percentages, with no weight changed. */
export class TbRewrite extends SheetElement {
  static override properties = {
    sheet: { attribute: false },
    told: { state: true },
    refused: { state: true },
  }

  declare sheet: FigureSheet | undefined
  declare told: string
  declare refused: boolean // what is told is why not

  constructor() {
    super()
    this.told = ''
    this.refused = false
  }

  override render() {
    if (!this.sheet) return nothing
    return html`<p id="means">${rewriteWords.means}</p>
      ${ways.map(
        way =>
          html`<button class="lined" aria-describedby="means" @click=${() => this.#write(way)}>${way.words.write}</button>`,
      )}
      <p class="told ${this.refused ? 'refusal' : ''}" role="status">${this.told}</p>`
  }

  #write({ words, write }: (typeof ways)[number]): void {
    const { sheet } = this
    if (!sheet) return
    let isAlready = false
    const refusal = askEdit(this, () => {
      const transaction = write(sheet)
      isAlready = transaction.changes.length === 0
      return transaction
    })
    this.refused = refusal !== undefined
    this.told = refusal ?? (isAlready ? words.already : words.written)
  }

  static override styles = [
    insideStyles,
    css`
      .lined {
        margin: 0 8px 4px 0;
      }
      .told {
        margin: 8px 0 0;
      }
      .told:empty {
        display: none;
      }
    `,
  ]
}
customElements.define('tb-rewrite', TbRewrite)

declare global {
  interface HTMLElementTagNameMap {
    'tb-rewrite': TbRewrite
  }
}
