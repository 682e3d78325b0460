import { html, nothing, type TemplateResult } from 'lit'
import { localOf } from '../../src/day/course/clock.js'
import type { NameOf } from '../../src/day/out/bread-names.js'
import { dateText } from '../../src/day/out/day-text.js'
import type { OvenDay, OvenLoad } from '../../src/day/plan/loads.js'
import type { NumberStyle } from '../base/numbers.js'
import { clockWords, loadWords } from './words.js'

/** How loads are shown. */
export interface LoadsShown {
  readonly zone: string
  readonly numbers: NumberStyle
  readonly nameOf: NameOf
  /** A time of the table as something to press; left out: as it is. */
  readonly go?: (moment: string, words: TemplateResult | string) => TemplateResult
}

/** What goes into each oven at once, and when: a table for each. */
export function loadTable(ovens: readonly OvenDay[], shown: LoadsShown): TemplateResult {
  return html`${ovens.map(
    ({ oven, heatings, loads }) => html`<table class="loads">
      <caption>
        ${loadWords.loadsOf(oven.name)}${heatings.length ? html` <small>${loadWords.heatUpAt(heatings.map(({ from }) => clockWords(from, shown.zone)))}</small>` : nothing}
      </caption>
      <thead>
        <tr>
          <th scope="col">${loadWords.in}</th>
          <th scope="col">${loadWords.out}</th>
          <th scope="col">${loadWords.what}</th>
          <th scope="col" class="figure">${loadWords.pieces}</th>
          <th scope="col" class="figure">${loadWords.degrees}</th>
        </tr>
      </thead>
      <tbody>
        ${loads.map((load, i) => row(load, loads[i - 1], shown))}
      </tbody>
    </table>`,
  )}`
}

function row(
  load: OvenLoad,
  before: OvenLoad | undefined,
  { zone, numbers, nameOf, go }: LoadsShown,
): TemplateResult {
  const { moment, bread, from, until, number, of, pieces, atOnce, celsius } = load
  const clock = clockWords(from, zone)
  const date = localOf(from, zone).date
  const isOpen = of > 1 && pieces !== undefined && atOnce !== undefined && pieces < atOnce
  return html`${
    before && localOf(before.from, zone).date === date
      ? nothing
      : html`<tr><th class="on" scope="rowgroup" colspan="5">${dateText(date, numbers.language)}</th></tr>`
  }
  <tr class=${isOpen ? 'open' : ''}>
    <td>${go ? go(moment, clock) : clock}</td>
    <td>${clockWords(until, zone)}</td>
    <th scope="row">${loadWords.load(nameOf(bread), number, of)}</th>
    <td class="figure">${loadWords.ofPieces(pieces, atOnce)}</td>
    <td class="figure">${celsius === undefined ? '–' : loadWords.celsius(celsius)}</td>
  </tr>`
}
