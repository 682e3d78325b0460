import { html, nothing, type PropertyDeclarations, type PropertyValues, type TemplateResult } from 'lit'
import { dateText } from '../../src/day/out/day-text.js'
import { changeBreads } from '../../src/day/trade/order-edits.js'
import { type EachMakes, forClass, peopleOfDay } from '../../src/dough/about/class-batch.js'
import type { HouseholdOptions } from '../../src/dough/about/household.js'
import type { Day } from '../../src/dough/document/day.js'
import { isPeople } from '../../src/dough/document/day-checks.js'
import { type Formula, sameName } from '../../src/dough/document/formula.js'
import { openSheet } from '../../src/dough/sheet/sheet.js'
import { askEdit, say } from '../base/events.js'
import { paperStyles } from '../card/paper-styles.js'
import { PrintedFormulas } from '../card/printed-formulas.js'
import { barWords } from '../card/words.js'
import { ownMeasures } from '../controls/tb-measures.js'
import { TypedFields } from '../controls/typed-fields.js'
import { listSelect, ownList } from '../sheet/allergen-list.js'
import { readNumber } from '../typed/typed-numbers.js'
import { type HandoutBread, type HandoutPart, handoutParts } from './handout-page.js'
import { handoutStyles } from './handout-styles.js'
import { type BlockAt, bestPaged } from './pages.js'
import { handoutBarWords, handoutWords, makesWords } from './words.js'
import '../controls/tb-measures.js'

const usualPeople = 8
const againLines = 2 // of type, that stand over a formula that goes on
const types = [11, 10.4, 9.8] as const // points; a smaller one where it saves a page

/** Formulas for a class, in one print: what each makes and all together, block by block on pages. */
export class TbHandout extends PrintedFormulas {
  static override properties: PropertyDeclarations = {
    day: { state: true },
    named: { state: true },
    states: { state: true },
    people: { state: true },
    makes: { state: true },
    measures: { state: true },
    notes: { state: true },
    layout: { state: true },
  }

  declare private day: string // id, where it is of what a day bakes; '' where it is not
  declare private named: string // what it is called, where that was typed
  declare private states: ReadonlyMap<string, string> // ids of kept states, by those of their formulas
  declare private people: number
  declare private makes: EachMakes
  declare private measures: HouseholdOptions | undefined
  declare private notes: boolean
  declare private layout: readonly (readonly BlockAt[])[] // the pages as they were last measured

  readonly #fields = new TypedFields(this, () => 'handout')
  #breads: readonly HandoutBread[] = []
  #madeOf: readonly unknown[] = []

  constructor() {
    super()
    this.day = ''
    this.named = ''
    this.states = new Map()
    this.people = usualPeople
    this.makes = 'piece'
    this.measures = undefined
    this.notes = true
    this.layout = []
  }

