import { css, html, nothing, svg } from 'lit'
import { finalDoughOf } from '../../src/dough/document/formula.js'
import type { DoughParts, FigureSheet } from '../../src/dough/sheet/figures.js'
import { SheetElement } from '../base/base-element.js'
import { showGrams } from '../base/numbers.js'
import { carrierWords, doughBarWords, doughInWords } from './dough-bar-words.js'

/** The whole dough as a strip by weight; what starters and earlier stages carried is hatched. */
export class TbDoughBar extends SheetElement {
  override render() {
    const parts = this.sheet?.parts
    const whole = parts ? parts.flour + parts.water + parts.salt + parts.other : 0
    if (!parts || !(whole > 0)) {
      return html`<p class="quiet">${doughBarWords.notYet}</p>`
    }
    const carriers = carriersOf(this.sheet!)
    return html`<figure>
      ${this.#strip(parts, whole, inWords(parts, whole, carriers))}
      <figcaption>
        ${this.#key('flour', doughBarWords.flour, parts.flour)}${this.#key('water', doughBarWords.water, parts.water)}
        ${parts.salt > 0 ? this.#key('salt', doughBarWords.salt, parts.salt) : nothing}
        ${parts.other > 0 ? this.#key('other', doughBarWords.other, parts.other) : nothing}
        ${
          parts.flourCarried + parts.waterCarried > 0
            ? this.#key('carried', doughBarWords.cameWith(carriers), parts.flourCarried + parts.waterCarried)
            : nothing
        }
      </figcaption>
    </figure>`
  }

  /** The carried flour and water lie side by side, so that the levain is seen as one piece of the dough. */
  #strip(parts: DoughParts, whole: number, words: string) {
    let from = 0
    const piece = (what: string, grams: number, carried = false) => {
      if (!(grams > 0)) return nothing
      const place = { x: `${(from / whole) * 100}%`, width: `${(grams / whole) * 100}%` }
      from += grams
      return svg`<rect class=${what} x=${place.x} width=${place.width} height="18"></rect>${
        carried ? svg`<rect class="hatch" x=${place.x} width=${place.width} height="18"></rect>` : nothing
      }`
    }
    const seam = () => svg`<rect class="seam" x=${`${(from / whole) * 100}%`} width="2" height="18"></rect>`
    return html`<svg role="img" aria-label=${words} width="100%" height="18">
      <defs>
        <pattern id="hatch" width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <rect class="stroke" width="2.5" height="7"></rect>
        </pattern>
      </defs>
      ${piece('flour', parts.flour - parts.flourCarried)}${piece('flour', parts.flourCarried, true)}
      ${seam()}${piece('water', parts.waterCarried, true)}${piece('water', parts.water - parts.waterCarried)}
      ${seam()}${piece('salt', parts.salt)}${parts.other > 0 ? seam() : nothing}${piece('other', parts.other)}
    </svg>`
  }

  #key(what: string, words: string, grams: number) {
    const swatch =
      what === 'carried'
        ? svg`<rect class="blank" width="12" height="12"></rect><rect class="hatch" width="12" height="12"></rect>`
        : svg`<rect class=${what} width="12" height="12"></rect>`
    return html`<span class="key">
      <svg aria-hidden="true" width="12" height="12">${swatch}</svg>${words}
      <b>${showGrams(grams, this.numbers)} g</b>
    </span>`
  }

  static override styles = css`
    :host {
      display: block;
    }
    figure,
    p {
      margin: 0;
    }
    svg {
      display: block;
    }
    .flour {
      fill: var(--flour);
    }
    .water {
      fill: var(--water);
    }
    .salt {
      fill: var(--salt);
    }
    .other {
      fill: var(--other);
    }
    .blank {
      fill: var(--rule);
    }
    .hatch {
      fill: url(#hatch);
    }
    .stroke {
      fill: var(--ink);
      opacity: 0.5;
    }
    .seam {
      fill: var(--board);
      transform: translateX(-1px);
    }
    figcaption {
      display: flex;
      flex-wrap: wrap;
      gap: 2px 20px;
      padding-top: 5px;
      font-size: var(--size-small);
      color: var(--ink-soft);
    }
    .key {
      display: inline-flex;
      align-items: center;
      gap: 7px;
    }
    b {
      font-weight: 500;
      color: var(--ink);
    }
    @media (forced-colors: active) {
      svg {
        forced-color-adjust: none;
      }
    }
    @media print {
      rect {
        print-color-adjust: exact;
      }
    }
  `
}
customElements.define('tb-dough-bar', TbDoughBar)

/** The lines of the final dough that brought flour and water of their own, in words. */
function carriersOf(sheet: FigureSheet): string {
  const names = finalDoughOf(sheet.formula)
    .lines.filter(line => ['stage', 'starter'].includes(sheet.line(line.id).is))
    .map(line => line.ingredient)
  return carrierWords([...new Set(names)])
}

function inWords(parts: DoughParts, whole: number, carriers: string): string {
  const percent = (grams: number) => (grams / whole) * 100
  const { flour, water, salt, other, flourCarried, waterCarried } = parts
  return doughInWords(
    {
      flour: percent(flour),
      water: percent(water),
      salt: percent(salt),
      other: percent(other),
      carried: percent(flourCarried + waterCarried),
    },
    carriers,
  )
}

declare global {
  interface HTMLElementTagNameMap {
    'tb-dough-bar': TbDoughBar
  }
}
