import { css, html, nothing } from 'lit'
import '../../src/dough/cells/rare-cells-at-once.js'
import { finalDoughOf } from '../../src/dough/document/formula.js'
import type { ReadingName } from '../../src/dough/document/reading-names.js'
import { holdWords, isWeightReading } from '../../src/dough/document/words.js'
import { holdReading } from '../../src/dough/edits/edits.js'
import { naturalGiver } from '../../src/dough/edits/fetched/natural-giver.js'
import type { FigureSheet } from '../../src/dough/sheet/figures.js'
import { BaseElement } from '../base/base-element.js'
import { askEdit } from '../base/events.js'
import { gramDigits, type NumberStyle, percentDigits, showNumber } from '../base/numbers.js'
import { heldToType, readingUnit } from '../base/reading-shown.js'
import { readingInSentence, readingWords } from '../base/words.js'
import { readPart, readWeight } from '../typed/typed-numbers.js'
import { type Giver, giversOf } from './givers.js'
import { holdFormWords, noGiver, notAValue } from './hold-words.js'
import { heldAt } from './holds.js'

/** Asks at what value to hold a reading, and which line gives. Says `tb-done` when it is held or left. */
export class TbHold extends BaseElement {
  static override properties = {
    sheet: { attribute: false },
    version: { type: Number },
    reading: {},
    giver: { state: true },
    refusal: { state: true },
  }

  declare sheet: FigureSheet
  declare version: number // goes up when the sheet's figures changed
  declare reading: ReadingName
  declare giver: string // id of the line that is to give; '' until chosen
  declare refusal: string // why what was typed was not taken

  constructor() {
    super()
    this.version = 0
    this.giver = ''
    this.refusal = ''
  }

  override firstUpdated(): void {
    this.#field.value = this.#present
    this.#field.focus()
    this.#field.select()
    this.scrollIntoView({ block: 'nearest' })
  }

  override render() {
    const { reading, refusal } = this
    const unit = readingUnit(reading)
    const spoken = readingInSentence(reading)
    const givers = giversOf(this.sheet)
    const chosen = this.#chosen(givers)
    const lets = chosen && this.#letsGo(chosen)
    return html`<form
      aria-label=${holdFormWords.name(spoken)}
      novalidate
      @submit=${this.#hold}
      @keydown=${this.#key}
    >
      <p>
        <label for="value"
          >${holdFormWords.holdAt(spoken)}<span class="unseen"> ${holdFormWords.inUnit[unit]}</span></label
        >
        <span class="typed"
          ><input
            id="value"
            data-typed="hold ${reading}"
            .defaultValue=${this.#present}
            inputmode="decimal"
            enterkeyhint="done"
            autocomplete="off"
            size="6"
            aria-invalid=${refusal ? 'true' : nothing}
            aria-describedby=${refusal ? 'refusal' : nothing}
          /><span aria-hidden="true"> ${unit}</span></span
        >
      </p>
      ${refusal ? html`<p id="refusal" role="alert">${refusal}</p>` : nothing}
      <p>
        <select id="giver" aria-label=${holdFormWords.giverOf(readingWords[reading].name)} @change=${this.#choose}>
          ${givers.map(
            ({ line }) =>
              html`<option value=${line.id} ?selected=${line.id === chosen?.line.id}>${line.ingredient}</option>`,
          )}
        </select>
        <span aria-hidden="true">${holdFormWords.gives}</span>
      </p>
      ${lets ? html`<p class="lets">${lets}</p>` : nothing}
      <p class="do">
        <button class="main">${holdFormWords.hold}</button>
        <button type="button" @click=${this.#leave}>${holdFormWords.cancel}</button>
      </p>
    </form>`
  }

