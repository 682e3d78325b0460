import { html, type nothing, type TemplateResult } from 'lit'
import type { Larder } from '../../src/dough/document/larder.js'
import type { Workbook } from '../../src/dough/document/workbook.js'
import { SheetElement } from '../base/base-element.js'
import type { Wish } from '../base/events.js'

/** The dialogs by what a baker wants of them. They are fetched when first wanted, not for the first paint. */
const load = {
  larder: () => import('../larder/tb-larder.js'),
  'bring-in': () => import('../bring-in/tb-bring-in.js'),
  'send-out': () => import('../send-out/tb-send-out.js'),
  beside: () => import('../beside/tb-beside.js'),
  card: () => import('../card/tb-card.js'),
  cleared: () => import('../cleared/tb-cleared.js'),
  help: () => import('../help/tb-help.js'),
} as const

type DialogName = keyof typeof load

/** A dialog that is wanted, with what it is to show. */
export type DialogWish =
  | Extract<Wish, { readonly want: DialogName | 'define' }>
  | {
      readonly want: 'bring-in'
      readonly file?: File
      readonly text?: string
      readonly link?: string // fragment of the address
      readonly open?: string | undefined // id of the formula that is open beneath
    }

/** Holds the dialogs and opens them. */
export class TbDialogs extends SheetElement {
  static override properties = {
    workbook: { attribute: false },
    larder: { attribute: false },
    wanted: { state: true },
  }

  declare workbook: Workbook
  declare larder: Larder
  declare wanted: ReadonlySet<DialogName> // and loaded

  constructor() {
    super()
    this.wanted = new Set()
  }

  /** Opens a dialog; resolves when it is there, and rejects where it could not be fetched. */
  async show(wish: DialogWish): Promise<void> {
    const name = wish.want === 'define' ? 'larder' : wish.want
    await load[name]()
    this.wanted = new Set(this.wanted).add(name)
    await this.updateComplete
    const dialog = this.renderRoot.querySelector<HTMLElement & { show(detail?: unknown): void }>(`tb-${name}`)
    dialog?.show({ formula: this.sheet?.formula.id, ...wish })
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
