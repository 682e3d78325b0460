import { css, html, nothing } from 'lit'
import type { Workbook } from '../../src/dough/document/workbook.js'
import { renameFormula, setFormulaNote } from '../../src/dough/edits/edits.js'
import type { FigureSheet } from '../../src/dough/sheet/figures.js'
import { allTouched, type Touched } from '../../src/dough/sheet/touched.js'
import { fetchWhenIdle } from '../base/after-paint.js'
import { askEdit, say } from '../base/events.js'
import { narrow, slim } from '../styles/breakpoints.js'
import '../controls/tb-fold.js'
import type { GridPlace } from '../grid/tb-grid.js'
import '../grid/tb-grid.js'
import '../controls/tb-grow.js'
import { SheetElement } from '../base/base-element.js'
import { sheetWords } from './words.js'

/** One formula to read and to write: its name and note, what 100 % weighs, the dough drawn, the grid, the cautions. */
export class TbSheet extends SheetElement {
  static override properties = {
    touched: { attribute: false },
    workbook: { attribute: false },
    lit: { attribute: false },
  }

  declare touched: Touched // of the sheet, since it was last given
  declare workbook: Workbook | undefined // that the formula is of
  declare lit: ReadonlySet<string> // ids of the lines that an open working speaks of

  constructor() {
    super()
    this.touched = allTouched
    this.lit = new Set()
  }

  override render() {
    const { sheet, version, numbers, readOnly } = this
    if (!sheet) return nothing
    const { formula } = sheet
    return html`
      <div class="head">
        <h1>
          <tb-grow
            field="name"
            label=${sheetWords.formulaName}
            .value=${formula.name}
            ?readOnly=${readOnly}
            @tb-entered=${this.#rename}
          @tb-left=${() => this.goTo({})}
          ></tb-grow>
        </h1>
        ${
          readOnly && !formula.states?.length
            ? nothing
            : html`<tb-fold
              data-opens="state"
              words=${sheetWords.keptStates}
              .count=${formula.states?.length ?? 0}
              .of=${formula.id}
              .inside=${() => this.#states()}
            ></tb-fold>`
        }
        ${
          readOnly
            ? nothing
            : html`<tb-fold
              words=${sheetWords.gramsOrPercentages}
              .of=${formula.id}
              .inside=${() => this.#rewrite()}
            ></tb-fold>`
        }
      </div>
      ${
        readOnly && !formula.note
          ? nothing
          : html`<tb-grow
            class="note"
            field="note"
            wide
            folds
            label=${sheetWords.formulaNote}
            hint=${sheetWords.addNote}
            manyLines
            .value=${formula.note}
            ?readOnly=${readOnly}
            @tb-entered=${this.#note}
          ></tb-grow>`
      }
      <div class="make">
        <tb-flour-weight
          .sheet=${sheet}
          .version=${version}
          .numbers=${numbers}
          ?readOnly=${readOnly}
        ></tb-flour-weight>
        <tb-batch
          .sheet=${sheet}
          .version=${version}
          .numbers=${numbers}
          ?readOnly=${readOnly}
        ></tb-batch>
      </div>
      <tb-dough-bar .sheet=${sheet} .version=${version} .numbers=${numbers}></tb-dough-bar>
      <tb-grid
        .sheet=${sheet}
        .version=${version}
        .touched=${this.touched}
        .numbers=${numbers}
        .readOnly=${readOnly}
        .formulas=${this.workbook?.formulas}
        .names=${this.#offeredNames(sheet)}
        .lit=${this.lit}
        @tb-method=${this.#toMethod}
      ></tb-grid>
      <tb-left-over .sheet=${sheet} .version=${version} .numbers=${numbers}></tb-left-over>
      <tb-builds .sheet=${sheet} .version=${version} .workbook=${this.workbook} ?readOnly=${readOnly}></tb-builds>
      ${
        readOnly && !formula.stages.some(s => s.method?.length)
          ? nothing
          : html`<tb-method
            tabindex="0"
            role="group"
            aria-label=${sheetWords.method}
            .sheet=${sheet}
            .leeway=${this.workbook?.leeway}
            .version=${version}
            .numbers=${numbers}
            ?readOnly=${readOnly}
          ></tb-method>`
      }
      ${
        readOnly && !formula.jottings?.length
          ? nothing
          : html`<tb-jottings
            tabindex="0"
            role="group"
            aria-label=${sheetWords.jottings}
            .sheet=${sheet}
            .version=${version}
            .numbers=${numbers}
            ?readOnly=${readOnly}
          ></tb-jottings>`
      }
      <tb-cautions .sheet=${sheet} .version=${version} .numbers=${numbers}></tb-cautions>
    `
  }

  protected override firstUpdated(): void {
    void fetchWhenIdle(() =>
      Promise.all([
        import('./tb-flour-weight.js'),
        import('../batch/tb-batch.js'),
        import('./tb-dough-bar.js'),
        import('./tb-left-over.js'),
        import('./tb-cautions.js'),
        import('../builds/tb-builds.js'),
      ]),
    )
  }

  #near = new IntersectionObserver(seen => {
    for (const { isIntersecting, target } of seen) if (isIntersecting) this.#fetch(target.localName)
  })

  // What stands beneath the grid is fetched when it comes into view, as it does when it is gone to by keys: until then it
  // is itself a stop of the Tab key. Jottings there are fetched at once.
  protected override updated(): void {
    for (const place of this.renderRoot.querySelectorAll(':is(tb-method, tb-jottings):not(:defined)')) {
      if (place.localName === 'tb-jottings' && this.sheet?.formula.jottings?.length)
        this.#fetch(place.localName)
      else this.#near.observe(place)
    }
  }

  #fetch(name: string): void {
    const place = this.renderRoot.querySelector(name)
    if (place) this.#near.unobserve(place)
    void (name === 'tb-method' ? import('../method/tb-method.js') : import('../jottings/tb-jottings.js'))
  }

