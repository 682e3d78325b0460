import '../../src/dough/amounts/spoken-at-once.js'
import { html, nothing, type TemplateResult } from 'lit'
import { repeat } from 'lit/directives/repeat.js'
import {
  jottingAsKept,
  jottingNameAsKept,
  jottingNameProblem,
} from '../../src/dough/amounts/jotting-names.js'
import { type Jotting, newId } from '../../src/dough/document/formula.js'
import { putJotting, removeJotting } from '../../src/dough/edits/fetched/jotting-edits.js'
import type { JottingFigures } from '../../src/dough/sheet/figures.js'
import { nameFor } from '../../src/engine/index.js'
import { askEdit, say, wish } from '../base/events.js'
import { FetchedElement } from '../base/late-elements.js'
import { asTheyWrite } from '../base/numbers.js'
import { Completion } from '../controls/completion.js'
import { nameAt } from '../grid/editing/amount-names.js'
import { lineStyles } from '../styles/line-styles.js'
import { jottingFields, jottingHint } from './jotting-fields.js'
import { jottingStyles } from './jotting-styles.js'
import { emptyLineWords, jottingWords } from './words.js'

type Field = 'name' | 'text'
const fresh = '' // in place of a jotting's id: the line on which the next is written

interface Fault {
  readonly of: string // id of the jotting
  readonly in: Field
  readonly words: string
}

/** The baker's own named calculations, each a line to write on: name = calculation, and what it comes to. */
export class TbJottings extends FetchedElement {
  static override properties = {
    fault: { state: true },
  }

