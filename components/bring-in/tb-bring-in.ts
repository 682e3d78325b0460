import { html, nothing, type TemplateResult } from 'lit'
import '../../src/dough/cells/rare-cells-at-once.js'
import { usualScale } from '../../src/dough/document/batch.js'
import type { Workbook } from '../../src/dough/document/workbook.js'
import { keepAhead } from '../../src/dough/sheet/ahead.js'
import { openSheet } from '../../src/dough/sheet/sheet.js'
import type { ArrivalKind } from '../../src/exchange/arriving/arriving.js'
import { mergeWorkbooks, type RestorePlan, restorePlan } from '../../src/exchange/index.js'
import { afterPaint } from '../base/after-paint.js'
import { workbookOf } from '../base/asked-of-page.js'
import { copyText } from '../base/copy-text.js'
import { askEdit, say, wish } from '../base/events.js'
import { partNotFetched } from '../base/words.js'
import { fieldStyles } from '../styles/field-styles.js'
import { addActions, restoreActions } from './arrival-actions.js'
import { readAs, readingOn } from './arrived-parts.js'
import { asking } from './asking.js'
import { bringInStyles } from './bring-in-styles.js'
import { type Decided, type Incoming, incoming, undecided } from './decided.js'
import { fileDrop } from './file-drop.js'
import { Intake, originInWords, type Read } from './intake.js'
import { planOf } from './plan/bring-in-plan.js'
import { linesAsReadStyles } from './plan/lines-as-read.js'
import { whatToWeighStyles } from './plan/what-to-weigh.js'
import { understood } from './understood.js'
import { dialogWords } from './words.js'
import { restoreChoice } from './workbooks/restore-wish.js'
import './tables/tb-columns.js'
import { TbDialog } from '../controls/tb-dialog.js'
import './recipes/tb-recipe-lines.js'
import './recipes/tb-recipe-steps.js'
import './unknown/tb-unknown.js'
import './workbooks/tb-workbook-look.js'

/**
 * Formulas from anywhere: a formula file, a table, a recipe in words, a link, or a whole workbook. It is worked out
 * what it is, and shown as understood before anything is added.
 */
export class TbBringIn extends TbDialog {
  static override properties = {
    decided: { state: true },
    refusal: { state: true },
    pasted: { state: true },
    over: { state: true },
    wide: { type: Boolean, reflect: true },
  }

  declare private decided: Decided
  declare private refusal: string // why nothing was added
  declare private pasted: string
  declare private over: boolean // a file is held above the dialog
  declare protected wide: boolean
  #incoming!: Incoming // of each update anew

