import { css, html, nothing } from 'lit'
import { repeat } from 'lit/directives/repeat.js'
import { minutesOf } from '../../../src/day/bench/bake.js'
import { setTimer } from '../../../src/day/bench/bench-edits.js'
import { eventWords } from '../../../src/day/plan/words.js'
import { readNumber } from '../../typed/typed-numbers.js'
import { atBench } from './bench-event.js'
import '../pad/tb-number-pad.js'
import { padWords } from '../pad/words.js'
import { clockCut, timerText } from './timer-text.js'
import { TimersElement } from './timers-element.js'
import { timerWords } from './words.js'

/** Everything that goes on by itself: waits, bakings and the baker's own timers, each with what is left of it. */
export class TbBenchTimers extends TimersElement {
  override render() {
    const { bench, underWay, readOnly, timers } = this
    const now = Date.now() / 60_000
    const clock = (at: number) => clockCut(at, bench.day.zone)
    return html`<h2>${timerWords.timers}</h2>
      <ul>
        ${underWay.map(({ event, until }) => this.#row(eventWords(event), until, now, clock))}
        ${repeat(
          timers,
          ({ id }) => id,
          timer => this.#row(timer.name, minutesOf(timer.ends), now, clock, this.stop(timer, 'lined')),
        )}
      </ul>
      ${readOnly ? nothing : html`<button class="lined new" @click=${this.#new}>${timerWords.timer}</button>`}
      <tb-number-pad .numbers=${this.numbers}></tb-number-pad>`
  }

  #row(name: string, until: number, now: number, clock: (at: number) => string, stop: unknown = nothing) {
    const left = until - now
    return html`<li class=${left <= 0 ? 'over' : ''}>
      <span>${name}<small>${timerWords.due(clock(until))}</small></span>
      <b role="timer">${timerText(left)}</b>
      ${stop}
    </li>`
  }

  #new = (): void => {
    void this.renderRoot.querySelector('tb-number-pad')!.ask({
      title: timerWords.timerTitle,
      unit: 'min',
      was: '',
      kind: 'number',
      take: typed => {
        const minutes = readNumber(typed, this.numbers)
        if (minutes === undefined || !(minutes > 0) || minutes > 6000) return padWords.notANumber(typed)
        atBench(this, (workbook, where) => setTimer(workbook, where, timerWords.timerName(typed), minutes))
        return undefined
      },
    })
  }

  static override styles = css`
    :host {
      display: block;
      margin-top: 26px;
    }
    h2 {
      margin: 0 0 4px;
      font-size: var(--size-fine);
      font-weight: 600;
      color: var(--ink-soft);
    }
    ul {
      list-style: none;
      margin: 0 0 10px;
      padding: 0;
    }
    li {
      display: grid;
      grid-template-columns: minmax(0, 1fr) auto auto;
      gap: 4px 14px;
      align-items: center;
      min-height: 60px;
      padding: 7px 0; /* stops lie apart */
      border-bottom: 1px solid var(--rule);
      font-size: var(--size-lead);
    }
    small {
      display: block;
      color: var(--ink-soft);
      font-size: var(--size-small);
    }
    b {
      font-size: var(--size-title);
      font-weight: 600;
      letter-spacing: -0.01em;
    }
    .over b {
      color: var(--warn);
      font-size: var(--size-lead);
    }
    button {
      min-height: 56px;
    }
    .new {
      width: 100%;
    }
  `
}
customElements.define('tb-bench-timers', TbBenchTimers)

declare global {
  interface HTMLElementTagNameMap {
    'tb-bench-timers': TbBenchTimers
  }
}
