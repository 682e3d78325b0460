import { html, LitElement, nothing, type TemplateResult } from 'lit'
import { repeat } from 'lit/directives/repeat.js'
import { amountAsKept } from '../../../src/dough/amounts/amounts.js'
import '../../../src/dough/amounts/spoken-at-once.js'
import type { Formula, Line } from '../../../src/dough/document/formula.js'
import type { RecipeLine } from '../../../src/exchange/index.js'
import type { NumberStyle } from '../../base/numbers.js'
import { asTheyWrite } from '../../base/numbers.js'
import { sharedStyles } from '../../styles/shared-styles.js'
import { isOpen, type LineSaid, needsAmount, type RecipeSaid } from './recipe-draft.js'
import { recipeStyles } from './recipe-styles.js'
import { lineWords, recipeWords, stateWords } from './words.js'

const linesShown = 300

/** A row without the sign that makes it one of a list. */
const bare = (row: string): string => row.trim().replace(/^[-*•–]\s+/, '')

/** The lines read from a recipe, each beside the text it comes from, to be looked at and changed before they are added. */
export class TbRecipeLines extends LitElement {
  static override properties = {
    formula: { attribute: false },
    lines: { attribute: false },
    said: { attribute: false },
    name: { attribute: false },
    numbers: { attribute: false },
  }

  declare formula: Formula // as read
  declare lines: readonly RecipeLine[]
  declare said: RecipeSaid
  declare name: string // it will have
  declare numbers: NumberStyle

