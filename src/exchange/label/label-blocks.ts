import type { LabelRun } from '../../dough/label/allergens-named.js'
import type { Label } from '../../dough/label/label.js'
import { caloriesInAmerica, energyInEurope, type Nutrition, sodiumIn } from '../../dough/label/nutrition.js'
import type { ListName } from '../../dough/larder/allergen-lists.js'
import { american, european, plainly } from './rounding.js'
import { calculatedWords, checkWords, labelWords, nutrientWords, wayWords } from './words.js'

/** A row of a nutrition table. */
export interface NutritionRow {
  readonly of: string
  readonly says: string
  readonly isPart: boolean // of what stands above it
}

/** A label in the order in which it is read; whoever writes it gives it its form. */
export interface LabelBlocks {
  readonly name: string
  readonly ingredients: readonly LabelRun[] // with commas between them
  readonly contains: string // '' for none
  readonly netWeight: string // '' where it is not known
  readonly rows: readonly NutritionRow[]
  readonly calculated: string // how the rows came about; '' without any
  readonly toCheck: readonly string[] // what is to be settled of this bread, a sentence each
  readonly way: ListName
}

const row = (of: string, says: string | undefined, isPart = false): readonly NutritionRow[] =>
  says === undefined ? [] : [{ of, says, isPart }]

const maybe = (value: number | undefined, say: (value: number) => string): string | undefined =>
  value === undefined ? undefined : say(value)

const rowsOf: Readonly<Record<ListName, (nutrition: Nutrition) => readonly NutritionRow[]>> = {
  eu: n => {
    const { kJ, kcal } = energyInEurope(n)
    const { energy, nutrient, saturates, salt } = european
    return [
      ...row(nutrientWords.energy, `${energy(kJ)} kJ / ${energy(kcal)} kcal`),
      ...row(nutrientWords.fat, nutrient(n.fat)),
      ...row(nutrientWords.saturates, maybe(n.saturates, saturates), true),
      ...row(nutrientWords.carbohydrate, nutrient(n.carbohydrate)),
      ...row(nutrientWords.sugars, maybe(n.sugars, nutrient), true),
      ...row(nutrientWords.fibre, nutrient(n.fibre)),
      ...row(nutrientWords.protein, nutrient(n.protein)),
      ...row(nutrientWords.salt, salt(n.salt)),
    ]
  },
  us: n => {
    const { calories, fat, sodium, nutrient } = american
    return [
      ...row(nutrientWords.calories, calories(caloriesInAmerica(n))),
      ...row(nutrientWords.totalFat, fat(n.fat)),
      ...row(nutrientWords.saturatedFat, maybe(n.saturates, fat), true),
      ...row(nutrientWords.sodium, sodium(sodiumIn(n.salt))),
      ...row(nutrientWords.totalCarbohydrate, nutrient(n.carbohydrate + n.fibre)),
      ...row(nutrientWords.dietaryFiber, nutrient(n.fibre), true),
      ...row(nutrientWords.totalSugars, maybe(n.sugars, nutrient), true),
      ...row(nutrientWords.protein, nutrient(n.protein)),
    ]
  },
  canada: n => {
    const { calories, grams, milligrams } = plainly
    return [
      ...row(nutrientWords.calories, calories(caloriesInAmerica(n))),
      ...row(nutrientWords.fat, grams(n.fat)),
      ...row(nutrientWords.saturates, maybe(n.saturates, grams), true),
      ...row(nutrientWords.carbohydrate, grams(n.carbohydrate + n.fibre)),
      ...row(nutrientWords.fibre, grams(n.fibre), true),
      ...row(nutrientWords.sugars, maybe(n.sugars, grams), true),
      ...row(nutrientWords.protein, grams(n.protein)),
      ...row(nutrientWords.sodium, milligrams(sodiumIn(n.salt))),
    ]
  },
}

function calculatedOf({ fromTable, fromLarder }: Nutrition): string {
  const { fromTable: table, fromLarder: larder, calculated } = calculatedWords
  return calculated([
    ...(fromTable.length ? [table(fromTable)] : []),
    ...(fromLarder.length ? [larder(fromLarder)] : []),
  ])
}

function toCheckOf({ nutrition, notes }: Label): readonly string[] {
  const { sugarsUnknown = [], sugarsDoubtful = [], sugars, saturates } = nutrition ?? {}
  return [
    ...notes.map(({ message }) => message),
    ...(sugarsUnknown.length ? [checkWords.sugarsUnknown(sugarsUnknown)] : []),
    ...(sugars !== undefined && sugarsDoubtful.length ? [checkWords.sugarsDoubtful(sugarsDoubtful)] : []),
    ...(nutrition && saturates === undefined ? [checkWords.saturatesUnknown] : []),
  ]
}

/** What is to be known of all labels written one way, a sentence each; to be said with every one of them. */
export function labelRules(labels: readonly LabelBlocks[]): readonly string[] {
  const ways = [...new Set(labels.map(({ way }) => way))]
  const hasTable = labels.some(({ rows }) => rows.length > 0)
  return [
    ...ways.flatMap(way => [wayWords[way].written, ...(hasTable ? [wayWords[way].ofNutrition] : [])]),
    checkWords.supplier,
    checkWords.law,
  ]
}

const gramsInOunce = 28.349523125 // avoirdupois: NIST Handbook 44, Appendix C

function weightOf(grams: number, way: ListName): string {
  const whole = `${Math.round(grams)} g`
  return way === 'us' ? `${(grams / gramsInOunce).toFixed(1)} oz (${whole})` : whole
}

const comma: LabelRun = { text: ', ', isAllergen: false }

/** A label in the order in which it is read. */
export function labelBlocks(label: Label): LabelBlocks {
  const { name, way, ingredients, contains, pieces, nutrition } = label
  return {
    name,
    ingredients: ingredients.flatMap((runs, at) => (at ? [comma, ...runs] : runs)),
    contains: contains.join(', '),
    netWeight: [...new Set(pieces.map(grams => weightOf(grams, way)))].join(labelWords.or),
    rows: nutrition ? rowsOf[way](nutrition) : [],
    calculated: nutrition ? calculatedOf(nutrition) : '',
    toCheck: toCheckOf(label),
    way,
  }
}
