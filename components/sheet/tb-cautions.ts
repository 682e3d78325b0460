import { css, html, nothing } from 'lit'
import { allergensOf, cautionsOf, type ListedAllergen } from '../../src/dough/about/allergens.js'
import {
  allergenSentence,
  cautionWords,
  localCodesSentence,
  notKnownSentence,
} from '../../src/dough/about/words.js'
import { type ListName, listWords } from '../../src/dough/larder/allergen-lists.js'
import { LateElement } from '../base/late-elements.js'
import { isListChosen, listChosen, listSelect, ownList } from './allergen-list.js'
import { cautionsWords } from './cautions-words.js'

/** What a formula lists among a public list of allergens, and what to keep in mind at the bench. It clears no bread for anybody. */
export class TbCautions extends LateElement {
  #method: typeof import('../../src/day/method/cautions.js') | undefined

  /** What cautions of a method are made with, fetched when a formula first has one. */
  #methodCautions() {
    const { sheet } = this
    if (!sheet?.formula.stages.some(({ method }) => method?.length)) return []
    if (this.#method) return this.#method.methodCautions(sheet)
    void import('../../src/day/method/cautions.js').then(
      module => {
        this.#method = module
        this.requestUpdate()
      },
      () => {}, // not to be had without the network: the usual cautions stand
    )
    return []
  }

  #again = (): void => this.requestUpdate()

  override connectedCallback(): void {
    super.connectedCallback()
    addEventListener(listChosen, this.#again)
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback()
    removeEventListener(listChosen, this.#again)
  }

  override render() {
    const { sheet } = this
    if (!sheet) return nothing
    const list = ownList(this.numbers.language)
    const all = allergensOf(sheet)
    const cautions = [
      ...cautionsOf(sheet).map(({ code, message }) => ({ about: cautionWords[code], message })),
      ...this.#methodCautions(),
    ]
    return html`<section aria-labelledby="allergens">
        <div class="head">
          <h2 id="allergens">${cautionsWords.allergens}</h2>
          <label>
            <span>${cautionsWords.asListedIn}</span>
            ${listSelect(list)}
          </label>
        </div>
        ${
          isListChosen()
            ? nothing
            : html`<p class="small guessed">${cautionsWords.notChosen(listWords[list])}</p>`
        }
        ${listed(all[list], list)}
        ${all.notKnown.length ? html`<p class="unknown">${notKnownSentence(all.notKnown)}</p>` : nothing}
        <p class="small">${allergenSentence}</p>
      </section>
      ${
        cautions.length
          ? html`<section aria-labelledby="cautions">
              <h2 id="cautions">${cautionsWords.cautions}</h2>
              <dl>
                ${cautions.map(
                  ({ about, message }) => html`<div>
                    <dt>${about}</dt>
                    <dd>${message}</dd>
                  </div>`,
                )}
              </dl>
              <p class="small">${localCodesSentence}</p>
            </section>`
          : nothing
      }`
  }

  static override styles = css`
    :host {
      display: block;
      font-size: var(--size-small);
    }
    section + section {
      margin-top: 18px;
      padding-top: 14px;
      border-top: 1px solid var(--rule);
    }
    .head {
      display: flex;
      flex-wrap: wrap;
      align-items: center;
      gap: 2px 10px;
      margin-bottom: 2px;
    }
    h2 {
      margin: 0 0 4px;
      font-size: var(--size-fine);
      font-weight: 600;
      letter-spacing: 0.02em;
      color: var(--ink-soft);
    }
    .head h2 {
      margin: 0;
    }
    select {
      min-height: max(28px, calc(var(--target) - 6px));
      padding: 2px 6px;
      margin-left: 4px;
      color: var(--ink);
      background: none;
      border-color: var(--rule);
      font-size: var(--size-small);
    }
    select:hover {
      border-color: var(--rule-strong);
    }
    dl {
      margin: 0;
      max-width: 72ch;
    }
    dl div {
      display: flex;
      flex-wrap: wrap;
      gap: 0 16px;
      padding: 3px 0;
    }
    dt {
      flex: 0 0 11rem;
      font-weight: 600;
    }
    dd {
      flex: 1 1 18rem;
      margin: 0;
      color: var(--ink-soft);
      overflow-wrap: anywhere;
    }
    p {
      margin: 6px 0 0;
      max-width: 72ch;
    }
    .unknown {
      padding-left: 10px;
      border-left: 3px solid var(--warn);
      overflow-wrap: anywhere;
    }
    .small {
      color: var(--ink-soft);
      font-size: var(--size-small);
    }
    @media print {
      section {
        break-inside: avoid;
      }
      section + section {
        margin-top: 8px;
        padding-top: 8px;
      }
      dl,
      p {
        max-width: none;
      }
      dl div {
        padding: 1px 0;
      }
      select {
        min-height: 0;
        border: 0;
        appearance: none;
      }
      .guessed {
        display: none; /* there is nothing to choose on paper */
      }
    }
  `
}
customElements.define('tb-cautions', TbCautions)

const listed = (entries: readonly ListedAllergen[], list: ListName) =>
  entries.length
    ? html`<dl>
        ${entries.map(
          ({ entry, ingredients }) => html`<div>
            <dt>${entry}</dt>
            <dd>${ingredients.join(', ')}</dd>
          </div>`,
        )}
      </dl>`
    : html`<p>${cautionsWords.noneListed(listWords[list])}</p>`

declare global {
  interface HTMLElementTagNameMap {
    'tb-cautions': TbCautions
  }
}