  #tell(said: RecipeSaid): void {
    this.dispatchEvent(new CustomEvent('tb-said', { detail: said }))
  }

  #say(id: string, what: LineSaid): void {
    this.#tell(new Map(this.said).set(id, { ...this.said.get(id), ...what }))
  }

  get #open(): readonly RecipeLine[] {
    return this.lines.filter(line => isOpen(line, this.said))
  }

  get #needy(): readonly RecipeLine[] {
    return this.lines.filter(line => needsAmount(line, this.said))
  }

  /** A line without an amount stays as it is, and is asked for one. */
  #confirm(line: RecipeLine): void {
    const { id } = line
    if (needsAmount(line, this.said)) return this.#focus(`amount-${id}`)
    const open = this.#open
    const at = open.findIndex(other => other.id === id)
    const next = open[at + 1] ?? open[at - 1]
    this.#say(id, { isRight: true })
    this.#focus(next ? `yes-${next.id}` : 'state')
  }

  #confirmAll = (): void => {
    const said = new Map(this.said)
    const needy = this.#needy
    for (const line of this.#open)
      if (!needy.includes(line)) said.set(line.id, { ...said.get(line.id), isRight: true })
    this.#tell(said)
    this.#focus(needy.length > 0 ? `amount-${needy[0]!.id}` : 'state')
  }

  #leaveOut(id: string, isOut: boolean): void {
    this.#say(id, { isOut })
    this.#focus(`out-${id}`)
  }

  /** What had the focus is gone by then. */
  #focus(id: string): void {
    void this.updateComplete.then(async () => {
      await this.updateComplete
      this.renderRoot.querySelector<HTMLElement>(`[id="${id}"]`)?.focus()
    })
  }

  override render() {
    const open = this.#open.length
    const needy = this.#needy.length
    const read = new Map(this.lines.map(line => [line.id, line]))
    return html`
      <div class="state">
        <p id="state" tabindex="-1">
          ${this.#state(open - needy, needy)}
        </p>
        ${open > 1 ? html`<button class="lined" @click=${this.#confirmAll}>${stateWords.allIsRight}</button>` : nothing}
      </div>
      <div class="name">
        <label for="name">${recipeWords.breadName}</label>
        <input
          id="name"
          autocomplete="off"
          .value=${this.name}
          @change=${(e: Event) => {
            const { value } = e.target as HTMLInputElement
            this.dispatchEvent(new CustomEvent('tb-named', { detail: value.trim() }))
          }}
        />
      </div>
      ${this.formula.stages.map(
        stage => html`<h3>${stage.name}</h3>
          <ul>
            ${repeat(
              stage.lines.slice(0, linesShown),
              line => line.id,
              line => this.#line(line, read.get(line.id)),
            )}
          </ul>
          ${
            stage.lines.length > linesShown
              ? html`<p class="quiet">${recipeWords.more(stage.lines.length - linesShown)}</p>`
              : nothing
          }`,
      )}
    `
  }

  #state(guessed: number, needy: number): TemplateResult | string {
    if (guessed + needy === 0) return stateWords.nothing
    return html`${
      guessed > 0 ? html`<b>${stateWords.guessed(guessed)}</b> ${stateWords.guessedHow} ` : nothing
    }${
      needy > 0 ? html`<b>${stateWords.needs(needy)}</b> ${stateWords.needsHow} ` : nothing
    }${stateWords.otherwise}`
  }

  #line(line: Line, read: RecipeLine | undefined): TemplateResult {
    const {
      ingredient = line.ingredient,
      amount = line.amount,
      isOut,
      isRight,
    } = this.said.get(line.id) ?? {}
    const { decimal } = this.numbers
    const needs = read !== undefined && needsAmount(read, this.said)
    return html`<li class=${isOut ? 'out' : ''}>
      <p class="source">${read ? html`“${bare(read.source)}” <small>${lineWords.row(read.row)}</small>` : nothing}</p>
        <input
          aria-label=${lineWords.ingredientOf(line.ingredient)}
          autocomplete="off"
          ?disabled=${isOut === true}
          .value=${ingredient}
          @change=${(e: Event) => {
            const typed = (e.target as HTMLInputElement).value.trim()
            this.#say(line.id, { ingredient: typed || line.ingredient, isRight: true })
          }}
        />
        <input
          class="amount"
          id="amount-${line.id}"
          aria-describedby=${needs ? `why-${line.id} state` : nothing}
          aria-label=${lineWords.amountOf(ingredient)}
          autocomplete="off"
          placeholder=${lineWords.noAmount}
          ?disabled=${isOut === true}
          .value=${asTheyWrite(amount, this.numbers)}
          @change=${(e: Event) => {
            const typed = (e.target as HTMLInputElement).value
            this.#say(line.id, { amount: amountAsKept(typed, 'weight', decimal), isRight: true })
          }}
        />
        <button
          class="out"
          id="out-${line.id}"
          aria-label=${isOut ? lineWords.putBackThis(ingredient) : lineWords.leaveOutThis(ingredient)}
          @click=${() => this.#leaveOut(line.id, !isOut)}
        >
          ${isOut ? lineWords.putBack : lineWords.leaveOut}
        </button>
      ${line.note ? html`<p class="note">${lineWords.note(line.note)}</p>` : nothing}
      ${read && read.said.length > 0 ? html`<p class="note">${read.said.map(({ message }) => message).join(' ')}</p>` : nothing}
      ${read && !isOut ? this.#guesses(read, ingredient, isRight === true) : nothing}
    </li>`
  }

  #guesses(read: RecipeLine, ingredient: string, isRight: boolean): TemplateResult | typeof nothing {
    const { id, guesses } = read
    if (!isOpen(read, this.said))
      return isRight && guesses.length > 0 ? html`<p class="right">${lineWords.rightAsSaid}</p>` : nothing
    const needs = needsAmount(read, this.said)
    const why =
      guesses.length > 0 ? guesses.map(({ message }) => message) : [lineWords.typeAmount(ingredient)]
    return html`<div class="guess">
      <p id="why-${id}"><b>${needs ? lineWords.needsAmount : lineWords.guessed}</b> ${why.join(' ')}</p>
      <button
        class="lined"
        id="yes-${id}"
        aria-label=${lineWords.isRightThis(ingredient)}
        @click=${() => this.#confirm(read)}
      >
        ${lineWords.isRight}
      </button>
    </div>`
  }

  static override styles = [sharedStyles, recipeStyles]
}
customElements.define('tb-recipe-lines', TbRecipeLines)

declare global {
  interface HTMLElementTagNameMap {
    'tb-recipe-lines': TbRecipeLines
  }
}
