import { html, nothing, type TemplateResult } from 'lit'
import { repeat } from 'lit/directives/repeat.js'
import type { Learnt } from '../../src/day/learning/inner-range.js'
import type { Learning } from '../../src/day/learning/learning.js'
import { lessonOf } from '../../src/day/learning/lessons.js'
import { type DayMixing, mixingsOf } from '../../src/day/mixing/day-mixings.js'
import { type MixedPart, mixingRemarks } from '../../src/day/mixing/mixing.js'
import type { Day } from '../../src/dough/document/day.js'
import { changeDay, type Fields, setMix } from '../../src/dough/edits/fetched/day-edits.js'
import type { FigureSheet } from '../../src/dough/sheet/figures.js'
import { BaseElement } from '../base/base-element.js'
import { askEdit, say } from '../base/events.js'
import { showGrams } from '../base/numbers.js'
import { showWeighed } from '../batch/weighed-text.js'
import { TypedFields } from '../controls/typed-fields.js'
import '../learnt/tb-learnt.js'
import { lessonWords } from '../learnt/words.js'
import { readDegrees, readRise, sayCelsius, showCelsius } from '../typed/typed-degrees.js'
import { waterStyles } from './water-styles.js'
import { workingOfWater } from './water-working.js'
import { waterWords } from './words.js'

/** One of the numbers of a mixing, typed or following. */
interface Row {
  readonly name: string
  readonly what: string
  readonly grams?: number // as they are weighed
  readonly celsius: number | undefined // undefined: nothing follows
  readonly said: boolean
  readonly canRelease: boolean
  readonly isRise?: boolean
  readonly learnt?: Learnt | undefined // from bakes
  /** Says it, or lets it follow. */
  put(celsius: number | undefined): string | undefined
}

/**
 * How warm the water has to be for each mixing of a day, both ways, with every number that it is worked out from: each follows
 * until it is typed, and follows again when it is emptied.
 */
export class TbWater extends BaseElement {
  static override properties = {
    day: { attribute: false },
    sheetOf: { attribute: false },
    weighed: { attribute: false },
    learning: { attribute: false },
    open: { state: true },
  }

  declare day: Day
  declare sheetOf: (bread: string) => FigureSheet | undefined // the formula with the day's batch
  declare weighed: (of: DayMixing) => ReadonlyMap<string, number> // grams that a scale weighs of its lines, by id
  declare learning: Learning | undefined // undefined: nothing has been baked
  declare open: ReadonlySet<string> | undefined // keys of the mixings that are open; undefined: the first

  readonly #fields = new TypedFields(this, () => `day ${this.day.id}`)
  #shown = ''

  protected override willUpdate(): void {
    if (this.day.id === this.#shown) return
    this.#shown = this.day.id
    this.open = undefined
    this.#fields.forget()
  }

  override render() {
    const mixings = mixingsOf(this.day, this.sheetOf)
    return html`<section aria-labelledby="heading">
      <h2 id="heading">${waterWords.heading}</h2>
      ${mixings.length ? nothing : html`<p class="none">${waterWords.none}</p>`}
      ${repeat(mixings, keyOf, (mixing, i) => this.#mixing(mixing, this.open?.has(keyOf(mixing)) ?? i === 0, mixings))}
    </section>`
  }

  #of({ stageName, breads }: DayMixing): string {
    return waterWords.of(
      stageName,
      breads.map(bread => this.sheetOf(bread)?.formula.name ?? ''),
    )
  }

