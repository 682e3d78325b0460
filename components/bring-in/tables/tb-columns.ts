import { html, LitElement, nothing, type TemplateResult } from 'lit'
import type { TableLook } from '../../../src/exchange/arriving/arriving.js'
import {
  type ColumnUse,
  columnUses,
  type Guess,
  type Mapping,
  type RowRead,
  type StageMarks,
  stageMarks,
  tableReason,
} from '../../../src/exchange/tables/index.js'
import type { NumberStyle } from '../../base/numbers.js'
import { asTheyWrite } from '../../base/numbers.js'
import { fieldStyles } from '../../styles/field-styles.js'
import { sharedStyles } from '../../styles/shared-styles.js'
import { columnsStyles } from './columns-styles.js'
import {
  becameWords,
  columnsWords,
  countsInWords,
  markWords,
  rowWords,
  settingWords,
  useWords,
} from './words.js'

const once: readonly ColumnUse[] = ['ingredient', 'unit', 'stage', 'formula'] // one column each

/** How many rows of a table come after the first ones; neither headings nor blank rows are among either. */
function rowsBelow({ counts, first }: TableLook): number {
  const { headings: _over, blank: _between, ...rows } = counts
  return Object.values(rows).reduce((sum, count) => sum + count, 0) - first.length
}

/** How a table from elsewhere is read: a use for each column over its first rows, with what becomes of them. */
export class TbColumns extends LitElement {
  static override properties = { look: { attribute: false }, numbers: { attribute: false } }

  declare look: TableLook
  declare numbers: NumberStyle