  declare fault: Fault | undefined // why what was typed last is not kept
  readonly #completion = new Completion(() => this.requestUpdate(), {
    label: jottingWords.namesToUse,
    most: 8,
    wordIn: ({ value, selectionStart }) => nameAt(value, selectionStart ?? value.length),
  })
  #formula = '' // whose jottings are shown

  constructor() {
    super()
    this.fault = undefined
  }

  get #jottings(): readonly Jotting[] {
    return this.sheet?.formula.jottings ?? []
  }

  protected override willUpdate(): void {
    const { id = '' } = this.sheet?.formula ?? {}
    if (id === this.#formula) return
    this.#formula = id
    this.fault = undefined
    for (const field of ['name', 'text'] as const) {
      const input = this.#input(fresh, field)
      if (input) input.value = ''
    }
  }

  override render() {
    const { sheet, readOnly } = this
    const jottings = this.#jottings
    if (!sheet || (readOnly && !jottings.length)) return nothing
    return html`<section aria-labelledby="heading" @focusout=${this.#left}>
      <h2 id="heading">${jottingWords.jottings}</h2>
      ${jottingHint(sheet.formula, readOnly)}
      <ul>
        ${repeat(
          jottings,
          j => j.id,
          j => this.#jotting(j, sheet.jotting(j.id)),
        )}
        ${readOnly ? nothing : html`<li class="jotting new">${this.#fields(fresh, '', '')}${this.#error(fresh, '')}</li>`}
      </ul>
    </section>`
  }

  #jotting(jotting: Jotting, figures: JottingFigures): TemplateResult {
    const { id, name, text } = jotting
    return html`<li class="jotting">
      ${this.#fields(id, name, asTheyWrite(text, this.numbers), figures.value === undefined)}
      ${this.#value(jotting, figures)}
      ${
        this.readOnly
          ? nothing
          : html`<button class="remove" aria-label=${jottingWords.removeThis(name)} title=${jottingWords.remove} @click=${() => this.#remove(jotting)}>
              <svg viewBox="0 0 16 16" aria-hidden="true"><path d="M3 3l10 10M13 3L3 13" /></svg>
            </button>`
      }
      ${this.#error(id, figures.problem?.message ?? '')}
    </li>`
  }

  #value({ id, name }: Jotting, { value, said, measures }: JottingFigures): TemplateResult {
    if (value === undefined) return html`<span class="value quiet">${said}</span>`
    const isNumber = measures === 'number'
    const number = isNumber ? html` <small>${jottingWords.number}</small>` : nothing
    return html`<button
      class="value"
      aria-label=${jottingWords[isNumber ? 'showWorkingOfNumber' : 'showWorking'](name, said)}
      @click=${() => wish(this, { want: 'working', cell: `jotting ${id}` })}
    ><span class="said">${said.replace(' ', '\u00a0')}</span>${number}</button>`
  }

  #fields(id: string, name: string, text: string, hasNone = false): TemplateResult {
    const faulty = (field: Field) => this.fault?.of === id && this.fault.in === field
    return jottingFields({
      id,
      name,
      text,
      readOnly: this.readOnly,
      nameFaulty: faulty('name'),
      textFaulty: faulty('text') || hasNone,
      hints: emptyLineWords[this.#jottings.length ? 'next' : 'first'],
      completion: this.#completion,
      field: () => this.#input(id, 'text'),
      typedName: this.#typedName,
      typedText: this.#typedText,
      key: this.#key,
    })
  }

  #error(id: string, problem: string): TemplateResult {
    const { fault } = this
    return html`<p class="error" id=${`error-${id}`}>${fault?.of === id ? fault.words : problem}</p>`
  }

  #input(id: string, field: Field): HTMLInputElement | null {
    return this.renderRoot?.querySelector(`input[data-of="${CSS.escape(id)}"][data-field=${field}]`) ?? null
  }

  /** `tin = 21*11` typed or pasted into the name is both: what follows the sign goes where it belongs. */
  #typedName = (event: InputEvent): void => {
    const input = event.target as HTMLInputElement
    const at = input.value.indexOf('=')
    if (at < 0 || event.isComposing) return
    const text = this.#input(input.dataset.of!, 'text')!
    const rest = input.value.slice(at + 1).trim()
    input.value = input.value.slice(0, at).trim()
    text.focus() // at once, so that the next key goes there
    if (!rest) return text.select()
    text.value = rest
    text.setSelectionRange(rest.length, rest.length)
  }

  #typedText = (event: Event): void => {
    const input = event.target as HTMLInputElement
    const id = input.dataset.of!
    const own = nameFor(this.#jottings.find(j => j.id === id)?.name ?? '')
    const names = this.sheet!.usableNames.filter(name => name !== own)
    this.#completion.look(input, id, names)
  }

  #key = (event: KeyboardEvent): void => {
    if (event.isComposing || event.keyCode === 229) return // Safari: Enter that ends a composition
    const input = event.target as HTMLInputElement
    const [id, field] = [input.dataset.of!, input.dataset.field as Field]
    if (field === 'text' && this.#completion.key(event, input)) {
      event.preventDefault()
      event.stopPropagation()
    } else if (event.key === 'Enter') {
      event.preventDefault()
      this.#enter(id, field)
    } else if (event.key === 'Escape' && this.#cancel(id, input)) {
      event.preventDefault()
      event.stopPropagation()
    } else if (event.key === 'ArrowDown') this.#move(id, field, 1)
    else if (event.key === 'ArrowUp') this.#move(id, field, -1)
  }

  /** Keeps what is typed and goes on: from the name to the calculation, from there to the next line. */
  #enter(id: string, field: Field): void {
    if (field === 'name') {
      if (this.#keep(id, 'name')) this.#input(id, 'text')?.focus()
      return
    }
    if (!this.#keep(id, 'text')) {
      if (this.fault?.in === 'name') this.#input(id, 'name')?.focus()
      return
    }
    const next = this.#jottings[this.#jottings.findIndex(j => j.id === id) + 1]?.id ?? fresh
    this.#input(id === fresh ? fresh : next, 'name')?.focus()
  }

  #move(id: string, field: Field, by: 1 | -1): void {
    const lines = [...this.#jottings.map(j => j.id), ...(this.readOnly ? [] : [fresh])]
    const to = lines[lines.indexOf(id) + by]
    if (to !== undefined) this.#input(to, field)?.focus()
  }

  /** Puts back what is kept; false when nothing else was typed. */
  #cancel(id: string, input: HTMLInputElement): boolean {
    const jotting = this.#jottings.find(j => j.id === id)
    const kept = jotting ? this.#shown(jotting, input.dataset.field as Field) : ''
    const isFaulty = this.fault?.of === id
    if (isFaulty) this.fault = undefined
    if (input.value === kept) return isFaulty
    input.value = kept
    return true
  }

  #shown = (jotting: Jotting, field: Field): string =>
    field === 'name' ? jotting.name : asTheyWrite(jotting.text, this.numbers)

  // What is typed is kept on the way out, of a line to be added when the whole line is left.
  #left = (event: FocusEvent): void => {
    const input = event.target
    if (!(input instanceof HTMLInputElement) || !document.hasFocus()) return // the window alone has lost it
    const [id, field] = [input.dataset.of!, input.dataset.field as Field]
    this.#completion.close()
    const to = event.relatedTarget
    if (id === fresh && to instanceof HTMLElement && to.dataset.of === fresh) return
    this.#keep(id, field)
  }

  /** Keeps what a field holds; false when it cannot be, which is then said beneath. */
  #keep(id: string, field: Field): boolean {
    if (this.readOnly || !this.sheet) return true
    this.#completion.close()
    if (id === fresh) return this.#add(field)
    const jotting = this.#jottings.find(j => j.id === id)
    const input = this.#input(id, field)
    if (!jotting || !input) return true
    const changed: Jotting =
      field === 'name'
        ? { ...jotting, name: jottingNameAsKept(input.value) }
        : { ...jotting, text: jottingAsKept(input.value, this.numbers.decimal) }
    const isSame = changed.name === jotting.name && changed.text === jotting.text
    const formula = this.sheet.formula.id
    const refusal = isSame ? undefined : askEdit(this, workbook => putJotting(workbook, formula, changed))
    if (refusal) this.fault = { of: id, in: field, words: refusal }
    else {
      if (this.fault?.of === id) this.fault = undefined
      input.value = this.#shown(changed, field)
    }
    return !refusal
  }

  /** Adds the line being written once it has a name and a calculation; true as well while it has only one yet. */
  #add(left: Field): boolean {
    const [name, text] = [this.#input(fresh, 'name')!, this.#input(fresh, 'text')!]
    const typed = {
      name: jottingNameAsKept(name.value),
      text: jottingAsKept(text.value, this.numbers.decimal),
    }
    const { formula } = this.sheet!
    this.fault = undefined
    if (!name.value.trim() && !text.value.trim()) return true
    const problem = name.value.trim() || left === 'text' ? jottingNameProblem(name.value, formula) : undefined
    const jotting: Jotting = { id: newId(), ...typed }
    const refusal =
      problem?.message ??
      (typed.text ? askEdit(this, workbook => putJotting(workbook, formula.id, jotting)) : undefined)
    if (refusal) {
      this.fault = { of: fresh, in: 'name', words: refusal }
      return false
    }
    if (typed.text) for (const field of [name, text]) field.value = ''
    return true
  }

  async #remove(jotting: Jotting): Promise<void> {
    const formula = this.sheet!.formula.id
    const at = this.#jottings.indexOf(jotting)
    const refusal = askEdit(this, workbook => removeJotting(workbook, formula, jotting.id))
    if (refusal) return say(this, refusal)
    if (this.fault?.of === jotting.id) this.fault = undefined
    await this.updateComplete
    this.#input(this.#jottings[at]?.id ?? fresh, 'name')?.focus()
  }

  static override styles = [lineStyles, jottingStyles]
}
customElements.define('tb-jottings', TbJottings)

declare global {
  interface HTMLElementTagNameMap {
    'tb-jottings': TbJottings
  }
}
