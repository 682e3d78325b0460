import { css, html, nothing, type TemplateResult } from 'lit'
import { clockText, lengthText, localOf } from '../../src/day/course/clock.js'
import type { Learning } from '../../src/day/learning/learning.js'
import { speedLesson, waitLesson } from '../../src/day/learning/lessons.js'
import { ripeningLearnt, saysSo, takeStepTime, waitLearnt } from '../../src/day/learning/taking-over.js'
import { type MethodCaution, methodCautions } from '../../src/day/method/cautions.js'
import { lengthOf, readStep } from '../../src/day/method/step-text.js'
import { stepName } from '../../src/day/method/words.js'
import { ripeningStep } from '../../src/day/mixing/fed-build.js'
import type { PlannedDay } from '../../src/day/plan/planned.js'
import { standingIn, type WaitLook, waitLooks } from '../../src/day/plan/wait-looks.js'
import { boundsText, eventWords } from '../../src/day/plan/words.js'
import type { Day } from '../../src/dough/document/day.js'
import type { FigureSheet } from '../../src/dough/sheet/figures.js'
import { BaseElement } from '../base/base-element.js'
import { askEdit, say } from '../base/events.js'
import { showDecimals } from '../base/numbers.js'
import '../learnt/tb-learnt.js'
import { entriesStyles } from '../styles/entries-styles.js'
import { sayCelsius } from '../typed/typed-degrees.js'
import { waitWords } from './words.js'

/** The waits of a planned day in which something ferments: what to look for, then from when to when, and what was scaled from what. */
export class TbWaits extends BaseElement {
  static override properties = {
    day: { attribute: false },
    plan: { attribute: false },
    sheetOf: { attribute: false },
    learning: { attribute: false },
  }

  declare day: Day
  declare plan: PlannedDay | undefined
  declare sheetOf: (bread: string) => FigureSheet | undefined // the formula with the day's batch

  declare learning: Learning | undefined // undefined: nothing has been baked

  override render() {
    const { plan } = this
    if (!plan) return nothing
    const looks = waitLooks(plan, this.sheetOf)
    const cautions = this.#cautions(plan)
    return html`<section aria-labelledby="heading">
        <h2 id="heading">${waitWords.heading}</h2>
        ${looks.length ? html`<ol>${looks.map(look => this.#wait(look))}</ol>` : html`<p>${waitWords.none}</p>`}
      </section>
      ${
        cautions.length
          ? html`<section aria-labelledby="cautions">
              <h2 id="cautions">${waitWords.cautions}</h2>
              ${cautions.map(
                ({ of, caution }) => html`<p class="caution"><b>${of}</b> ${caution.message}</p>`,
              )}
            </section>`
          : nothing
      }`
  }

  /** What each formula of the day gives cause to mind as it is planned. */
  #cautions(plan: PlannedDay): { readonly of: string; readonly caution: MethodCaution }[] {
    const standing = standingIn(plan)
    const seen = new Set<string>()
    return this.day.breads.flatMap(({ id }) => {
      const sheet = this.sheetOf(id)
      if (!sheet || seen.has(sheet.formula.id)) return []
      seen.add(sheet.formula.id)
      return methodCautions(sheet, standing).map(caution => ({ of: sheet.formula.name, caution }))
    })
  }

  #wait({ event, scaled, length, lookFor }: WaitLook): TemplateResult {
    const { zone } = this.day
    const clock = (instant: number) => clockText(localOf(instant, zone).minutes)
    const { from, until, breads, stageName } = event
    const names = breads.map(bread => this.sheetOf(bread)?.formula.name ?? '')
    return html`<li class="entry">
      <h3>${waitWords.title(eventWords({ ...event, load: undefined }), stageName, names)}</h3>
      ${lookFor ? html`<p class="look">${waitWords.lookFor(lookFor)}</p>` : nothing}
      <p>
        ${waitWords.between(boundsText(length), clock(from + length.least), clock(from + length.most), clock(until))}
      </p>
      ${this.#scaled(event, scaled)} ${this.#learnt(event, scaled.celsius)}
    </li>`
  }

  /** What bakes have told of a wait: of a levain by how fast it is, of all others by how long they took. */
  #learnt({ breads, stage: id, step }: WaitLook['event'], celsius: number): TemplateResult | typeof nothing {
    const { learning } = this
    const sheet = this.sheetOf(breads[0]!)
    const stage = sheet?.formula.stages.find(one => one.id === id)
    if (!learning || !sheet || !stage) return nothing
    const speed = ripeningStep(stage)?.step.id === step.id ? speedLesson(sheet, id) : undefined
    const learnt = learning.learnt(speed ?? waitLesson(sheet.formula.id, stage, step))
    const length = learnt && (speed ? ripeningLearnt(sheet, id, learnt, celsius) : waitLearnt(step, learnt))
    if (!learnt || !length) return nothing
    const at = { formula: sheet.formula.id, stage: id, step: step.id }
    const { celsius: written } = readStep(step.text)
    return html`<tb-learnt
      .learnt=${learnt}
      what=${stepName(step)}
      .show=${(value: number) => lengthText(Math.round((length.usual * value) / learnt.middle))}
      .taken=${boundsText(length)}
      .at=${written === undefined ? undefined : sayCelsius(written, this.numbers)}
      .take=${() => {
        const refusal = askEdit(this, workbook => takeStepTime(workbook, at, step, length), {
          day: this.day.id,
        })
        if (refusal) say(this, refusal)
      }}
      ?isSo=${saysSo(step, length)}
      .numbers=${this.numbers}
      ?readOnly=${this.readOnly}
    ></tb-learnt>`
  }

  #scaled({ step }: WaitLook['event'], scaled: WaitLook['scaled']) {
    const { written, celsius, factor, extrapolated, length } = scaled
    if (written === undefined || (factor === 1 && !extrapolated)) return nothing
    const { numbers } = this
    const read = readStep(step.text)
    const bounds = lengthOf(step, read, 0)
    const [from, here] = [sayCelsius(written, numbers), sayCelsius(celsius, numbers)]
    return html`<p class="scaled">
      ${
        factor === 1 || !bounds
          ? waitWords.unknown(from, here)
          : waitWords.scaled(
              boundsText(bounds),
              from,
              here,
              showDecimals(factor, numbers, 2),
              lengthText(Math.abs(length.usual - length.usual / factor) / 10), // as `scaledWait` moves both ends out
            )
      }
      ${extrapolated && factor !== 1 ? waitWords.guess : nothing}
    </p>`
  }

  static override styles = [
    entriesStyles,
    css`
      section + section {
        margin-top: 16px;
      }
      li {
        padding: 8px 0;
      }
      p {
        max-width: 62ch;
        font-size: var(--size-small);
        color: var(--ink-soft);
        overflow-wrap: anywhere;
      }
      .look {
        font-size: var(--size-text);
        color: var(--ink);
      }
      .caution {
        margin-top: 6px;
        padding-left: 10px;
        border-left: 3px solid var(--warn);
        color: var(--ink);
      }
    `,
  ]
}
customElements.define('tb-waits', TbWaits)

declare global {
  interface HTMLElementTagNameMap {
    'tb-waits': TbWaits
  }
}
