import { html, nothing, type TemplateResult } from 'lit'
import { withoutLoad } from '../../src/day/method/load-text.js'
import { stepName } from '../../src/day/method/words.js'
import { allergensOf, cautionsOf } from '../../src/dough/about/allergens.js'
import { type Household, type HouseholdOptions, householdOf } from '../../src/dough/about/household.js'
import { hasNotes, ownSizeOf } from '../../src/dough/about/own-size.js'
import {
  cautionWords,
  householdSentence,
  localCodesSentence,
  notKnownSentence,
} from '../../src/dough/about/words.js'
import { doughForPieces } from '../../src/dough/document/batch.js'
import { batchWords } from '../../src/dough/document/batch-words.js'
import { finalDoughOf, type Line, type Stage } from '../../src/dough/document/formula.js'
import { readingNames } from '../../src/dough/document/reading-names.js'
import { type ListName, listWords } from '../../src/dough/larder/allergen-lists.js'
import type { FigureSheet } from '../../src/dough/sheet/figures.js'
import { changeSaid, measureSaid } from '../../src/exchange/text/household-text.js'
import { type NumberStyle, showDecimals, showPercent } from '../base/numbers.js'
import { readingWords } from '../base/words.js'
import { sayGrams } from '../batch/batch-prose.js'
import { buildWords } from '../batch/weighed-shown.js'
import {
  type CardShown,
  type Columns,
  columnsOf,
  gramsOf,
  isSaid,
  nameOf,
  percentOf,
  stepsSaid,
  sumOf,
} from '../card/card-figures.js'
import { readingOf } from '../card/card-page.js'
import { pageWords } from '../card/words.js'
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

/** A weight that was asked for: as it was typed, and a share of one to the gram. */
function askedSaid(grams: number, { numbers }: CardShown): string {
  const tenths = grams * 10
  const isTyped = grams < 10 || Math.abs(tenths - Math.round(tenths)) < 1e-6
  return `${showDecimals(grams, numbers, isTyped ? 1 : 0, 0)}\u00a0g`
}

/** `11 × 900 g, 9,900 g of dough`; a weight that is asked for stands as it is asked for, whatever the steps of the scale make of it. */
function sizeOf(card: CardShown, inPieces = true): string {
  const { formula } = card.sheet
  const { batch } = formula
  const asked = (grams: number) => askedSaid(grams, card)
  const weighed = `${sumOf(card, finalDoughOf(formula))}\u00a0g`
  switch (batch?.make) {
    case 'dough':
      return handoutWords.onlyDough(asked(batch.grams))
    case 'flour':
    case 'all of':
      return handoutWords.dough(batchWords(batch, asked), weighed)
    case 'pieces':
    case 'baked pieces': {
      if (!inPieces) return handoutWords.onlyDough(asked(doughForPieces(batch)))
      const pieces = batchWords(batch, asked)
      const shaped = batch.pieces.reduce((sum, { count, weight }) => sum + count * weight, 0)
      const dough = doughForPieces(batch)
      if (Math.abs(dough - shaped) > 1e-6 * dough) return handoutWords.fromDough(pieces, asked(dough))
      const isOne = batch.pieces.length === 1 && batch.pieces[0]!.count === 1
      return isOne ? pieces : handoutWords.dough(pieces, asked(dough))
    }
    default:
      return handoutWords.onlyDough(weighed)
  }
}

/** How much one makes and how much all make: in pieces where it comes out even for one. */
function sizesOf(shown: HandoutShown, { each, all }: HandoutBread): readonly [each: string, all: string] {
  const isEven = each.formula.batch?.make !== 'dough'
  return [sizeOf(cardOf(shown, each)), sizeOf(cardOf(shown, all), isEven)]
}

/** What stands over all: what it is, and for how many. */
function header({ heading, date, people, level }: HandoutShown): TemplateResult {
  return html`<header>
    <h1 aria-level=${level}>${heading}</h1>
    <p>${[date, handoutWords.people(people)].filter(Boolean).join(' · ')}</p>
  </header>`
}

