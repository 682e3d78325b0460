import { html, LitElement, nothing, type TemplateResult } from 'lit'
import { repeat } from 'lit/directives/repeat.js'
import { readStep } from '../../../src/day/method/step-text.js'
import type { Formula, Step } from '../../../src/dough/document/formula.js'
import type { RecipeStep } from '../../../src/exchange/index.js'
import { kindWords, methodWords } from '../../method/words.js'
import { sharedStyles } from '../../styles/shared-styles.js'
import { isStepOpen, methodShown, type RecipeSaid, type StepSaid, type StepsSaid } from './recipe-draft.js'
import { recipeStyles, stepStyles } from './recipe-styles.js'
import { lineWords, stepWords } from './words.js'

const shown = 300

/** The steps read from a recipe's method, each beside its words, to be looked at and mended before they are added. */
export class TbRecipeSteps extends LitElement {
  static override properties = {
    formula: { attribute: false },
    steps: { attribute: false },
    said: { attribute: false },
    lines: { attribute: false },
  }

  declare formula: Formula // as read
  declare steps: readonly RecipeStep[]
  declare said: StepsSaid
  declare lines: RecipeSaid // what was said of the lines, by whose names steps add them

  #tell(said: StepsSaid): void {
    this.dispatchEvent(new CustomEvent('tb-steps-said', { detail: said }))
  }

  #say(id: string, what: StepSaid): void {
    this.#tell(new Map(this.said).set(id, { ...this.said.get(id), ...what }))
  }

  get #open(): readonly RecipeStep[] {
    return this.steps.filter(step => isStepOpen(step, this.said))
  }

  #confirm({ stepId }: RecipeStep): void {
    const open = this.#open
    const at = open.findIndex(other => other.stepId === stepId)
    const next = open[at + 1] ?? open[at - 1]
    this.#say(stepId, { isRight: true })
    this.#focus(next ? `yes-${next.stepId}` : 'steps')
  }

  #confirmAll = (): void => {
    const said = new Map(this.said)
    for (const { stepId } of this.#open) said.set(stepId, { ...said.get(stepId), isRight: true })
    this.#tell(said)
    this.#focus('steps')
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
    const read = new Map(this.steps.map(step => [step.stepId, step]))
    const stages = this.formula.stages.filter(({ method }) => method?.length)
    return html`<section aria-labelledby="steps">
      <div class="state">
        <h3 id="steps" tabindex="-1">${stepWords.heading(this.steps.length)}</h3>
        ${open > 1 ? html`<button class="lined" @click=${this.#confirmAll}>${stepWords.allIsRight}</button>` : nothing}
      </div>
      <p class="quiet">${open > 0 ? html`<b>${stepWords.guessed(open)}</b> ` : nothing}${stepWords.otherwise}</p>
      ${stages.map(
        stage => html`<h4>${stage.name}</h4>
          <ol>
            ${repeat(
              methodShown(stage, this.said, this.lines).slice(0, shown),
              step => step.id,
              (step, at) => this.#step(step, stage.method![at]!, read.get(step.id)),
            )}
          </ol>
          ${stage.method!.length > shown ? html`<p class="quiet">${stepWords.more(stage.method!.length - shown)}</p>` : nothing}`,
      )}
    </section>`
  }

  #step(step: Step, asRead: Step, read: RecipeStep | undefined): TemplateResult {
    const { id, does, kind, text } = step
    const { isOut = false, isRight = false } = this.said.get(id) ?? {}
    const wrong = readStep(text).notRead.map(methodWords.notRead)
    const typed = (event: Event) => (event.target as HTMLInputElement).value.trim()
    return html`<li class=${isOut ? 'out' : ''}>
      <p class="source">${read ? html`“${read.source}” <small>${lineWords.row(read.row)}</small>` : nothing}</p>
      <input
        class="does"
        aria-label=${stepWords.doesOf(asRead.does)}
        autocomplete="off"
        ?disabled=${isOut}
        .value=${does}
        @change=${(e: Event) => this.#say(id, { does: typed(e) || asRead.does, isRight: true })}
      />
      <select
        aria-label=${stepWords.kindOf(does)}
        ?disabled=${isOut}
        @change=${(e: Event) => this.#say(id, { kind: (e.target as HTMLSelectElement).value as Step['kind'], isRight: true })}
      >
        ${Object.entries(kindWords).map(([name, words]) => html`<option value=${name} ?selected=${name === kind}>${words}</option>`)}
      </select>
      <input
        class="text"
        aria-label=${stepWords.textOf(does)}
        placeholder=${stepWords.noTime}
        autocomplete="off"
        ?disabled=${isOut}
        .value=${text}
        @change=${(e: Event) => this.#say(id, { text: typed(e), isRight: true })}
      />
      <button
        class="out"
        id="out-${id}"
        aria-label=${isOut ? lineWords.putBackThis(does) : lineWords.leaveOutThis(does)}
        @click=${() => this.#leaveOut(id, !isOut)}
      >
        ${isOut ? lineWords.putBack : lineWords.leaveOut}
      </button>
      ${wrong.length > 0 && !isOut ? html`<p class="note wrong">${wrong.join(' ')}</p>` : nothing}
      ${read && read.guesses.length > 0 && !isOut ? this.#guesses(read, does, isRight) : nothing}
    </li>`
  }

  #guesses(read: RecipeStep, does: string, isRight: boolean): TemplateResult {
    if (isRight) return html`<p class="right">${lineWords.rightAsSaid}</p>`
    return html`<div class="guess">
      <p><b>${lineWords.guessed}</b> ${read.guesses.map(({ message }) => message).join(' ')}</p>
      <button
        class="lined"
        id="yes-${read.stepId}"
        aria-label=${lineWords.isRightThis(does)}
        @click=${() => this.#confirm(read)}
      >
        ${lineWords.isRight}
      </button>
    </div>`
  }

  static override styles = [sharedStyles, recipeStyles, stepStyles]
}
customElements.define('tb-recipe-steps', TbRecipeSteps)

declare global {
  interface HTMLElementTagNameMap {
    'tb-recipe-steps': TbRecipeSteps
  }
}
