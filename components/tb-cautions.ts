import { css, html, LitElement, nothing } from 'lit'
import { sharedStyles } from './shared-styles.js'

/** What a baker should keep in mind at the bench; nothing here clears a bread for anybody. */
export class TbCautions extends LitElement {
  static override properties = { perishable: { type: Boolean } }

  declare perishable: boolean // the dough holds egg or milk

  constructor() {
    super()
    this.perishable = false
  }

  override render() {
    return html`<section aria-labelledby="title">
      <h2 id="title">Cautions</h2>
      <ul>
        ${
          this.perishable
            ? html`<li>
              <b>This dough holds egg or milk.</b> No more than 2 hours between 4 and 60 °C is the usual public rule
              for such food; a long warm proof needs care.
            </li>`
            : nothing
        }
        <li>Raw flour, dough and starter are not to be tasted.</li>
        <li>
          A starter carries the flour it is fed with. What the labels of your ingredients say and local food law decide
          on allergens, not this sheet.
        </li>
        <li>Hot tins, oven doors and steam burn; water on hot glass or ceramic shatters it.</li>
      </ul>
    </section>`
  }

  static override styles = [
    sharedStyles,
    css`
      :host {
        display: block;
        font-size: 0.85rem;
        color: var(--ink-soft);
      }
      h2 {
        margin: 0 0 4px;
        font-size: 0.8rem;
        font-weight: 600;
        letter-spacing: 0.02em;
      }
      ul {
        margin: 0;
        padding: 0 0 0 1.1em;
        max-width: 68ch;
      }
      li {
        padding: 2px 0;
      }
      b {
        color: var(--ink);
        font-weight: 600;
      }
    `,
  ]
}
customElements.define('tb-cautions', TbCautions)

declare global {
  interface HTMLElementTagNameMap {
    'tb-cautions': TbCautions
  }
}
