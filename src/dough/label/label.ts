import type { Worded } from '../../engine/index.js'
import type { ListName } from '../larder/allergen-lists.js'
import type { FigureSheet } from '../sheet/figures.js'
import { apart, type LabelRun, type Named, namedOf, says } from './allergens-named.js'
import { type LabelPart, labelParts } from './label-parts.js'
import { type Nutrition, nutritionOf } from './nutrition.js'
import { type LabelDiagnostic, labelNote } from './words.js'

/** What goes on the label of a bread, by the way of writing of one public list. */
export interface Label {
  readonly name: string
  readonly way: ListName
  readonly ingredients: readonly (readonly LabelRun[])[] // in order; empty where a weight is not known
  readonly contains: readonly string[] // allergens in a statement of their own; none in the European Union, where they stand apart in the list
  readonly pieces: readonly number[] // grams of each as baked
  readonly nutrition: Nutrition | undefined
  readonly notes: readonly Worded<LabelDiagnostic>[] // what is to be settled before it is used
}

/**
 * Of which weight water has its place. In the European Union, of what is left in the finished product: Annex VII, part A, 1 of Regulation
 * (EU) 1169/2011, which says how: the finished product less all other ingredients as used, so that all that baking drives off is taken
 * from the added water. In Canada of what went into the bowl: B.01.008.2(3)(a) of the Food and Drug Regulations. 21 CFR 101.4 says `by
 * weight` alone: there what baking drives off is shared by all the water in the dough, that of milk, egg and butter too.
 */
function waterLeft(way: ListName, added: number, { loss, all }: Drying): number {
  if (way === 'canada') return added
  return Math.max(0, way === 'eu' ? added - loss : added * (1 - loss / all))
}

/** Grams a gram of dough: what baking drives off, and all the water that it can come from, as far as the larder knows it. */
interface Drying {
  readonly loss: number
  readonly all: number
}

const waterIn = ({ isWater, ingredient, share }: LabelPart): number =>
  share * (isWater ? 1 : (ingredient?.moisture ?? 0))

/** Bought with ingredients of their own, as far as the usual larder has such. */
const boughtMixed: ReadonlySet<string> = new Set([
  'usual-margarine',
  'usual-shortening',
  'usual-dark-chocolate',
  'usual-candied-fruit',
  'usual-dried-cranberries',
  'usual-beer',
  'usual-soy-milk',
])

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)
const plain = (text: string): LabelRun => ({ text, isAllergen: false })

/** One ingredient as a label writes it. */
class Entry {
  readonly part: LabelPart
  readonly weight: number
  readonly named: readonly Named[]
  readonly madeOf: string
  readonly #way: ListName

