import { css, html, nothing } from 'lit'
import type { Unread } from '../../src/dough/document/workbook.js'
import { BaseElement } from '../base/base-element.js'
import { wish } from '../base/events.js'
import type { TimersElsewhere } from '../bench/timers/timers-elsewhere.js'
import { OutsideDesk } from '../desk/outside-desk.js'
import { noticeWords } from './notice-words.js'
import { type Circumstances, standingNotices } from './standing-notices.js'

/** The row of notices under the header. They are read aloud by the app, not from here. */
export class TbNotices extends BaseElement {
  static override properties = { now: { attribute: false } }

  declare now: Circumstances | undefined
  #outside: OutsideDesk | undefined
  #timers: TimersElsewhere | undefined
  #asksTimers = false
  readonly #gone = new AbortController()

  override disconnectedCallback(): void {
    super.disconnectedCallback()
    this.#gone.abort()
  }

  /** The copy outside the browser begins with what tells of it. */
  protected override willUpdate(): void {
    const kept = this.now?.kept
    if (kept?.database) this.#outside ??= new OutsideDesk(kept, () => this.requestUpdate(), this.#gone.signal)
    this.#outside?.follow()
    if (!this.#asksTimers && kept?.desk?.workbook.bakes?.some(hasTimers)) void this.#tellTimers()
  }

  /** Timers of benches tell too when another place is open; what does it is fetched when there is one. */
  async #tellTimers(): Promise<void> {
    this.#asksTimers = true
    const { TimersElsewhere } = await import('../bench/timers/timers-elsewhere.js')
    const workbook = () => this.now?.kept.desk?.workbook
    this.#timers = new TimersElsewhere(this, workbook, () => this.requestUpdate(), this.#gone.signal)
  }

  override render() {
    const standing = this.now
      ? standingNotices(this.now, detail => wish(this, detail), this.#outside?.copy)
      : []
    const notices = [...(this.#timers?.notices ?? []), ...standing]
    if (notices.length === 0) return nothing
    return html`<section aria-label=${noticeWords.notices}>
      ${notices.map(
        ({ tone, text, actions, dismiss }) => html`<div class=${tone}>
          <p>
            ${tone === 'warning' ? html`<span class="sign" aria-hidden="true">!</span> ` : nothing}${text}
          </p>
          ${actions.map(({ label, run }) => html`<button class="lined" @click=${run}>${label}</button>`)}
          ${
            dismiss
              ? html`<button aria-label=${noticeWords.dismissThis(text)} title=${noticeWords.dismiss} @click=${dismiss}>${cross}</button>`
              : nothing
          }
        </div>`,
      )}
    </section>`
  }

  static override styles = css`
    :host {
      display: block;
    }
    div {
      display: flex;
      flex-wrap: wrap;
      align-items: center;
      gap: 4px 10px;
      padding: 6px var(--edge);
      background: var(--accent-wash);
      border-bottom: 1px solid var(--rule);
      font-size: var(--size-small);
    }
    .warning {
      background: var(--warn-wash);
      border-bottom: 2px solid var(--warn);
    }
    p {
      margin: 0;
      padding: 4px 0;
      min-width: 0;
    }
    .sign {
      font-weight: 700;
      color: var(--warn);
      margin-right: 4px;
    }
    @media print {
      :host {
        display: none;
      }
    }
  `
}
customElements.define('tb-notices', TbNotices)

const hasTimers = ({ timers }: Unread): boolean => Array.isArray(timers) && timers.length > 0

const cross = html`<svg aria-hidden="true" width="14" height="14" stroke="currentColor" stroke-width="1.7">
  <path d="M2 2l10 10M12 2L2 12" />
</svg>`

declare global {
  interface HTMLElementTagNameMap {
    'tb-notices': TbNotices
  }
}
