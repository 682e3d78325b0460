import { css, html, nothing } from 'lit'
import { copyOf, type Formula } from '../../src/dough/document/formula.js'
import { addFormulas, blankFormula } from '../../src/dough/edits/fetched/shelf-edits.js'
import { BaseElement } from '../base/base-element.js'
import { askEdit, say, wish } from '../base/events.js'
import { emptyShelfWords } from './empty-shelf-words.js'

/** What stands in the middle while there is no formula: two ways to begin. */
export class TbEmptyShelf extends BaseElement {
  static override properties = {
    examples: { attribute: false },
    unread: { attribute: false },
  }

  declare examples: readonly Formula[]
  declare unread: string | undefined // why nothing is known of what is stored

  constructor() {
    super()
    this.examples = []
  }

  override render() {
    if (this.readOnly) return html`<h1>${emptyShelfWords.readOnly}</h1>`
    const { unread } = this
    return html`<h1>${unread ? emptyShelfWords.unread : emptyShelfWords.heading}</h1>
      ${
        unread
          ? html`<p>${unread} <a href="rescue.html${location.search}">${emptyShelfWords.whatIsStored}</a></p>
            <p>${emptyShelfWords.meanwhile}</p>`
          : html`<p>${emptyShelfWords.how}</p>`
      }
      <p class="ways">
        <button class="main" @click=${this.#blank}>${emptyShelfWords.newFormula}</button>
        ${
          this.examples.length
            ? html`<button class="lined" @click=${this.#examples}>${emptyShelfWords.examples}</button>`
            : nothing
        }
        <button class="lined" @click=${() => wish(this, { want: 'bring-in', restore: true })}>${emptyShelfWords.restore}</button>
        <button class="lined" @click=${() => wish(this, { want: 'bring-in' })}>${emptyShelfWords.bringIn}</button>
      </p>`
  }

  #blank = (): void => this.#add([blankFormula()])
  #examples = (): void => this.#add(this.examples.map(example => copyOf(example, example.name)))

  #add(formulas: readonly Formula[]): void {
    const refusal = askEdit(this, workbook => addFormulas(workbook, formulas))
    if (refusal) say(this, refusal)
    else wish(this, { want: 'open', formula: formulas[0]!.id })
  }

  static override styles = css`
    :host {
      display: block;
      max-width: 56ch;
      padding: 8vh 0;
    }
    h1 {
      margin: 0 0 8px;
      font-size: var(--size-title);
      font-weight: 640;
      line-height: 1.15;
      letter-spacing: -0.015em;
    }
    p {
      margin: 0 0 18px;
    }
    .ways {
      display: flex;
      flex-wrap: wrap;
      gap: 10px;
    }
  `
}
customElements.define('tb-empty-shelf', TbEmptyShelf)

declare global {
  interface HTMLElementTagNameMap {
    'tb-empty-shelf': TbEmptyShelf
  }
}