  constructor(part: LabelPart, way: ListName, drying: Drying) {
    this.part = part
    this.#way = way
    this.weight = part.isWater ? waterLeft(way, part.share, drying) : part.share
    this.madeOf = part.ingredient?.madeOf?.trim() ?? ''
    const all = namedOf(part.allergens, way)
    // What its own label says goes before what the list says it may hold.
    this.named = this.madeOf ? all.filter(one => !one.isDoubtful || says(this.#own, one.word)) : all
  }

  get #own(): string {
    return `${this.part.name} ${this.madeOf}`
  }

  /** Grouped together on Canadian labels: B.01.008.3 of the Food and Drug Regulations. */
  get isSugars(): boolean {
    return this.#way === 'canada' && this.part.ingredient?.kind === 'sugar'
  }

  runs(): readonly LabelRun[] {
    const isApart = this.#way === 'eu'
    const words = isApart ? this.named.map(({ word }) => word) : []
    const unsaid = words.filter(word => !says(this.#own, word))
    const name = capital(this.part.name)
    const bracketed = unsaid.flatMap((text, at) => [
      ...(at || this.madeOf ? [plain(', ')] : []),
      { text, isAllergen: true },
    ])
    const inside = [...apart(this.madeOf, words), ...bracketed]
    return [...apart(name, words), ...(inside.length ? [plain(' ('), ...inside, plain(')')] : [])]
  }
}

const heaviestFirst = (a: { readonly weight: number }, b: { readonly weight: number }): number => {
  const apart = b.weight - a.weight
  return Math.abs(apart) < 1e-12 ? 0 : apart // equal weights stay as they are mixed
}

/** The list in its order; on Canadian labels sugars stand together, where all of them would. */
function listed(entries: readonly Entry[]): readonly (readonly LabelRun[])[] {
  const sorted = [...entries].sort(heaviestFirst)
  const sugars = sorted.filter(one => one.isSugars)
  const rows = sorted.filter(one => !one.isSugars).map(one => ({ weight: one.weight, runs: one.runs() }))
  if (sugars.length) {
    const names = sugars.map(one =>
      one
        .runs()
        .map(({ text }) => text)
        .join('')
        .toLowerCase(),
    )
    const weight = sugars.reduce((sum, one) => sum + one.weight, 0)
    rows.push({ weight, runs: [plain(`Sugars (${names.join(', ')})`)] })
  }
  return rows.sort(heaviestFirst).map(({ runs }) => runs)
}

/** In a statement after the list: 21 USC 343(w) and B.01.010.3 of the Food and Drug Regulations leave it to the maker. */
function containsOf(entries: readonly Entry[], way: ListName): readonly string[] {
  if (way === 'eu') return []
  const words = entries.flatMap(({ named }) =>
    named.map(({ word, entry }) =>
      // Canada prescribes the names of nuts in the plural.
      way === 'canada' && entry.startsWith('tree nuts (') && !word.endsWith('s') ? `${word}s` : word,
    ),
  )
  return [...new Set(words.map(capital))]
}

function notesOf(entries: readonly Entry[]): Worded<LabelDiagnostic>[] {
  const names = (which: (one: Entry) => boolean) => entries.filter(which).map(({ part }) => part.name)
  const unknown = names(({ part }) => !part.allergens)
  const unmixed = names(({ part, madeOf }) => !madeOf && boughtMixed.has(part.ingredient?.id ?? ''))
  return [
    ...(unknown.length ? [labelNote({ code: 'labelAllergensUnknown', ingredients: unknown })] : []),
    ...(unmixed.length ? [labelNote({ code: 'labelMadeOfUnsaid', ingredients: unmixed })] : []),
    ...entries.flatMap(({ part, named, madeOf }) =>
      named.flatMap(({ entry, isDoubtful, isOpen }, at) => {
        const ingredient = part.name
        const isFirst = named.findIndex(other => other.entry === entry) === at
        if (isDoubtful && isFirst && !madeOf) return [labelNote({ code: 'labelToCheck', ingredient, entry })]
        return isOpen ? [labelNote({ code: 'labelKindNotNamed', ingredient, entry })] : []
      }),
    ),
  ]
}

/** Grams of each shape as baked, as far as the batch says. */
function piecesOf({ formula }: FigureSheet): readonly number[] {
  const { batch } = formula
  if (!batch || !('pieces' in batch)) return []
  if (batch.make === 'baked pieces') return batch.pieces.map(({ weight }) => weight)
  const { bakeLoss } = batch
  return bakeLoss ? batch.pieces.map(({ weight }) => weight * (1 - bakeLoss)) : []
}

/**
 * The label of a formula, as its batch is weighed or by its percentages: ingredients in descending order of weight as used, added water less what
 * baking drives off of it, never below zero; allergens as the list has them named; the weight of a piece and what 100 g of it hold. It is worked
 * out from the larder, and no clearance.
 */
export function labelOf(sheet: FigureSheet, way: ListName): Label {
  const { parts, notes } = labelParts(sheet)
  const bakeLoss = sheet.formula.batch?.bakeLoss || undefined
  const drying = { loss: bakeLoss ?? 0, all: parts.reduce((sum, part) => sum + waterIn(part), 0) }
  const entries = parts.map(part => new Entry(part, way, drying))
  const kept = entries.filter(({ weight }) => weight > 0)
  const isDry = kept.length < entries.length
  const found = parts.length && bakeLoss ? nutritionOf(parts, bakeLoss) : undefined
  const lacking = found && 'lacking' in found ? found.lacking : []
  return {
    name: sheet.formula.name,
    way,
    ingredients: listed(kept),
    contains: containsOf([...kept].sort(heaviestFirst), way),
    pieces: piecesOf(sheet),
    nutrition: found && 'fat' in found ? found : undefined,
    notes: [
      ...(parts.length && !bakeLoss ? [labelNote({ code: 'labelBakeLossUnsaid' })] : []),
      ...(isDry
        ? [labelNote({ code: drying.loss > drying.all ? 'labelWaterGone' : 'labelWaterNotCounted' })]
        : []),
      ...notes,
      ...notesOf(kept),
      ...(lacking.length ? [labelNote({ code: 'labelNutritionLacks', ingredients: lacking })] : []),
    ],
  }
}
