import { html, nothing, type TemplateResult } from 'lit'
import { methodCautions } from '../../src/day/method/cautions.js'
import { stepName } from '../../src/day/method/words.js'
import { allergensOf, cautionsOf } from '../../src/dough/about/allergens.js'
import { type Household, householdOf } from '../../src/dough/about/household.js'
import { hasNotes, ownSizeOf } from '../../src/dough/about/own-size.js'
import {
  allergenSentence,
  cautionWords,
  householdSentence,
  localCodesSentence,
  notKnownSentence,
} from '../../src/dough/about/words.js'
import { hasBatch, type Line, type Stage } from '../../src/dough/document/formula.js'
import { type ReadingName, readingNames } from '../../src/dough/document/reading-names.js'
import { listWords } from '../../src/dough/larder/allergen-lists.js'
import { hasSoaker, leadingHydration } from '../../src/dough/sheet/ranges.js'
import { changeSaid, errorSaid, measureSaid } from '../../src/exchange/text/household-text.js'
import { showPercent } from '../base/numbers.js'
import { readingUnit, showReading } from '../base/reading-shown.js'
import { readingWords } from '../base/words.js'
import { batchProse, sayGrams } from '../batch/batch-prose.js'
import { totalToWeigh } from '../batch/left-over.js'
import { buildWords } from '../batch/weighed-shown.js'
import {
  type CardShown,
  type Columns,
  columnsOf,
  countOf,
  gramsOf,
  isSaid,
  nameOf,
  percentOf,
  piecesOf,
  stepsSaid,
  sumOf,
} from './card-figures.js'
import { listedWords, pageWords } from './words.js'

/** The readings that stand out: true hydration, or moisture with it beside. */
export const leadsOf = ({ sheet }: CardShown): readonly ReadingName[] => {
  const lead = leadingHydration(name => sheet.reading(name))
  return [...new Set([lead, 'trueHydration', 'salt', 'prefermentedFlour', 'doughWeight'] as const)]
}
const leastTold = 0.0005

/** What a reading comes to on paper, with its unit; undefined where there is none to tell. */
export function readingOf(shown: CardShown, name: ReadingName): string | undefined {
  const { sheet, numbers } = shown
  const unit = readingUnit(name)
  const value = sheet.weighedReading(name) ?? sheet.reading(name) // as the lines above it add up
  if (value === undefined || (value < leastTold && !leadsOf(shown).includes(name))) return undefined
  if (name === 'hydrationWithoutSoakers' && !hasSoaker(sheet)) return undefined
  return `${showReading(name, value, numbers)} ${unit}`
}

function readings(shown: CardShown): TemplateResult {
  const leads = leadsOf(shown)
  const others = readingNames
    .filter(name => !leads.includes(name))
    .flatMap(name => {
      const said = readingOf(shown, name)
      return said ? [`${readingWords[name].name} ${said}`] : []
    })
  const isWeighed = shown.sheet.weighedReading('totalFlour') !== undefined
  if (isWeighed) others.push(pageWords.asWeighed(stepsSaid(shown.sheet.scale, shown.numbers)))
  const made = piecesOf(shown)
  return html`<section aria-label=${shown.among ? nothing : pageWords.readings}>
    <dl class="leads">
      ${leads.map(
        name => html`<div>
          <dt>${readingWords[name].name}</dt>
          <dd>${readingOf(shown, name) ?? '–'}${name === 'doughWeight' && made ? html`<small>${made}</small>` : nothing}</dd>
        </div>`,
      )}
    </dl>
    ${others.length ? html`<p class="others">${others.map(said => html`<span>${said}</span> `)}</p>` : nothing}
  </section>`
}

function line(
  shown: CardShown,
  of: Line,
  columns: Columns,
  household: Household | undefined,
): TemplateResult {
  const { sheet } = shown
  const { is } = sheet.line(of.id)
  const said = isSaid(sheet, of)
  const percent = percentOf(shown, of)
  const count = household ? undefined : countOf(shown, of)
  const measured = household?.lines.find(({ line }) => line === of.id)
  const note = shown.notes ? of.note : ''
  return html`<tr>
    <td class="grams">${said ? html`${columns.grams.show(gramsOf(shown, of.id))}<span class="unit"> g</span>` : '–'}</td>
    <th scope="row">${count ? html`<span class="count">${count}</span> ` : nothing}${nameOf(shown, of)}${note ? html` <span class="note">${note}</span>` : nothing}</th>
    ${
      household
        ? html`<td class="measure">
            ${measured?.words ? html`${measureSaid(measured.words)} <small>${errorSaid(measured.error ?? 0).replace(' %', '\u00a0%')}</small>` : is === 'stage' || !said ? '' : html`<small>${pageWords.weighIt}</small>`}
          </td>`
        : nothing
    }
    <td class="percent">${percent === undefined ? '–' : html`${columns.percent.show(percent)} %`}</td>
  </tr>`
}