  get #mapping(): Mapping {
    return this.look.mapping
  }

  /** Asks for the table to be read with this changed. */
  #correct(change: Partial<Mapping>): void {
    this.#tell({ ...this.#mapping, ...change })
  }

  #tell(mapping: Mapping): void {
    this.dispatchEvent(new CustomEvent('tb-mapping', { detail: mapping }))
  }

  #use(column: number, use: ColumnUse): void {
    const columns = this.#mapping.columns.map((now, at) =>
      at === column ? use : now === use && once.includes(use) ? 'leave out' : now,
    )
    const { stages } = this.#mapping
    const named = columns.includes('stage')
    const isNew = named && !this.#mapping.columns.includes('stage')
    const wasMarked = stages === 'columns' || (!named && stages === 'column')
    this.#correct({
      columns,
      stages: columns.includes('of a stage') ? 'columns' : isNew ? 'column' : wasMarked ? 'headings' : stages,
    })
  }

  #guess(about: Guess['about'], column?: number): Guess | undefined {
    return this.look.guesses.find(guess => guess.about === about && guess.column === column)
  }

  /** The sentence of a guess, while it holds. */
  #why(id: string, guess: Guess | undefined, isAsGuessed: boolean): TemplateResult {
    if (!isAsGuessed) return html`<p class="why" id=${id}>${columnsWords.asYouSaid}</p>`
    if (!guess) return html`<p class="why" id=${id}></p>`
    return html`<p class="why" id=${id}>
      ${guess.ask ? html`<b class="look">${columnsWords.pleaseLook}</b> ` : nothing}${tableReason(guess.reason).message}
    </p>`
  }

  override render() {
    const { look } = this
    const delimiter = this.#guess('delimiter')
    const more = rowsBelow(look)
    return html`
      <h3>${columnsWords.howRead}</h3>
      ${
        look.isRemembered
          ? html`<p class="remembered">
              ${columnsWords.asRemembered}
              <button class="lined" @click=${() => this.#tell(look.guessed)}>${columnsWords.guessAnew}</button>
            </p>`
          : nothing
      }
      ${delimiter ? this.#why('delimiter', delimiter, true) : nothing}
      <div class="scroller" role="region" aria-label=${columnsWords.firstRows} tabindex="0">
        <table>
          <thead>
            <tr>
              ${this.#mapping.columns.map((use, at) => this.#head(use, at))}
            </tr>
          </thead>
          <tbody>
            ${look.first.map(({ cells, read }) => this.#row(cells, read))}
          </tbody>
        </table>
      </div>
      ${more > 0 ? html`<p class="counts">${columnsWords.moreRows(more)}</p>` : nothing}
      <p class="counts" role="status">${countsInWords(look.counts)}</p>
      ${this.#settings()}
    `
  }

  #head(use: ColumnUse, at: number): TemplateResult {
    const heading = this.look.headings[at]?.trim()
    const guessed = this.look.guessed.columns[at]
    return html`<th scope="col">
      <label for="use-${at}">${heading || columnsWords.column(at + 1)}</label>
      <select
        id="use-${at}"
        aria-describedby="why-${at}"
        .value=${use}
        @change=${(e: Event) => this.#use(at, (e.target as HTMLSelectElement).value as ColumnUse)}
      >
        ${columnUses.map(one => html`<option value=${one} ?selected=${one === use}>${useWords[one]}</option>`)}
      </select>
      ${this.#why(`why-${at}`, this.#guess('column', at), use === guessed)}
    </th>`
  }

  #row(cells: readonly string[], read: RowRead): TemplateResult {
    const { columns } = this.#mapping
    return html`<tr class="source">
        ${columns.map((use, at) => html`<td class=${use === 'leave out' ? 'out' : ''}>${cells[at] ?? ''}</td>`)}
      </tr>
      <tr class=${read.became === 'not understood' ? 'becomes wrong' : 'becomes'}>
        <td colspan=${columns.length}>
          <div>${this.#became(read)}</div>
        </td>
      </tr>`
  }

  #became(read: RowRead): TemplateResult {
    const { became, ingredient, amount, stage, formula, text } = read
    const why = (read.why ?? []).map(({ message }) => message).join(' ')
    const said =
      became === 'line'
        ? html`<b>${ingredient}</b> ${amount ? html`<b>${asTheyWrite(amount, this.numbers)}</b>` : rowWords.withoutAmount}${stage ? html` <span class="quiet">${rowWords.inStage(stage)}</span>` : nothing}${why ? '.' : nothing}`
        : became === 'not understood'
          ? becameWords[became]
          : rowWords.became(
              became,
              (became === 'stage' ? stage : became === 'formula' ? formula : text) ?? '',
            )
    return html`<span aria-hidden="true">→ </span>${said}${why ? html` <span class="quiet">${why}</span>` : nothing}`
  }

  #settings(): TemplateResult {
    const { decimal, stages, headingRows, formulaName, columns } = this.#mapping
    const { guessed } = this.look
    return html`<div class="settings">
      <div class="field">
        <label for="decimal">${settingWords.decimal}</label>
        <select
          id="decimal"
          .value=${decimal}
          aria-describedby="why-decimal"
          @change=${(e: Event) => this.#correct({ decimal: (e.target as HTMLSelectElement).value === ',' ? ',' : '.' })}
        >
          <option value="." ?selected=${decimal === '.'}>${settingWords.point}</option>
          <option value="," ?selected=${decimal === ','}>${settingWords.comma}</option>
        </select>
        ${this.#why('why-decimal', this.#guess('decimal'), decimal === guessed.decimal)}
      </div>
      <div class="field">
        <label for="stages">${settingWords.stages}</label>
        <select
          id="stages"
          .value=${stages}
          aria-describedby="why-stages"
          @change=${(e: Event) => this.#correct({ stages: (e.target as HTMLSelectElement).value as StageMarks })}
        >
          ${stageMarks
            .filter(mark => mark !== 'column' || columns.includes('stage'))
            .filter(mark => (mark === 'columns') === columns.includes('of a stage'))
            .map(
              mark => html`<option value=${mark} ?selected=${mark === stages}>${markWords[mark]}</option>`,
            )}
        </select>
        ${this.#why('why-stages', this.#guess('stages'), stages === guessed.stages)}
      </div>
      <div class="field">
        <label for="headings">${settingWords.headings}</label>
        <input
          id="headings"
          type="number"
          min="0"
          max="99"
          aria-describedby="why-headings"
          .value=${String(headingRows)}
          @change=${(e: Event) => {
            const rows = Math.round((e.target as HTMLInputElement).valueAsNumber)
            if (rows >= 0 && rows < 100) this.#correct({ headingRows: rows })
          }}
        />
        ${this.#why('why-headings', this.#guess('headings'), headingRows === guessed.headingRows)}
      </div>
      ${
        columns.includes('formula')
          ? nothing
          : html`<div class="field">
              <label for="name">${settingWords.breadName}</label>
              <input
                id="name"
                autocomplete="off"
                placeholder=${settingWords.noName}
                aria-describedby="why-name"
                .value=${formulaName}
                @change=${(e: Event) => this.#correct({ formulaName: (e.target as HTMLInputElement).value.trim() })}
              />
              ${this.#why('why-name', this.#guess('formula'), formulaName === guessed.formulaName)}
            </div>`
      }
    </div>`
  }

  static override styles = [sharedStyles, fieldStyles, columnsStyles]
}
customElements.define('tb-columns', TbColumns)

declare global {
  interface HTMLElementTagNameMap {
    'tb-columns': TbColumns
  }
}
