import { css, html, nothing } from 'lit'
import { BaseElement } from '../../base/base-element.js'
import type { Bell, BellState } from './bell.js'
import { bellWords } from './words.js'

/** What this browser does while the bench is open, and what it does not. */
export class TbBenchCare extends BaseElement {
  static override properties = {
    bell: { attribute: false },
    state: { attribute: false },
  }

  declare bell: Bell
  declare state: BellState

  override render() {
    const { sound, vibrates, awake, notifies } = this.state
    const says = [
      awake ? bellWords.awake : bellWords.notAwake,
      { ready: bellWords.sound, locked: bellWords.soundLocked, none: bellWords.noSound }[sound],
      vibrates ? bellWords.vibrates : bellWords.noVibration,
      {
        granted: bellWords.notifies,
        denied: bellWords.blocked,
        none: bellWords.noNotifications,
        default: '',
      }[notifies],
      bellWords.closed,
    ].filter(Boolean)
    return html`<h2>${bellWords.heading}</h2>
      <ul>${says.map(words => html`<li>${words}</li>`)}</ul>
      ${notifies === 'default' ? html`<button class="lined" @click=${() => void this.bell.askToNotify()}>${bellWords.notify}</button>` : nothing}`
  }

  static override styles = css`
    :host {
      display: block;
      margin-top: 30px;
      color: var(--ink-soft);
      font-size: var(--size-small);
    }
    h2 {
      margin: 0 0 4px;
      font-size: var(--size-fine);
      font-weight: 600;
    }
    ul {
      margin: 0 0 10px;
      padding: 0 0 0 18px;
    }
    button {
      min-height: 56px;
      width: 100%;
      color: var(--ink);
    }
  `
}
customElements.define('tb-bench-care', TbBenchCare)

declare global {
  interface HTMLElementTagNameMap {
    'tb-bench-care': TbBenchCare
  }
}
