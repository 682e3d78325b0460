import { html, nothing, type PropertyDeclarations, type PropertyValues, type TemplateResult } from 'lit'
import { nextDay } from '../../src/day/out/next-day.js'
import type { HouseholdOptions } from '../../src/dough/about/household.js'
import type { Day } from '../../src/dough/document/day.js'
import { type Formula, sameName } from '../../src/dough/document/formula.js'
import { groupsOf } from '../../src/dough/edits/fetched/shelf-edits.js'
import { copyRich, copyText } from '../base/copy-text.js'
import { wish } from '../base/events.js'
import { TbDialog } from '../controls/tb-dialog.js'
import { tellTaken } from '../desk/outside-desk.js'
import { ownList } from '../sheet/allergen-list.js'
import { fieldStyles } from '../styles/field-styles.js'
import { type FormName, fileName, forms, formsFor, type Sent, type Written } from './send-out-forms.js'
import { sendOutStyles } from './send-out-styles.js'
import { aboutForm, showWritten } from './written-shown.js'
import '../controls/tb-measures.js'
import './tb-outside-copy.js'
import './tb-photographs-out.js'
import { ownMeasures } from '../controls/tb-measures.js'
import { formWords, sendOutWords } from './words.js'

// In place of a formula's id, in which there are no blanks.
const all = ''
const whole = ' workbook'
const several = ' several'
const group = ' group ' // before its name
const ofDay = ' day'

/** A formula, several of them or the whole workbook in the form its reader needs: to look at, download or copy. */
export class TbSendOut extends TbDialog {
  static override properties: PropertyDeclarations = {
    chosen: { state: true },
    wanted: { state: true },
    measures: { state: true },
    jsonAlone: { state: true },
    written: { state: true },
  }

  declare private chosen: string // id of a formula, `all`, `several`, `whole`, `ofDay`, or a group
  declare private wanted: FormName // last chosen; another is shown where it does not fit what is sent
  declare private measures: HouseholdOptions | undefined // beneath the plain text
  declare private jsonAlone: boolean
  declare private written: Written | undefined // not yet, while the writer is being fetched

  #several: readonly string[] = [] // ids of those chosen on the shelf
  #day = '' // id of the day that is in sight beneath
  #link = ''
  #writtenFor: readonly unknown[] = []
  #shown: HouseholdOptions | undefined // brought into sight

  constructor() {
    super()
    this.chosen = all
    this.wanted = 'csv'
    this.measures = undefined
    this.jsonAlone = false
    this.written = undefined
  }

  /** Opens with what the day in sight bakes, or else with the formula of that id, with those of several, or with all of them. */
  show({ formula = all, formulas = [] }: { formula?: string; formulas?: readonly string[] } = {}): void {
    this.#several = formulas.length > 1 ? formulas : []
    this.#day = this.#dayInSight()
    this.chosen = this.#several.length ? several : (formulas[0] ?? (this.#day ? ofDay : formula))
    this.open()
  }

