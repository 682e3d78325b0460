import { css, html, nothing } from 'lit'
import { renameWorkbook } from '../../src/dough/edits/edits.js'
import type { KeeperState } from '../../src/storage/index.js'
import { askEdit, say, type Wish, wish } from '../base/events.js'
import '../controls/tb-grow.js'
import '../controls/tb-menu.js'
import { BaseElement } from '../base/base-element.js'
import type { Layout } from './layout.js'
import type { PlaceName } from './tb-places.js'
import { isApart } from './whereabouts.js'
import { headWords, keptWords, placeWords, programName, stepWords } from './words.js'

const ways: readonly { readonly label: string; readonly detail: Wish }[] = [
  { label: headWords.larder, detail: { want: 'larder' } },
  { label: headWords.bringIn, detail: { want: 'bring-in' } },
  { label: headWords.sendOut, detail: { want: 'send-out' } },
  { label: headWords.help, detail: { want: 'help' } },
]

/** The top of the page: whose workbook, whether it is kept, back and forth, and the ways in and out. */
export class TbHead extends BaseElement {
  static override properties = {
    name: {},
    kept: { attribute: false },
    undoLabel: { attribute: false },
    redoLabel: { attribute: false },
    layout: { reflect: true },
    place: {},
  }

  declare name: string // of the workbook
  declare kept: KeeperState
  declare undoLabel: string | undefined
  declare redoLabel: string | undefined
  declare layout: Layout
  declare place: PlaceName

  constructor() {
    super()
    this.name = ''
    this.kept = { status: 'loading' }
    this.undoLabel = undefined
    this.redoLabel = undefined
    this.layout = 'wide'
    this.place = 'sheet'
  }

