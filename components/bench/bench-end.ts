import { html, nothing, type TemplateResult } from 'lit'
import type { Bench } from '../../src/day/bench/bench-day.js'
import { atBenchWords } from './words.js'

/** What stands where nothing is left to do; `finish` is left out where it cannot be pressed. */
export function benchEnd({ bakes }: Bench, isFinished: boolean, finish?: () => void): TemplateResult {
  return html`<section class="todo">
    <h1>${isFinished ? atBenchWords.finished : atBenchWords.allDone}</h1>
    <div class="go">
      ${
        isFinished
          ? bakes.map(
              bake =>
                html`<a class="wide" href="#bench/bake/${bake.id}">${atBenchWords.toBake(bake.name)}</a>`,
            )
          : finish
            ? html`<button class="main wide" @click=${finish}>${atBenchWords.finish}</button>`
            : nothing
      }
    </div>
  </section>`
}