  #dayInSight(): string {
    const [, id] = /^#(?:days|order)(?:\/(.*))?$/.exec(location.hash) ?? []
    const { days = [] } = this.workbook
    const day = days.find(one => one.id === id) ?? (location.hash === '#days' ? nextDay(days) : undefined)
    return day?.breads.length ? day.id : ''
  }

  get #ofDay(): Day | undefined {
    return this.workbook.days?.find(({ id }) => id === this.#day)
  }

  /** What is sent where it is not the whole workbook; those that are not there any more left out. */
  get #formulas(): readonly Formula[] {
    const { chosen } = this
    const { formulas } = this.workbook
    const sent = chosen.startsWith(group)
      ? formulas.filter(f => f.group && sameName(f.group, chosen.slice(group.length)))
      : chosen === several
        ? formulas.filter(f => this.#several.includes(f.id))
        : chosen === ofDay
          ? formulas.filter(f => this.#ofDay?.breads.some(({ formula }) => formula === f.id))
          : formulas.filter(f => f.id === chosen)
    return sent.length ? sent : formulas
  }

  get #isWhole(): boolean {
    return this.chosen === whole
  }

  get #one(): Formula | undefined {
    const [first, second] = this.#formulas
    return this.#isWhole || second ? undefined : first
  }

  get #form(): FormName {
    const fitting = formsFor(this.#isWhole)
    return fitting.includes(this.wanted) ? this.wanted : fitting[0]!
  }

  override willUpdate(changed: PropertyValues): void {
    super.willUpdate(changed)
    const { workbook, larder, measures, jsonAlone, chosen } = this
    const form = this.#form
    const now =
      this.opened && workbook.formulas.length
        ? [form, chosen, this.#several, workbook, larder, measures, jsonAlone]
        : []
    if (now.length === this.#writtenFor.length && now.every((part, at) => part === this.#writtenFor[at]))
      return
    this.#writtenFor = now
    if (!now.length) this.#keep(undefined)
    else
      this.#write(form, {
        formulas: this.#formulas,
        isWhole: this.#isWhole,
        workbook,
        larder,
        measures,
        list: ownList(this.numbers.language),
        jsonAlone,
      })
  }

  #write(form: FormName, sent: Sent): void {
    const now = this.#writtenFor
    const written = forms[form].write(sent)
    if (!(written instanceof Promise)) return this.#keep(written)
    this.#keep(undefined)
    const done = (written: Written) => {
      if (this.#writtenFor === now) this.#keep(written)
    }
    written.then(done, () => done({ text: '', problem: sendOutWords.notFetched }))
  }

  /** Keeps what was written, and a link to it for the download. */
  #keep(written: Written | undefined): void {
    this.written = written
    if (this.#link) URL.revokeObjectURL(this.#link)
    const file = forms[this.#form].file
    const text = written && (written.html ?? written.text)
    this.#link =
      file && text
        ? URL.createObjectURL(
            new Blob([text], { type: `${this.#isJson ? 'application/ld+json' : file.type};charset=utf-8` }),
          )
        : ''
  }

  // Cups and spoons come after all else: they are brought into sight where they are asked for.
  override updated(): void {
    super.updated()
    const field = this.renderRoot.querySelector<HTMLElement>('textarea#text')
    if (!field || !this.written || this.measures === this.#shown) return
    this.#shown = this.measures
    field.scrollTop = this.measures ? field.scrollHeight : 0
  }

  get #isJson(): boolean {
    return this.#form === 'recipe' && this.jsonAlone
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback()
    this.#writtenFor = []
    this.#keep(undefined)
  }

  get #fileName(): string {
    const { chosen } = this
    const ofDays = chosen === ofDay ? this.#ofDay?.name : undefined
    const ofSeveral = ofDays ?? (chosen.startsWith(group) ? chosen.slice(group.length) : this.workbook.name)
    return fileName(this.#one?.name ?? ofSeveral, forms[this.#form], this.#isJson)
  }

  protected override heading(): string {
    return sendOutWords.sendOut
  }

  protected override body(): TemplateResult {
    const { formulas } = this.workbook
    if (formulas.length === 0) return html`<div class="body"><p>${sendOutWords.nothingToSend}</p></div>`
    const day = this.#ofDay
    const isAlone = formulas.length === 1 && !this.#isWhole && !day
    const chosen = isAlone ? formulas[0]!.id : this.chosen
    const option = (value: string, words: string) =>
      html`<option value=${value} ?selected=${value === chosen}>${words}</option>`
    const counted = (name: string) => formulas.filter(f => f.group && sameName(f.group, name)).length
    return html`<div class="body">
      <div class="field">
        <label for="what">${sendOutWords.what}</label>
        <select id="what" data-first @change=${this.#choose}>
          ${day ? option(ofDay, sendOutWords.ofDay(day.name)) : nothing}
          ${this.#several.length ? option(several, sendOutWords.several(this.#several.length)) : nothing}
          ${formulas.length > 1 ? option(all, sendOutWords.all(formulas.length)) : nothing}
          ${option(whole, sendOutWords.whole)}
          ${groupsOf(this.workbook).map(name => option(group + name, sendOutWords.group(name, counted(name))))}
          ${formulas.map(f => option(f.id, f.name))}
        </select>
      </div>
      ${this.#choice()}
      ${this.#options()}
      ${
        this.#isWhole
          ? html`<tb-outside-copy .file=${this.#fileName} .numbers=${this.numbers}></tb-outside-copy>
              ${this.workbook.bakes ? html`<tb-photographs-out .workbook=${this.workbook} .file=${this.#fileName} .numbers=${this.numbers}></tb-photographs-out>` : nothing}`
          : nothing
      }
      ${showWritten({ form: this.#form, file: this.#fileName, written: this.written })}
      ${aboutForm(
        this.#form,
        this.#formulas.some(f => f.states?.length),
      )}
    </div>`
  }

  #choice() {
    const form = this.#form
    return html`<fieldset class="forms">
      <legend class="unseen">${sendOutWords.form}</legend>
      ${formsFor(this.#isWhole).map(
        name => html`<label class="form">
          <input
            type="radio"
            name="form"
            .value=${name}
            .checked=${name === form}
            @change=${() => {
              this.told = ''
              this.wanted = name
            }}
          />
          ${formWords[name].label}
        </label>`,
      )}
      <p class="says">${form === 'workbook' && !this.#isWhole ? sendOutWords.partOfWorkbook : formWords[form].says}</p>
    </fieldset>`
  }

  /** What can be chosen about the form. */
  #options() {
    const box = (id: string, words: string, on: boolean, change: (on: boolean) => void) =>
      html`<label class="choice">
        <input
          type="checkbox"
          id=${id}
          .checked=${on}
          @change=${(e: Event) => change((e.target as HTMLInputElement).checked)}
        />
        <span>${words}</span>
      </label>`
    switch (this.#form) {
      case 'text':
        return html`<div class="options" @tb-measures=${this.#measure}>
          ${box('household', sendOutWords.household, this.measures !== undefined, on => {
            this.measures = on ? ownMeasures(this.numbers.language) : undefined
          })}
          ${this.measures ? html`<tb-measures .measures=${this.measures}></tb-measures>` : nothing}
        </div>`
      case 'recipe':
        return html`<div class="options">
          ${box('json', sendOutWords.jsonAlone, this.jsonAlone, on => {
            this.jsonAlone = on
          })}
        </div>`
      default:
        return nothing
    }
  }

  protected override actions(): TemplateResult | typeof nothing {
    const { written } = this
    if (this.workbook.formulas.length === 0) return nothing
    const download = html`<a
      class=${this.#form === 'table' ? 'lined' : 'main'}
      href=${this.#link}
      download=${this.#fileName}
      @click=${this.#downloaded}
      >${sendOutWords.download}</a
    >`
    const copy = html`<button
      class=${this.#link && this.#form !== 'table' ? 'lined' : 'main'}
      ?disabled=${!written?.text}
      @click=${this.#copy}
    >
      ${sendOutWords.copy}
    </button>`
    const count = this.#formulas.length
    const printed = html`<button class="lined apart" @click=${() => this.#print('card')}>${sendOutWords.printCards(count)}</button>
      <button class="lined" @click=${() => this.#print('label')}>${sendOutWords.labels(count)}</button>
      <button class="lined" @click=${() => this.#print('handout')}>${sendOutWords.handout}</button>`
    const isFileFirst = this.#link && this.#form !== 'table'
    return html`${isFileFirst ? [download, copy] : [copy, this.#link ? download : nothing]}
    ${this.#isWhole ? nothing : printed}`
  }

  #choose = (event: Event): void => {
    this.told = ''
    this.chosen = (event.target as HTMLSelectElement).value
  }

  #measure = ({ detail }: CustomEvent<HouseholdOptions>): void => {
    this.measures = detail
  }

  #downloaded = (): void => {
    if (this.#isWhole) tellTaken()
    this.told = sendOutWords.downloaded(this.#fileName)
  }

  #print(want: 'card' | 'label' | 'handout'): void {
    const [formula, ...others] = this.#formulas.map(({ id }) => id)
    const day = this.chosen === ofDay && want === 'handout' ? this.#day : ''
    this.close()
    if (day) wish(this, { want, day })
    else wish(this, others.length ? { want, formulas: [formula!, ...others] } : { want, formula: formula! })
  }

  #copy = async (): Promise<void> => {
    const { written } = this
    if (!written) return
    this.told = ''
    const copied = await (written.html ? copyRich(written.html, written.text) : copyText(written.text))
    if (copied) {
      this.told = sendOutWords.copied
      return
    }
    this.#select()
    this.told = sendOutWords.notCopied
  }

  #select(): void {
    const field = this.renderRoot.querySelector('textarea')
    const page = this.renderRoot.querySelector<HTMLElement>('.page')
    field?.focus()
    field?.select()
    if (!page) return
    page.focus()
    getSelection()?.selectAllChildren(page)
  }

  static override styles = [TbDialog.styles, fieldStyles, sendOutStyles]
}

customElements.define('tb-send-out', TbSendOut)

declare global {
  interface HTMLElementTagNameMap {
    'tb-send-out': TbSendOut
  }
}
