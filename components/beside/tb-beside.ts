import { html, nothing, type PropertyDeclarations, type PropertyValues, type TemplateResult } from 'lit'
import {
  type Beside,
  besides,
  type LinePair,
  type Pair,
  type StagePair,
} from '../../src/dough/about/beside.js'
import type { Formula } from '../../src/dough/document/formula.js'
import { bringBack } from '../../src/dough/edits/fetched/state-edits.js'
import type { FigureSheet } from '../../src/dough/sheet/figures.js'
import { openSheet } from '../../src/dough/sheet/sheet.js'
import { askEdit } from '../base/events.js'
import { readingUnit } from '../base/reading-shown.js'
import { readingWords } from '../base/words.js'
import { TbDialog } from '../controls/tb-dialog.js'
import { type SettingPair, settingsBeside } from './beside-settings.js'
import { type Asked, firstPair, nameOf, type Side, sidesOf } from './beside-sides.js'
import { besideStyles } from './beside-styles.js'
import { differs, lineDiffers, type Shown, shown, stageDiffers, type Unit, withUnit } from './differences.js'
import { besideWords, differenceWords, tableWords, verdictWords } from './words.js'

type Hand = 'left' | 'right'

/** Two formulas, or a formula and a kept state of it, side by side: their readings, their lines, and what differs. */
export class TbBeside extends TbDialog {
  static override properties: PropertyDeclarations = {
    sheet: { attribute: false },
    version: { type: Number },
    left: { state: true },
    right: { state: true },
    onlyDifferent: { state: true },
  }

  declare sheet: FigureSheet | undefined // of the open formula
  declare version: number // goes up when the workbook changed
  declare left: string // key of a side
  declare right: string
  declare onlyDifferent: boolean
  readonly #sheets = new Map<Formula, FigureSheet>()
  #seen:
    | { readonly left: Formula; readonly right: Formula; readonly larder: unknown; readonly beside: Beside }
    | undefined

  constructor() {
    super()
    this.version = 0
    this.left = ''
    this.right = ''
    this.onlyDifferent = false
  }

