import { css, html, nothing } from 'lit'
import '../../src/dough/cells/rare-cells-at-once.js'
import { finalDoughOf } from '../../src/dough/document/formula.js'
import { type ReadingName, readingNames } from '../../src/dough/document/reading-names.js'
import { holdWords, isWeightReading } from '../../src/dough/document/words.js'
import { applyChanges, emptyWorkbook } from '../../src/dough/document/workbook.js'
import { holdReading, releaseHold } from '../../src/dough/edits/edits.js'
import { naturalGiver } from '../../src/dough/edits/fetched/natural-giver.js'
import { outOfReach } from '../../src/dough/remarks/reach.js'
import { outOfReachSaid } from '../../src/dough/remarks/remarks.js'
import type { FigureSheet } from '../../src/dough/sheet/figures.js'
import { BaseElement, type SheetElement } from '../base/base-element.js'
import { askEdit, type Edit, wish } from '../base/events.js'
import { gramDigits, type NumberStyle, percentDigits, showNumber } from '../base/numbers.js'
import { heldToType, readingUnit } from '../base/reading-shown.js'
import { readingInSentence, readingWords } from '../base/words.js'
import { readPart, readWeight } from '../typed/typed-numbers.js'
import type { Asked } from '../working/open-working.js'
import { type Giver, giversOf } from './givers.js'
import { holdFormWords, noGiver, notAValue } from './hold-words.js'
import { canGive, heldAt } from './holds.js'

/** An element in which a reading's number can be opened. */
type Tally = SheetElement & {
  asked: Asked | undefined // the working that is open
  holding: ReadingName | undefined // the number that is typed over
}

/** A figure that is typed on a number of a tally, or a second click on it, opens the number to be typed over. */
export function typeOver(tally: Tally): void {
  const open = (event: Event) => {
    const reading = readingAt(event.target as Element, event.type === 'keydown')
    if (!reading || tally.readOnly || !tally.sheet || !canGive(tally.sheet)) return
    if (tally.asked?.cell === reading) wish(tally, { want: 'close-working' })
    tally.holding = reading
  }
  /** The reading whose number it is; `typed`: also where its working has taken the focus from it. */
  const readingAt = (target: Element, typed: boolean): ReadingName | undefined => {
    const { reading } = target.closest<HTMLElement>('.how')?.dataset ?? {}
    const cell = typed && target.localName === 'tb-working' ? tally.asked?.cell : undefined
    return readingNames.find(name => name === (reading ?? cell))
  }
  tally.renderRoot.addEventListener('dblclick', open)
  tally.renderRoot.addEventListener('keydown', event => {
    const { key, ctrlKey, metaKey, altKey } = event as KeyboardEvent
    if (!ctrlKey && !metaKey && !altKey && /^[\d.,]$/.test(key)) open(event)
  })
}

const sizes: Partial<Record<ReadingName, string>> = {
  trueHydration: 'lead',
  moistureHydration: 'lead',
  salt: 'pair',
  prefermentedFlour: 'pair',
}

/** What every line is called where it gives in proportion, among the ids of lines. */
const everyLine = ''

