import { css, html, nothing } from 'lit'
import { live } from 'lit/directives/live.js'
import { repeat } from 'lit/directives/repeat.js'
import type { Scale } from '../../src/dough/document/batch.js'
import { scaleProblem } from '../../src/dough/document/batch-checks.js'
import type { Stage } from '../../src/dough/document/formula.js'
import { setKeepBack, setScale, setStageLoss } from '../../src/dough/edits/fetched/batch-edits.js'
import type { FigureSheet } from '../../src/dough/sheet/figures.js'
import { SheetElement } from '../base/base-element.js'
import { askEdit } from '../base/events.js'
import { showNumber } from '../base/numbers.js'
import { TypedFields } from '../controls/typed-fields.js'
import { sentenceStyles } from '../styles/sentence-styles.js'
import { readPart, readWeight } from '../typed/typed-numbers.js'
import { earlierStages } from './batch-prose.js'
import { keepBackWords, notTakenWords, scaleWords } from './fields-words.js'

/** What is kept back of each earlier stage; and, seldom wanted, what is lost of it and how the scale weighs. */
export class TbKeepBack extends SheetElement {
  readonly #fields = new TypedFields(this)

  override render() {
    const { sheet } = this
    if (!sheet) return nothing
    const stages = earlierStages(sheet.formula)
    const ferments = stages.filter(stage => sheet.stage(stage.id).ferments || stage.keepBack)
    const others = stages.filter(stage => !ferments.includes(stage))
    return html`${this.#each(ferments, stage => this.#keepBack(sheet, stage))}
      <details>
        <summary>${keepBackWords.more(stages.length > 0)}</summary>
        ${this.#each(others, stage => this.#keepBack(sheet, stage))}
        ${this.#each(stages, stage => this.#loss(stage))} ${this.#scale(sheet.scale)}
      </details>`
  }

  #each(stages: readonly Stage[], line: (stage: Stage) => unknown) {
    return repeat(stages, stage => stage.id, line)
  }

  #keepBack(sheet: FigureSheet, stage: Stage) {
    const { id, name, keepBack } = stage
    const field = `keep-${id}`
    const hasSeed = keepBack === 'seed' || stage.lines.some(line => sheet.line(line.id).is === 'starter')
    return html`<div class="line">
        <span>${keepBackWords.keepBack}</span>
        ${
          keepBack === 'seed'
            ? nothing
            : this.#fields.field({
                name: field,
                label: keepBackWords.gramsOf(name),
                kept: keepBack ? showNumber(keepBack, this.numbers) : '',
                unit: 'g',
                take: typed => this.#take(typed, notTakenWords.keepBack, g => this.#keep(stage, g)),
              })
        }
        <span>${keepBack === 'seed' ? html`<b>${keepBackWords.asItsSeed(name)}</b>` : keepBackWords.of(name)}</span>
        ${
          hasSeed
            ? html`<label class="check"><input
                type="checkbox"
                .checked=${live(keepBack === 'seed')}
                @change=${(event: Event) => this.#keep(stage, (event.target as HTMLInputElement).checked ? 'seed' : 0)}
              />${keepBackWords.asSeed}<span class="unseen">${keepBackWords.seedOf(name)}</span></label>`
            : nothing
        }
      </div>
      ${this.#fields.faults(field)}`
  }

  #loss(stage: Stage) {
    const { id, name, loss } = stage
    const field = `loss-${id}`
    return html`<div class="line">
        <span>${keepBackWords.lossOf(name)}</span>
        ${this.#fields.field({
          name: field,
          label: keepBackWords.lostOf(name),
          kept: loss ? showNumber(loss * 100, this.numbers) : '',
          unit: '%',
          short: true,
          take: typed => {
            const part = readPart(typed, this.numbers) ?? Number.NaN
            return askEdit(this, workbook => setStageLoss(workbook, this.#at(stage), part))
          },
        })}
        <span>${keepBackWords.isLost}</span>
      </div>
      ${this.#fields.faults(field)}`
  }

  #scale(scale: Scale) {
    const step = (name: keyof Scale) =>
      this.#fields.field({
        name,
        label: scaleWords[name],
        kept: showNumber(scale[name], this.numbers),
        unit: 'g',
        short: true,
        take: typed =>
          this.#take(typed, notTakenWords.step, grams => this.#weighIn({ ...scale, [name]: grams })),
      })
    return html`<div class="line">
        <span>${scaleWords.inSteps}</span> ${step('step')}
        <span>${scaleWords.andOf}</span> ${step('fineStep')}
        <span>${scaleWords.below}</span> ${step('fineBelow')}
      </div>
      ${this.#fields.faults('step', 'fineStep', 'fineBelow')}`
  }

  #take(typed: string, whyNot: string, use: (grams: number) => string | undefined): string | undefined {
    const grams = typed.trim() === '' ? 0 : readWeight(typed, this.numbers)
    return grams === undefined ? whyNot : use(grams)
  }

  #at = (stage: Stage) => ({ formula: this.sheet!.formula.id, stage: stage.id })

  #keep(stage: Stage, keepBack: number | 'seed'): string | undefined {
    return askEdit(this, workbook => setKeepBack(workbook, this.#at(stage), keepBack))
  }

  #weighIn(scale: Scale): string | undefined {
    return scaleProblem(scale)?.message ?? askEdit(this, () => setScale(scale))
  }

  static override styles = [
    sentenceStyles,
    css`
      summary {
        display: list-item;
        width: fit-content;
        min-height: var(--target);
        padding: 6px 8px 6px 0;
        color: var(--ink-soft);
        font-size: var(--size-small);
        cursor: pointer;
        border-radius: var(--radius);
      }
      b {
        color: var(--ink);
        font-weight: 620;
      }
    `,
  ]
}
customElements.define('tb-keep-back', TbKeepBack)

declare global {
  interface HTMLElementTagNameMap {
    'tb-keep-back': TbKeepBack
  }
}