  get #field(): HTMLInputElement {
    return this.renderRoot.querySelector('input')!
  }

  /** What the field opens with: the value held, or the reading as it is shown. */
  get #present(): string {
    const { sheet, reading, numbers } = this
    const kept = heldAt(sheet, reading)
    if (kept) return heldToType(reading, kept.hold.value, numbers)
    const value = sheet.reading(reading)
    return value === undefined ? '' : readingToType(reading, value, numbers)
  }

  /** The line chosen, or the one that gives now, or the natural one, or the first that is free. */
  #chosen(givers: readonly Giver[]): Giver | undefined {
    const { sheet, reading } = this
    const ids = [
      this.giver,
      heldAt(sheet, reading)?.line.id,
      naturalGiver(sheet.formula, sheet.larder, reading)?.line,
    ]
    for (const id of ids) {
      const giver = givers.find(g => g.line.id === id)
      if (giver) return giver
    }
    return givers.find(g => !g.gives) ?? givers[0]
  }

  /** What else is let go when that line gives. */
  #letsGo({ line, gives }: Giver): string | undefined {
    if (!gives || gives.reading === this.reading) return undefined
    return holdFormWords.letsGo(line.ingredient, holdWords(gives, line.ingredient))
  }

  #choose = (event: Event): void => {
    this.giver = (event.target as HTMLSelectElement).value
  }

  #hold = (event: SubmitEvent): void => {
    event.preventDefault()
    const { sheet, reading, numbers } = this
    const { formula } = sheet
    const isPercent = readingUnit(reading) === '%'
    const typed = this.#field.value.trim()
    const read = isPercent ? readPart : readWeight
    const wanted = typed ? read(typed, numbers) : undefined
    const line = this.#chosen(giversOf(sheet))?.line
    if (wanted === undefined) return this.#refuse(notAValue(typed, readingUnit(reading)))
    if (!line) return this.#refuse(noGiver)
    const at = { formula: formula.id, stage: finalDoughOf(formula).id, line: line.id }
    const refusal = askEdit(this, workbook => holdReading(workbook, at, reading, wanted))
    if (refusal) this.#refuse(refusal)
    else this.#leave()
  }

  #refuse(sentence: string): void {
    this.refusal = sentence
    this.#field.focus()
    this.#field.select()
  }

  #key = (event: KeyboardEvent): void => {
    if (event.isComposing || event.key !== 'Escape') return
    event.preventDefault()
    event.stopPropagation()
    this.#leave()
  }

  #leave = (): void => {
    this.dispatchEvent(new CustomEvent('tb-done'))
  }

  static override styles = css`
    :host {
      display: block;
    }
    form {
      margin: 4px 0 8px;
      padding: 8px 0 6px 14px;
      border-left: 3px solid var(--accent);
    }
    p {
      margin: 0;
      display: flex;
      flex-wrap: wrap;
      align-items: baseline;
      gap: 4px 8px;
    }
    label {
      font-size: inherit;
      color: inherit;
    }
    .typed {
      white-space: nowrap;
      color: var(--ink-soft);
    }
    input {
      width: 3.8em;
      margin-right: 3px;
      padding: 0 4px;
      text-align: right;
      font-size: var(--size-figure);
      font-weight: 620;
      color: var(--ink);
      background: none;
      border: 0;
      border-bottom: 2px solid var(--ink);
      border-radius: 0;
    }
    input[aria-invalid] {
      border-bottom: 3px double var(--warn);
    }
    select {
      flex: 0 1 auto;
      min-width: 0;
      padding-inline: 6px;
    }
    .lets,
    #refusal {
      padding-top: 4px;
      font-size: var(--size-small);
      color: var(--ink-soft);
    }
    #refusal {
      color: var(--warn);
      padding-bottom: 6px;
    }
    p + p {
      padding-top: 8px;
    }
    .do {
      padding-top: 10px;
    }
    @media print {
      :host {
        display: none;
      }
    }
  `
}
customElements.define('tb-hold', TbHold)

/** A value as the baker would type it, rounded as the screen shows it: `70.5`, `1921`. */
function readingToType(name: ReadingName, value: number, style: NumberStyle): string {
  const isWeight = isWeightReading(name)
  const digits = isWeight ? gramDigits(value) : percentDigits(value)
  return showNumber(Number((isWeight ? value : value * 100).toFixed(digits)), style)
}

declare global {
  interface HTMLElementTagNameMap {
    'tb-hold': TbHold
  }
}
