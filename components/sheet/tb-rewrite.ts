import { css, html, nothing } from 'lit'
import { writeInGrams, writeInPercentages } from '../../src/dough/edits/rebase.js'
import type { FigureSheet } from '../../src/dough/sheet/figures.js'
import { SheetElement } from '../base/base-element.js'
import { askEdit } from '../base/events.js'
import { insideStyles } from '../base/inside-styles.js'

const ways = [
  { words: 'Write in grams', write: writeInGrams, already: 'Every amount is in grams already.' },
  {
    words: 'Write in percentages',
    write: writeInPercentages,
    already: 'Every amount is in percentages already.',
  },
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
    return html`<p id="means">
        Writes every amount of this formula anew in one way. No weight changes, and lines that give go on giving.
      </p>
      ${ways.map(
        way =>
          html`<button class="lined" aria-describedby="means" @click=${() => this.#write(way)}>${way.words}</button>`,
      )}
      <p class="told ${this.refused ? 'refusal' : ''}" role="status">${this.told}</p>`
  }

  #write({ words, write, already }: (typeof ways)[number]): void {
    const { sheet } = this
    if (!sheet) return
    let isAlready = false
    const refusal = askEdit(this, () => {
      const transaction = write(sheet)
      isAlready = transaction.changes.length === 0
      return transaction
    })
    this.refused = refusal !== undefined
    this.told = refusal ?? (isAlready ? already : `${words.replace('Write', 'Written')}. Undo takes it back.`)
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
