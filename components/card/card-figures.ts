import { html, nothing, type TemplateResult } from 'lit'
import type { HouseholdOptions } from '../../src/dough/about/household.js'
import type { Scale } from '../../src/dough/document/batch.js'
import type { Line, Stage } from '../../src/dough/document/formula.js'
import type { ListName } from '../../src/dough/larder/allergen-lists.js'
import { type FigureSheet, isUnsaid } from '../../src/dough/sheet/figures.js'
import { type NumberStyle, showDecimals, showPercent } from '../base/numbers.js'
import { shapesOf } from '../batch/batch-prose.js'
import { totalWords } from '../batch/total-words.js'
import { weighedLine, weighedStage } from '../batch/weighed-shown.js'
import { pageWords } from './words.js'

/** What is printed of a formula. */
export interface CardShown {
  readonly sheet: FigureSheet
  readonly numbers: NumberStyle
  readonly measures: HouseholdOptions | undefined // cups and spoons beside the weights
  readonly notes: boolean
  readonly list: ListName // of allergens
  readonly among: boolean // the cards of several: its headings are a level further down
}

const least = 0.02 // of a count: what is nearer to a whole or a half is one

/** How many there are of what is counted, as eggs are: to the nearest half; undefined where it is not counted. */
export function countOf({ sheet, numbers }: CardShown, { id, ingredient }: Line): string | undefined {
  const each = sheet.line(id).is === 'stage' ? undefined : sheet.larder.find(ingredient)?.each
  const count = (sheet.weighed(id)?.grams ?? 0) / (each ?? Infinity)
  const halves = Math.round(count * 2) / 2
  if (!halves) return undefined
  const said = showDecimals(halves, numbers, 1, 0)
  return pageWords.count(said, Math.abs(count / halves - 1) > least)
}

/** Figures that stand under each other by their decimal marks: the room of the decimals that others have and they have not is kept. */
class Column {
  readonly #places: number

  constructor(
    figures: readonly string[],
    readonly mark: string,
  ) {
    this.#places = Math.max(0, ...figures.map(figure => this.#decimals(figure)))
  }

  /** Characters from the decimal mark on. */
  #decimals(figure: string): number {
    const at = figure.lastIndexOf(this.mark)
    return at < 0 ? 0 : figure.length - at
  }

  show(figure: string): TemplateResult {
    const room = `${this.mark}000`.slice(this.#decimals(figure), this.#places)
    return html`${figure}${room ? html`<span data-room=${room}></span>` : nothing}`
  }
}

export interface Columns {
  readonly grams: Column
  readonly percent: Column
}

/** A line's name, of a starter with its hydration: whoever has none of it has to know. */
export function nameOf({ sheet, numbers }: CardShown, { id, ingredient }: Line): string {
  const { starterHydration } = sheet.line(id)
  const name = ingredient || '–'
  return starterHydration === undefined
    ? name
    : pageWords.starter(name, pageWords.hydration(showPercent(starterHydration, numbers)))
}

/** `1 g (0.1 g below 10 g)`: the steps in which all of it is weighed. */
export function stepsSaid({ step, fineStep, fineBelow }: Scale, numbers: NumberStyle): string {
  const grams = (value: number) => `${showDecimals(value, numbers, 4, 0)}\u00a0g`
  const isFine = fineBelow > 0 && fineStep !== step
  return `${grams(step)}${isFine ? pageWords.fine(grams(fineStep), grams(fineBelow)) : ''}`
}

/** Whether there is anything to weigh. */
export const isSaid = (sheet: FigureSheet, line: Line): boolean => !isUnsaid(line, sheet.line(line.id))

/** Without noughts at their end. */
const gramsText = (grams: number | undefined, style: NumberStyle): string =>
  grams === undefined ? '–' : showDecimals(grams, style, 4, 0)

/** Grams of a line as they are weighed. */
export const gramsOf = ({ sheet, numbers }: CardShown, line: string): string =>
  gramsText(weighedLine(sheet, line, numbers).grams, numbers)

/** Grams of a stage as they are weighed. */
export const sumOf = ({ sheet, numbers }: CardShown, stage: Stage): string =>
  gramsText(weighedStage(sheet, stage, numbers).grams, numbers)

/** A line's share of its stage's base; undefined where there is none to tell. */
export function percentOf({ sheet, numbers }: CardShown, line: Line): string | undefined {
  const { percent } = sheet.line(line.id)
  return isSaid(sheet, line) && percent !== undefined ? showPercent(percent, numbers) : undefined
}

/** All the card's lines in one measure: it is read from the top to the foot. */
export function columnsOf(shown: CardShown): Columns {
  const { sheet, numbers } = shown
  const lines = sheet.formula.stages.flatMap(({ lines }) => lines)
  const said = lines.filter(line => isSaid(sheet, line))
  return {
    grams: new Column(
      said.map(line => gramsOf(shown, line.id)),
      numbers.decimal,
    ),
    percent: new Column(
      lines.map(line => percentOf(shown, line) ?? ''),
      numbers.decimal,
    ),
  }
}

/** `12 × 966 g (850 g baked), round tin`: what each piece weighs before it is baked; undefined where none are made. */
export function piecesOf({ sheet, numbers }: CardShown): string | undefined {
  const { batch } = sheet.formula
  if (!batch || !('pieces' in batch)) return undefined
  const kept = batch.make === 'baked pieces' ? 1 - (batch.bakeLoss ?? 0) : 1
  const shapes = batch.pieces.map(shape => ({
    ...shape,
    weight: Math.round((shape.weight / kept) * 10) / 10,
  }))
  const baked = (weight: number) => (batch.bakeLoss ? weight * (1 - batch.bakeLoss) : undefined)
  return totalWords.shapes(shapesOf(shapes, numbers, baked))
}
