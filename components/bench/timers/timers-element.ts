import { html, nothing, type PropertyDeclarations, type TemplateResult } from 'lit'
import type { BakeTimer } from '../../../src/day/bench/bake.js'
import type { Bench } from '../../../src/day/bench/bench-day.js'
import { stopTimer } from '../../../src/day/bench/bench-edits.js'
import type { UnderWay } from '../../../src/day/bench/todos.js'
import { BaseElement } from '../../base/base-element.js'
import { atBench } from './bench-event.js'
import { timerWords } from './words.js'

/** What shows the timers of a bench, and what goes on by itself at it, second by second. */
export abstract class TimersElement extends BaseElement {
  static override properties: PropertyDeclarations = {
    bench: { attribute: false },
    underWay: { attribute: false },
    tick: { attribute: false },
  }

  declare bench: Bench
  declare underWay: readonly UnderWay[]
  declare tick: number // the second that is shown

  protected get timers(): readonly BakeTimer[] {
    return this.bench.bakes.flatMap(bake => bake.timers)
  }

  /** The button that stops a timer, where it may be. */
  protected stop(timer: BakeTimer, look = ''): TemplateResult | typeof nothing {
    if (this.readOnly) return nothing
    return html`<button
      class=${look || nothing}
      aria-label=${timerWords.stop(timer.name)}
      @click=${() => atBench(this, (workbook, where) => stopTimer(workbook, where, timer))}
    >
      ${timerWords.stopShort}
    </button>`
  }
}
