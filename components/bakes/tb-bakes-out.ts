import { css, html } from 'lit'
import type { Bake } from '../../src/day/bench/bake.js'
import { bakesIn } from '../../src/day/bench/bake-data.js'
import { bakedWith, bakeRecord } from '../../src/day/bench/bake-record.js'
import type { Larder } from '../../src/dough/document/larder.js'
import type { Workbook } from '../../src/dough/document/workbook.js'
import { BaseElement } from '../base/base-element.js'
import { downloadFile } from '../base/download.js'
import { say } from '../base/events.js'
import { partNotFetched } from '../base/words.js'
import { bakesOfWords } from './words.js'

/** Bakes as tables for other programs. */
export class TbBakesOut extends BaseElement {
  static override properties = {
    workbook: { attribute: false },
    larder: { attribute: false },
    bakes: { attribute: false },
  }

  declare workbook: Workbook
  declare larder: Larder
  declare bakes: readonly Bake[] // the earliest first

  override render() {
    return html`<button class="lined" @click=${() => this.#write('bakes')}>${bakesOfWords.csv}</button>
      <button class="lined" @click=${() => this.#write('bake-steps')}>${bakesOfWords.csvSteps}</button>`
  }

  async #write(which: 'bakes' | 'bake-steps'): Promise<void> {
    const { bakes, larder, workbook } = this
    const all = bakesIn(workbook)
    const written = bakes.map(bake => ({
      bake,
      record: bakeRecord(bake, larder, workbook.scale, bakedWith(bake, all)),
    }))
    try {
      const { writeBakes, writeBakedSteps } = await import('../../src/exchange/csv/write-bakes.js')
      const file = `${which}.csv`
      downloadFile(which === 'bakes' ? writeBakes(written) : writeBakedSteps(written), 'text/csv', file)
      say(this, bakesOfWords.downloaded(file))
    } catch {
      say(this, partNotFetched)
    }
  }

  static override styles = css`
    :host {
      display: flex;
      flex-wrap: wrap;
      gap: 10px;
      margin: 14px 0;
    }
    button {
      min-height: 48px;
      padding: 6px 14px;
    }
    @media print {
      :host {
        display: none;
      }
    }
  `
}
customElements.define('tb-bakes-out', TbBakesOut)

declare global {
  interface HTMLElementTagNameMap {
    'tb-bakes-out': TbBakesOut
  }
}
