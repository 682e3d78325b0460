import { css, html, nothing } from 'lit'
import { repeat } from 'lit/directives/repeat.js'
import '../../src/dough/cells/rare-cells-at-once.js'
import type { Batch } from '../../src/dough/document/batch.js'
import { setBatch } from '../../src/dough/edits/fetched/batch-edits.js'
import type { FigureSheet } from '../../src/dough/sheet/figures.js'
import { workbookOf } from '../base/asked-of-page.js'
import { askEdit, type Edit } from '../base/events.js'
import { sentenceStyles } from '../styles/sentence-styles.js'
import {
  allOf,
  batchOf,
  blankShape,
  type Draft,
  draftOf,
  inAnotherWay,
  ingredientsOf,
  type Make,
  type Shape,
} from './batch-draft.js'
import { losesInMixing } from './batch-prose.js'
import { fieldWords, notTakenWords, wayWords } from './fields-words.js'
import './tb-keep-back.js'
import { SheetElement } from '../base/base-element.js'
import { showNumber } from '../base/numbers.js'
import { TypedFields } from '../controls/typed-fields.js'
import { readNumber, readPart, readWeight } from '../typed/typed-numbers.js'

/** How much to make and what to keep back, in sentences with fields. Each change is one edit. */
export class TbBatchFields extends SheetElement {
  static override properties = {
    edit: { attribute: false },
    kind: {},
    draft: { state: true },
    isBaked: { state: true },
  }

  declare edit: ((batch: Batch) => Edit) | undefined // where it is not the formula's own batch
  declare kind: string // begins the names of its fields
  declare draft: Draft
  declare private isBaked: boolean // there are bakes, and what they tell is fetched
  readonly #fields = new TypedFields(this, () => this.kind)
  #shown: { readonly formula: string; readonly batch: Batch | undefined } | undefined // what the draft says
  #focusNext = '' // id of the field to go to when it is there

  constructor() {
    super()
    this.kind = 'batch'
    this.draft = draftOf(undefined, undefined, this.numbers)
    this.isBaked = false
  }

  /** Fetches what bakes tell of losses, where there are any. */
  protected override firstUpdated(): void {
    if (!workbookOf(this)?.bakes?.length) return
    void import('../learnt/tb-learnt-losses.js').then(
      () => {
        this.isBaked = true
      },
      () => {},
    )
  }

