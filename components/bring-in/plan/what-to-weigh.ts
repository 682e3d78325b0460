import { css, html, nothing, type TemplateResult } from 'lit'
import '../../../src/dough/cells/rare-cells-at-once.js'
import { type Formula, hasBatch, type Stage } from '../../../src/dough/document/formula.js'
import type { Larder } from '../../../src/dough/document/larder.js'
import { type FigureSheet, isUnsaid } from '../../../src/dough/sheet/figures.js'
import { leadingHydration } from '../../../src/dough/sheet/ranges.js'
import { openSheet } from '../../../src/dough/sheet/sheet.js'
import type { NumberStyle } from '../../base/numbers.js'
import { readingUnit, showReading } from '../../base/reading-shown.js'
import { readingWords } from '../../base/words.js'
import { batchProse, makeProse } from '../../batch/batch-prose.js'
import { weighedLine, weighedStage } from '../../batch/weighed-shown.js'
import { toWeighWords } from './words.js'

const mostLines = 200 // of one formula; who has more opens it on the sheet

const sheets = new WeakMap<Formula, FigureSheet>()

function sheetOf(formula: Formula, larder: Larder): FigureSheet {
  const known = sheets.get(formula)
  if (known?.larder === larder) return known
  const sheet = openSheet(formula, larder)
  sheets.set(formula, sheet)
  return sheet
}

function readings(sheet: FigureSheet, numbers: NumberStyle): TemplateResult {
  const lead = leadingHydration(name => sheet.reading(name))
  const names = [...new Set([lead, 'trueHydration', 'salt', 'prefermentedFlour', 'doughWeight'] as const)]
  return html`<dl class="readings">
    ${names.map(name => {
      const value = sheet.weighedReading(name) ?? sheet.reading(name)
      return value === undefined
        ? nothing
        : html`<div><dt>${readingWords[name].name}</dt><dd>${showReading(name, value, numbers)} ${readingUnit(name)}</dd></div>`
    })}
  </dl>`
}

function stageRows(sheet: FigureSheet, stage: Stage, numbers: NumberStyle): TemplateResult {
  const lines = stage.lines.filter(line => !isUnsaid(line, sheet.line(line.id)))
  return html`<tr class="stage">
      <th scope="rowgroup" colspan="2">${stage.name}</th>
      <td class="weigh">${weighedStage(sheet, stage, numbers).text} g</td>
    </tr>
    ${lines.map(
      ({ id, ingredient, note }) => html`<tr>
        <td>${ingredient}</td>
        <td class="note">${note}</td>
        <td class="weigh"><b>${weighedLine(sheet, id, numbers).text}</b> g</td>
      </tr>`,
    )}`
}

/** What to weigh of a formula that came with a link, for its batch, and what that comes to; nothing of a very long one. */
export function whatToWeigh(
  formula: Formula,
  larder: Larder,
  numbers: NumberStyle,
): TemplateResult | typeof nothing {
  if (formula.stages.reduce((sum, { lines }) => sum + lines.length, 0) > mostLines) return nothing
  const sheet = sheetOf(formula, larder)
  return html`<div class="to-weigh">
    <p class="make">${hasBatch(formula) ? batchProse(sheet, numbers) : makeProse(sheet, numbers)}</p>
    ${readings(sheet, numbers)}
    <table>
      <thead class="unseen">
        <tr>
          <th scope="col">${toWeighWords.ingredient}</th>
          <th scope="col">${toWeighWords.note}</th>
          <th scope="col">${toWeighWords.toWeigh}</th>
        </tr>
      </thead>
      <tbody>
        ${formula.stages.map(stage => stageRows(sheet, stage, numbers))}
      </tbody>
    </table>
  </div>`
}

export const whatToWeighStyles = css`
  .to-weigh {
    margin: 8px 0 12px;
  }
  .make {
    max-width: none;
  }
  .to-weigh .readings {
    display: flex;
    flex-wrap: wrap;
    gap: 4px 28px;
    margin: 4px 0 10px;
  }
  .readings dt {
    color: var(--ink-soft);
    font-size: var(--size-small);
  }
  .readings dd {
    margin: 0;
    font-size: var(--size-lead);
    font-variant-numeric: tabular-nums;
  }
  .to-weigh .weigh {
    width: 26%;
    padding-right: 0;
    text-align: right;
    font-variant-numeric: tabular-nums;
    white-space: nowrap;
  }
  .to-weigh b {
    font-size: 1.1em;
    font-weight: 680;
  }
`
