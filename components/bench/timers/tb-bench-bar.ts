import { css, html, nothing } from 'lit'
import { repeat } from 'lit/directives/repeat.js'
import { minutesOf } from '../../../src/day/bench/bake.js'
import type { Bench } from '../../../src/day/bench/bench-day.js'
import { stopTimer } from '../../../src/day/bench/bench-edits.js'
import type { UnderWay } from '../../../src/day/bench/todos.js'
import { eventWords } from '../../../src/day/plan/words.js'
import { BaseElement } from '../../base/base-element.js'
import { atBench } from './bench-event.js'
import { clockCut, runOut, timerText } from './timer-text.js'
import { bellWords, timerWords } from './words.js'

/** What has to be seen wherever the page is scrolled to: timers that have run out, each with its stop, and what runs. */
export class TbBenchBar extends BaseElement {
  static override properties = {
    bench: { attribute: false },
    underWay: { attribute: false },
    tick: { attribute: false },
  }

  declare bench: Bench
  declare underWay: readonly UnderWay[]
  declare tick: number // the second that is shown

  override render() {
    const { bench, underWay, readOnly } = this
    const now = Date.now() / 60_000
    const timers = bench.bakes.flatMap(bake => bake.timers)
    const over = runOut(timers, now)
    const since = (ends: string) => timerWords.since(clockCut(minutesOf(ends), bench.day.zone))
    const running = [
      ...timers
        .filter(timer => !over.includes(timer))
        .map(({ id, name, ends }) => ({ id, name, until: minutesOf(ends) })),
      ...underWay.map(({ event, until }) => ({ id: event.begins, name: eventWords(event), until })),
    ]
      .filter(({ until }) => until > now)
      .sort((a, b) => a.until - b.until)
    return html`<div role="alert" class="unseen">
        ${over.map(({ name, ends }) => html`<p>${bellWords.over(name)}, ${since(ends)}</p>`)}
      </div>
      ${repeat(
        over,
        ({ id }) => id,
        timer => html`<div class="over">
          <p><b>${timer.name}</b><small>${timerText(minutesOf(timer.ends) - now)}, ${since(timer.ends)}</small></p>
          ${
            readOnly
              ? nothing
              : html`<button
                  aria-label=${timerWords.stop(timer.name)}
                  @click=${() => atBench(this, (workbook, where) => stopTimer(workbook, where, timer))}
                >
                  ${timerWords.stopShort}
                </button>`
          }
        </div>`,
      )}
      ${
        running.length
          ? html`<ul aria-label=${timerWords.running}>
              ${repeat(
                running,
                ({ id }) => id,
                ({ name, until }) => html`<li>${name}<b>${timerText(until - now)}</b></li>`,
              )}
            </ul>`
          : nothing
      }`
  }

  static override styles = css`
    :host {
      position: sticky;
      bottom: 0;
      z-index: 7;
      display: block;
      max-height: 60vh;
      overflow: auto;
    }
    p {
      margin: 0;
    }
    .over {
      display: flex;
      align-items: center;
      justify-content: space-between;
      gap: 16px;
      padding: 10px var(--edge);
      background: var(--warn);
      color: var(--board);
      border-top: 1px solid var(--board);
    }
    .over p {
      min-width: 0;
      font-size: var(--size-title);
      line-height: 1.15;
      overflow-wrap: anywhere;
    }
    small {
      display: block;
      font-size: var(--size-lead);
    }
    button {
      flex: none;
      min-width: 128px;
      min-height: 72px;
      border: 2px solid var(--board);
      border-radius: 14px;
      background: var(--board);
      color: var(--ink);
      font-size: var(--size-figure);
      font-weight: 640;
    }
    ul {
      display: flex;
      gap: 0 26px;
      margin: 0;
      padding: 6px var(--edge) calc(6px + env(safe-area-inset-bottom));
      overflow-x: auto;
      list-style: none;
      background: var(--ground);
      border-top: 1px solid var(--rule-strong);
    }
    li {
      display: flex;
      flex: none;
      align-items: baseline;
      gap: 10px;
      font-size: var(--size-text);
      white-space: nowrap;
    }
    li b {
      font-size: var(--size-title);
      font-weight: 600;
      line-height: 1.3;
      letter-spacing: -0.01em;
    }
    @media (max-height: 480px) {
      .over {
        padding: 6px var(--edge);
      }
      .over p {
        font-size: var(--size-figure);
      }
      small {
        font-size: var(--size-text);
      }
      button {
        min-height: 56px;
      }
    }
    @media print {
      :host {
        display: none;
      }
    }
  `
}
customElements.define('tb-bench-bar', TbBenchBar)

declare global {
  interface HTMLElementTagNameMap {
    'tb-bench-bar': TbBenchBar
  }
}
