import { css, html, nothing, type TemplateResult } from 'lit'
import { repeat } from 'lit/directives/repeat.js'
import type { Bake } from '../../src/day/bench/bake.js'
import { noteBowl, tickAgain, tickOff } from '../../src/day/bench/bench-edits.js'
import type { Todo } from '../../src/day/bench/todos.js'
import { type BenchLine, weighingList } from '../../src/day/bench/weighing-list.js'
import type { DaySheet } from '../../src/day/plan/open-day.js'
import { BaseElement } from '../base/base-element.js'
import { showDecimals, showNumber } from '../base/numbers.js'
import { readNumber } from '../typed/typed-numbers.js'
import { atBench } from './timers/bench-event.js'
import './pad/tb-number-pad.js'
import { padWords } from './pad/words.js'
import { atBenchWords, careWords } from './words.js'

/** What is weighed at a step: each weight as the scale shows it, what the bowl comes to, ticked off with a knuckle. */
export class TbBenchWeighing extends BaseElement {
  static override properties = {
    sheet: { attribute: false },
    todo: { attribute: false },
    bakes: { attribute: false },
  }

  declare sheet: DaySheet
  declare todo: Todo
  declare bakes: readonly Bake[]

  override render() {
    const { lines, held, total, tare } = weighingList(this.sheet, this.todo, this.bakes)
    this.#tare = tare
    this.#finest = Math.min(1, ...lines.map(({ step }) => step))
    const { act, event } = this.todo
    const isHot = event.kind === 'bake' && act !== 'begin'
    const perishable = lines.filter(line => line.isPerishable).map(({ ingredient }) => ingredient)
    const care = [
      ...(isHot ? [careWords.hot] : []),
      ...(lines.some(({ isFlour }) => isFlour) ? [careWords.rawFlour] : []),
      ...(perishable.length ? [careWords.perishable([...new Set(perishable)].join(', '))] : []),
    ]
    return html`${care.map(words => html`<p class="care">${words}</p>`)}
      ${
        lines.length === 0
          ? nothing
          : html`<h2 class="unseen">${atBenchWords.weigh}</h2>
            <ul>
              ${repeat(
                lines,
                ({ line }) => line,
                line => this.#line(line),
              )}
            </ul>
            <p class="foot">
              ${total === undefined ? nothing : this.#total(total)}
              ${this.#steps(lines)}
            </p>
            ${
              this.readOnly
                ? nothing
                : html`<button class="lined bowl" @click=${this.#bowl}>
                    ${tare === undefined ? atBenchWords.bowlOn : atBenchWords.bowlWeighs(this.#grams(tare))}
                  </button>`
            }`
      }
      ${
        held.length && lines.length
          ? html`<p class="foot held">${atBenchWords.later}:
              ${held.map(({ ingredient, grams, at }) => atBenchWords.laterLine(ingredient, grams === undefined ? '–' : this.#grams(grams), at)).join('; ')}.</p>`
          : nothing
      }
      <tb-number-pad .numbers=${this.numbers}></tb-number-pad>`
  }

  /** A weight with as many decimals as the scale has there. */
  #grams = (grams: number, step = this.#finest): string =>
    showDecimals(grams, this.numbers, step < 1 ? Math.ceil(-Math.log10(step) - 1e-9) : 0)

  #finest = 1 // step of the scale, of all that is in the bowl
  #tare: number | undefined // grams of the bowl that stands on the scale with what is in it

  #total(grams: number): string {
    const shown = this.#grams(grams)
    return this.#tare === undefined
      ? atBenchWords.total(shown)
      : atBenchWords.totalWithBowl(shown, this.#grams(this.#tare))
  }

  /** What the scale says with a line in the bowl: before it goes in, and when it is. */
  #running(bowl: number, isIn: boolean): string {
    const shown = this.#grams(bowl)
    if (this.#tare !== undefined) return isIn ? atBenchWords.scaleHas(shown) : atBenchWords.scale(shown)
    return isIn ? atBenchWords.bowlHas(shown) : atBenchWords.bowl(shown)
  }

  #steps(lines: readonly BenchLine[]): string {
    const steps = [...new Set(lines.filter(({ wanted }) => wanted).map(({ step }) => step))]
    return steps.length === 1 ? atBenchWords.scaleStep(showNumber(steps[0]!, this.numbers)) : ''
  }

  #line(line: BenchLine): TemplateResult {
    const { ingredient, wanted, weighed, bowl, heldBack, note } = line
    const grams = weighed?.grams ?? wanted
    const isOther = weighed?.grams !== undefined && weighed.grams !== wanted
    const small = [
      bowl === undefined ? '' : this.#running(bowl, weighed !== undefined),
      heldBack
        ? heldBack.grams === undefined
          ? atBenchWords.heldBackUnknown(heldBack.at)
          : atBenchWords.heldBack(this.#grams(heldBack.grams), heldBack.at)
        : '',
      note,
    ].filter(Boolean)
    return html`<li class=${weighed ? 'ok' : ''}>
      <button
        class="tick"
        role="checkbox"
        aria-checked=${weighed ? 'true' : 'false'}
        ?disabled=${this.readOnly}
        @click=${() => this.#tick(line)}
      >
        <span class="box" aria-hidden="true">${weighed ? '✓' : ''}</span>
        <span class="name">${ingredient}<small>${small.join(' · ')}</small></span>
        <strong>${grams === undefined ? atBenchWords.unknown : html`${this.#grams(grams, line.step)}<span class="g"> g</span>`}</strong>
      </button>
      ${
        this.readOnly || !weighed
          ? nothing
          : html`<button class="other" aria-label=${atBenchWords.otherOf(ingredient)} @click=${() => this.#other(line)}>
              ${isOther ? atBenchWords.instead(this.#grams(weighed!.grams!)) : atBenchWords.other}
            </button>`
      }
    </li>`
  }

  #tick(line: BenchLine): void {
    const { todo } = this
    atBench(this, (workbook, where) =>
      line.weighed ? tickAgain(workbook, where, todo, line) : tickOff(workbook, where, todo, line),
    )
  }

  #other(line: BenchLine): void {
    const { todo } = this
    void this.renderRoot.querySelector('tb-number-pad')!.ask({
      title: atBenchWords.gramsOf(line.ingredient),
      unit: 'g',
      was: line.wanted === undefined ? '' : showNumber(line.weighed?.grams ?? line.wanted, this.numbers),
      kind: 'number',
      take: typed => {
        const grams = readNumber(typed, this.numbers)
        if (grams === undefined || grams < 0) return padWords.notANumber(typed)
        atBench(this, (workbook, where) => tickOff(workbook, where, todo, line, grams))
        return undefined
      },
    })
  }

  /** Asks what the bowl weighs, where it is not tared; nought is a scale that is. */
  #bowl = (): void => {
    const { todo } = this
    void this.renderRoot.querySelector('tb-number-pad')!.ask({
      title: atBenchWords.gramsOfBowl,
      unit: 'g',
      was: showNumber(this.#tare ?? lastBowl(this.bakes) ?? 0, this.numbers),
      kind: 'number',
      take: typed => {
        const grams = readNumber(typed, this.numbers)
        if (grams === undefined || grams < 0) return padWords.notANumber(typed)
        atBench(this, (workbook, where) => noteBowl(workbook, where, todo, grams || undefined))
        return undefined
      },
    })
  }

  static override styles = css`
    :host {
      display: block;
    }
    .bowl {
      min-height: 56px;
      margin-top: 8px;
      padding: 6px 16px;
    }
    .care {
      margin: 0 0 6px;
      padding: 6px 10px;
      background: var(--warn-wash);
      border-left: 3px solid var(--warn);
      border-radius: 0 var(--radius) var(--radius) 0;
      font-size: var(--size-small);
    }
    ul {
      list-style: none;
      margin: 10px 0 0;
      padding: 0;
      border-top: 1px solid var(--rule);
    }
    li {
      border-bottom: 1px solid var(--rule);
    }
    .tick {
      display: grid;
      grid-template-columns: 40px minmax(0, 1fr) auto;
      gap: 14px;
      align-items: center;
      width: 100%;
      min-height: 68px;
      padding: 8px 0;
      border: 0;
      border-radius: 0;
      text-align: left;
      font-size: var(--size-lead);
    }
    .tick[disabled] {
      opacity: 1;
      color: inherit;
    }
    .box {
      display: grid;
      place-items: center;
      width: 40px;
      height: 40px;
      border: 2px solid var(--rule-strong);
      border-radius: 9px;
      font-size: var(--size-figure);
      font-weight: 700;
    }
    .ok .box {
      background: var(--accent);
      border-color: var(--accent);
      color: var(--accent-ink);
    }
    .name {
      overflow-wrap: anywhere;
      line-height: 1.2;
    }
    small {
      display: block;
      color: var(--ink-soft);
      font-size: var(--size-small);
    }
    strong {
      font-size: 2.6rem; /* to be read from two metres */
      font-weight: 640;
      line-height: 1;
      letter-spacing: -0.02em;
      white-space: nowrap;
    }
    .g {
      font-size: var(--size-lead);
      font-weight: 400;
      letter-spacing: 0;
    }
    .ok strong,
    .ok .name {
      color: var(--ink-soft);
    }
    .other {
      display: block;
      min-height: 56px;
      margin: -8px 0 0 44px;
      padding: 0 10px;
      color: var(--accent);
      font-size: var(--size-small);
    }
    .foot {
      margin: 8px 0 0;
      color: var(--ink-soft);
      font-size: var(--size-small);
    }
    .unseen {
      position: absolute;
      width: 1px;
      height: 1px;
      overflow: hidden;
      clip-path: inset(50%);
    }
  `
}
/** The bowl that was last weighed: often the same one again. */
const lastBowl = (bakes: readonly Bake[]): number | undefined =>
  bakes.flatMap(({ bowls = [] }) => bowls).at(-1)?.grams

customElements.define('tb-bench-weighing', TbBenchWeighing)

declare global {
  interface HTMLElementTagNameMap {
    'tb-bench-weighing': TbBenchWeighing
  }
}
