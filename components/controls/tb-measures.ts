import { css, html, type PropertyDeclarations } from 'lit'
import type { HouseholdOptions, MeasureSystem } from '../../src/dough/about/household.js'
import { BaseElement } from '../base/base-element.js'
import { keepOwnChoice, ownChoice } from '../base/own-choices.js'
import { fractionWords, measureWords, systemWords } from './words.js'

const systems: readonly MeasureSystem[] = ['us', 'metric', 'imperial']

/** Sets of measures as kitchens have them: by the part that gives a set its name. */
const sets: readonly { readonly sign: keyof typeof fractionWords; readonly parts: readonly number[] }[] = [
  { sign: '½', parts: [1 / 2] },
  { sign: '⅓', parts: [1 / 3, 2 / 3] },
  { sign: '¼', parts: [1 / 4, 3 / 4] },
  { sign: '⅛', parts: [1 / 8, 3 / 8, 5 / 8, 7 / 8] },
]

const usualSigns = '½⅓¼'

/** The cups and spoons that were last chosen in this browser. */
export function ownMeasures(language: string): HouseholdOptions {
  const usual = /-(?:us|lr|mm)$/i.test(language) ? 'us' : 'metric'
  const signs = ownChoice('fractions', allSigns(), usualSigns)
  return {
    system: ownChoice('measures', systems, usual),
    fractions: sets.filter(({ sign }) => signs.includes(sign)).flatMap(({ parts }) => parts),
  }
}

/** Every choice of sets there can be. */
const allSigns = (): string[] =>
  Array.from({ length: 2 ** sets.length }, (_, which) =>
    sets
      .filter((_, at) => which & (2 ** at))
      .map(({ sign }) => sign)
      .join(''),
  )

/** Which cups and spoons a reader has. Tells of a change by `tb-measures`, with the new options as its detail. */
export class TbMeasures extends BaseElement {
  static override properties: PropertyDeclarations = { measures: { attribute: false } }

  declare measures: HouseholdOptions

  constructor() {
    super()
    this.measures = ownMeasures('en')
  }

  override render() {
    const { system, fractions } = this.measures
    return html`<div class="system">
        <label for="system">${measureWords.measures}</label>
        <select
          id="system"
          @change=${(e: Event) => this.#change((e.target as HTMLSelectElement).value as MeasureSystem, fractions)}
        >
          ${systems.map(s => html`<option value=${s} ?selected=${s === system}>${systemWords[s]}</option>`)}
        </select>
      </div>
      <div role="group" aria-labelledby="sets">
        <span id="sets">${measureWords.partsAtHand}</span>
        ${sets.map(({ sign, parts }) => {
          const has = fractions.includes(parts[0]!)
          return html`<label>
            <input
              type="checkbox"
              aria-label=${fractionWords[sign]}
              .checked=${has}
              @change=${() => this.#change(system, has ? fractions.filter(f => !parts.includes(f)) : [...fractions, ...parts])}
            /><span aria-hidden="true">${sign}</span>
          </label>`
        })}
      </div>`
  }

  #change(system: MeasureSystem, fractions: readonly number[]): void {
    this.measures = { system, fractions }
    const signs = sets.filter(({ parts }) => fractions.includes(parts[0]!)).map(({ sign }) => sign)
    keepOwnChoice('measures', system)
    keepOwnChoice('fractions', signs.join(''))
    this.dispatchEvent(
      new CustomEvent<HouseholdOptions>('tb-measures', {
        detail: this.measures,
        bubbles: true,
        composed: true,
      }),
    )
  }

  static override styles = css`
    :host {
      display: flex;
      flex-wrap: wrap;
      gap: 10px 24px;
      align-items: end;
    }
    .system label,
    #sets {
      display: block;
      margin-bottom: 4px;
      color: var(--ink-soft);
      font-size: var(--size-small);
    }
    #sets {
      margin-bottom: 0;
    }
    [role='group'] {
      display: grid;
      grid-template-columns: repeat(4, auto);
      justify-content: start;
      gap: 0 18px;
    }
    #sets {
      grid-column: 1 / -1;
    }
    [role='group'] label {
      display: flex;
      gap: 6px;
      align-items: center;
      min-height: calc(var(--target) + 4px);
      color: var(--ink);
      font-size: var(--size-lead);
      cursor: pointer;
    }
    input {
      width: 20px;
      height: 20px;
      min-height: 0;
      margin: 0;
      accent-color: var(--accent);
    }
  `
}
customElements.define('tb-measures', TbMeasures)

declare global {
  interface HTMLElementTagNameMap {
    'tb-measures': TbMeasures
  }
}