  /** Opens with what is asked for on the left; without anything, the open formula. */
  show(asked: Asked = {}): void {
    const open = this.sheet?.formula.id
    const first = asked.left === undefined && open !== undefined ? { ...asked, left: open } : asked
    ;[this.left, this.right] = firstPair(this.workbook, first, open)
    this.onlyDifferent = false
    this.open()
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('larder') || !this.opened) this.#sheets.clear()
  }

  #sheetOf(formula: Formula): FigureSheet {
    let sheet = this.#sheets.get(formula)
    if (!sheet) {
      sheet = openSheet(formula, this.larder)
      this.#sheets.set(formula, sheet)
    }
    return sheet
  }

  #beside(left: Formula, right: Formula): Beside {
    const { larder } = this
    const seen = this.#seen
    if (seen?.left === left && seen.right === right && seen.larder === larder) return seen.beside
    const beside = besides(this.#sheetOf(left), this.#sheetOf(right))
    this.#seen = { left, right, larder, beside }
    return beside
  }

  /** What is chosen on a side; the first there is where that is gone. */
  #side(key: string): Side | undefined {
    const all = sidesOf(this.workbook).flat()
    return all.find(side => side.key === key) ?? all.find(side => key.startsWith(`${side.of.id} `)) ?? all[0]
  }

  protected override heading(): string {
    return besideWords.beside
  }

  protected override body(): TemplateResult {
    const [left, right] = [this.#side(this.left), this.#side(this.right)]
    if (!left || !right) return html`<div class="body"><p>${besideWords.noFormula}</p></div>`
    const names = { left: nameOf(left, right), right: nameOf(right, left) }
    const beside = this.#beside(left.formula, right.formula)
    const settings = settingsBeside(this.#sheetOf(left.formula), this.#sheetOf(right.formula), this.numbers)
    const seen = (which: (stage: StagePair) => boolean) =>
      this.onlyDifferent ? beside.stages.filter(which) : beside.stages
    const readings = this.onlyDifferent ? beside.readings.filter(differs) : beside.readings
    return html`<div class="body">
      <div class="choose">
        ${this.#choice('left', besideWords.left, left)}
        <button class="swap" aria-label=${besideWords.changeSides} title=${besideWords.changeSides} @click=${this.#swap}>
          <svg viewBox="0 0 18 18" aria-hidden="true"><path d="M2 6h13M12 3l3 3-3 3M16 12H3M6 9l-3 3 3 3" /></svg>
        </button>
        ${this.#choice('right', besideWords.right, right)}
      </div>
      <div class="verdict">
        <span role="status">${verdict(beside, settings, left.key === right.key)}</span>
        <label
          ><input
            type="checkbox"
            .checked=${this.onlyDifferent}
            @change=${(event: Event) => {
              this.onlyDifferent = (event.target as HTMLInputElement).checked
            }}
          />${besideWords.onlyWhatDiffers}</label
        >
      </div>
      ${readings.length ? this.#readings(readings, names) : nothing}
      ${seen(stageDiffers).length ? this.#lines(seen(stageDiffers), names) : nothing}
      ${settings.length ? settingsTable(settings, names) : nothing}
    </div>`
  }

  #choice(hand: Hand, label: string, chosen: Side): TemplateResult {
    const option = (side: Side, words: string) =>
      html`<option value=${side.key} .selected=${side.key === chosen.key}>${words}</option>`
    return html`<div>
      <label for=${hand}>${label}</label>
      <select
        id=${hand}
        ?data-first=${hand === 'right'}
        @change=${(event: Event) => {
          this[hand] = (event.target as HTMLSelectElement).value
          this.told = ''
        }}
      >
        ${sidesOf(this.workbook).map(([now, ...states]) =>
          states.length
            ? html`<optgroup label=${now!.of.name}>
                ${option(now!, besideWords.now(now!.of.name))}${states.map(s => option(s, s.state!.name))}
              </optgroup>`
            : option(now!, now!.of.name),
        )}
      </select>
    </div>`
  }

  #readings(readings: Beside['readings'], names: Readonly<Record<Hand, string>>): TemplateResult {
    return html`<table role="table">
      <caption>${tableWords.readings}</caption>
      <thead role="rowgroup">
        <tr role="row">
          <th role="columnheader" scope="col">${tableWords.reading}</th>
          <th role="columnheader" scope="col">${names.left}</th>
          <th role="columnheader" scope="col">${names.right}</th>
          <th role="columnheader" scope="col">${tableWords.difference}</th>
        </tr>
      </thead>
      <tbody role="rowgroup">
        ${readings.map(reading => {
          const { name } = readingWords[reading.name]
          const unit = readingUnit(reading.name)
          return html`<tr role="row">
            <th role="rowheader" scope="row">${name}</th>
            ${cells(shown(reading, unit, this.numbers), unit, 'all')}
          </tr>`
        })}
      </tbody>
    </table>`
  }

  #lines(stages: readonly StagePair[], names: Readonly<Record<Hand, string>>): TemplateResult {
    const sides = html`<th role="columnheader" scope="col" class="left-of">${names.left}</th>
      <th role="columnheader" scope="col">${names.right}</th>
      <th role="columnheader" scope="col">${tableWords.difference}</th>`
    return html`<table role="table" class="lines">
      <caption>${tableWords.lines}</caption>
      <colgroup><col style="width: 24%" /></colgroup>
      <thead role="rowgroup">
        <tr role="row">
          <td role="cell" class="of"></td>
          <th role="columnheader" scope="colgroup" colspan="3" class="of left-of">${tableWords.percent}</th>
          <th role="columnheader" scope="colgroup" colspan="3" class="of left-of">${tableWords.grams}</th>
        </tr>
        <tr role="row"><th role="columnheader" scope="col">${tableWords.ingredient}</th>${sides}${sides}</tr>
      </thead>
      ${stages.map(
        stage => html`<tbody role="rowgroup">
          <tr role="row" class="stage">
            <th role="rowheader" scope="rowgroup" colspan="7">${stage.name}${only(stage, names)}</th>
          </tr>
          ${stage.lines
            .filter(line => !this.onlyDifferent || lineDiffers(line))
            .map(line => this.#line(line, stage, names))}
        </tbody>`,
      )}
    </table>`
  }

  #line(line: LinePair, stage: StagePair, names: Readonly<Record<Hand, string>>): TemplateResult {
    const figures = (pair: Pair, unit: Unit) => cells(shown(pair, unit, this.numbers), unit, 'short')
    return html`<tr role="row">
      <th role="rowheader" scope="row">${line.ingredient || tableWords.noIngredient}${stage.only ? nothing : only(line, names)}</th>
      ${figures(line.percent, '%')}${figures(line.weight, 'g')}
    </tr>`
  }

  protected override actions(): TemplateResult | typeof nothing {
    const states = [this.#side(this.left), this.#side(this.right)].filter(side => side?.state)
    if (this.readOnly || !states.length) return nothing
    return html`${states.map(
      side =>
        html`<button class="lined" @click=${() => this.#bringBack(side!)}>${besideWords.bringBack(side!.state!.name)}</button>`,
    )}`
  }

  #bringBack({ of, state }: Side): void {
    const refusal = askEdit(this, workbook => bringBack(workbook, of.id, state!.id))
    this.told = refusal ?? besideWords.broughtBack(of.name, state!.name)
  }

  #swap = (): void => {
    ;[this.left, this.right] = [this.right, this.left]
  }

  static override styles = [TbDialog.styles, besideStyles]
}
customElements.define('tb-beside', TbBeside)

/** The two figures and their difference; where the head of the table is out of sight they carry their units. */
function cells(figures: Shown, unit: Unit, units: 'all' | 'short'): TemplateResult {
  const said = units === 'all' ? nothing : 'unit'
  const figure = (value: string | undefined) =>
    value === undefined
      ? html`<span class="none">–</span>`
      : html`${value}<span class=${said}>${`\u00a0${unit}`}</span>`
  const { is } = figures
  const difference = is === 'unknown' ? html`<span class="none">–</span>` : withUnit(figures, unit)
  return html`<td role="cell" class="left-of">${figure(figures.left)}</td>
    <td role="cell">${figure(figures.right)}</td>
    <td role="cell" class="difference ${is === 'same' ? 'same' : ''}">${difference}${
      is === 'more' || is === 'less' ? html`<span class="unseen"> ${differenceWords[is]}</span>` : nothing
    }</td>`
}

/** `only in Mill wheat` */
const only = ({ only: hand }: { readonly only: Hand | undefined }, names: Readonly<Record<Hand, string>>) =>
  hand ? html`<span class="only">${tableWords.onlyIn(names[hand])}</span>` : nothing

/** What differs besides the lines, in words. */
const settingsTable = (settings: readonly SettingPair[], names: Readonly<Record<Hand, string>>) =>
  html`<table role="table" class="settings">
    <caption>${tableWords.settings}</caption>
    <thead role="rowgroup">
      <tr role="row">
        <th role="columnheader" scope="col">${tableWords.whatDiffers}</th>
        <th role="columnheader" scope="col">${names.left}</th>
        <th role="columnheader" scope="col">${names.right}</th>
      </tr>
    </thead>
    <tbody role="rowgroup">
      ${settings.map(
        ({ what, left, right }) => html`<tr role="row">
          <th role="rowheader" scope="row">${what}</th>
          <td role="cell">${left}</td>
          <td role="cell">${right}</td>
        </tr>`,
      )}
    </tbody>
  </table>`

/** What there is to be seen, in a sentence. */
function verdict({ readings, stages }: Beside, settings: readonly SettingPair[], areOne: boolean): string {
  if (areOne) return verdictWords.areOne
  const lines = stages.flatMap(s => s.lines).filter(lineDiffers).length
  const differing = readings.filter(differs).length
  const others = settings.length
  if (!lines && !differing && !others) return verdictWords.same
  return verdictWords.differ(differing, lines, others)
}

declare global {
  interface HTMLElementTagNameMap {
    'tb-beside': TbBeside
  }
}