/** How much of each bread. */
function overview(shown: HandoutShown): TemplateResult {
  const { people, breads } = shown
  return html`<table class="breads" aria-label=${handoutWords.breads}>
      <thead>
        <tr>
          <th scope="col">${handoutWords.bread}</th>
          <th scope="col">${handoutWords.each}</th>
          <th scope="col">${handoutWords.all(people)}</th>
        </tr>
      </thead>
      <tbody>
        ${breads.map(
          bread => html`<tr>
            <th scope="row">${bread.name}</th>
            ${sizesOf(shown, bread).map(size => html`<td>${size}</td>`)}
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
    <th scope="row">${nameOf(each, of)}${each.notes && of.note ? html` <small>${of.note}</small>` : nothing}</th>
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
      const [text, note] = [withoutLoad(step.text.trim()), notes ? step.note.trim() : '']
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

/** Readings of all that is weighed, which is nearest to the formula, and what to know of it. */
function closing(shown: HandoutShown, { all, household }: Both): TemplateResult {
  const { sheet } = all
  const { note } = sheet.formula
  const said = readingNames.flatMap(name => {
    const value = name === 'doughWeight' ? undefined : readingOf(all, name)
    return value ? [html`<span>${readingWords[name].name} <b>${value}</b></span> `] : []
  })
  const isWeighed = sheet.weighedReading('totalFlour') !== undefined
  const how = isWeighed
    ? html`<span class="how">${handoutWords.asWeighed(shown.people, stepsSaid(sheet.scale, shown.numbers))}</span> `
    : nothing
  const change = household && changeSaid(household)
  return html`${said.length ? html`<p class="readings" aria-label=${handoutWords.readings}>${how}${said}</p>` : nothing}
    ${shown.notes ? note.split(/\n+/).map(text => (text.trim() ? html`<p>${text}</p>` : nothing)) : nothing}
    ${change ? html`<p class="fine">${change}</p>` : nothing}`
}

/** Over a bread: its name, how much of it where nothing else says so, and for which batch its notes are written. */
function breadHeading(shown: HandoutShown, bread: HandoutBread): TemplateResult {
  const { breads, level, notes, numbers, people } = shown
  const { name, each } = bread
  const own = notes && hasNotes(each.formula) ? ownSizeOf(each) : undefined
  const sizes = handoutWords.sizes(people, ...sizesOf(shown, bread))
  return html`<h2 aria-level=${level + 1}>${name}</h2>
    ${breads.length === 1 ? html`<p class="sizes">${sizes}</p>` : nothing}
    ${own === undefined ? nothing : html`<p class="fine">${pageWords.notesOf(sayGrams(own, numbers))}</p>`}`
}

/** What the public list names of each bread, with what is not known, and that it is no more than that. */
function allergens({ breads, list }: HandoutShown): TemplateResult {
  const said = ({ each }: HandoutBread) => {
    const { notKnown, ...all } = allergensOf(each)
    const known = all[list].map(
      ({ entry, ingredients }, at) =>
        html`${at ? '; ' : nothing}<b>${entry}</b>${handoutWords.inIngredients(ingredients)}`,
    )
    return html`${known.length ? known : handoutWords.noneKnown}. ${notKnown.length ? html`<b>${notKnownSentence(notKnown)}</b>` : nothing}`
  }
  const [first, ...others] = breads
  return html`<p><b>${handoutWords.allergens}</b>${handoutWords.ofList(listWords[list])}${others.length || !first ? nothing : html` ${said(first)}`}</p>
    ${others.length ? breads.map(bread => html`<p class="of"><b>${bread.name}:</b> ${said(bread)}</p>`) : nothing}
    <p>${handoutWords.noClearance}</p>`
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
    <h2 aria-level=${shown.level + 1}>${handoutWords.before}</h2>
    ${all.map(
      ({ about, message, of }) =>
        html`<p><b>${about}${of.length < shown.breads.length ? handoutWords.inBreads(of) : ''}:</b> ${message}</p>`,
    )}
    ${shown.measures ? html`<p>${householdSentence}</p>` : nothing}
    ${allergens(shown)}
    ${all.length ? html`<p>${localCodesSentence}</p>` : nothing}
  </section>`
}

/** A part of what is printed, block by block; none of them is to be broken. */
export interface HandoutPart {
  readonly name: string // of the bread; '' for none
  readonly isFormula: boolean
  readonly blocks: readonly TemplateResult[]
}

/** What is printed, in order: what opens it, a part for each bread, what is to be kept in mind. One bread by itself begins beneath what opens it. */
export function handoutParts(shown: HandoutShown): readonly HandoutPart[] {
  const isOne = shown.breads.length === 1
  const other = (block: TemplateResult): HandoutPart => ({ name: '', isFormula: false, blocks: [block] })
  return [
    ...(isOne ? [] : [other(html`${header(shown)}${overview(shown)}`)]),
    ...shown.breads.map(bread => {
      const both = bothOf(shown, bread)
      const [first, ...others] = bread.each.formula.stages.map(of => stage(shown, both, of))
      const heading = html`${isOne ? header(shown) : nothing}${breadHeading(shown, bread)}`
      const last = closing(shown, both)
      // A heading stays with its first stage.
      return { name: bread.name, isFormula: true, blocks: [html`${heading}${first}`, ...others, last] }
    }),
    other(cautions(shown)),
  ]
}
