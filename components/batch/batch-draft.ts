import type { Batch, Pieces } from '../../src/dough/document/batch.js'
import { type Formula, finalDoughOf, nameKey, sameName } from '../../src/dough/document/formula.js'
import type { FigureSheet } from '../../src/dough/sheet/figures.js'
import type { NumberStyle } from '../base/numbers.js'
import { showNumber } from '../base/numbers.js'
import { readNumber, readPart, readWeight } from '../typed/typed-numbers.js'

export type Make = Batch['make']

/** So many pieces of a weight, as typed. */
export interface Shape {
  readonly key: number
  readonly count: string
  readonly weight: string
  readonly name: string
}

/**
 * What is to be made, as typed. It holds the fields of every way to say it, so that going from one to
 * another and back loses nothing.
 */
export interface Draft {
  readonly make: Make
  readonly shapes: readonly Shape[]
  readonly loss: string // per cent
  readonly bakeLoss: string
  readonly dough: string // grams, as the two below
  readonly flour: string
  readonly allOf: string
  readonly ingredient: string
  readonly factor: string
  readonly proposed: string // what `allOf` was proposed to be, until the baker says otherwise
}

let keys = 0
export const blankShape = (): Shape => ({ key: keys++, count: '', weight: '', name: '' })

const emptyDraft: Draft = {
  make: 'as written',
  shapes: [],
  loss: '',
  bakeLoss: '',
  dough: '',
  flour: '',
  allOf: '',
  ingredient: '',
  factor: '',
  proposed: '',
}

const shown = (part: number | undefined, style: NumberStyle): string =>
  part ? showNumber(part * 100, style) : ''

/** The batch as it would be typed; of the other ways to say it, what was typed before. */
export function draftOf(batch: Batch | undefined, before: Draft | undefined, style: NumberStyle): Draft {
  const draft = { ...(before ?? emptyDraft), make: batch?.make ?? 'as written' }
  if (!batch) return { ...draft, shapes: draft.shapes.length ? draft.shapes : [blankShape()] }
  const number = (value: number) => showNumber(value, style)
  const said = { ...draft, loss: shown(batch.loss, style), bakeLoss: shown(batch.bakeLoss, style) }
  switch (batch.make) {
    case 'pieces':
    case 'baked pieces': {
      const shapes = batch.pieces.map(({ count, weight, name = '' }, at) => ({
        key: draft.shapes[at]?.key ?? keys++,
        count: number(count),
        weight: number(weight),
        name,
      }))
      return { ...said, shapes }
    }
    case 'dough':
    case 'flour':
      return { ...said, [batch.make]: number(batch.grams) }
    case 'all of':
      return { ...said, ingredient: batch.ingredient, allOf: number(batch.grams) }
    case 'factor':
      return { ...said, factor: number(batch.factor) }
    case 'as written':
      return said
  }
}

const isAbove0 = (value: number | undefined): value is number => value !== undefined && value > 0

function piecesOf(shapes: readonly Shape[], style: NumberStyle): Pieces[] | undefined {
  const pieces = shapes
    .filter(shape => `${shape.count}${shape.weight}`.trim() !== '')
    .map(({ count, weight, name }) => ({
      count: readNumber(count, style),
      weight: readWeight(weight, style),
      ...(name.trim() && { name: name.trim() }),
    }))
  const areAll = pieces.every(({ count, weight }) => isAbove0(count) && isAbove0(weight))
  return pieces.length && areAll ? (pieces as Pieces[]) : undefined
}

