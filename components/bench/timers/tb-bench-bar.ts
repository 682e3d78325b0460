import { css, html, nothing } from 'lit'
import { repeat } from 'lit/directives/repeat.js'
import { minutesOf } from '../../../src/day/bench/bake.js'
import { eventWords } from '../../../src/day/plan/words.js'
import { clockCut, runOut, timerText } from './timer-text.js'
import { TimersElement } from './timers-element.js'
import { bellWords, timerWords } from './words.js'

const allButPixels = 0.99 // of the list; all of it is not always told as 1

/** What has to be seen wherever the page is scrolled to: timers that have run out, each with its stop, and what runs while its list is not in sight. */
export class TbBenchBar extends TimersElement {
  static override properties = {
    ...TimersElement.properties,
    listed: { state: true },
  }

  declare private listed: boolean // what runs is in sight in its list

  readonly #sight = new IntersectionObserver(
    seen => {
      this.listed = seen.at(-1)!.intersectionRatio > allButPixels
    },
    { threshold: [0, 0.5, allButPixels + 0.005], rootMargin: '-57px 0px 0px' }, // beneath the head of the page
  )
  #list: Element | null = null

  constructor() {
    super()
    this.listed = false
  }

  protected override updated(): void {
    const list = (this.getRootNode() as ShadowRoot).querySelector('tb-bench-timers')
    if (list === this.#list) return
    this.#list = list
    this.#sight.disconnect()
    this.listed = false
    if (list) this.#sight.observe(list)
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback()
    this.#sight.disconnect()
    this.#list = null
  }

  override render() {
    const { bench, underWay, timers } = this
    const now = Date.now() / 60_000
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
      ${
        running.length && !this.listed
          ? html`<ul aria-label=${timerWords.running}>
              ${repeat(
                running,
                ({ id }) => id,
                ({ name, until }) => html`<li>${name}<b>${timerText(until - now)}</b></li>`,
              )}
            </ul>`
          : nothing
      }
      <div class="all">
        ${repeat(
          over,
          ({ id }) => id,
          timer => html`<div class="over">
            <p><b>${timer.name}</b><small>${timerText(minutesOf(timer.ends) - now)}, ${since(timer.ends)}</small></p>
            ${this.stop(timer)}
          </div>`,
        )}
      </div>`
  }

  static override styles = css`
    :host {
      position: sticky;
      bottom: 0;
      z-index: 7;
      display: block;
      max-height: 60vh;
      overflow: auto;
      padding-bottom: env(safe-area-inset-bottom);
      background: var(--ground);
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
      padding: 6px var(--edge);
      overflow-x: auto;
      list-style: none;
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
    /* Low: what has run out and what runs in one row. */
    @media (max-height: 480px) {
      :host {
        display: flex;
      }
      .all:has(.over) {
        flex: 1;
      }
      ul {
        min-width: 0;
        align-items: center;
        padding-block: 2px;
      }
      ul:not(:has(+ .all .over)) {
        flex: 1;
      }
      ul:has(+ .all .over) {
        flex: 0 1 auto;
        max-width: 50%;
      }
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