  /** Brings the steps of a stage into view, fetched if need be. */
  #toMethod = async ({ detail }: CustomEvent<string>): Promise<void> => {
    await import('../method/tb-method.js')
    await this.renderRoot.querySelector('tb-method')?.goTo(detail)
  }

  // Both are fetched when their fold is first opened.
  #states() {
    void import('./tb-states.js')
    const { sheet, version, numbers, readOnly } = this
    return html`<tb-states .sheet=${sheet} .version=${version} .numbers=${numbers} ?readOnly=${readOnly}></tb-states>`
  }
  #rewrite() {
    void import('./tb-rewrite.js')
    return html`<tb-rewrite .sheet=${this.sheet}></tb-rewrite>`
  }

  #names: readonly string[] = []

  /** The larder’s, and those of other formulas: their doughs can be taken. */
  #offeredNames({ larder, formula }: FigureSheet): readonly string[] {
    const others = this.workbook?.formulas.filter(f => f.id !== formula.id) ?? []
    const now = [...larder.ingredients, ...others].map(({ name }) => name)
    if (now.join('\n') !== this.#names.join('\n')) this.#names = now
    return this.#names
  }

  /** Resolves when its grid is on the screen. */
  async drawn(): Promise<void> {
    await this.updateComplete
    await this.renderRoot.querySelector('tb-grid')?.updateComplete
  }

  /** Brings a place of the grid into view and puts the focus on it. */
  async goTo(place: Partial<GridPlace>): Promise<void> {
    await this.updateComplete
    this.renderRoot.querySelector('tb-grid')?.goTo(place)
  }

  /** Puts the focus on the formula's name, all of it selected. */
  async nameIt(): Promise<void> {
    await this.updateComplete
    const name = this.renderRoot.querySelector('tb-grow')
    await name?.updateComplete
    name?.focus()
  }

  #rename = ({ detail }: CustomEvent<string>): void => {
    const { id } = this.sheet!.formula
    this.#told(askEdit(this, workbook => renameFormula(workbook, id, detail)))
  }

  #note = ({ detail }: CustomEvent<string>): void => {
    const { id } = this.sheet!.formula
    this.#told(askEdit(this, workbook => setFormulaNote(workbook, id, detail)))
  }

  #told(refusal: string | undefined): void {
    if (refusal) say(this, refusal)
  }

  static override styles = css`
    :host {
      display: block;
    }
    /* The folds stand beside the name; what they open takes a row beneath. */
    .head {
      display: flex;
      flex-wrap: wrap;
      align-items: baseline;
      gap: 0 12px;
    }
    h1 {
      flex: 1 1 8.5rem;
      min-width: 0;
      margin: 0 0 0 -9px;
      font-size: var(--size-title);
      font-weight: 640;
      line-height: 1.15;
      letter-spacing: -0.015em;
    }
    .note {
      margin: 0 0 0 -9px;
      color: var(--ink-soft);
      max-width: 84ch;
    }
    .make {
      display: flex;
      flex-wrap: wrap;
      align-items: baseline;
      gap: 2px 18px;
      min-height: 2.25rem; /* what stands in it comes when the page is idle */
      margin: 2px 0 6px;
    }
    tb-batch {
      flex: 1 1 16em;
      min-width: 0;
    }
    tb-method,
    tb-jottings {
      display: block;
      margin: 0 0 30px;
    }
    :is(tb-method, tb-jottings):not(:defined) {
      min-height: 100px;
    }
    /* As high as with one row of words, or two, from before it is fetched, so that nothing moves when it comes */
    tb-dough-bar {
      display: block;
      min-height: 3.125rem;
    }
    @media ${slim} {
      .make {
        min-height: 3.875rem;
      }
      tb-dough-bar {
        min-height: 4.75rem;
      }
    }
    tb-grid {
      display: block;
      margin: 4px 0 28px;
    }
    tb-cautions {
      padding-top: 14px;
      border-top: 1px solid var(--rule);
    }
    @media ${narrow} {
      h1 {
        font-size: var(--size-figure);
      }
    }
    @media print {
      tb-grid {
        margin-bottom: 10px;
      }
      /* What is done stands under each stage of the grid; all of it is the card's. */
      tb-method,
      tb-jottings:not(:defined) {
        display: none;
      }
    }
  `
}
customElements.define('tb-sheet', TbSheet)

declare global {
  interface HTMLElementTagNameMap {
    'tb-sheet': TbSheet
  }
}
