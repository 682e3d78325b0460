import { html, nothing, type TemplateResult } from 'lit'
import { repeat } from 'lit/directives/repeat.js'
import { type StepPlan, stepsOf } from '../../src/day/method/stage-steps.js'
import { stepInLine } from '../../src/day/method/step-text.js'
import { isFed, stageOf } from '../../src/day/mixing/fed-build.js'
import { usualLeeway } from '../../src/dough/document/day.js'
import type { Stage, Step } from '../../src/dough/document/formula.js'
import {
  addStep,
  changeStep,
  moveStep,
  newStep,
  removeStep,
  type StepAt,
} from '../../src/dough/edits/fetched/method-edits.js'
import { askEdit, say, wish } from '../base/events.js'
import { FetchedElement } from '../base/late-elements.js'
import { Completion } from '../controls/completion.js'
import '../controls/tb-fold.js'
import '../controls/tb-menu.js'
import { feedingWords } from '../feeding/words.js'
import { lineStyles } from '../styles/line-styles.js'
import { methodStyles } from './method-styles.js'
import { StepDrag } from './step-drag.js'
import { dragHandle, plainField, putInto, type TextField, wordsField } from './step-fields.js'
import { kindWords, methodWords, tradeSteps, understood } from './words.js'

type Field = TextField | 'kind'
const tradeWords = Object.keys(tradeSteps)
const fresh = '' // in place of a step's id: the line on which the next is written

/** The steps of each stage, as lines to write on; beneath each what is understood of it. */
export class TbMethod extends FetchedElement {
  static override properties = {
    leeway: { attribute: false },
    unnamed: { state: true },
  }

