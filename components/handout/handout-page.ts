import { html, nothing, type TemplateResult } from 'lit'
import { stepName } from '../../src/day/method/words.js'
import { allergensOf, cautionsOf } from '../../src/dough/about/allergens.js'
import { type Household, type HouseholdOptions, householdOf } from '../../src/dough/about/household.js'
import {
  allergenSentence,
  cautionWords,
  householdSentence,
  localCodesSentence,
  notKnownSentence,
} from '../../src/dough/about/words.js'
import { batchWords } from '../../src/dough/document/batch-words.js'
import { finalDoughOf, type Line, type Stage } from '../../src/dough/document/formula.js'
import { readingNames } from '../../src/dough/document/reading-names.js'
import { type ListName, listWords } from '../../src/dough/larder/allergen-lists.js'
import type { FigureSheet } from '../../src/dough/sheet/figures.js'
import { changeSaid, measureSaid } from '../../src/exchange/text/household-text.js'
import { type NumberStyle, showPercent } from '../base/numbers.js'
import { readingWords } from '../base/words.js'
import { sayWhole } from '../batch/batch-prose.js'
import { buildWords } from '../batch/weighed-shown.js'
import {
  type CardShown,
  type Columns,
  columnsOf,
  gramsOf,
  isSaid,
  percentOf,
  sumOf,
} from '../card/card-figures.js'
import { readingOf } from '../card/card-page.js'
import { listedWords, pageWords } from '../card/words.js'
import { handoutWords } from './words.js'

/** One bread of a handout: as one person makes it, and all of them together. */
export interface HandoutBread {
  readonly name: string // with that of the kept state it is
  readonly each: FigureSheet
  readonly all: FigureSheet
}

/** What is printed, and how. */
export interface HandoutShown {
  readonly heading: string
  readonly date: string // '' where it is not of a day
  readonly people: number
  readonly breads: readonly HandoutBread[]
  readonly numbers: NumberStyle
  readonly measures: HouseholdOptions | undefined // cups and spoons beside what each weighs
  readonly notes: boolean
  readonly list: ListName // of allergens
  readonly level: number // of its heading
}

/** What of a bread its figures are read from. */
interface Both {
  readonly each: CardShown
  readonly all: CardShown
  readonly columns: { readonly each: Columns; readonly all: Columns }
  readonly household: Household | undefined
}

const cardOf = ({ numbers, notes, list }: HandoutShown, sheet: FigureSheet): CardShown => ({
  sheet,
  numbers,
  measures: undefined,
  notes,
  list,
  among: true,
})

function bothOf(shown: HandoutShown, bread: HandoutBread): Both {
  const [each, all] = [cardOf(shown, bread.each), cardOf(shown, bread.all)]
  return {
    each,
    all,
    columns: { each: columnsOf(each), all: columnsOf(all) },
    household: shown.measures && householdOf(bread.each, shown.measures),
  }
}

/** `11 × 900 g, 10,102 g of dough` */
function sizeOf(card: CardShown): string {
  const { sheet, numbers } = card
  const { batch } = sheet.formula
  const weight = `${sumOf(card, finalDoughOf(sheet.formula))}\u00a0g`
  if (!batch || batch.make === 'as written' || batch.make === 'factor') return handoutWords.onlyDough(weight)
  return handoutWords.dough(
    batchWords(batch, grams => sayWhole(grams, numbers)),
    weight,
  )
}

/** What stands over all: what it is, for how many, and how much of each bread. */
function opening(shown: HandoutShown): TemplateResult {
  const { heading, date, people, breads, level } = shown
  return html`<header>
      <h1 aria-level=${level}>${heading}</h1>
      <p>${[date, handoutWords.people(people)].filter(Boolean).join(' · ')}</p>
    </header>
    <table class="breads" aria-label=${handoutWords.breads}>
      <thead>
        <tr>
          <th scope="col">${handoutWords.bread}</th>
          <th scope="col">${handoutWords.each}</th>
          <th scope="col">${handoutWords.all(people)}</th>
        </tr>
      </thead>
      <tbody>
        ${breads.map(
          ({ name, each, all }) => html`<tr>
            <th scope="row">${name}</th>
            <td>${sizeOf(cardOf(shown, each))}</td>
            <td>${sizeOf(cardOf(shown, all))}</td>
          </tr>`,
        )}
      </tbody>
    </table>`
}

function line(both: Both, of: Line): TemplateResult {
  const { each, all, columns, household } = both
  const said = isSaid(each.sheet, of)
  const percent = percentOf(each, of)
  const measured = household?.lines.find(({ line }) => line === of.id)
  const isStage = each.sheet.line(of.id).is === 'stage'
  const weight = (card: CardShown, column: Columns) => (said ? column.grams.show(gramsOf(card, of.id)) : '–')
  return html`<tr>
    <th scope="row">${of.ingredient || '–'}${each.notes && of.note ? html` <small>${of.note}</small>` : nothing}</th>
    <td class="figure">${weight(each, columns.each)}</td>
    ${household ? html`<td class="measure">${measured?.words ? measureSaid(measured.words) : isStage || !said ? '' : html`<small>${handoutWords.weighIt}</small>`}</td>` : nothing}
    <td class="figure">${weight(all, columns.all)}</td>
    <td class="percent">${percent === undefined ? '–' : columns.each.percent.show(percent)}</td>
  </tr>`
}

