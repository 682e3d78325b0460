import { html, type nothing, type TemplateResult } from 'lit'
import type { Larder } from '../../src/dough/document/larder.js'
import type { Workbook } from '../../src/dough/document/workbook.js'
import { SheetElement } from '../base/base-element.js'
import { DialogPlaces, type DialogWish } from '../controls/dialog-places.js'

/** The dialogs by what a baker wants of them. They are fetched when first wanted, not for the first paint. */
const load = {
  larder: () => import('../larder/tb-larder.js'),
  'bring-in': () => import('../bring-in/tb-bring-in.js'),
  'send-out': () => import('../send-out/tb-send-out.js'),
  beside: () => import('../beside/tb-beside.js'),
  card: () => import('../card/tb-card.js'),
  label: () => import('../label/tb-label.js'),
  handout: () => import('../handout/tb-handout.js'),
  cleared: () => import('../cleared/tb-cleared.js'),
  help: () => import('../help/tb-help.js'),
} as const

type DialogName = keyof typeof load
type Dialog = HTMLElement & { show(detail?: unknown): void }

/** Whether two wishes are for the same; of files it is not known. */
const isSame = (a: DialogWish, b: DialogWish | undefined): boolean =>
  !('file' in a) && JSON.stringify(a) === JSON.stringify(b)

/** Holds the dialogs and opens them, each as a place in the browser's history. */
export class TbDialogs extends SheetElement {
  static override properties = {
    workbook: { attribute: false },
    larder: { attribute: false },
    wanted: { state: true },
  }

  declare workbook: Workbook
  declare larder: Larder
  declare wanted: ReadonlySet<DialogName> // and loaded

  readonly #gone = new AbortController()
  readonly #places = new DialogPlaces(wish => this.show(wish), this.#gone.signal)
  readonly #shown = new Map<DialogName, DialogWish>() // what each was last opened by

  constructor() {
    super()
    this.wanted = new Set()
  }

  protected override firstUpdated(): void {
    void this.#places.resume()
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback()
    this.#gone.abort()
  }

  /** Opens a dialog; resolves when it is there, and rejects where it could not be fetched. */
  async show(wish: DialogWish): Promise<void> {
    const name = wish.want === 'define' ? 'larder' : wish.want
    await load[name]()
    this.wanted = new Set(this.wanted).add(name)
    await this.updateComplete
    const dialog = this.renderRoot.querySelector<Dialog>(`tb-${name}`)
    if (!dialog || (this.#places.isOpen(dialog) && isSame(wish, this.#shown.get(name)))) return
    this.#shown.set(name, wish)
    this.#places.opening(wish, () => dialog.show({ formula: this.sheet?.formula.id, ...wish }))
  }

  override render() {
    return [...this.wanted].map(name => this.#dialog(name))
  }

  #dialog(name: DialogName): TemplateResult | typeof nothing {
    const { workbook, sheet, larder, numbers, readOnly } = this
    switch (name) {
      case 'larder':
        return html`<tb-larder
          .workbook=${workbook}
          .larder=${larder}
          .numbers=${numbers}
          .readOnly=${readOnly}
        ></tb-larder>`
      case 'bring-in':
        return html`<tb-bring-in
          .workbook=${workbook}
          .larder=${larder}
          .numbers=${numbers}
          .readOnly=${readOnly}
        ></tb-bring-in>`
      case 'send-out':
        return html`<tb-send-out
          .workbook=${workbook}
          .larder=${larder}
          .sheet=${sheet}
          .numbers=${numbers}
          .readOnly=${readOnly}
        ></tb-send-out>`
      case 'beside':
        return html`<tb-beside
          .workbook=${workbook}
          .larder=${larder}
          .sheet=${sheet}
          .version=${this.version}
          .numbers=${numbers}
          .readOnly=${readOnly}
        ></tb-beside>`
      case 'card':
        return html`<tb-card .workbook=${workbook} .larder=${larder} .numbers=${numbers}></tb-card>`
      case 'label':
        return html`<tb-label
          .workbook=${workbook}
          .larder=${larder}
          .numbers=${numbers}
          .readOnly=${readOnly}
        ></tb-label>`
      case 'handout':
        return html`<tb-handout .workbook=${workbook} .larder=${larder} .numbers=${numbers}></tb-handout>`
      case 'cleared':
        return html`<tb-cleared
          .workbook=${workbook}
          .numbers=${numbers}
          .readOnly=${readOnly}
        ></tb-cleared>`
      case 'help':
        return html`<tb-help .numbers=${numbers}></tb-help>`
    }
  }
}
customElements.define('tb-dialogs', TbDialogs)

declare global {
  interface HTMLElementTagNameMap {
    'tb-dialogs': TbDialogs
  }
}
