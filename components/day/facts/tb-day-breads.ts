import { html, nothing, type TemplateResult } from 'lit'
import { repeat } from 'lit/directives/repeat.js'
import { clockText, readClock } from '../../../src/day/course/clock.js'
import { sharedStages } from '../../../src/day/mixing/shared-stages.js'
import { breadNames } from '../../../src/day/out/bread-names.js'
import { Weights } from '../../../src/day/plan/weigh-list.js'
import type { Batch } from '../../../src/dough/document/batch.js'
import type { Day, DayBread } from '../../../src/dough/document/day.js'
import { finalDoughOf } from '../../../src/dough/document/formula.js'
import type { Larder } from '../../../src/dough/document/larder.js'
import type { Workbook } from '../../../src/dough/document/workbook.js'
import {
  addBread,
  changeBread,
  type Fields,
  makeTogether,
  removeBread,
} from '../../../src/dough/edits/fetched/day-edits.js'
import type { FigureSheet } from '../../../src/dough/sheet/figures.js'
import { BaseElement } from '../../base/base-element.js'
import { askEdit, say, wish } from '../../base/events.js'
import { showNumber } from '../../base/numbers.js'
import { makeProse, sayGrams } from '../../batch/batch-prose.js'
import { readNumber, readWeight } from '../../typed/typed-numbers.js'
import '../../batch/tb-batch-fields.js'
import '../../controls/tb-menu.js'
import { TypedFields } from '../../controls/typed-fields.js'
import { sentenceStyles } from '../../styles/sentence-styles.js'
import { factStyles } from './facts-styles.js'
import { factWords, notTakenFacts } from './words.js'

/** One number of pieces of one weight, or nothing said yet: what fits into a line. */
interface Pieces {
  readonly count: number | undefined
  readonly weight: number | undefined
  readonly name?: string
}

const piecesOf = (batch: Batch): Pieces | undefined => {
  if (batch.make === 'as written') return { count: undefined, weight: undefined }
  return batch.make === 'pieces' && batch.pieces.length === 1 ? batch.pieces[0] : undefined
}

/** The breads of a day: how much of each, when each is ready and in which oven, what is made once for several. */
export class TbDayBreads extends BaseElement {
  static override properties = {
    day: { attribute: false },
    workbook: { attribute: false },
    larder: { attribute: false },
    open: { state: true },
    half: { state: true },
  }

  declare day: Day
  declare workbook: Workbook
  declare larder: Larder
  declare open: string // id of the bread whose amount is said in another way
  declare half: ReadonlyMap<string, Partial<Pieces>> // what was said of a bread's pieces while the other half is missing

  readonly #fields = new TypedFields(this, () => `day ${this.day.id}`)
  #shown = ''
  #weights: { readonly of: readonly unknown[]; readonly weights: Weights } | undefined

  constructor() {
    super()
    this.open = ''
    this.half = new Map()
  }

  protected override willUpdate(): void {
    if (this.day.id === this.#shown) return
    this.#shown = this.day.id
    this.#fields.forget()
    this.open = ''
    this.half = new Map()
  }

  #sheet(bread: string): FigureSheet | undefined {
    const of = [this.workbook.formulas, this.larder]
    if (this.#weights?.of.some((item, i) => item !== of[i]) !== false)
      this.#weights = { of, weights: new Weights(this.workbook.formulas, this.larder) }
    return this.#weights.weights.sheet(this.day, bread)
  }

  #name({ formula }: DayBread): string {
    return this.workbook.formulas.find(({ id }) => id === formula)?.name ?? ''
  }

