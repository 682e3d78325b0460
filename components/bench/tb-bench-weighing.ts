import { css, html, nothing, type TemplateResult } from 'lit'
import { repeat } from 'lit/directives/repeat.js'
import type { Bake } from '../../src/day/bench/bake.js'
import { noteBowl, tickAgain, tickOff } from '../../src/day/bench/bench-edits.js'
import type { Todo } from '../../src/day/bench/todos.js'
import { type BenchLine, type PlannedWater, weighingList } from '../../src/day/bench/weighing-list.js'
import type { DaySheet } from '../../src/day/plan/open-day.js'
import { BaseElement } from '../base/base-element.js'
import { showDecimals, showNumber } from '../base/numbers.js'
import { sayCelsius } from '../typed/typed-degrees.js'
import { readNumber } from '../typed/typed-numbers.js'
import { atBench } from './timers/bench-event.js'
import './pad/tb-bench-choices.js'
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
    const { lines, held, total, isOnDough, tare } = weighingList(this.sheet, this.todo, this.bakes)
    this.#tare = tare
    this.#isOnDough = isOnDough
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
                : html`<div class="do">
                    <button class="lined other" @click=${() => this.#others(lines)}>${atBenchWords.other}</button>
                    ${
                      isOnDough && tare === undefined
                        ? nothing
                        : html`<button class="lined" @click=${this.#bowl}>
                            ${tare === undefined ? atBenchWords.bowlOn : atBenchWords.bowlWeighs(this.#grams(tare))}
                          </button>`
                    }
                  </div>
                  <tb-bench-choices .numbers=${this.numbers}></tb-bench-choices>`
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
  #isOnDough = false // the bowl holds already what earlier steps put in
  #tare: number | undefined // grams of the bowl that stands on the scale with what is in it

  #total(grams: number): string {
    const shown = this.#grams(grams)
    return this.#tare === undefined
      ? this.#isOnDough
        ? atBenchWords.totalOnDough(shown)
        : atBenchWords.total(shown)
      : atBenchWords.totalWithBowl(shown, this.#grams(this.#tare))
  }

  /** What the scale says with a line in the bowl: before it goes in, and when it is. */
  #running(bowl: number, isIn: boolean): TemplateResult {
    const isScale = this.#tare !== undefined || this.#isOnDough
    const words = isScale
      ? isIn
        ? atBenchWords.scaleHas
        : atBenchWords.scale
      : isIn
        ? atBenchWords.bowlHas
        : atBenchWords.bowl
    return html`<span class="running">${words} <span class="grams"><b>${this.#grams(bowl, Number.isInteger(Number(bowl.toFixed(4))) ? 1 : this.#finest)}</b><span class="unseen"> g</span></span></span>`
  }

  #steps(lines: readonly BenchLine[]): string {
    const steps = [...new Set(lines.filter(({ wanted }) => wanted).map(({ step }) => step))]
    return steps.length === 1 ? atBenchWords.scaleStep(showNumber(steps[0]!, this.numbers)) : ''
  }

  /** How warm the day's plan wants water. */
  #water({ celsius, ice }: PlannedWater): string {
    const at = sayCelsius(Number(celsius.toFixed(1)), this.numbers)
    return ice ? atBenchWords.waterWithIce(at, this.#grams(ice)) : atBenchWords.waterAt(at)
  }

  #line(line: BenchLine): TemplateResult {
    const { ingredient, wanted, weighed, bowl, heldBack, note, water } = line
    const grams = weighed?.grams ?? wanted
    const isOther = weighed?.grams !== undefined && weighed.grams !== wanted && wanted !== undefined
    const small = [
      isOther ? atBenchWords.instead(this.#grams(wanted)) : '',
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
        <span class="name">${ingredient}${water ? html`<span class="unseen">, </span> <b class="water">${this.#water(water)}</b>` : nothing}<small>${small.join(' · ')}</small></span>
        <span class="weights">
          ${bowl === undefined ? nothing : this.#running(bowl, weighed !== undefined)}
          <strong>${grams === undefined ? atBenchWords.unknown : html`${this.#grams(grams, line.step)}<span class="g"> g</span>`}</strong>
        </span>
      </button>
    </li>`
  }

  #tick(line: BenchLine): void {
    const { todo } = this
    const isBegun = todo.begun !== undefined || line.weighed !== undefined
    atBench(
      this,
      (workbook, where) =>
        line.weighed ? tickAgain(workbook, where, todo, line) : tickOff(workbook, where, todo, line),
      isBegun ? undefined : todo,
    )
  }

  /** Asks which of several went in with another weight, the last that was ticked off first. */
  #others(lines: readonly BenchLine[]): void {
    const [only, more] = lines
    if (only && !more) return this.#other(only)
    const choices = lines.map(line => ({ words: line.ingredient, run: () => this.#other(line) }))
    void this.renderRoot.querySelector('tb-bench-choices')!.ask(atBenchWords.otherOf, choices)
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
        const isBegun = todo.begun !== undefined
        atBench(
          this,
          (workbook, where) => tickOff(workbook, where, todo, line, grams),
          isBegun ? undefined : todo,
        )
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
    .do {
      display: grid;
      grid-template-columns: 1fr 1fr;
      gap: 12px;
      margin-top: 10px;
    }
    .do button {
      min-height: 56px;
      padding: 6px 12px;
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
      grid-template: 'box name' auto 'box weights' auto / 56px minmax(0, 1fr);
      gap: 0 12px;
      align-items: center;
      width: 100%;
      min-height: 72px;
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
      grid-area: box;
      display: grid;
      place-items: center;
      width: 56px;
      height: 56px;
      border: 2px solid var(--rule-strong);
      border-radius: 12px;
      font-size: var(--size-title);
      font-weight: 700;
    }
    .ok .box {
      background: var(--accent);
      border-color: var(--accent);
      color: var(--accent-ink);
    }
    .name {
      grid-area: name;
      overflow-wrap: anywhere;
      line-height: 1.2;
    }
    .water {
      color: var(--accent);
      font-weight: 640;
      white-space: nowrap;
    }
    small {
      display: block;
      color: var(--ink-soft);
      font-size: var(--size-small);
    }
    .weights {
      grid-area: weights;
      display: flex;
      flex-wrap: wrap;
      align-items: baseline;
      gap: 0 14px;
    }
    .running {
      color: var(--ink-soft);
      font-size: var(--size-small);
      line-height: 1.1;
    }
    .grams {
      white-space: nowrap;
    }
    .running b {
      font-size: 2.5rem; /* likewise */
      font-weight: 600;
      letter-spacing: -0.01em;
    }
    strong {
      margin-left: auto;
      font-size: var(--size-reading); /* to be read from two metres */
      font-weight: 640;
      line-height: 1;
      letter-spacing: -0.03em;
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
    .foot {
      margin: 8px 0 0;
      color: var(--ink-soft);
      font-size: var(--size-small);
    }
    /* A phone lying on its side */
    @media (max-height: 480px) and (min-width: 640px) {
      :host {
        display: flex;
        flex-direction: column;
      }
      .care {
        order: 1;
        margin: 8px 0 0;
      }
      ul {
        margin: 0;
      }
      .tick {
        padding: 3px 0;
        min-height: 64px;
      }
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