/**
 * A reading's number, to be typed over: the value at which it is held, and the line that gives. Emptied, it is
 * released. Says `tb-done` when it is held, released or left.
 */
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
  declare giver: string | undefined // id of the line that is to give, '' for every line; undefined until chosen
  declare refusal: string // why what was typed was not taken

  constructor() {
    super()
    this.version = 0
    this.giver = undefined
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
    const gives = givers.find(({ line }) => line.id === chosen)
    const lets = gives && this.#letsGo(gives)
    const present = this.#present
    return html`<form
      aria-label=${holdFormWords.name(spoken)}
      novalidate
      class=${sizes[reading] ?? ''}
      @submit=${this.#hold}
      @keydown=${this.#key}
    >
      <p class="value">
        <label class="unseen" for="value">${holdFormWords.holdAt(spoken)} ${holdFormWords.inUnit[unit]}</label>
        <input
          id="value"
          data-typed="hold ${reading}"
          .defaultValue=${present}
          inputmode="decimal"
          enterkeyhint="done"
          autocomplete="off"
          style="width: ${Math.max(3, present.length) + 0.5}ch"
          aria-invalid=${refusal ? 'true' : nothing}
          aria-describedby=${refusal ? 'refusal' : nothing}
        /><span aria-hidden="true"> ${unit}</span>
      </p>
      ${refusal ? html`<p id="refusal" role="alert">${refusal}</p>` : nothing}
      <p>
        <select id="giver" aria-label=${holdFormWords.giverOf(readingWords[reading].name)} @change=${this.#choose}>
          ${
            reading === 'doughWeight'
              ? html`<option value=${everyLine} ?selected=${chosen === everyLine}>${holdFormWords.everyLine}</option>`
              : nothing
          }
          ${givers.map(
            ({ line }) =>
              html`<option value=${line.id} ?selected=${line.id === chosen}>${line.ingredient}</option>`,
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
  #chosen(givers: readonly Giver[]): string | undefined {
    const { sheet, reading } = this
    const ids = [
      this.giver,
      heldAt(sheet, reading)?.hold.line,
      reading === 'doughWeight' ? everyLine : naturalGiver(sheet.formula, sheet.larder, reading)?.line,
    ]
    for (const id of ids)
      if ((id === everyLine && reading === 'doughWeight') || givers.some(g => g.line.id === id)) return id
    return (givers.find(g => !g.gives) ?? givers[0])?.line.id
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
    if (!typed && heldAt(sheet, reading)) return this.#release()
    const read = isPercent ? readPart : readWeight
    const wanted = typed ? read(typed, numbers) : undefined
    const line = this.#chosen(giversOf(sheet))
    if (wanted === undefined) return this.#refuse(notAValue(typed, readingUnit(reading)))
    if (line === undefined) return this.#refuse(noGiver)
    const at = { formula: formula.id, stage: finalDoughOf(formula).id, line }
    const edit: Edit = workbook => holdReading(workbook, at, reading, wanted)
    const refusal = this.#outOfReach(edit, line) ?? askEdit(this, edit)
    if (refusal) this.#refuse(refusal)
    else this.#leave()
  }

  /** How far the reading goes, where that is not as far as it would be held. */
  #outOfReach(edit: Edit, line: string): string | undefined {
    const { sheet } = this
    try {
      const workbook = { ...emptyWorkbook, formulas: [sheet.formula] }
      const held = applyChanges(workbook, edit(workbook)!.changes).workbook.formulas[0]!
      const { workedOut } = sheet.other(held)
      const out = outOfReach(workedOut)
      return out?.line.line.id === line ? outOfReachSaid(workedOut, out).message : undefined
    } catch {
      return undefined // said when the edit is asked for
    }
  }

  #release(): void {
    const { formula } = this.sheet
    const refusal = askEdit(this, workbook =>
      releaseHold(workbook, formula.id, hold => hold.reading === this.reading),
    )
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
      flex: 1 1 100%;
      min-width: 0;
    }
    p {
      margin: 0;
      display: flex;
      flex-wrap: wrap;
      align-items: baseline;
      gap: 4px 8px;
    }
    .value {
      flex-wrap: nowrap;
      gap: 0.2em;
      color: var(--ink-soft);
    }
    input {
      box-sizing: content-box;
      min-height: 0;
      min-width: 0;
      max-width: calc(100% - 1.6em);
      padding: 0 2px;
      margin-left: -2px;
      font: inherit;
      font-size: var(--size-text);
      font-variant-numeric: tabular-nums;
      line-height: 1.05;
      color: var(--ink);
      background: none;
      border: 0;
      border-bottom: 2px solid var(--accent);
      border-radius: 0;
    }
    .lead input {
      font-size: var(--size-reading);
      font-weight: 300;
      letter-spacing: -0.035em;
    }
    .pair input {
      font-size: var(--size-title);
      font-weight: 300;
      letter-spacing: -0.02em;
    }
    input:focus-visible {
      outline: 0;
      border-bottom-width: 3px;
      margin-bottom: -1px;
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
      padding-top: 6px;
      font-size: var(--size-small);
      line-height: 1.35;
      color: var(--ink-soft);
    }
    #refusal {
      color: var(--warn);
    }
    p + p {
      padding-top: 8px;
    }
    .do {
      padding: 10px 0 8px;
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
