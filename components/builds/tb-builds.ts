import { css, html, nothing } from 'lit'
import { localOf } from '../../src/day/course/clock.js'
import { sharedStages } from '../../src/day/mixing/shared-stages.js'
import { type Formula, nameKey, type Stage } from '../../src/dough/document/formula.js'
import type { Workbook } from '../../src/dough/document/workbook.js'
import { letBuildGo } from '../../src/dough/edits/builds/build-edits.js'
import { buildsOf } from '../../src/dough/edits/builds/kept-builds.js'
import { askEdit, say, wish } from '../base/events.js'
import { LateElement } from '../base/late-elements.js'
import { buildWords } from './words.js'

/** Which stages of a formula are builds of the workbook, and with which breads of a day they are made together. */
export class TbBuilds extends LateElement {
  static override properties = {
    workbook: { attribute: false },
  }

  declare workbook: Workbook | undefined

  override render() {
    const { sheet, workbook } = this
    if (!sheet || !workbook) return nothing
    const { formula } = sheet
    const kept = formula.stages.filter(({ build }) => build)
    const together = togetherWith(formula, workbook)
    if (kept.length === 0 && together.length === 0) return nothing
    const builds = kept.length ? buildsOf(workbook.formulas) : new Map()
    return html`<ul aria-label=${buildWords.heading}>
      ${kept.map(stage => this.#kept(formula, stage, othersOf(formula, builds.get(nameKey(stage.build!)))))}
      ${together.map(words => html`<li>${words}</li>`)}
    </ul>`
  }

  #kept(formula: Formula, stage: Stage, others: readonly string[]) {
    return html`<li>
      <span>${buildWords.kept(stage.name, stage.build!, others)}</span>
      ${
        this.readOnly
          ? nothing
          : html`<button
              aria-label=${buildWords.letGoOf(stage.name)}
              @click=${() => this.#letGo(formula, stage)}
            >${buildWords.letGo}</button>`
      }
    </li>`
  }

  #letGo(formula: Formula, stage: Stage): void {
    const refusal = askEdit(this, workbook => letBuildGo(workbook, { formula: formula.id, stage: stage.id }))
    if (refusal) return say(this, refusal)
    this.#isLetGo = true
  }

  #isLetGo = false

  /** The button that was pressed is gone. */
  protected override updated(): void {
    if (!this.#isLetGo) return
    this.#isLetGo = false
    const next = this.renderRoot.querySelector('button')
    if (next) next.focus()
    else wish(this, { want: 'go', to: 'sheet' })
  }

  static override styles = css`
    :host {
      display: block;
    }
    ul {
      margin: 0 0 30px;
      padding: 0;
      list-style: none;
      color: var(--ink-soft);
      border-top: 1px solid var(--rule-strong);
    }
    li {
      display: flex;
      flex-wrap: wrap;
      gap: 4px 14px;
      align-items: baseline;
      padding: 7px 0;
    }
    button {
      min-height: 0;
      padding: 2px 0;
      color: var(--accent);
      text-decoration: underline;
      text-underline-offset: 3px;
    }
    li + li {
      border-top: 1px solid var(--rule);
    }
    @media print {
      ul {
        margin: 0 0 10px;
      }
    }
  `
}

const othersOf = (formula: Formula, builds: readonly { readonly formula: Formula }[] = []): string[] =>
  builds.flatMap(one => (one.formula.id === formula.id ? [] : [one.formula.name]))

/** The stages that are made for other breads as well, on days that are still to come. */
function togetherWith(formula: Formula, { days = [], formulas }: Workbook): string[] {
  const coming = days.filter(
    ({ breads, together, date, zone }) =>
      together.length > 0 &&
      date >= localOf(Date.now(), zone).date &&
      breads.some(bread => bread.formula === formula.id),
  )
  return coming.flatMap(day => {
    const here = new Set(day.breads.flatMap(b => (b.formula === formula.id ? [b.id] : [])))
    return sharedStages(day, formulas).flatMap(({ name, builds, isTogether }) => {
      if (!isTogether || !builds.some(({ bread }) => here.has(bread))) return []
      const others = day.breads.filter(b => !here.has(b.id) && builds.some(({ bread }) => bread === b.id))
      const names = others.flatMap(b => formulas.find(f => f.id === b.formula)?.name ?? [])
      return names.length ? [buildWords.together(name, day.name, names)] : []
    })
  })
}
customElements.define('tb-builds', TbBuilds)

declare global {
  interface HTMLElementTagNameMap {
    'tb-builds': TbBuilds
  }
}
