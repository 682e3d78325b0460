import { css, html, nothing } from 'lit'
import type { Bake, FigureName } from '../../src/day/bench/bake.js'
import { noteFigure } from '../../src/day/bench/bench-edits.js'
import type { Todo } from '../../src/day/bench/todos.js'
import type { DaySheet } from '../../src/day/plan/open-day.js'
import { figureWords } from '../bakes/words.js'
import { BaseElement } from '../base/base-element.js'
import { showNumber } from '../base/numbers.js'
import { readNumber } from '../typed/typed-numbers.js'
import { atBench } from './timers/bench-event.js'
import './pad/tb-number-pad.js'
import { padWords } from './pad/words.js'
import { atBenchWords } from './words.js'

/** What can be measured at a thing to do. */
function figuresAt({ act }: Todo, isWeighed: boolean): readonly FigureName[] {
  if (act === 'in' || act === 'on') return ['oven']
  if (act === 'out') return ['baked', 'oven']
  if (act === 'begin') return ['dough', 'room']
  return isWeighed ? ['room', 'flour', 'water', 'dough'] : ['dough', 'rise', 'pH', 'raw']
}

/** Figures measured at a step, each typed on the number pad. */
export class TbBenchMeasures extends BaseElement {
  static override properties = {
    sheet: { attribute: false },
    todo: { attribute: false },
    bakes: { attribute: false },
  }

  declare sheet: DaySheet
  declare todo: Todo
  declare bakes: readonly Bake[]

  override render() {
    const { todo, bakes } = this
    const { begins, breads } = todo.event
    const isWeighed = this.sheet.weighList(begins).length > 0
    const own = bakes.find(({ bread }) => bread === breads[0])?.figures.filter(f => f.moment === begins) ?? []
    const names = figuresAt(todo, isWeighed)
    if (this.readOnly && own.length === 0) return nothing
    return html`<h2>${atBenchWords.measure}</h2>
      <div>
        ${names.map(what => {
          const value = own.find(figure => figure.what === what)?.value
          const { name, unit } = figureWords[what]
          return html`<button class="lined" ?disabled=${this.readOnly} @click=${() => this.#ask(what, value)}>
            ${name}<b>${value === undefined ? '–' : `${showNumber(value, this.numbers)}${unit && ` ${unit}`}`}</b>
          </button>`
        })}
      </div>
      <tb-number-pad .numbers=${this.numbers}></tb-number-pad>`
  }

  #ask(what: FigureName, value: number | undefined): void {
    const { todo } = this
    const { name, unit } = figureWords[what]
    void this.renderRoot.querySelector('tb-number-pad')!.ask({
      title: name,
      unit,
      was: value === undefined ? '' : showNumber(value, this.numbers),
      kind: 'number',
      take: typed => {
        const read = readNumber(typed, this.numbers)
        if (read === undefined) return padWords.notANumber(typed)
        atBench(this, (workbook, where) => noteFigure(workbook, where, todo, { what, name, value: read }))
        return undefined
      },
    })
  }

  static override styles = css`
    :host {
      display: block;
      margin-top: 18px;
    }
    h2 {
      margin: 0 0 6px;
      font-size: var(--size-fine);
      font-weight: 600;
      color: var(--ink-soft);
    }
    div {
      display: grid;
      grid-template-columns: repeat(4, minmax(0, 1fr));
      gap: 8px;
    }
    @media (max-height: 480px) and (min-width: 640px) {
      div {
        grid-template-columns: repeat(2, minmax(0, 1fr));
      }
    }
    button {
      min-height: 60px;
      padding: 4px;
      font-size: var(--size-small);
    }
    b {
      display: block;
      font-size: var(--size-lead);
      font-weight: 600;
      white-space: nowrap;
    }
    button[disabled] {
      opacity: 1;
    }
  `
}
customElements.define('tb-bench-measures', TbBenchMeasures)

declare global {
  interface HTMLElementTagNameMap {
    'tb-bench-measures': TbBenchMeasures
  }
}
