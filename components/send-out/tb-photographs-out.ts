import { css, html, nothing } from 'lit'
import type { Photograph } from '../../src/day/bench/photograph.js'
import { emptyWorkbook, type Workbook } from '../../src/dough/document/workbook.js'
import { databasePhotographs, type Photographs } from '../../src/storage/photographs/photographs.js'
import { databaseOfPage } from '../base/asked-of-page.js'
import { BaseElement } from '../base/base-element.js'
import { say } from '../base/events.js'
import { partNotFetched } from '../base/words.js'
import { photographsOutWords } from './words.js'

/** The whole workbook as a file with the photographs of its bakes, where there are any and when that is asked for. */
export class TbPhotographsOut extends BaseElement {
  static override properties = {
    workbook: { attribute: false },
    file: {},
    all: { state: true },
    working: { state: true },
  }

  declare workbook: Workbook
  declare file: string // name of the workbook file
  declare private all: readonly Photograph[]
  declare private working: boolean

  constructor() {
    super()
    this.workbook = emptyWorkbook
    this.file = ''
    this.all = []
    this.working = false
  }

  override connectedCallback(): void {
    super.connectedCallback()
    void this.#withStore(async store => {
      const bakes = new Set((this.workbook.bakes ?? []).map(({ id }) => id))
      this.all = (await store.all()).filter(({ bake }) => bakes.has(bake))
    }).catch(() => {})
  }

  async #withStore(use: (store: Photographs) => Promise<void>): Promise<void> {
    const store = databasePhotographs(databaseOfPage())
    try {
      await use(store)
    } finally {
      store.close()
    }
  }

  override render() {
    const { all, working } = this
    if (all.length === 0) return nothing
    return html`<p>
      <button class="lined" ?disabled=${working} @click=${this.#download}>
        ${working ? photographsOutWords.working : photographsOutWords.download(all.length)}
      </button>
      <small>${photographsOutWords.hint}</small>
    </p>`
  }

  #download = async (): Promise<void> => {
    this.working = true
    const { workbook, all } = this
    try {
      const [{ writeWorkbookFile }, { withPhotographs }] = await Promise.all([
        import('../../src/exchange/data/workbook-file.js'),
        import('../../src/exchange/data/photographs-in-file.js'),
      ])
      await this.#withStore(async store => {
        async function* pictures() {
          for (const photograph of all) {
            const picture = await store.picture(photograph)
            if (picture) yield { photograph, picture }
          }
        }
        const file = await withPhotographs(writeWorkbookFile(workbook), pictures())
        if (!file) return
        const link = document.createElement('a')
        link.href = URL.createObjectURL(file)
        link.download = this.file
        link.click()
        setTimeout(() => URL.revokeObjectURL(link.href), 60_000) // Safari reads the file after the click has returned
        say(this, photographsOutWords.downloaded(this.file, all.length))
      })
    } catch {
      say(this, partNotFetched)
    }
    this.working = false
  }

  static override styles = css`
    :host {
      display: block;
    }
    p {
      margin: 0 0 12px;
    }
    small {
      display: block;
      margin-top: 4px;
      color: var(--ink-soft);
      font-size: var(--size-small);
    }
  `
}
customElements.define('tb-photographs-out', TbPhotographsOut)

declare global {
  interface HTMLElementTagNameMap {
    'tb-photographs-out': TbPhotographsOut
  }
}