  #mixing(of: DayMixing, isOpen: boolean, all: readonly DayMixing[]): TemplateResult {
    const { mixing } = of
    const name = this.#of(of)
    const key = keyOf(of)
    const water = sayCelsius(mixing.celsius, this.numbers)
    return html`<div class="entry" data-mixing=${key}>
      <h3>
        <button
          aria-expanded=${isOpen}
          aria-controls=${key}
          @click=${() => this.#toggle(key, all)}
        >
          <span>${name}</span> <span class="short">${waterWords.short(mixing.liquid, water)}</span>
        </button>
      </h3>
      <div id=${key} ?hidden=${!isOpen}>${isOpen ? this.#numbers(of, name) : nothing}</div>
    </div>`
  }

  #numbers(of: DayMixing, name: string): TemplateResult {
    const { numbers } = this
    const { mixing } = of
    const { ice, dough } = mixing
    return html`<div class="ways">
        <p><span class="big">${sayCelsius(mixing.celsius, numbers)}</span> <span class="way">${waterWords.byBalance(mixing.liquid)}</span></p>
        <p><span class="other">${sayCelsius(mixing.byFactors, numbers)}</span> <span class="way">${waterWords.byFactors}</span></p>
      </div>
      ${
        ice
          ? html`<p class="ice">${waterWords.ice(
              this.#grams(ice.ice),
              this.#grams(ice.water),
              sayCelsius(mixing.tap, numbers),
              mixing.freezer === undefined ? undefined : sayCelsius(mixing.freezer, numbers),
            )}</p>`
          : nothing
      }
      ${mixingRemarks(mixing, this.day.fridge).map(({ message }) => html`<p class="remark">${message}</p>`)}
      <ul aria-label=${waterWords.numbers(name)}>${this.#rows(of).map(row => this.#row(row, name, keyOf(of)))}</ul>
      ${
        dough === undefined
          ? nothing
          : html`<p class="dough" role="status">${waterWords.dough} <b>${sayCelsius(dough, numbers)}</b></p>`
      }
      <details><summary>${waterWords.working}</summary>${workingOfWater(mixing, name, numbers)}</details>`
  }

  #grams(grams: number): string {
    return `${showGrams(grams, this.numbers)}\u00a0g`
  }

  #rows(of: DayMixing): Row[] {
    const { mixing } = of
    const { day } = this
    const mix = (fields: Parameters<typeof setMix>[3]) =>
      askEdit(this, workbook => setMix(workbook, { day: day.id, bread: of.bread }, of.stage, fields), {
        day: day.id,
      })
    const said = day.mixes?.find(m => m.bread === of.bread && m.stage === of.stage)?.lines ?? []
    const weighed = this.weighed(of)
    const line = (part: MixedPart): Row => ({
      name: part.line,
      what: part.ingredient,
      grams: weighed.get(part.line) ?? part.grams,
      celsius: part.celsius,
      said: part.said,
      canRelease: true,
      put: celsius => {
        const others = said.filter(s => s.line !== part.line)
        const lines = celsius === undefined ? others : [...others, { line: part.line, celsius }]
        return mix({ lines: lines.length ? lines : undefined })
      },
    })
    const own = { canRelease: true } as const
    return [
      {
        ...own,
        name: 'wanted',
        what: waterWords.wanted,
        celsius: mixing.wanted,
        said: mixing.wantedSaid,
        put: wanted => mix({ wanted }),
      },
      {
        ...own,
        name: 'rise',
        what: waterWords.rise,
        celsius: mixing.rise,
        said: mixing.riseSaid,
        isRise: true,
        learnt: this.#rise(of),
        put: rise => mix({ rise }),
      },
      {
        ...own,
        name: 'room',
        what: waterWords.room,
        celsius: mixing.room,
        said: mixing.roomSaid,
        put: room => mix({ room }),
      },
      ...mixing.parts.map(line),
      ...(mixing.liquid === 'water'
        ? [
            {
              ...own,
              name: 'tap',
              what: waterWords.tap,
              celsius: mixing.tap,
              said: mixing.tapSaid,
              put: (tap: number | undefined) => this.#change({ tap }),
            },
          ]
        : []),
      {
        ...own,
        name: 'water',
        what: waterWords.measured(mixing.liquid),
        celsius: mixing.measured,
        said: mixing.measured !== undefined,
        put: water => mix({ water }),
      },
    ]
  }

  /** What the bakes of the bread have told of the rise in this mixing. */
  #rise({ bread, stageName }: DayMixing): Learnt | undefined {
    const formula = this.sheetOf(bread)?.formula.id
    return formula === undefined
      ? undefined
      : this.learning?.learnt(lessonOf.rise(formula, { name: stageName }))
  }

  #change(fields: Fields<Day>): string | undefined {
    return askEdit(this, workbook => changeDay(workbook, this.day.id, fields), { day: this.day.id })
  }

  #row(row: Row, of: string, key: string): TemplateResult {
    const { numbers, readOnly } = this
    const { what, celsius, said, grams, put } = row
    const name = `${key}-${row.name}`
    const how = said ? waterWords.typed : celsius === undefined ? waterWords.notYet : waterWords.follows
    const read = row.isRise ? readRise : readDegrees
    return html`<li class=${said ? 'said' : celsius === undefined ? 'empty' : ''}>
      <span class="what">${what}${grams === undefined ? nothing : html` <span class="grams">${showWeighed(grams, this.numbers)} g</span>`}</span>
      ${
        said && !readOnly
          ? html`<button class="release" aria-label=${waterWords.releaseThis(what)} @click=${() => this.#release(row, name)}>
              ${waterWords.release}
            </button>`
          : nothing
      }
      ${this.#fields.field({
        name,
        label: waterWords.field(what, of, how),
        kept: celsius === undefined ? '' : showCelsius(celsius, numbers),
        unit: '°C',
        short: true,
        isReadOnly: readOnly,
        take: typed => {
          if (typed.trim() === '') return put(undefined)
          const degrees = read(typed, numbers)
          return degrees === undefined ? waterWords.notCelsius : put(degrees)
        },
      })}
      ${this.#fields.faults(name)} ${row.learnt ? this.#learnt(row, row.learnt) : nothing}
    </li>`
  }

  #learnt({ celsius, said, put }: Row, learnt: Learnt): TemplateResult {
    const { numbers } = this
    const middle = Math.max(0, Number(learnt.middle.toFixed(1)))
    return html`<tb-learnt
      class="learnt"
      .learnt=${learnt}
      what=${lessonWords.rise}
      .show=${(value: number) => sayCelsius(value, numbers)}
      .taken=${sayCelsius(middle, numbers)}
      .take=${() => {
        const refusal = put(middle)
        if (refusal) say(this, refusal)
      }}
      ?isSo=${said && celsius !== undefined && Math.abs(celsius - middle) < 0.05}
      .numbers=${numbers}
      ?readOnly=${this.readOnly}
    ></tb-learnt>`
  }

  async #release({ put }: Row, name: string): Promise<void> {
    const refusal = put(undefined)
    if (refusal) say(this, refusal)
    await this.updateComplete
    this.renderRoot.querySelector<HTMLElement>(`#${CSS.escape(name)}`)?.focus()
  }

  /** Opens the mixing of which a field is, by the name that `TypedFields` gave it. */
  openField(day: string, name: string): void {
    if (day !== this.day.id) return
    const mixing = mixingsOf(this.day, this.sheetOf).find(of => name.startsWith(`${keyOf(of)}-`))
    if (mixing && !this.open?.has(keyOf(mixing))) this.open = new Set([...(this.open ?? []), keyOf(mixing)])
  }

  #toggle(key: string, all: readonly DayMixing[]): void {
    const open = new Set(this.open ?? all.slice(0, 1).map(keyOf))
    if (!open.delete(key)) open.add(key)
    this.open = open
  }

  static override styles = waterStyles
}
customElements.define('tb-water', TbWater)

const keyOf = ({ bread, stage }: DayMixing): string => `${bread}-${stage}`

declare global {
  interface HTMLElementTagNameMap {
    'tb-water': TbWater
  }
}