  override render() {
    return html`<header>
      ${
        this.layout === 'middle' && !isApart(this.place)
          ? html`<button id="shelf" class="lined" aria-expanded=${this.place === 'shelf'} @click=${this.#shelf}>${headWords.shelf}</button>`
          : nothing
      }
      <span class="mark">${mark}<span class="word">${programName}</span></span>
      ${this.layout === 'narrow' ? nothing : html`<nav>${this.#way('sheet', headWords.formulas)}${this.#way('days', placeWords.days)}</nav>`}
      <div class="whose">
        <tb-grow
          field="workbook"
          label=${headWords.workbookName}
          hint=${headWords.nameIt}
          .value=${this.name}
          ?readOnly=${this.readOnly}
          @tb-entered=${this.#rename}
        ></tb-grow>
        <span class="kept">${keptWords(this.kept, this.#time)}</span>
      </div>
      <span class="steps">
        ${this.#step('undo', this.undoLabel)}${this.#step('redo', this.redoLabel)}
      </span>
      ${
        this.layout === 'wide'
          ? ways.map(
              ({ label, detail }) => html`<button @click=${() => wish(this, detail)}>${label}</button>`,
            )
          : html`<tb-menu
            label=${headWords.ways}
            .items=${ways.map(({ label, detail }) => ({ label, run: () => wish(this, detail) }))}
          ></tb-menu>`
      }
    </header>`
  }

  #way = (to: 'sheet' | 'days', name: string) => {
    const isHere = (to === 'days') === isApart(this.place)
    return html`<button aria-current=${isHere ? 'page' : nothing} @click=${() => wish(this, { want: 'go', to })}>${name}</button>`
  }

  #step(want: 'undo' | 'redo', what: string | undefined) {
    const name = stepWords[want](what)
    return html`<button
      class="step"
      aria-label=${name}
      title=${name}
      ?disabled=${!what || this.readOnly}
      @click=${() => wish(this, { want })}
    >
      ${want === 'undo' ? arrow('M7 4 3 8l4 4M3.5 8H11a4 4 0 0 1 0 8H8') : arrow('m11 4 4 4-4 4m3.5-4H7a4 4 0 0 0 0 8h3')}
      ${want === 'undo' && what && this.layout === 'wide' ? html`<span class="what">${name}</span>` : nothing}
    </button>`
  }

  #time = (at: Date): string =>
    at.toLocaleTimeString(this.numbers.language, { hour: '2-digit', minute: '2-digit' })

  /** Puts the focus on the way to the shelf. */
  override focus(): void {
    this.renderRoot.querySelector<HTMLElement>('#shelf')?.focus()
  }

  #shelf = (): void => wish(this, { want: 'go', to: this.place === 'shelf' ? 'sheet' : 'shelf' })

  #rename = (event: CustomEvent<string>): void => {
    const refusal = askEdit(this, () => renameWorkbook(event.detail))
    if (refusal) say(this, refusal)
  }

  static override styles = css`
    :host {
      display: block;
      background: var(--ground);
      border-bottom: 1px solid var(--rule-strong);
    }
    header {
      display: flex;
      align-items: center;
      gap: 4px;
      min-height: 56px;
      padding: 6px var(--edge);
      padding-right: calc(var(--edge) - 12px);
    }
    button {
      padding: 4px 10px;
      white-space: nowrap;
    }
    .mark {
      display: inline-flex;
      align-items: center;
      gap: 9px;
      margin-right: 14px;
      font-weight: 680;
      letter-spacing: 0.01em;
    }
    .mark svg {
      color: var(--accent);
      flex: none;
    }
    nav {
      flex: none;
      margin-right: 14px;
    }
    [aria-current] {
      border-radius: 0;
      box-shadow: inset 0 -2px var(--accent);
    }
    @media (forced-colors: active) {
      [aria-current] {
        border-bottom: 3px solid Highlight;
      }
    }
    .whose {
      display: flex;
      align-items: center;
      justify-content: space-between;
      gap: 4px 16px;
      flex: 1;
      min-width: 0;
    }
    tb-grow {
      color: var(--ink-soft);
      --grow-padding: 3px 6px;
      max-height: 2.8em; /* of two lines: the head stays in sight */
      overflow: auto;
      margin-left: -6px;
    }
    .kept {
      color: var(--ink-soft);
      font-size: var(--size-small);
      white-space: nowrap;
      margin-right: 8px;
    }
    .steps {
      display: inline-flex;
      flex: none;
    }
    .step {
      display: inline-flex;
      align-items: center;
      justify-content: center;
      gap: 7px;
      padding: 4px 8px;
    }
    .what {
      max-width: 21ch;
      overflow: hidden;
      text-overflow: ellipsis;
      font-size: var(--size-small);
    }
    #shelf {
      margin-right: 12px;
    }
    :host([layout='narrow']) {
      & .word {
        position: absolute;
        clip-path: inset(50%);
        width: 1px;
        height: 1px;
        overflow: hidden;
      }
      & .mark {
        margin-right: 6px;
      }
      & .whose {
        display: block;
        line-height: 1.2;
      }
      & tb-grow {
        --grow-padding: 1px 6px;
        color: var(--ink);
        font-size: var(--size-small);
      }
      & .kept {
        display: block;
        padding-left: 1px;
        font-size: var(--size-fine);
        white-space: normal;
      }
      & .kept:empty {
        display: none;
      }
      & header {
        padding-block: 4px;
      }
    }
    @media print {
      :host {
        display: none;
      }
    }
  `
}
customElements.define('tb-head', TbHead)

/** A pan on a beam. */
const mark = html`<svg aria-hidden="true" width="26" height="22" viewBox="0 0 26 22" fill="none" stroke="currentColor" stroke-width="2" stroke-linecap="round">
  <path d="M2 4h22M5 4c0 5 3.2 7 8 7s8-2 8-7M13 11v6M7 20c0-2 2-3 6-3s6 1 6 3z"/></svg>`

const arrow = (d: string) => html`<svg
  aria-hidden="true"
  width="18"
  height="18"
  fill="none"
  stroke="currentColor"
  stroke-width="1.7"
  stroke-linecap="round"
  stroke-linejoin="round"
>
  <path d=${d} />
</svg>`

declare global {
  interface HTMLElementTagNameMap {
    'tb-head': TbHead
  }
}
