import { css, html, nothing } from 'lit'
import type { Formula } from '../../src/dough/document/formula.js'
import { addFormulas, blankFormula, copyOf } from '../../src/dough/edits/edits.js'
import { BaseElement } from '../base/base-element.js'
import { askEdit, say, wish } from '../base/events.js'

/** What stands in the middle while there is no formula: two ways to begin. */
export class TbEmptyShelf extends BaseElement {
  static override properties = {
    examples: { attribute: false },
  }

  declare examples: readonly Formula[]

  constructor() {
    super()
    this.examples = []
  }

  override render() {
    if (this.readOnly) return html`<h1>Nothing on the shelf</h1>`
    return html`<h1>Nothing on the shelf yet</h1>
      <p>
        Begin with flour at 100 %, and write water, salt and levain as percentages of it. Tarebook weighs the lines and
        counts the flour and water that the starter brings.
      </p>
      <p class="ways">
        <button class="main" @click=${this.#blank}>New formula</button>
        ${
          this.examples.length
            ? html`<button class="lined" @click=${this.#examples}>Open the examples</button>`
            : nothing
        }
        <button class="lined" @click=${() => wish(this, { want: 'bring-in' })}>Bring in a file</button>
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