  protected override willUpdate(): void {
    if (!this.sheet) return
    const { id, batch } = this.sheet.formula
    if (this.#shown?.formula === id && this.#shown.batch === batch) return
    const isSame = this.#shown?.formula === id
    this.#fields.forget()
    this.draft = draftOf(batch, isSame ? this.draft : undefined, this.numbers)
    this.#shown = { formula: id, batch }
  }

  protected override updated(): void {
    if (!this.#focusNext) return
    this.renderRoot.querySelector<HTMLElement>(`#${this.#focusNext}`)?.focus()
    this.#focusNext = ''
  }

  override render() {
    const { sheet } = this
    if (!sheet) return nothing
    const { make } = this.draft
    return html`<p class="line">
        <label for="make">${fieldWords.make}</label>
        <select id="make" @change=${this.#chooseWay}>
          ${Object.entries(wayWords).map(([way, words]) => html`<option value=${way} .selected=${way === make}>${words}</option>`)}
        </select>
        ${this.#amount(sheet)}
      </p>
      ${this.#fields.faults('dough', 'flour', 'allOf', 'factor')}
      ${losesInMixing(make) ? this.#pieces() : nothing}
      ${
        batchOf(this.draft, this.numbers) === undefined
          ? html`<p class="unfinished quiet">${fieldWords.unfinished}</p>`
          : nothing
      }
      ${
        this.edit
          ? nothing
          : html`<tb-keep-back
            .sheet=${sheet}
            .version=${this.version}
            .numbers=${this.numbers}
          ></tb-keep-back>
          <p class="line"><a href="#order/${sheet.formula.id}">${fieldWords.order}</a></p>`
      }`
  }

  #amount(sheet: FigureSheet) {
    const { make } = this.draft
    switch (make) {
      case 'dough':
      case 'flour':
        return this.#weight(make, make === 'dough' ? fieldWords.weightOfDough : fieldWords.weightOfFlour)
      case 'all of':
        return html`${this.#weight('allOf', fieldWords.weightOfIngredient)} ${fieldWords.of} ${this.#ingredients(sheet)}`
      case 'factor':
        return html`${this.#fields.field({
          name: 'factor',
          label: fieldWords.timesWritten,
          typedAs: `factor ${make}`,
          kept: this.draft.factor,
          short: true,
          take: typed => this.#takeNumber(typed, notTakenWords.factor, factor => ({ factor })),
        })} ${fieldWords.times}`
      default:
        return nothing
    }
  }

  #weight(name: 'dough' | 'flour' | 'allOf', label: string) {
    return this.#fields.field({
      name,
      label,
      typedAs: `${name} ${this.draft.make}`,
      kept: this.draft[name],
      unit: 'g',
      take: typed => this.#takeWeight(typed, grams => ({ [name]: grams })),
    })
  }

  #ingredients(sheet: FigureSheet) {
    const { stages, ingredients } = ingredientsOf(sheet.formula)
    const { ingredient } = this.draft
    const known = [...stages, ...ingredients]
    const options = known.includes(ingredient) || !ingredient ? known : [ingredient, ...known]
    return html`<select id="ingredient" aria-label=${fieldWords.ingredient} @change=${this.#chooseIngredient}>
      ${options.map(name => html`<option value=${name} .selected=${name === ingredient}>${name}</option>`)}
    </select>`
  }

  #pieces() {
    const { shapes, make } = this.draft
    const numberOf = (at: number) => (shapes.length > 1 ? at + 1 : undefined)
    return html`${repeat(
      shapes,
      shape => shape.key,
      (shape, at) => html`<p class="line">
          ${this.#fields.field({
            name: `count-${shape.key}`,
            typedAs: `count-${at} ${make}`,
            label: fieldWords.count(numberOf(at)),
            kept: shape.count,
            short: true,
            take: typed =>
              this.#takeNumber(typed, notTakenWords.count, count => this.#with(shape, { count })),
          })}
          ${fieldWords.piecesOf}
          ${this.#fields.field({
            name: `weight-${shape.key}`,
            typedAs: `weight-${at} ${make}`,
            label: fieldWords.weightOfPiece(numberOf(at)),
            kept: shape.weight,
            unit: 'g',
            take: typed => this.#takeWeight(typed, weight => this.#with(shape, { weight })),
          })}
          ${make === 'baked pieces' ? fieldWords.whenBaked : nothing}
          <span class="shape">${this.#fields.field({
            name: `name-${shape.key}`,
            typedAs: `name-${at} ${make}`,
            label: fieldWords.nameOfShape(numberOf(at)),
            kept: shape.name,
            hint: fieldWords.shapeHint,
            keys: 'text',
            take: typed => this.#say(this.#with(shape, { name: typed.trim() })),
          })}</span>
          ${
            shapes.length > 1
              ? html`<button aria-label=${fieldWords.leaveOutShape(at + 1)} @click=${() => this.#leaveOut(shape)}>${fieldWords.leaveOut}</button>`
              : nothing
          }
        </p>
        ${this.#fields.faults(`count-${shape.key}`, `weight-${shape.key}`)}`,
    )}
    <p class="line"><button id="add" @click=${this.#addShape}>${fieldWords.addShape}</button></p>
    ${this.#loss('bakeLoss', fieldWords.bakeLoss)} ${this.#loss('loss', fieldWords.loss)}`
  }

  #loss(name: 'loss' | 'bakeLoss', words: string) {
    return html`<p class="line">
        ${words}
        ${this.#fields.field({
          name,
          label: fieldWords.perCent(words),
          typedAs: `${name} ${this.draft.make}`,
          kept: this.draft[name],
          unit: '%',
          short: true,
          take: typed => this.#takePart(typed, name),
        })}
      </p>
      ${this.#fields.faults(name)}
      ${
        this.isBaked && !this.edit
          ? html`<tb-learnt-losses
            .sheet=${this.sheet}
            loss=${name}
            .kept=${this.sheet?.formula.batch?.[name] ?? 0}
            .take=${(loss: number) => this.#say({ [name]: loss ? showNumber(loss * 100, this.numbers) : '' })}
            .numbers=${this.numbers}
          ></tb-learnt-losses>`
          : nothing
      }`
  }

  /** Has the field of that name, as one makes so, there to be typed in. */
  openField(name: string, make: string): void {
    if (make in wayWords && make !== this.draft.make)
      this.#say(inAnotherWay(this.draft, make as Make, this.sheet!, this.numbers))
    const shape = Number(/^(?:count|weight|name)-(\d+)$/.exec(name)?.[1] ?? 0)
    if (shape === this.draft.shapes.length) this.#addShape()
  }

  #with(shape: Shape, fields: Partial<Shape>): Partial<Draft> {
    return { shapes: this.draft.shapes.map(s => (s.key === shape.key ? { ...s, ...fields } : s)) }
  }

  #takeNumber(typed: string, whyNot: string, fields: (kept: string) => Partial<Draft>): string | undefined {
    const value = readNumber(typed, this.numbers) ?? 0
    return value > 0 ? this.#say(fields(showNumber(value, this.numbers))) : whyNot
  }

  #takeWeight(typed: string, fields: (kept: string) => Partial<Draft>): string | undefined {
    const grams = readWeight(typed, this.numbers) ?? 0
    const example = this.numbers.decimal === ',' ? '1,2 kg' : '1.2 kg'
    return grams > 0 ? this.#say(fields(showNumber(grams, this.numbers))) : notTakenWords.weight(example)
  }

  #takePart(typed: string, name: 'loss' | 'bakeLoss'): string | undefined {
    const part = readPart(typed, this.numbers)
    return part !== undefined && part >= 0 && part < 1
      ? this.#say({ [name]: part ? showNumber(part * 100, this.numbers) : '' })
      : notTakenWords.loss
  }

  /** Takes a change of the draft, as an edit when all is said. Returns why not. */
  #say(fields: Partial<Draft>): string | undefined {
    const { id } = this.sheet!.formula
    const before = this.draft
    this.draft = { ...before, ...fields }
    const batch = batchOf(this.draft, this.numbers)
    if (!batch) return undefined
    const shown = this.#shown
    this.#shown = { formula: id, batch } // so that what is typed in other fields stays
    const refusal = askEdit(this, this.edit?.(batch) ?? (workbook => setBatch(workbook, id, batch)))
    if (!refusal) return undefined
    this.draft = before
    this.#shown = shown
    return refusal
  }

  #chooseWay = (event: Event): void => {
    const make = (event.target as HTMLSelectElement).value as Make
    this.#say(inAnotherWay(this.draft, make, this.sheet!, this.numbers))
  }

  #chooseIngredient = (event: Event): void => {
    const ingredient = (event.target as HTMLSelectElement).value
    this.#say(allOf(this.draft, ingredient, this.sheet!, this.numbers))
  }

  #addShape = (): void => {
    const shape = blankShape()
    this.draft = { ...this.draft, shapes: [...this.draft.shapes, shape] }
    this.#focusNext = `count-${shape.key}`
  }

  #leaveOut(shape: Shape): void {
    const shapes = this.draft.shapes.filter(s => s.key !== shape.key)
    this.#focusNext = 'add'
    this.#say({ shapes })
  }

  static override styles = [
    sentenceStyles,
    css`
      .unfinished {
        margin: 2px 0 6px;
        font-size: var(--size-small);
      }
      .shape .typed input {
        width: 9em;
        text-align: left;
        font-weight: 400;
      }
      tb-keep-back {
        margin-top: 6px;
      }
      a {
        padding: calc(var(--target) / 2 - 12px) 0;
        color: var(--accent);
        text-underline-offset: 3px;
      }
    `,
  ]
}
customElements.define('tb-batch-fields', TbBatchFields)

declare global {
  interface HTMLElementTagNameMap {
    'tb-batch-fields': TbBatchFields
  }
}