  override render() {
    const { breads } = this.day
    return html`<ul>
        ${repeat(
          breads,
          ({ id }) => id,
          bread => html`<li aria-label=${factWords.bread(this.#name(bread))}>${this.#bread(bread)}</li>`,
        )}
      </ul>
      ${this.#together()}
      ${this.readOnly ? nothing : this.#add()}`
  }

  #bread(bread: DayBread): TemplateResult {
    const { id, formula } = bread
    const name = this.#name(bread)
    const sheet = this.#sheet(id)
    if (!sheet) return html`<p class="line">${this.#menu(bread, name)}</p>`
    const pieces = piecesOf(bread.batch)
    const { build } = sheet.stage(finalDoughOf(sheet.formula).id)
    const grams = build === undefined ? '' : sayGrams(build, this.numbers)
    const isOpen = this.open === id
    return html`<p class="line">
        ${pieces ? this.#pieces(bread, pieces, name) : html`<span class="made">${makeProse(sheet, this.numbers)}</span>`}
        <a href="#${formula}" class="bread" @click=${this.#openFormula(formula)}>${name}</a>
        ${grams ? html`<span class="total">${bread.batch.make === 'as written' ? factWords.asWritten(grams) : pieces ? factWords.ofDough(grams) : nothing}</span>` : nothing}
        ${this.#ready(bread, name)}${this.#oven(bread, name)}
        ${this.readOnly ? nothing : this.#menu(bread, name)}
      </p>
      ${this.half.has(id) ? html`<p class="hint">${factWords.otherHalf(this.half.get(id)!.count === undefined)}</p>` : nothing}
      ${this.#fields.faults(`count-${id}`, `weight-${id}`, `ready-${id}`)}
      ${
        isOpen
          ? html`<div class="form">
            <tb-batch-fields
              .sheet=${sheet}
              .numbers=${this.numbers}
              kind=${`day ${this.day.id} batch ${id}`}
              .edit=${(batch: Batch) => (workbook: Workbook) => changeBread(workbook, this.#at(bread), { batch })}
            ></tb-batch-fields>
            <button class="lined" @click=${() => this.#close()}>${factWords.thisWay}</button>
          </div>`
          : nothing
      }`
  }

  /** What a piece of a bread weighs where its day does not say: as its formula does, or else as on the latest day that did. */
  #usualWeight({ formula }: DayBread): number | undefined {
    const { formulas, days = [] } = this.workbook
    const baked = days
      .toSorted((a, b) => b.date.localeCompare(a.date))
      .flatMap(({ breads }) => breads.filter(bread => bread.formula === formula))
    const { batch } = formulas.find(({ id }) => id === formula) ?? {}
    return [batch, ...baked.map(bread => bread.batch)]
      .map(one => one && piecesOf(one)?.weight)
      .find(weight => weight !== undefined)
  }

  #pieces(bread: DayBread, kept: Pieces, name: string): TemplateResult {
    const { id } = bread
    const usual = kept.weight === undefined ? this.#usualWeight(bread) : undefined
    const { numbers, readOnly: isReadOnly } = this
    const half = this.half.get(id)
    const said = { ...kept, ...half }
    const shown = (value: number | undefined) => (value === undefined ? '' : showNumber(value, numbers))
    const example = numbers.decimal === ',' ? '1,2 kg' : '1.2 kg'
    return html`<span class="pair">${this.#fields.field({
      name: `count-${id}`,
      label: factWords.count(name),
      kept: shown(kept.count),
      ...(half && { pending: shown(half.count) }),
      short: true,
      isReadOnly,
      take: typed => {
        const count = readNumber(typed, numbers) ?? 0
        return count > 0
          ? this.#say(bread, { ...said, count, weight: said.weight ?? usual })
          : notTakenFacts.count
      },
    })} ${factWords.times} ${this.#fields.field({
      name: `weight-${id}`,
      label: factWords.weight(name),
      kept: shown(kept.weight),
      ...(half && { pending: shown(half.weight) }),
      unit: 'g',
      hint: shown(usual),
      isReadOnly,
      take: typed => {
        const weight = readWeight(typed, numbers) ?? 0
        return weight > 0 ? this.#say(bread, { ...said, weight }) : notTakenFacts.weight(example)
      },
    })}${kept.name ? html`, ${kept.name}` : nothing}</span>`
  }

  /** Takes pieces as an edit once both halves are said. */
  #say(bread: DayBread, { count, weight }: Pieces): string | undefined {
    const half = new Map(this.half)
    this.half = half
    if (count === undefined || weight === undefined) {
      half.set(bread.id, { count, weight })
      return undefined
    }
    half.delete(bread.id)
    const { loss, bakeLoss } = bread.batch
    const name = 'pieces' in bread.batch ? bread.batch.pieces[0]?.name : undefined
    const pieces = [{ count, weight, ...(name && { name }) }]
    const batch: Batch = { make: 'pieces', pieces, ...(loss && { loss }), ...(bakeLoss && { bakeLoss }) }
    return this.#change(bread, { batch })
  }

  #ready(bread: DayBread, name: string): TemplateResult | typeof nothing {
    const { day } = this
    if (day.ready === undefined && bread.ready === undefined) return nothing
    if (day.breads.length < 2 && bread.ready === undefined) return nothing
    return html`<span class="pair ${bread.ready === undefined ? 'follows' : ''}">${factWords.readyBy} ${this.#fields.field(
      {
        name: `ready-${bread.id}`,
        label: factWords.readyOf(name),
        kept: bread.ready ?? day.ready ?? '',
        isReadOnly: this.readOnly,
        take: typed => {
          if (typed.trim() === '') return this.#change(bread, { ready: undefined })
          const minutes = readClock(typed)
          return minutes === undefined
            ? notTakenFacts.clock
            : this.#change(bread, { ready: clockText(minutes) })
        },
      },
    )}</span>`
  }