/** The batch that was typed; undefined while something is missing or not understood. */
export function batchOf(draft: Draft, style: NumberStyle): Batch | undefined {
  const [loss, bakeLoss] = [readPart(draft.loss, style), readPart(draft.bakeLoss, style)]
  if (loss === undefined || bakeLoss === undefined) return undefined
  const losses = { ...(loss ? { loss } : {}), ...(bakeLoss ? { bakeLoss } : {}) }
  const { make } = draft
  switch (make) {
    case 'as written':
      return { make, ...losses }
    case 'pieces':
    case 'baked pieces': {
      const pieces = piecesOf(draft.shapes, style)
      return pieces && { make, pieces, ...losses }
    }
    case 'dough':
    case 'flour': {
      const grams = readWeight(draft[make], style)
      return isAbove0(grams) ? { make, grams, ...losses } : undefined
    }
    case 'all of': {
      const grams = readWeight(draft.allOf, style)
      return isAbove0(grams) && draft.ingredient
        ? { make, ingredient: draft.ingredient, grams, ...losses }
        : undefined
    }
    case 'factor': {
      const factor = readNumber(draft.factor, style)
      return isAbove0(factor) ? { make, factor, ...losses } : undefined
    }
  }
}

/** What the batch can be all of: earlier stages that are taken, then ingredients. */
export function ingredientsOf({ stages }: Formula): { stages: string[]; ingredients: string[] } {
  const found = new Map<string, string>()
  for (const { lines } of stages)
    for (const { ingredient } of lines)
      if (ingredient.trim() && !found.has(nameKey(ingredient))) found.set(nameKey(ingredient), ingredient)
  const isStage = (name: string) => stages.some(s => sameName(s.name, name))
  const names = [...found.values()]
  return { stages: names.filter(isStage), ingredients: names.filter(name => !isStage(name)) }
}

/** Grams of an ingredient in the batch as it stands: of a stage, what the final dough takes. */
function takenNow(sheet: FigureSheet, ingredient: string): number | undefined {
  const { formula } = sheet
  const isStage = formula.stages.some(s => sameName(s.name, ingredient))
  const lines = (isStage ? [finalDoughOf(formula)] : formula.stages)
    .flatMap(s => s.lines)
    .filter(l => sameName(l.ingredient, ingredient))
  return lines.reduce<number | undefined>((sum, line) => {
    const { batch } = sheet.line(line.id)
    return sum === undefined || batch === undefined ? undefined : sum + batch
  }, 0)
}

/** All of an ingredient; until the baker has said how much, as much as is taken now. */
export function allOf(draft: Draft, ingredient: string, sheet: FigureSheet, style: NumberStyle): Draft {
  const now = takenNow(sheet, ingredient)
  const proposed = now ? rounded(now, style) : ''
  const grams = draft.allOf === draft.proposed ? proposed : draft.allOf
  return { ...draft, ingredient, allOf: grams, proposed }
}

const rounded = (grams: number, style: NumberStyle): string =>
  showNumber(grams >= 10 ? Math.round(grams) : Number(grams.toPrecision(2)), style)

/** Says it another way: with what was typed for that way before, or else about as much as is made now. */
export function inAnotherWay(draft: Draft, make: Make, sheet: FigureSheet, style: NumberStyle): Draft {
  const next = { ...draft, make }
  const { build, weight } = sheet.stage(finalDoughOf(sheet.formula).id)
  const flour = sheet.reading('totalFlour')
  const times = build && weight ? build / weight : 1
  switch (make) {
    case 'as written':
    case 'pieces':
      return next
    case 'baked pieces':
      return { ...next, bakeLoss: draft.bakeLoss || showNumber(usualBakeLoss * 100, style) }
    case 'dough':
      return { ...next, dough: draft.dough || (build ? rounded(build, style) : '') }
    case 'flour':
      return { ...next, flour: draft.flour || (flour ? rounded(flour * times, style) : '') }
    case 'factor':
      return { ...next, factor: draft.factor || showNumber(Number(times.toPrecision(3)), style) }
    case 'all of': {
      const { stages, ingredients } = ingredientsOf(sheet.formula)
      const first = [...stages, ...ingredients]
      const ingredient = first.find(name => sameName(name, draft.ingredient)) ?? first[0]
      return ingredient === undefined ? next : allOf(next, ingredient, sheet, style)
    }
  }
}

/** Of a loaf's weight, in the middle of what bakers find: 10 to 13 %. */
const usualBakeLoss = 0.12