  /** Shows formulas, or what a day bakes: then what the day makes is for all, and each makes a share of it. */
  override async show(wanted: Parameters<PrintedFormulas['show']>[0] & { readonly day?: string }) {
    if (this.shown) return
    const [before, { day = '' }] = [this.day, wanted]
    this.day = day
    if (day || before) {
      this.people = (this.#ofDay && peopleOfDay(this.#ofDay)) ?? usualPeople
      this.makes = day ? 'share' : 'piece'
    }
    await super.show(this.#ofDay ? { formulas: this.#ofDay.breads.map(({ formula }) => formula) } : wanted)
  }

  protected override begin(): void {
    this.#fields.forget()
    this.named = ''
  }

  get #ofDay(): Day | undefined {
    return this.day ? this.workbook.days?.find(({ id }) => id === this.day) : undefined
  }

  /** Those that are chosen; of a day in its order and with what it makes of each. */
  protected override get formulas(): readonly Formula[] {
    const all = super.formulas
    if (!this.day) return all
    return (this.#ofDay?.breads ?? []).flatMap(({ formula, batch }) =>
      all.filter(({ id }) => id === formula).map(of => ({ ...of, batch })),
    )
  }

  /** What it was called, or the day, the group that all of them are in, the workbook. */
  get #heading(): string {
    if (this.named || this.#ofDay) return this.named || this.#ofDay!.name
    const [first, ...others] = this.formulas
    const group = first?.group ?? ''
    const isCommon = group !== '' && others.every(f => sameName(f.group ?? '', group))
    return isCommon ? group : this.workbook.name || handoutWords.name
  }

  protected override get printed() {
    if (!this.formulas.length) return undefined
    const heading = this.#heading
    const foot = [heading, this.#date].filter(Boolean).join(' · ')
    return { name: `${handoutWords.name}: ${heading}`, foot }
  }

  get #date(): string {
    return this.#ofDay ? dateText(this.#ofDay.date, this.numbers.language) : ''
  }

  /** For how many the day makes, where that is known and what it makes is shared out. */
  get #madeFor(): number | undefined {
    return this.makes === 'share' && this.#ofDay ? peopleOfDay(this.#ofDay) : undefined
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    const { workbook, larder, people, makes, states, chosen } = this
    const madeOf = [workbook.formulas, workbook.scale, this.#ofDay, larder, people, makes, states, chosen]
    if (this.shown && madeOf.some((part, at) => part !== this.#madeOf[at])) {
      this.#madeOf = madeOf
      this.#breads = this.formulas.map(formula => this.#bread(formula))
    }
    super.willUpdate(changed)
  }

  #bread(formula: Formula): HandoutBread {
    const state = formula.states?.find(({ id }) => id === this.states.get(formula.id))
    const then = state && { ...state.formula, ...(this.day && formula.batch && { batch: formula.batch }) }
    const { each, all } = forClass(then ?? formula, this.people, this.makes)
    const sheet = (of: Formula) => openSheet(of, this.larder, this.workbook.scale)
    return {
      name: state ? handoutWords.ofThem(formula.name, state.name) : formula.name,
      each: sheet(each),
      all: sheet(all),
    }
  }

  #parts(): readonly HandoutPart[] {
    const { people, numbers, measures, notes } = this
    return handoutParts({
      heading: this.#heading,
      date: this.#date,
      people,
      breads: this.#breads,
      numbers,
      measures,
      notes,
      list: ownList(numbers.language),
      level: this.layout.length > 1 ? 2 : 1,
    })
  }

  protected override papers(): readonly TemplateResult[] {
    const parts = this.#parts()
    const all = parts.flatMap(({ blocks }, part) => blocks.map((_, block): BlockAt => [part, block]))
    const isMeasured = this.layout.flat().length === all.length
    return (isMeasured ? this.layout : [all]).map(page => this.#page(parts, page))
  }

  #page(parts: readonly HandoutPart[], blocks: readonly BlockAt[]): TemplateResult {
    const [part = 0, block = 0] = blocks[0] ?? []
    const again = block > 0 ? parts[part]?.name : undefined
    return html`${again ? html`<p class="again">${handoutWords.again(again)}</p>` : nothing}
      ${blocks.map(([part, block]) => html`<div class="block" data-part=${part}>${parts[part]?.blocks[block]}</div>`)}`
  }