  declare leeway: number | undefined // how far a wait of one time moves, a fraction of 1; undefined: as is usual
  readonly #words = new Completion(() => this.requestUpdate(), {
    label: methodWords.wordsToUse,
    most: 8,
    wordIn: ({ value }) => ({ text: value, from: 0 }),
  })
  readonly #drag = new StepDrag(this, (step, from, to) => void this.#move(step, to - from))

  declare unnamed: string // id of the stage whose new step has a time and no name yet

  constructor() {
    super()
    this.unnamed = ''
  }

  /** Brings the steps of a stage into view; the focus is in the first of them, or where one is written; or in what is said of the one that is named. */
  async goTo(stage: string, step?: string): Promise<void> {
    await this.updateComplete
    const said = step === undefined ? null : this.#input(stage, step, 'text')
    if (said) {
      said.scrollIntoView({ block: 'center' })
      return said.focus({ preventScroll: true })
    }
    const list = this.renderRoot.querySelector<HTMLElement>(`ol[data-stage="${CSS.escape(stage)}"]`)
    const isLong = (list?.offsetHeight ?? 0) > innerHeight / 2
    list?.previousElementSibling?.scrollIntoView({ block: isLong ? 'start' : 'center' })
    list?.querySelector<HTMLElement>('input, textarea')?.focus({ preventScroll: true })
  }

  override render() {
    const { sheet, readOnly } = this
    if (!sheet) return nothing
    const { stages } = sheet.formula
    const has = stages.some(s => s.method?.length)
    if (readOnly && !has) return nothing
    return html`<section aria-labelledby="heading">
      <h2 id="heading">${methodWords.heading}</h2>
      ${has ? nothing : html`<p class="hint">${methodWords.hint}</p>`}
      ${repeat(
        stages.filter(s => !readOnly || s.method?.length),
        s => s.id,
        s => this.#stage(s),
      )}
      <p class="bench"><a href="#bench/${sheet.formula.id}">${methodWords.bench}</a></p>
    </section>`
  }

  #stage(stage: Stage): TemplateResult {
    const steps = stepsOf(stage, this.leeway ?? usualLeeway)
    return html`<h3>${stage.name}</h3>
      <ol aria-label=${methodWords.of(stage.name)} data-stage=${stage.id} @focusout=${this.#left} @keydown=${this.#key}>
        ${repeat(
          steps,
          ({ step }) => step.id,
          (plan, at) => this.#step(stage, plan, at, steps.length),
        )}
        ${readOnlyLine(this.readOnly, () => this.#freshLine(stage))}
      </ol>
      ${this.readOnly || !isFed(stageOf(this.sheet!, stage.id)) ? nothing : this.#feeding(stage)}`
  }

  /** The seed that a build wants for a time; fetched when it is first opened. */
  #feeding(stage: Stage): TemplateResult {
    const { sheet, numbers, version } = this
    const inside = () => {
      void import('../feeding/tb-feeding.js')
      return html`<tb-feeding .builds=${[{ sheet: sheet!, stage: stage.id }]} .version=${version} .numbers=${numbers}></tb-feeding>`
    }
    return html`<div class="feeding"><tb-fold words=${feedingWords.feedFor} .of=${sheet!.formula.id} .inside=${inside}></tb-fold></div>`
  }

  #step(stage: Stage, plan: StepPlan, at: number, count: number): TemplateResult {
    const { step } = plan
    const name = methodWords.step(at + 1, step.does)
    const mark = this.#markOf(stage, at)
    const isDragged = this.#drag.dragged?.step === step.id
    return html`<li class=${`step ${mark}${isDragged ? ' dragged' : ''}`} data-step=${step.id} aria-label=${name}>
      ${this.readOnly || count < 2 ? nothing : dragHandle(step.does, this.#drag)}
      ${this.#field(stage.id, step, 'does', methodWords.does, '')}
      ${this.#kind(step)}
      ${this.#field(stage.id, step, 'text', methodWords.text, methodWords.textHint)}
      ${this.readOnly ? nothing : html`<tb-menu .label=${methodWords.actions(step.does)} .items=${this.#actions(stage, step, at, count)}></tb-menu>`}
      <p class="read">${this.#read(stage, plan)}</p>
      ${this.readOnly && !step.note ? nothing : this.#field(stage.id, step, 'note', methodWords.note, methodWords.noteHint)}
    </li>`
  }

  /** The line beneath the last step of a stage. */
  #freshLine(stage: Stage): TemplateResult {
    const step: Step = { id: fresh, does: '', kind: 'hands', text: '', note: '' }
    const mark = this.#markOf(stage, stage.method?.length ?? 0)
    return html`<li class=${`step new ${mark}`} data-step=${fresh} aria-label=${methodWords.newStep(stage.name)}>
      ${this.#field(stage.id, step, 'does', methodWords.does, methodWords.doesHint)}
      ${this.#field(stage.id, step, 'text', methodWords.text, methodWords.textHint)}
      ${this.unnamed === stage.id ? html`<p class="read wrong">${methodWords.withoutName}</p>` : nothing}
    </li>`
  }

  #field(stage: string, step: Step, field: TextField, label: string, hint: string): TemplateResult {
    const { readOnly } = this
    const of = `${stage} ${step.id}`
    if (field !== 'does' || readOnly)
      return plainField({ of, field, value: step[field], label, hint, readOnly })
    return wordsField({
      of,
      value: step.does,
      label,
      hint,
      all: tradeWords,
      words: this.#words,
      input: () => this.#input(stage, step.id, 'does'),
    })
  }

  /** Whether the step that is dragged would go before the place `at` of a stage's method. */
  #markOf({ method = [] }: Stage, at: number): string {
    const { step, from, to } = this.#drag.dragged ?? {}
    const isHere = to === at && to !== from && to !== from! + 1 && method.some(({ id }) => id === step)
    return isHere ? 'mark' : ''
  }

  #kind(step: Step): TemplateResult {
    if (this.readOnly) return html`<span class="kind">${kindWords[step.kind]}</span>`
    return html`<select class="kind" data-field="kind" aria-label=${methodWords.kind} @change=${this.#kindChosen}>
      ${Object.entries(kindWords).map(
        ([kind, words]) => html`<option value=${kind} ?selected=${step.kind === kind}>${words}</option>`,
      )}
    </select>`
  }

  /** What is understood of a step, and what is not. */
  #read(stage: Stage, { step, read, length, missing }: StepPlan): TemplateResult {
    const wrong = [
      ...(step.text.trim() === '' ? [methodWords.noTime] : read.notRead.map(methodWords.notRead)),
      ...missing.map(name => methodWords.noLine(name, stage.name)),
    ]
    const said = understood(read, length)
    return html`${said === step.text ? nothing : said}${wrong.map(words => html` <span class="wrong">${words}</span>`)}`
  }

  #actions(stage: Stage, step: Step, at: number, count: number) {
    const items = [{ label: methodWords.remove, run: () => void this.#remove(stage, step, at) }]
    if (at < count - 1) items.unshift({ label: methodWords.moveDown, run: () => void this.#move(step.id, 1) })
    if (at > 0) items.unshift({ label: methodWords.moveUp, run: () => void this.#move(step.id, -1) })
    return items
  }

  #place(step: string): { readonly at: StepAt; readonly stage: Stage; readonly step: Step } | undefined {
    const { formula } = this.sheet!
    for (const stage of formula.stages) {
      const found = stage.method?.find(s => s.id === step)
      if (found) return { at: { formula: formula.id, stage: stage.id, step }, stage, step: found }
    }
    return undefined
  }

  #input(stage: string, step: string, field: Field): HTMLInputElement | null {
    return this.renderRoot.querySelector(
      `ol[data-stage="${CSS.escape(stage)}"] li[data-step="${CSS.escape(step)}"] [data-field=${field}]`,
    )
  }

  /** Where a field stands: its stage, its step and which it is. */
  #where(target: EventTarget | null) {
    if (!(target instanceof HTMLElement) || !target.dataset.field) return undefined
    const stage = target.closest('ol')?.dataset.stage ?? ''
    const step = target.closest('li')?.dataset.step ?? ''
    return { stage, step, field: target.dataset.field as Field, input: target as HTMLInputElement }
  }

  // What is typed is kept on the way out; of a new step when its whole line is left.
  #left = (event: FocusEvent): void => {
    if (!document.hasFocus()) return // the window alone has lost it
    const from = this.#where(event.target)
    const to = this.#where(event.relatedTarget)
    this.#words.close()
    if (!from || from.field === 'kind') return
    if (from.field === 'does') this.#part(from.stage, from.step)
    if (from.step === fresh && to?.step === fresh && to.stage === from.stage) return
    this.#keep(from.stage, from.step, from.field)
  }

  #kindChosen = (event: Event): void => {
    const from = this.#where(event.target)
    const found = from && this.#place(from.step)
    if (!found) return
    const kind = (event.target as HTMLSelectElement).value as Step['kind']
    this.#ask(workbook => changeStep(workbook, found.at, { kind }))
  }

  /** A whole step typed as what is done goes into both fields: what it says of its time where that is typed. */
  #part(stage: string, step: string): void {
    const [does, text] = [this.#input(stage, step, 'does'), this.#input(stage, step, 'text')]
    const parts = does && text?.value.trim() === '' ? stepInLine(does.value) : undefined
    if (!parts) return
    putInto(does!, parts.does)
    putInto(text!, parts.text)
    const found = this.#place(step)
    if (found) this.#ask(workbook => changeStep(workbook, found.at, parts))
  }

  /** Keeps what a field holds; false where a new step is left without what is done. */
  #keep(stage: string, step: string, field: TextField): boolean {
    if (this.readOnly || !this.sheet) return true
    if (step === fresh) return this.#add(stage)
    const found = this.#place(step)
    const value = this.#input(stage, step, field)?.value.replace(/\s+/g, ' ').trim()
    if (!found || value === undefined) return true
    this.#ask(workbook => changeStep(workbook, found.at, { [field]: value }))
    return true
  }

  #add(stage: string): boolean {
    const [does, text] = [this.#input(stage, fresh, 'does')!, this.#input(stage, fresh, 'text')!]
    const name = does.value.trim()
    this.unnamed = !name && text.value.trim() ? stage : ''
    if (!name) return !this.unnamed
    const known = tradeWords.find(word => word.toLowerCase() === name.toLowerCase())
    const step = newStep(name, known ? tradeSteps[known]! : 'hands', text.value.trim())
    const at = { formula: this.sheet!.formula.id, stage }
    if (!this.#ask(workbook => addStep(workbook, at, step))) return false
    for (const field of [does, text]) putInto(field, '')
    say(this, methodWords.added(name))
    return true
  }

  #key = (event: KeyboardEvent): void => {
    if (event.isComposing || event.keyCode === 229) return // Safari: Enter that ends a composition
    const from = this.#where(event.target)
    if (!from || from.field === 'kind') return
    const { stage, step, field, input } = from
    if (field === 'does' && this.#wordKey(event, `${stage} ${step}`, input)) {
      event.preventDefault()
      event.stopPropagation()
    } else if (event.altKey && (event.key === 'ArrowUp' || event.key === 'ArrowDown')) {
      event.preventDefault()
      if (step !== fresh) void this.#move(step, event.key === 'ArrowUp' ? -1 : 1, field)
    } else if (event.key === 'Enter') {
      event.preventDefault()
      void this.#enter(stage, step, field)
    } else if (event.key === 'Escape') {
      const kept = this.#place(step)?.step[field] ?? ''
      if (input.value === kept) return wish(this, { want: 'find', stage })
      event.preventDefault()
      event.stopPropagation()
      putInto(input, kept)
    }
  }

  /** Keys of the list of words; down in an empty field opens it. */
  #wordKey(event: KeyboardEvent, of: string, input: HTMLInputElement): boolean {
    if (event.altKey || this.readOnly) return false
    if (this.#words.key(event, input)) {
      void this.updateComplete.then(() =>
        this.renderRoot.querySelector('.names [aria-selected=true]')?.scrollIntoView({ block: 'nearest' }),
      )
      return event.key !== 'Tab'
    }
    if (event.key !== 'ArrowDown' || input.value !== '') return false
    this.#words.offer(of, tradeWords)
    return this.#words.key(event, input)
  }

  /** Goes on from what is done to its time, from there to the next step. */
  async #enter(stage: string, step: string, field: TextField): Promise<void> {
    if (field === 'does') {
      this.#part(stage, step)
      if (step !== fresh) this.#keep(stage, step, field)
      return this.#input(stage, step, 'text')?.focus()
    }
    if (!this.#keep(stage, step, field)) return this.#input(stage, fresh, 'does')?.focus()
    await this.updateComplete
    const steps = this.sheet!.formula.stages.find(s => s.id === stage)?.method ?? []
    const next = step === fresh ? fresh : (steps[steps.findIndex(s => s.id === step) + 1]?.id ?? fresh)
    this.#input(stage, next, 'does')?.focus()
  }

  async #move(step: string, by: number, field: Field = 'does'): Promise<void> {
    const found = this.#place(step)
    if (!found) return
    this.#keep(found.stage.id, step, field === 'kind' ? 'does' : field)
    if (!this.#ask(workbook => moveStep(workbook, found.at, by))) return
    await this.updateComplete
    const method = this.#place(step)?.stage.method ?? []
    const at = method.findIndex(s => s.id === step)
    say(this, methodWords.moved(found.step.does, at + 1, method.length, method[at - 1]?.does))
    this.#input(found.stage.id, step, field)?.focus()
  }

  async #remove(stage: Stage, step: Step, at: number): Promise<void> {
    const place = { formula: this.sheet!.formula.id, stage: stage.id, step: step.id }
    if (!this.#ask(workbook => removeStep(workbook, place))) return
    say(this, methodWords.removed(step.does))
    await this.updateComplete
    const now = this.sheet!.formula.stages.find(s => s.id === stage.id)?.method ?? []
    this.#input(stage.id, now[at]?.id ?? fresh, 'does')?.focus()
  }

  /** Asks for an edit; false when it was refused, which is then said. */
  #ask(edit: Parameters<typeof askEdit>[1]): boolean {
    const refusal = askEdit(this, edit)
    if (refusal) say(this, refusal)
    return !refusal
  }

  static override styles = [lineStyles, methodStyles]
}
customElements.define('tb-method', TbMethod)

const readOnlyLine = (readOnly: boolean, line: () => TemplateResult) => (readOnly ? nothing : line())

declare global {
  interface HTMLElementTagNameMap {
    'tb-method': TbMethod
  }
}
