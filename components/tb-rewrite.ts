import { css, html, LitElement, nothing } from 'lit'
import { writeInGrams, writeInPercentages } from '../src/dough/edits.js'
import type { FormulaSheet } from '../src/dough/figures.js'
import { askEdit } from './events.js'
import { foldStyles } from './fold-styles.js'
import { sharedStyles } from './shared-styles.js'

const ways = [
  { words: 'Write in grams', write: writeInGrams, already: 'Every amount is in grams already.' },
  {
    words: 'Write in percentages',
    write: writeInPercentages,
    already: 'Every amount is in percentages already.',
  },
] as const

/** Writes the whole formula anew, in grams or in percentages, with no weight changed. */
export class TbRewrite extends LitElement {
  static override properties = {
    sheet: { attribute: false },
    open: { type: Boolean, reflect: true },
    told: { state: true },
    refused: { state: true },
  }

  declare sheet: FormulaSheet | undefined
  declare open: boolean
  declare told: string
  declare refused: boolean // what is told is why not
  #formula = '' // of which it is told

  constructor() {
    super()
    this.open = false
    this.told = ''
    this.refused = false
  }

  protected override willUpdate(): void {
    const { id = '' } = this.sheet?.formula ?? {}
    if (id === this.#formula) return
    this.#formula = id
    this.told = ''
    this.open = false
  }

  override render() {
    if (!this.sheet) return nothing
    return html`<button class="fold" aria-expanded=${this.open} aria-controls="inside" @click=${this.#toggle}>
        Grams or percentages
      </button>
      <div id="inside" class="inside" ?hidden=${!this.open}>
        <p id="means">
          Writes every amount of this formula anew in one way. No weight changes, and lines that give go on giving.
        </p>
        ${ways.map(
          way =>
            html`<button class="lined" aria-describedby="means" @click=${() => this.#write(way)}>${way.words}</button>`,
        )}
        <p class="told ${this.refused ? 'refusal' : ''}" role="status">${this.told}</p>
      </div>`
  }

  #toggle = (): void => {
    this.open = !this.open
    this.told = ''
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
    sharedStyles,
    foldStyles,
    css`
      .lined {
        margin: 0 8px 4px 0;
      }
      .told {
        margin: 8px 0 0 !important;
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
