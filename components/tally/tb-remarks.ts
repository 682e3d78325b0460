import { css, html, nothing } from 'lit'
import type { Formula, Place, Problem } from '../../src/dough/document/formula.js'
import { type Offer, offersFor } from '../../src/dough/offers/offers.js'
import { remarksOn } from '../../src/dough/remarks/remarks.js'
import type { FigureSheet } from '../../src/dough/sheet/figures.js'
import { askEdit, say, wish } from '../base/events.js'
import { LateElement } from '../base/late-elements.js'
import { remarkWords, severityWords } from './remark-list-words.js'

const shownAtFirst = 40 // of a formula that draws very many

const signs = { error: '✕', warning: '!', remark: '•' } as const

/** What the sheet noticed, the gravest first, each with a way to its place. */
export class TbRemarks extends LateElement {
  static override properties = {
    all: { state: true },
  }

  declare all: boolean // shown, and not only the gravest
  #isTaken = false // an offer, since the last rendering

  constructor() {
    super()
    this.all = false
  }

  override render() {
    const sheet = this.sheet
    if (!sheet) return nothing
    const problems = remarksOn(sheet.workedOut)
    const shown = this.all ? problems : problems.slice(0, shownAtFirst)
    const names = namesOf(sheet.formula, shown)
    const more = problems.length - shown.length
    return html`<h3 tabindex="-1">${remarkWords.remarks}</h3>
      ${
        problems.length === 0
          ? html`<p class="quiet">${remarkWords.none}</p>`
          : html`<ul>
            ${shown.map(problem => this.#remark(sheet, names, problem))}
          </ul>`
      }
      ${
        more > 0
          ? html`<button class="more" @click=${() => {
              this.all = true
            }}>${remarkWords.more(more)}</button>`
          : nothing
      }`
  }

  #remark(sheet: FigureSheet, names: ReadonlyMap<string, string>, problem: Problem) {
    const { where, message, severity } = problem
    const offers = this.readOnly ? [] : offersFor(sheet, problem)
    const name = names.get(where.line ?? where.stage ?? '')
    return html`<li class=${severity}>
      <span class="sign" aria-hidden="true">${signs[severity]}</span>
      <p><b>${severityWords[severity]}.</b> ${message}</p>
      <span class="do"
        >${offers.map(offer => html`<button @click=${() => this.#take(offer)}>${offer.label}</button>`)}${
          name ? html`<button @click=${() => this.#show(where)}>${remarkWords.show(name)}</button>` : nothing
        }</span
      >
    </li>`
  }

  #take({ edit }: Offer): void {
    const refusal = askEdit(this, edit)
    if (refusal) say(this, refusal)
    this.#isTaken = true
  }

  protected override updated(): void {
    if (!this.#isTaken) return
    this.#isTaken = false
    const heading = this.renderRoot.querySelector('h3')
    // What was taken up is told no more, and its button is gone.
    if (!this.shadowRoot?.activeElement) heading?.focus()
  }

  #show({ stage, line }: Place): void {
    wish(this, { want: 'find', ...(stage ? { stage } : {}), ...(line ? { line } : {}) })
  }

  static override styles = css`
    :host {
      display: block;
      margin-top: 24px;
    }
    h3 {
      font-size: var(--size-fine);
      font-weight: 600;
      letter-spacing: 0.02em;
      color: var(--ink-soft);
      margin: 0 0 4px;
    }
    p {
      margin: 0;
      overflow-wrap: anywhere;
    }
    ul {
      list-style: none;
      margin: 0;
      padding: 0;
    }
    li {
      --tone: var(--ink-soft);
      display: grid;
      grid-template-columns: 22px minmax(0, 1fr);
      padding: 8px 0;
      border-bottom: 1px solid var(--rule);
      font-size: var(--size-small);
    }
    li:last-child {
      border-bottom: 0;
    }
    .warning,
    .error {
      --tone: var(--warn);
    }
    .sign,
    b {
      color: var(--tone);
      font-weight: 650;
    }
    .sign {
      line-height: inherit;
    }
    .do {
      grid-column: 2;
      display: flex;
      flex-wrap: wrap;
      gap: 0 4px;
      margin-left: -10px;
    }
    .do:empty {
      display: none;
    }
    .more {
      margin-left: -10px;
    }
    button {
      padding: 2px 10px;
      min-height: max(28px, calc(var(--target) - 8px));
      color: var(--accent);
      text-decoration: underline;
      text-underline-offset: 3px;
    }
  `
}
customElements.define('tb-remarks', TbRemarks)

/** What the places of problems are called, by id. */
function namesOf({ stages }: Formula, problems: readonly Problem[]): ReadonlyMap<string, string> {
  const wanted = new Set(problems.map(({ where }) => where.line ?? where.stage))
  const names = new Map<string, string>()
  for (const { id, name, lines } of stages) {
    if (wanted.has(id)) names.set(id, name)
    for (const line of lines)
      if (wanted.has(line.id)) names.set(line.id, line.ingredient || remarkWords.someLine)
  }
  return names
}

declare global {
  interface HTMLElementTagNameMap {
    'tb-remarks': TbRemarks
  }
}
