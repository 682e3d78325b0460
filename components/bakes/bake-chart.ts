import { css, html, nothing, type SVGTemplateResult, svg, type TemplateResult } from 'lit'
import type { Learnt } from '../../src/day/learning/inner-range.js'

/** A measurement as it is drawn: one point a bake, in their order. */
export interface Drawn {
  readonly name: string // of the picture, for those who hear it
  readonly points: readonly { readonly value: number; readonly when: string }[]
  readonly learnt: Learnt | undefined // its middle as a line, its range as a band
  readonly show: (value: number) => string
  readonly width: number // px of its place: letters are as large as the page's
}

const edge = { left: 84, right: 14, top: 16, bottom: 30 }

/** Round numbers between two: three to six of them. */
function marks(low: number, high: number): number[] {
  const span = high - low || Math.abs(high) || 1
  const rough = span / 4
  const ten = 10 ** Math.floor(Math.log10(rough))
  const step = [1, 2, 2.5, 5, 10].map(one => one * ten).find(one => one >= rough)!
  const first = Math.ceil(low / step - 1e-9)
  const last = Math.floor(high / step + 1e-9)
  return Array.from({ length: last - first + 1 }, (_, i) => Number(((first + i) * step).toPrecision(12)))
}

/** Of numbers beside an axis, those that do not read as the one before. */
export const toldApart = (values: readonly number[], show: (value: number) => string): number[] =>
  values.filter((value, i) => i === 0 || show(value) !== show(values[i - 1]!))

/** A measurement over bakes, drawn; the figures stand in a table besides. */
export function bakeChart({ name, points, learnt, show, width }: Drawn): TemplateResult {
  const height = width < 480 ? 220 : 260
  const values = [...points.map(({ value }) => value), ...(learnt ? [learnt.low, learnt.high] : [])]
  const [least, most] = [Math.min(...values), Math.max(...values)]
  const room = (most - least || Math.abs(most) || 1) * 0.08
  const [low, high] = [least - room, most + room]
  const x = (i: number) =>
    edge.left +
    (points.length === 1 ? 0.5 : i / (points.length - 1)) * (width - edge.left - edge.right - 16) +
    8
  const y = (value: number) => edge.top + ((high - value) / (high - low)) * (height - edge.top - edge.bottom)
  const [first, last] = [points[0]!, points.at(-1)!]
  const across = (value: number, look: string): SVGTemplateResult =>
    svg`<line class=${look} x1=${edge.left} x2=${width - edge.right} y1=${y(value)} y2=${y(value)} />`
  return html`<svg class="chart" viewBox="0 0 ${width} ${height}" role="img" aria-label=${name}>
    ${
      learnt
        ? svg`<rect class="band" x=${edge.left} y=${y(learnt.high)} width=${width - edge.left - edge.right}
            height=${Math.max(1, y(learnt.low) - y(learnt.high))} />`
        : nothing
    }
    ${toldApart(marks(low, high), show).map(
      value => svg`${across(value, 'rule')}
        <text class="mark" x=${edge.left - 10} y=${y(value) + 5}>${show(value)}</text>`,
    )}
    ${learnt ? across(learnt.middle, 'middle') : nothing}
    <polyline class="way" points=${points.map(({ value }, i) => `${x(i)},${y(value)}`).join(' ')} />
    ${points.map(({ value }, i) => svg`<circle class="point" cx=${x(i)} cy=${y(value)} r="5" />`)}
    <text class="when" x=${edge.left} y=${height - 8}>${first.when}</text>
    ${points.length > 1 ? svg`<text class="when last" x=${width - edge.right} y=${height - 8}>${last.when}</text>` : nothing}
  </svg>`
}

export const chartStyles = css`
  .chart {
    display: block;
    width: 100%;
    max-width: 760px;
    height: auto;
    margin: 8px 0;
  }
  .chart text {
    fill: var(--ink-soft);
    font-size: 14px;
  }
  .chart :is(.mark, .last) {
    text-anchor: end;
  }
  .chart .band {
    fill: var(--accent-wash);
  }
  .chart .rule {
    stroke: var(--rule);
  }
  .chart .middle {
    stroke: var(--accent);
    stroke-dasharray: 6 5;
  }
  .chart .way {
    fill: none;
    stroke: var(--rule-strong);
    stroke-width: 2;
  }
  .chart .point {
    fill: var(--accent);
    stroke: var(--board);
    stroke-width: 2;
  }
  @media (forced-colors: active) {
    .chart .point {
      fill: CanvasText;
    }
  }
`