function method(of: Stage, notes: boolean): TemplateResult | typeof nothing {
  if (!of.method?.length) return nothing
  return html`<ol aria-label=${handoutWords.method}>
    ${of.method.map(step => {
      const [text, note] = [step.text.trim(), notes ? step.note.trim() : '']
      return html`<li><b>${stepName(step)}</b>${text ? ` ${text}` : nothing}${note ? html` <small>${note}</small>` : nothing}</li>`
    })}
  </ol>`
}

function stage(shown: HandoutShown, both: Both, of: Stage): TemplateResult {
  const { each, all, columns, household } = both
  const { ferments, isFinal, hydration } = each.sheet.stage(of.id)
  const facts = [
    ...(ferments && !isFinal ? [pageWords.ferments] : []),
    ...(hydration === undefined || isFinal
      ? []
      : [pageWords.hydration(showPercent(hydration, shown.numbers))]),
    ...buildWords(all.sheet, of, shown.numbers).slice(2), // what is lost and kept back of it
  ]
  const lines = of.lines.filter(l => `${l.ingredient}${l.amount}`.trim() !== '')
  return html`<section class="stage">
    <h3 aria-level=${shown.level + 2}>${of.name}${facts.length ? html` <small>${facts.join(', ')}</small>` : nothing}</h3>
    <table>
      <thead>
        <tr>
          <th scope="col">${handoutWords.ingredient}</th>
          <th scope="col" class="figure">${handoutWords.inGrams(handoutWords.each)}</th>
          ${household ? html`<th scope="col" class="measure">${handoutWords.measure}</th>` : nothing}
          <th scope="col" class="figure">${handoutWords.inGrams(handoutWords.all(shown.people))}</th>
          <th scope="col" class="percent">${handoutWords.percent}</th>
        </tr>
      </thead>
      <tbody>
        ${lines.map(l => line(both, l))}
      </tbody>
      <tfoot>
        <tr>
          <th scope="row">${handoutWords.sum}</th>
          <td class="figure">${columns.each.grams.show(sumOf(each, of))}</td>
          ${household ? html`<td></td>` : nothing}
          <td class="figure">${columns.all.grams.show(sumOf(all, of))}</td>
          <td class="percent"></td>
        </tr>
      </tfoot>
    </table>
    ${method(of, shown.notes)}
  </section>`
}

/** Readings, what to know of it, and what the public list names of it. */
function closing(shown: HandoutShown, { each, household }: Both): TemplateResult {
  const { sheet } = each
  const { note } = sheet.formula
  const said = readingNames.flatMap(name => {
    const value = name === 'doughWeight' ? undefined : readingOf(each, name)
    return value ? [html`<span>${readingWords[name].name} <b>${value}</b></span> `] : []
  })
  const { notKnown, ...all } = allergensOf(sheet)
  const change = household && changeSaid(household)
  return html`${said.length ? html`<p class="readings" aria-label=${handoutWords.readings}>${said}</p>` : nothing}
    ${shown.notes ? note.split(/\n+/).map(text => (text.trim() ? html`<p>${text}</p>` : nothing)) : nothing}
    ${change ? html`<p class="fine">${change}</p>` : nothing}
    <p class="fine">${listedWords(listWords[shown.list], all[shown.list])} ${notKnown.length ? html`<b>${notKnownSentence(notKnown)}</b>` : nothing}</p>`
}

/** The cautions of all breads, each once, with the breads it is of where it is not of all. What a method gives cause to mind is for its author. */
function cautions(shown: HandoutShown): TemplateResult {
  const breads = new Map<string, { about: string; message: string; of: string[] }>()
  for (const { name, each } of shown.breads)
    for (const { code, message } of cautionsOf(each)) {
      const about = cautionWords[code]
      const there = breads.get(about + message)
      if (there) there.of.push(name)
      else breads.set(about + message, { about, message, of: [name] })
    }
  const all = [...breads.values()]
  return html`<section class="mind">
    <h2 aria-level=${shown.level + 1}>${handoutWords.keepInMind}</h2>
    ${all.map(
      ({ about, message, of }) =>
        html`<p><b>${about}${of.length < shown.breads.length ? handoutWords.inBreads(of) : ''}:</b> ${message}</p>`,
    )}
    ${shown.measures ? html`<p>${householdSentence}</p>` : nothing}
    <p>${allergenSentence}</p>
    ${all.length ? html`<p>${localCodesSentence}</p>` : nothing}
  </section>`
}

/** A part of what is printed, block by block; none of them is to be broken. */
export interface HandoutPart {
  readonly name: string // of the bread; '' for none
  readonly blocks: readonly TemplateResult[]
}

/** What is printed, in order: what opens it, a part for each bread, what is to be kept in mind. */
export function handoutParts(shown: HandoutShown): readonly HandoutPart[] {
  return [
    { name: '', blocks: [opening(shown)] },
    ...shown.breads.map(bread => {
      const both = bothOf(shown, bread)
      const [first, ...others] = bread.each.formula.stages.map(of => stage(shown, both, of))
      const heading = html`<h2 aria-level=${shown.level + 1}>${bread.name}</h2>`
      const last = closing(shown, both)
      // A heading stays with its first stage.
      return { name: bread.name, blocks: [html`${heading}${first}`, ...others, last] }
    }),
    { name: '', blocks: [cautions(shown)] },
  ]
}