function stage(
  shown: CardShown,
  of: Stage,
  columns: Columns,
  household: Household | undefined,
): TemplateResult {
  const { sheet, numbers, among } = shown
  const { ferments, isFinal, hydration } = sheet.stage(of.id)
  const facts = [
    ...(ferments && !isFinal ? [pageWords.ferments] : []),
    ...(hydration === undefined || isFinal ? [] : [pageWords.hydration(showPercent(hydration, numbers))]),
    ...(hasBatch(sheet.formula) ? buildWords(sheet, of, numbers).slice(1) : []),
  ]
  const lines = of.lines.filter(l => `${l.ingredient}${l.amount}`.trim() !== '')
  return html`<section class="stage">
    <h2 aria-level=${among ? 3 : nothing}>
      <span>${of.name}</span>
      ${facts.length ? html`<span class="facts">${facts.join(', ')}</span>` : nothing}
      <span class="sum">${sumOf(shown, of)} g</span>
    </h2>
    <table class=${household ? 'measured' : ''}>
      <thead class="unseen">
        <tr>
          <th scope="col">${pageWords.toWeigh}</th>
          <th scope="col">${pageWords.ingredient}</th>
          ${household ? html`<th scope="col">${pageWords.about}</th>` : nothing}
          <th scope="col">${pageWords.percent}</th>
        </tr>
      </thead>
      <tbody>
        ${lines.map(l => line(shown, l, columns, household))}
      </tbody>
    </table>
    ${method(shown, of)}
  </section>`
}

/** A stage's steps, one after the other. */
function method({ notes }: CardShown, { method = [] }: Stage): TemplateResult | typeof nothing {
  if (method.length === 0) return nothing
  return html`<ol class="method" aria-label=${pageWords.method}>
    ${method.map(step => {
      const text = step.text.trim()
      const note = notes ? step.note.trim() : ''
      return html`<li><b>${stepName(step)}</b>${text ? ` ${text}` : nothing}${note ? html` <small>${note}</small>` : nothing}</li> `
    })}
  </ol>`
}

/** What the public list names, each with the ingredients it is in, and what is not known. */
function allergens({ sheet, list, among }: CardShown): TemplateResult {
  const all = allergensOf(sheet)
  return html`<section aria-label=${among ? nothing : pageWords.allergens}>
    <p>${listedWords(listWords[list], all[list])} ${all.notKnown.length ? html`<b>${notKnownSentence(all.notKnown)}</b>` : nothing} ${allergenSentence}</p>
  </section>`
}

function cautions({ sheet, among }: CardShown): TemplateResult | typeof nothing {
  const usual = cautionsOf(sheet)
  if (usual.length === 0) return nothing
  const all = [
    ...usual.map(({ code, message }) => ({ about: cautionWords[code], message })),
    ...methodCautions(sheet),
  ]
  return html`<section aria-label=${among ? nothing : pageWords.cautions}>
    <p>${all.map(({ about, message }) => html`<b>${about}:</b> ${message} `)}${localCodesSentence}</p>
  </section>`
}

/** One formula as it goes on the wall: what to weigh in the order of mixing, what it comes to, what to keep in mind. */
export function cardPage(shown: CardShown): TemplateResult {
  const { sheet, numbers, measures, notes, among } = shown
  const { formula } = sheet
  const household = measures && householdOf(sheet, measures)
  const change = household && changeSaid(household)
  const total = totalToWeigh(sheet, numbers)
  const columns = columnsOf(shown)
  const own = notes && hasNotes(formula) ? ownSizeOf(sheet) : undefined
  const paragraphs = notes ? formula.note.split(/\n+/).filter(text => text.trim()) : []
  return html`<header>
      <h1 aria-level=${among ? 2 : nothing}>${formula.name}</h1>
      <p class="batch">${hasBatch(formula) ? batchProse(sheet, numbers) : pageWords.asWritten}${total ? pageWords.ofDough(total.total) : nothing}</p>
    </header>
    ${formula.stages.map(of => stage(shown, of, columns, household))}
    ${readings(shown)}
    ${own === undefined ? nothing : html`<p class="prose">${pageWords.notesOf(sayGrams(own, numbers))}</p>`}
    ${paragraphs.map(text => html`<p class="prose">${text}</p>`)}
    <footer>
      ${household ? html`<p>${householdSentence} ${change ?? ''}</p>` : nothing}
      ${allergens(shown)}
      ${cautions(shown)}
    </footer>`
}