  /** The pages in a type of so many points. */
  #pagesIn(type: number): readonly (readonly BlockAt[])[] {
    this.style.setProperty('--type', `${type}`)
    const papers = [...this.renderRoot.querySelectorAll<HTMLElement>('.paper')]
    for (const paper of papers) paper.classList.add('fitted')
    const parts: number[][] = []
    for (const block of this.renderRoot.querySelectorAll<HTMLElement>('.block')) {
      const part = Number(block.dataset.part)
      parts[part] ??= []
      parts[part].push(block.getBoundingClientRect().height)
    }
    const [first] = papers
    const height = first ? this.heightOfPage(first) : Infinity
    const line = first ? Number.parseFloat(getComputedStyle(first).lineHeight) : 0
    for (const paper of papers) paper.classList.remove('fitted')
    const said = this.#parts()
    const sized = parts.map((heights, at) => ({ heights, isFormula: said[at]?.isFormula ?? false }))
    return bestPaged(sized, height, againLines * line)
  }

  protected override updated(changed: PropertyValues): void {
    if (this.shown && this.printed && !(changed.size === 1 && changed.has('pages'))) {
      const tried = types.map(type => ({ type, layout: this.#pagesIn(type) }))
      const { type, layout } = tried.reduce((best, one) =>
        one.layout.length < best.layout.length ? one : best,
      )
      this.style.setProperty('--type', `${type}`)
      if (JSON.stringify(layout) !== JSON.stringify(this.layout)) {
        this.layout = layout
        return
      }
    }
    super.updated(changed)
  }

  protected override fit(paper: HTMLElement): number {
    paper.classList.add('fitted')
    const pages = this.pagesOf(paper)
    paper.classList.remove('fitted')
    return pages
  }

  protected override choices(): TemplateResult {
    return html`<label class="choice">
        <span>${handoutBarWords.heading}</span>
        ${this.#fields.field({
          name: 'class',
          label: handoutBarWords.heading,
          kept: this.#heading,
          keys: 'text',
          take: typed => {
            this.named = typed.trim()
            return undefined
          },
        })}
      </label>
      <label class="choice">
        <span>${handoutBarWords.people}</span>
        ${this.#fields.field({
          name: 'people',
          label: handoutBarWords.peopleFor,
          kept: `${this.people}`,
          short: true,
          take: typed => this.#takePeople(typed),
        })}
      </label>
      <label class="choice">
        <span>${handoutBarWords.makes}</span>
        <select @change=${this.#chooseMakes}>
          ${this.#ways.map(
            ([makes, words]) =>
              html`<option value=${makes} ?selected=${makes === this.makes}>${words}</option>`,
          )}
        </select>
      </label>
      ${this.#fields.faults('people')}`
  }

  /** What each may make, with its words: a piece only where any is made in pieces. */
  get #ways(): readonly (readonly [makes: EachMakes, words: string])[] {
    const { formulas } = this
    const inPieces = formulas.filter(({ batch }) => batch && 'pieces' in batch).length
    const piece =
      inPieces < formulas.length
        ? makesWords.pieceOrBatch
        : inPieces > 1
          ? makesWords.pieces
          : makesWords.piece
    return [
      ...(inPieces ? [['piece', piece] as const] : []),
      ['batch', makesWords.batch],
      ['share', this.day ? handoutBarWords.shareOfDay : makesWords.share],
    ]
  }

  /** That a day makes for others than were typed, and how it would make for these. */
  #sharing(): TemplateResult | typeof nothing {
    const made = this.#madeFor
    if (made === undefined || made === this.people) return nothing
    return html`<p class="shared" role="status">
      <span>${handoutBarWords.sharedAmong(made, this.people)}</span>
      <button class="lined" @click=${this.#makeForThem}>${handoutBarWords.makeFor(this.people)}</button>
    </p>`
  }

  #makeForThem = (): void => {
    const [from, to, { day }] = [this.#madeFor, this.people, this]
    if (from === undefined) return
    const refusal = askEdit(this, workbook => changeBreads(workbook, day, { from, to }))
    say(this, refusal ?? handoutBarWords.madeFor(to))
    this.renderRoot.querySelector<HTMLElement>('#people')?.focus()
  }

  protected override more(): TemplateResult {
    const kept = [...new Map(this.formulas.map(of => [of.id, of])).values()].filter(
      ({ states }) => states?.length,
    )
    return html`${this.#sharing()}<div class="more">
      ${this.box(barWords.notes, this.notes, on => {
        this.notes = on
      })}
      ${this.box(barWords.cupsAndSpoons, this.measures !== undefined, on => {
        this.measures = on ? ownMeasures(this.numbers.language) : undefined
      })}
      <label class="choice" @change=${() => this.requestUpdate()}>
        <span>${barWords.allergensIn}</span>
        ${listSelect(ownList(this.numbers.language))}
      </label>
      ${kept.map(formula => this.#stateOf(formula))}
      ${this.measures ? html`<tb-measures .measures=${this.measures} @tb-measures=${this.#measure}></tb-measures>` : nothing}
    </div>`
  }

  /** Which state of a formula is printed. */
  #stateOf({ id, name, states = [] }: Formula): TemplateResult {
    const chosen = this.states.get(id)
    return html`<label class="choice">
      <span>${handoutBarWords.state(name)}</span>
      <select
        @change=${(event: Event) => {
          this.states = new Map(this.states).set(id, (event.target as HTMLSelectElement).value)
        }}
      >
        <option value="" ?selected=${!chosen}>${handoutBarWords.asItIs}</option>
        ${[...states].reverse().map(state => html`<option value=${state.id} ?selected=${state.id === chosen}>${state.name}</option>`)}
      </select>
    </label>`
  }

  #takePeople(typed: string): string | undefined {
    const people = readNumber(typed, this.numbers)
    if (people === undefined || !isPeople(people)) return handoutBarWords.notPeople(typed.trim())
    this.people = people
    return undefined
  }

  #chooseMakes = (event: Event): void => {
    this.makes = (event.target as HTMLSelectElement).value as EachMakes
  }

  #measure = ({ detail }: CustomEvent<HouseholdOptions>): void => {
    this.measures = detail
  }

  static override styles = [paperStyles, handoutStyles]
}
customElements.define('tb-handout', TbHandout)

declare global {
  interface HTMLElementTagNameMap {
    'tb-handout': TbHandout
  }
}
