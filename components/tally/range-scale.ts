import { css, type SVGTemplateResult, svg } from 'lit'
import type { ReadingName } from '../../src/dough/document/reading-names.js'

type Range = readonly [from: number, to: number]

interface Ruler {
  readonly ends: Range // fractions of 1
  readonly tick: number
  readonly longEvery: number // ticks
}

const hydration: Ruler = { ends: [0.4, 1], tick: 0.02, longEvery: 5 }
const rulers: Partial<Record<ReadingName, Ruler>> = {
  trueHydration: hydration,
  moistureHydration: hydration,
  salt: { ends: [0.01, 0.03], tick: 0.001, longEvery: 5 },
  prefermentedFlour: { ends: [0, 0.5], tick: 0.02, longEvery: 5 },
}

const percent = (x: number): string => `${Math.round(x * 10000) / 100}%`

/**
 * A ruler with the usual range laid on it and a pointer at the value, as on a beam balance. Drawn for the eye only:
 * the same is said in words beside it.
 */
export function rangeScale(
  name: ReadingName,
  value: number | undefined,
  usual: Range | undefined,
): SVGTemplateResult | undefined {
  const ruler = rulers[name]
  if (!ruler) return undefined
  const [from, to] = ruler.ends
  const at = (x: number) => Math.max(0, Math.min(1, (x - from) / (to - from)))
  const count = Math.round((to - from) / ruler.tick)
  const ticks = Array.from({ length: count + 1 }, (_, i) => {
    const long = i % ruler.longEvery === 0
    return svg`<rect class="tick" x=${percent(i / count)} y="14" width="1" height=${long ? 9 : 5}></rect>`
  })
  return svg`<svg class="scale" aria-hidden="true" width="100%" height="24">
    ${
      usual &&
      svg`<rect class="usual" x=${percent(at(usual[0]))} y="9" width=${percent(at(usual[1]) - at(usual[0]))} height="5"></rect>`
    }
    <rect class="edge" x="0" y="14" width="100%" height="1"></rect>
    ${ticks}
    ${
      value !== undefined &&
      svg`<g class="pointer" style="transform: translateX(${percent(at(value))})">
        <path d="M-5 0 H5 L0 8 Z"></path><rect x="-0.75" y="4" width="1.5" height="19"></rect>
      </g>`
    }
  </svg>`
}

export const rangeScaleStyles = css`
  .scale {
    display: block;
    overflow: visible;
    margin: 6px 0 2px;
  }
  .scale .edge,
  .scale .tick {
    fill: var(--rule-strong);
  }
  .scale .usual {
    fill: var(--accent);
    opacity: 0.45;
  }
  .scale .pointer {
    fill: var(--ink);
    transform-box: view-box;
    transition: transform 0.2s ease-out;
  }
  @media (prefers-reduced-motion: reduce) {
    .scale .pointer {
      transition: none;
    }
  }
  @media (forced-colors: active) {
    .scale .edge,
    .scale .tick,
    .scale .pointer {
      fill: CanvasText;
    }
    .scale .usual {
      fill: Highlight;
      opacity: 1;
    }
  }
`
