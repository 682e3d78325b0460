import { html, nothing, type TemplateResult } from 'lit'
import { stageOf } from '../../src/day/mixing/fed-build.js'
import type { Feeding } from '../../src/day/mixing/feeding.js'
import { readingsChanged, sheetWith } from '../../src/day/mixing/feeding-edit.js'
import type { Transaction } from '../../src/dough/document/workbook.js'
import type { FigureSheet } from '../../src/dough/sheet/figures.js'
import { type NumberStyle, showGrams } from '../base/numbers.js'
import { readingUnit, showReading } from '../base/reading-shown.js'
import { readingWords } from '../base/words.js'
import { feedingWords } from './words.js'

/** A build of a formula. */
export interface BuildOf {
  readonly sheet: FigureSheet
  readonly stage: string // id
}

const notKnown = '–'

/** What goes into a build that is fed, as it weighs now and then: `asMuch` times what the formula is written for. */
export function weightsOf(
  sheet: FigureSheet,
  stage: string,
  { weights }: Feeding,
  style: NumberStyle,
  asMuch: number,
): TemplateResult {
  const { name, lines } = stageOf(sheet, stage).stage
  const grams = (value: number | undefined) =>
    value === undefined ? notKnown : `${showGrams(value * asMuch, style)}\u00a0g`
  return html`<table>
    <caption class="unseen">
      ${feedingWords.weights(name)}
    </caption>
    <thead>
      <tr>
        ${feedingWords.columns.map(column => html`<th scope="col">${column}</th>`)}
      </tr>
    </thead>
    <tbody>
      ${lines
        .filter(line => weights.has(line.id))
        .map(
          line => html`<tr>
            <th scope="row">${line.ingredient}</th>
            <td>${grams(sheet.line(line.id).weight)}</td>
            <td><b>${grams(weights.get(line.id))}</b></td>
          </tr>`,
        )}
    </tbody>
  </table>`
}

/** What feeding does besides: the time of the step, and the readings before and after. */
export function doneTo(
  [main, ...others]: readonly BuildOf[],
  transaction: Transaction,
  style: NumberStyle,
): TemplateResult {
  const { sheet } = main!
  const after = sheetWith(sheet, transaction)
  const steps = sheet.formula.stages.flatMap((stage, i) =>
    (stage.method ?? []).flatMap((step, at) => {
      const { text } = after.formula.stages[i]!.method![at]!
      return text === step.text ? [] : [feedingWords.step(step.does, step.text, text)]
    }),
  )
  const readings = readingsChanged(sheet, after).map(change => {
    const { reading } = change
    const say = (value: number | undefined) =>
      value === undefined ? notKnown : `${showReading(reading, value, style)}\u00a0${readingUnit(reading)}`
    const { name } = readingWords[reading]
    const [was, is] = [say(change.before), say(change.after)]
    return was === is ? feedingWords.stays(name, is) : feedingWords.reading(name, was, is)
  })
  const alsoIn = others.map(build => build.sheet.formula.name)
  return html`<h4>${feedingWords.does}</h4>
    <ul>
      ${[...steps, ...readings].map(words => html`<li>${words}</li>`)}
      ${alsoIn.length ? html`<li>${feedingWords.alsoIn(alsoIn)}</li>` : nothing}
    </ul>`
}
