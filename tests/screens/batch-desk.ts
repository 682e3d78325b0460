import '../../components/batch/tb-batch'
import '../../components/batch/tb-batch-fields'
import '../../components/sheet/tb-left-over'
import type { NumberStyle } from '../../components/base/numbers'
import type { TbBatch } from '../../components/batch/tb-batch'
import type { TbBatchFields } from '../../components/batch/tb-batch-fields'
import type { TbKeepBack } from '../../components/batch/tb-keep-back'
import type { TbLeftOver } from '../../components/sheet/tb-left-over'
import { usualScale } from '../../src/dough/document/batch'
import type { Formula } from '../../src/dough/document/formula'
import type { FormulaSheet } from '../../src/dough/formula-sheet'
import { openFormula } from '../../src/dough/formula-sheet'
import { equal } from '../assert'
import { press, type } from '../keys'
import { Around, english, textOf } from './mount'

/** The batch of one formula and what is left over, with the app around them played by the test. */
export class BatchDesk {
  readonly around: Around
  readonly batch: TbBatch
  readonly leftOver: TbLeftOver
  readonly sheet: FormulaSheet
  readonly after = document.createElement('button') // or Tab in the last field leaves the page in Firefox
  edits = 0

  private constructor(formula: Formula, numbers: NumberStyle) {
    this.around = new Around({ formulas: [formula] })
    this.sheet = openFormula(formula)
    this.batch = this.around.hold(document.createElement('tb-batch'))
    this.leftOver = this.around.hold(document.createElement('tb-left-over'))
    for (const element of [this.batch, this.leftOver]) Object.assign(element, { sheet: this.sheet, numbers })
    this.after.textContent = 'After'
    document.body.append(this.after)
    let before = this.around.history.workbook
    this.around.onEdit = workbook => {
      if (workbook !== before) this.edits += 1 // what is only looked at is no edit
      before = workbook
      this.#follow()
    }
  }

  static async open(formula: Formula, numbers: NumberStyle = english): Promise<BatchDesk> {
    const desk = new BatchDesk(formula, numbers)
    await desk.settled()
    return desk
  }

  #follow(): void {
    const { formulas, scale = usualScale } = this.around.history.workbook
    this.sheet.update(formulas[0]!, this.sheet.larder, scale)
    for (const element of [this.batch, this.leftOver]) element.version += 1
  }

  async undo(): Promise<void> {
    this.around.history.undo()
    this.#follow()
    await this.settled()
  }

  async settled(): Promise<void> {
    await this.batch.updateComplete
    await this.leftOver.updateComplete
    await this.#fields?.updateComplete
    await this.keepBack?.updateComplete
    await this.batch.updateComplete
  }

  close(): void {
    this.batch.remove()
    this.leftOver.remove()
    this.after.remove()
  }

  get formula(): Formula {
    return this.sheet.formula
  }
  get #fields(): TbBatchFields | null {
    return this.batch.shadowRoot!.querySelector('tb-batch-fields')
  }
  get #roots(): ShadowRoot[] {
    const [fields, keepBack] = [this.#fields?.shadowRoot, this.keepBack?.shadowRoot]
    return [this.batch.shadowRoot!, ...(fields ? [fields] : []), ...(keepBack ? [keepBack] : [])]
  }
  get keepBack(): TbKeepBack | null {
    return this.#fields?.shadowRoot?.querySelector('tb-keep-back') ?? null
  }
  /** Whether there are fields to change it by. */
  get isOpen(): boolean {
    return this.#fields?.checkVisibility() ?? false
  }
  /** The element with the focus, of those that a baker sees. */
  get focused(): Element | null {
    return this.#roots.map(root => root.activeElement).findLast(element => element) ?? null
  }

  /** The sentence, without its button. */
  get prose(): string {
    return textOf(this.batch.shadowRoot!.querySelector('.prose')).replace(/ ?(Change|Done)$/, '')
  }
  get left(): string[] {
    return [...this.leftOver.shadowRoot!.querySelectorAll('li')].map(textOf)
  }
  /** The sentences beneath fields that were not taken. */
  get faults(): string[] {
    return this.#roots.flatMap(root => [...root.querySelectorAll('.fault')].map(textOf))
  }
  /** That not all is said yet, where it is not. */
  get unfinished(): string {
    return textOf(this.#fields?.shadowRoot?.querySelector('.unfinished') ?? null)
  }

  /** The field or control of a label, in the batch or among what is kept back. */
  control<E extends HTMLElement = HTMLInputElement>(label: string): E {
    for (const root of this.#roots)
      for (const at of root.querySelectorAll<HTMLElement>('input, select, button, summary')) {
        const named = at.ariaLabel ?? textOf(at.closest('label') ?? at)
        if (named === label || (at instanceof HTMLSelectElement && textOf(at.labels?.[0] ?? null) === label))
          return at as E
      }
    throw new Error(`There is no ${label} here.`)
  }

  /** Opens the fields with the keyboard. */
  async change(): Promise<void> {
    this.control('Change how much to make').focus()
    await press('Enter')
    await this.settled()
  }

  /** Chooses a way to say it, by typing the beginning of its words. */
  async choose(words: string, label = 'Make'): Promise<void> {
    const select = this.control<HTMLSelectElement>(label)
    select.focus()
    // Firefox adds what is typed to what was typed into a list less than a second ago, until Escape; that is for the list alone.
    addEventListener('keydown', event => event.stopPropagation(), { capture: true, once: true })
    await press('Escape')
    await type(words)
    await this.settled()
    equal(textOf(select.selectedOptions[0]!).startsWith(words), true)
  }

  /** Types into a field and leaves it. */
  async enter(label: string, text: string): Promise<void> {
    this.control(label).focus()
    await press('Control+a', 'Delete')
    if (text) await type(text)
    await press('Tab')
    await this.settled()
  }
}