  readonly #intake = new Intake(
    () => this.requestUpdate(),
    () => this.#goOn(),
  )

  readonly #drop = fileDrop(
    over => {
      this.over = over
    },
    file => this.#take(file),
  )

  constructor() {
    super()
    this.pasted = ''
    this.over = false
    this.wide = false
    this.#forget()
  }

  #link: string | undefined // in the address
  #atOnce = false // a workbook file takes the place of nothing, or of examples that nobody touched
  #openId: string | undefined // of the formula that is open beneath; '' of none

  /** Opens at the choice of a file, or with what a file, a text or the fragment of a link holds. */
  show(detail: { file?: File; text?: string; link?: string; open?: string; restore?: boolean } = {}): void {
    this.#atOnce = detail.restore === true
    this.#link = detail.link
    this.#openId = detail.open
    this.#intake.clear()
    this.#forget()
    this.pasted = ''
    this.over = false
    this.open()
    if (detail.file) this.#take(detail.file)
    else if (detail.text !== undefined) void this.#intake.text(detail.text, this.larder)
    else if (detail.link !== undefined) void this.#intake.link(detail.link)
    else if (detail.restore !== undefined)
      void this.updateComplete.then(() => this.renderRoot.querySelector<HTMLElement>('#file')?.click())
  }

  override close(): void {
    this.#intake.clear()
    // Until now a page loaded anew would have shown it again.
    if (this.#link && location.hash === this.#link) {
      const { pathname, search } = location
      history.replaceState(null, '', `${pathname}${search}${this.#openId ? `#${this.#openId}` : ''}`)
    }
    this.#link = undefined
    super.close()
  }

  #take = (file: File): void => {
    this.#forget()
    void this.#intake.file(file, this.larder, this.numbers.language)
  }

  #forget(): void {
    keepAhead(undefined)
    this.decided = undecided
    this.refusal = ''
  }

  #decide(change: Partial<Decided>): void {
    this.decided = { ...this.decided, ...change }
  }

  protected override unsaved(): boolean {
    return this.#intake.read
      ? this.decided.said.size + this.decided.steps.size + this.decided.meanings.size > 0
      : this.pasted.trim() !== ''
  }

  /** Reading goes on at what was understood. */
  #goOn(): void {
    const arrived = this.#intake.read?.arrived
    if (this.#atOnce && arrived?.as === 'workbook' && arrived.workbook && arrived.problems.length === 0)
      return this.#restoreAtOnce(arrived.workbook)
    void this.updateComplete.then(() => this.renderRoot.querySelector<HTMLElement>('#understood')?.focus())
    void afterPaint().then(() => this.#workOutAhead())
  }

  /** While the baker looks at what was understood, what would be open after it is worked out. */
  #workOutAhead(): void {
    const { formulas, choice } = this.#incoming
    const first = formulas.find(f => choice(f) !== 'leave')
    if (first) keepAhead(openSheet(first, this.larder, this.workbook.scale ?? usualScale))
  }

  #readAs = (as: ArrivalKind): void => {
    this.#forget()
    void this.#intake.readAs(as)
  }

  #again = (): void => {
    this.#intake.clear()
    this.#forget()
    void this.updateComplete.then(() => this.focusFirst())
  }

  #stop = (): void => {
    this.#again()
    this.told = dialogWords.stopped
  }

  get #plan(): RestorePlan | undefined {
    const arrived = this.#intake.read?.arrived
    return arrived?.as === 'workbook' && arrived.workbook
      ? restorePlan(this.workbook, arrived.workbook)
      : undefined
  }

  #add = (): void => {
    const { formulas, choice } = this.#incoming
    let first: string | undefined
    const refusal = askEdit(this, workbook => {
      const plan = planOf(workbook, formulas, choice)
      first = plan.ids[0]
      return plan.transaction
    })
    if (!refusal) this.#intake.rememberColumns()
    this.#done(refusal, first)
  }

  #restore = (): void => {
    const arrived = this.#intake.read?.arrived
    if (arrived?.as !== 'workbook' || !arrived.workbook) return
    const { wanted, sure } = this.decided
    if (wanted.way === 'replace' && sure < 2) {
      this.#decide({ sure: sure === 0 ? 1 : 2 })
      void this.updateComplete.then(() =>
        this.renderRoot.querySelector<HTMLElement>('footer .lined')?.focus(),
      )
      return
    }
    const incoming = arrived.workbook
    let first: string | undefined
    const refusal = askEdit(this, workbook => {
      const choice = restoreChoice(restorePlan(workbook, incoming), wanted)
      const transaction = mergeWorkbooks(workbook, incoming, choice)
      for (const change of transaction.changes)
        if (change.of === 'formula' && change.value) first ??= change.id
      return transaction
    })
    if (!refusal) this.#keepPhotographs()
    this.#done(refusal, first)
  }

  /** Takes in the photographs of the bakes that a workbook file has brought. */
  #keepPhotographs(): void {
    const { photographs } = this.#intake
    if (!photographs) return
    const before = this.workbook.bakes ?? []
    const bakes = new Set([...before, ...(workbookOf(this)?.bakes ?? [])].map(({ id }) => id))
    void import('./workbooks/take-photographs.js')
      .then(({ takePhotographs }) => takePhotographs(photographs, bakes))
      .then(
        words => say(this, words),
        () => say(this, partNotFetched),
      )
  }

  #restoreAtOnce(file: Workbook): void {
    const refusal = askEdit(this, workbook => {
      const isEmpty = workbook.formulas.length === 0
      const choice = isEmpty ? ({ way: 'merge', differing: 'keep' } as const) : ({ way: 'replace' } as const)
      const { label, changes } = mergeWorkbooks(workbook, file, choice)
      const own = new Set(file.cleared?.map(({ id }) => id))
      // Examples that nobody touched are not cleared away.
      return {
        label,
        changes: changes.filter(
          ({ of, ...change }) => of !== 'cleared' || ('id' in change && own.has(change.id)),
        ),
      }
    })
    if (!refusal) this.#keepPhotographs()
    this.#done(refusal, refusal ? undefined : file.formulas[0]?.id)
    if (!refusal) say(this, dialogWords.restored(file.formulas.length))
  }

  #done(refusal: string | undefined, first: string | undefined): void {
    if (refusal) {
      this.refusal = refusal
      this.#decide({ sure: 0 })
      return
    }
    this.close()
    if (first) wish(this, { want: 'open', formula: first })
  }

  protected override heading(): string {
    if (this.#intake.from === 'link') return dialogWords.linkHeading
    return this.#intake.read?.arrived.as === 'workbook'
      ? dialogWords.workbookHeading
      : dialogWords.formulasHeading
  }

  protected override willUpdate(): void {
    this.#incoming = incoming(this.#intake.read, this.decided, this.workbook, this.larder)
    const as = this.#intake.read?.arrived.as
    this.wide = as === 'table' || as === 'recipe'
  }

  protected override body(): TemplateResult {
    const refusal = this.refusal || this.#intake.refusal
    return html`<div
      class="body ${this.over ? 'over' : ''}"
      aria-busy=${this.#intake.progress ? 'true' : 'false'}
      @dragover=${this.#drop.dragOver}
      @dragleave=${this.#drop.dragLeave}
      @drop=${this.#drop.drop}
    >
      ${refusal ? html`<p class="error refusal" role="alert">${refusal}</p>` : nothing}
      ${this.#intake.read ? this.#understood(this.#intake.read) : this.#notYet()}
    </div>`
  }

  #notYet(): TemplateResult {
    const { progress, refusal, from, canBeReadOtherwise } = this.#intake
    if (progress && from) return readingOn(originInWords(from), progress)
    if (from === 'link') return html`<p>${dialogWords.nothingAdded}</p>`
    const ask = asking(this.pasted, this.#take, text => {
      this.pasted = text
    })
    return html`${refusal && canBeReadOtherwise ? readAs(undefined, this.#readAs) : nothing}${ask}`
  }

  #understood(read: Read): TemplateResult {
    const { decided, workbook, larder, numbers } = this
    return understood({
      read,
      decided,
      incoming: this.#incoming,
      plan: this.#plan,
      workbook,
      larder,
      numbers,
      canBeReadOtherwise: this.#intake.canBeReadOtherwise,
      decide: change => this.#decide(change),
      readAs: this.#readAs,
      readWith: mapping => void this.#intake.readWith(mapping),
      copy: text => void this.#copy(text),
    })
  }

  #copy = async (text: string): Promise<void> => {
    this.told = ''
    const copied = await copyText(text)
    this.told = copied ? dialogWords.copied : dialogWords.notCopied
  }

  protected override actions(): TemplateResult {
    const { read, progress, from } = this.#intake
    const isLink = from === 'link'
    if (progress && !read)
      return html`<button class="lined" @click=${this.#stop}>${dialogWords.stop}</button>`
    if (!read)
      return isLink
        ? html`<button class="main" @click=${this.leave}>${dialogWords.close}</button>`
        : html`<button
            class="main"
            ?disabled=${!this.pasted.trim()}
            @click=${() => void this.#intake.text(this.pasted, this.larder)}
          >
            ${dialogWords.read}
          </button>`
    if (read.arrived.as === 'workbook') {
      const { wanted, sure } = this.decided
      const keep = () => this.#decide({ sure: 0 })
      return restoreActions(this.#plan, wanted, sure, this.readOnly, this.#restore, this.#again, keep)
    }
    const { formulas, choice } = this.#incoming
    const count = formulas.filter(f => choice(f) !== 'leave').length
    return addActions(count, isLink, this.readOnly, this.#add, isLink ? this.leave : this.#again)
  }

  static override styles = [TbDialog.styles, fieldStyles, linesAsReadStyles, whatToWeighStyles, bringInStyles]
}

customElements.define('tb-bring-in', TbBringIn)

declare global {
  interface HTMLElementTagNameMap {
    'tb-bring-in': TbBringIn
  }
}