  #oven(bread: DayBread, name: string): TemplateResult | typeof nothing {
    const { ovens } = this.day
    if (ovens.length < 2) return nothing
    const chosen = ovens.find(({ id }) => id === bread.oven) ?? ovens[0]!
    return html`<span class="pair">${factWords.inOven}
      <select
        aria-label=${factWords.ovenOf(name)}
        ?disabled=${this.readOnly}
        @change=${(event: Event) => {
          const refusal = this.#change(bread, { oven: (event.target as HTMLSelectElement).value })
          if (refusal) say(this, refusal)
        }}
      >
        ${ovens.map(oven => html`<option value=${oven.id} .selected=${oven === chosen}>${oven.name || factWords.oven}</option>`)}
      </select></span>`
  }

  #menu(bread: DayBread, name: string): TemplateResult {
    const items = [
      {
        label: factWords.inAnotherWay,
        run: () => {
          this.open = bread.id
        },
      },
      { label: factWords.open, run: () => wish(this, { want: 'open', formula: bread.formula }) },
      { label: factWords.takeOff, run: () => this.#takeOff(bread) },
    ]
    return html`<tb-menu label=${factWords.actions(name)} .items=${this.#sheet(bread.id) ? items : items.slice(2)}></tb-menu>`
  }

  /** Stages that are the same in several breads, to be made once. */
  #together(): TemplateResult[] {
    const nameOf = breadNames(this.day, this.workbook.formulas)
    return sharedStages(this.day, this.workbook.formulas).map(stage => {
      const { key, name, builds, otherwise, isTogether, sameMethod } = stage
      const breads = builds.map(({ bread }) => bread)
      const others = isTogether ? undefined : builds.slice(1)
      return html`<p class="line">
        <label class="check"
          ><input
            type="checkbox"
            .checked=${isTogether}
            ?disabled=${this.readOnly}
            @change=${() => this.#tell(workbook => makeTogether(workbook, this.day.id, { key, name }, others))}
          />${factWords.together(name, (breads.length > 1 ? breads : [...breads, ...otherwise]).map(nameOf))}</label
        >
        ${isTogether && !sameMethod ? html`<span>${factWords.byMethodOf(nameOf(breads[0]!))}</span>` : nothing}
        ${isTogether && otherwise.length ? html`<span class="fault">${factWords.madeOtherwise(name, otherwise.map(nameOf))}</span>` : nothing}
      </p>`
    })
  }

  #add(): TemplateResult {
    const { formulas } = this.workbook
    if (formulas.length === 0) return html`<p class="line">${factWords.shelfEmpty}</p>`
    const items = formulas.map(({ id, name, batch }) => ({
      label: name,
      run: () =>
        this.#tell(workbook =>
          addBread(workbook, this.day.id, { formula: id, batch: batch ?? { make: 'as written' } }),
        ),
    }))
    return html`<p class="line add">
      <tb-menu
        id="add"
        look=${this.day.breads.length ? 'plain' : 'main'}
        face=${factWords.addBread}
        label=${factWords.addBread}
        .items=${items}
      ></tb-menu>
    </p>`
  }

  #openFormula = (formula: string) => (event: Event) => {
    event.preventDefault()
    wish(this, { want: 'open', formula })
  }

  /** Opens what the field of a name that `TypedFields` gave lies in. */
  openField(day: string, name: string): void {
    const [kind, bread, field, ...rest] = name.split(' ')
    if (day !== this.day.id || kind !== 'batch') return
    this.open = bread!
    this.renderRoot.querySelector('tb-batch-fields')?.openField(field!, rest.join(' '))
  }

  async #close(): Promise<void> {
    const { open } = this
    this.open = ''
    await this.updateComplete
    this.renderRoot.querySelector<HTMLElement>(`#count-${CSS.escape(open)}, tb-menu`)?.focus()
  }

  async #takeOff(bread: DayBread): Promise<void> {
    this.#tell(workbook => removeBread(workbook, this.#at(bread)))
    await this.updateComplete
    this.renderRoot.querySelector<HTMLElement>('#add')?.focus()
  }

  #at({ id }: DayBread) {
    return { day: this.day.id, bread: id }
  }

  #ask(edit: Parameters<typeof askEdit>[1]): string | undefined {
    return askEdit(this, edit, { day: this.day.id })
  }

  #change(bread: DayBread, fields: Fields<Omit<DayBread, 'id' | 'formula'>>): string | undefined {
    return this.#ask(workbook => changeBread(workbook, this.#at(bread), fields))
  }

  /** Asks for an edit where no field stands that the reason could be put beneath. */
  #tell(edit: Parameters<typeof askEdit>[1]): void {
    const refusal = this.#ask(edit)
    if (refusal) say(this, refusal)
  }

  static override styles = [sentenceStyles, factStyles]
}
customElements.define('tb-day-breads', TbDayBreads)

declare global {
  interface HTMLElementTagNameMap {
    'tb-day-breads': TbDayBreads
  }
}
