import { folded } from './folded.js'
import type { Unit } from './units.js'

/** What a word after a number makes of it. */
export type UnitWord =
  | {
      readonly kind: 'unit'
      readonly unit: Unit | '%'
      readonly guess?: UnitGuess // what is not certain about it
    }
  | { readonly kind: 'each'; readonly word: string } // counted: cloves of garlic
  | { readonly kind: 'unknown'; readonly word: string } // a measure of which nobody knows what it weighs
  | { readonly kind: 'not an amount'; readonly isWhen?: true } // loaves; minutes and degrees: when and how warm

/**
 * Why a unit's word is not certain: `us measure` (pints, quarts and gallons are larger in Britain), `metric pound`
 * (500 g), `other cup` (tasse, Tasse), `estimate` (a pinch, a knife's tip), `stick` (of butter: other sticks are
 * counted), `letter` (t, T and c alone).
 */
export type UnitGuess = 'us measure' | 'metric pound' | 'other cup' | 'estimate' | 'stick' | 'letter'

/** Spoons of these sizes, as French kitchens write and cut them. */
const cuilleres = (sizes: string): string =>
  'cuillere|cuilleres|cuilleree|cuillerees|cuill|cuil|c'
    .split('|')
    .flatMap(spoon => sizes.split('|').map(size => `${spoon} a ${size}`))
    .join('|')

/** Units by their words in English, French and German kitchens, folded; the words of one unit parted by a space. */
const spellings: readonly (readonly [unit: Unit | '%', words: string, guess?: UnitGuess])[] = [
  ['g', 'g|gr|grs|gm|gms|gram|grams|gramme|grammes|gramm'],
  ['kg', 'kg|kgs|kilo|kilos|kilogram|kilograms|kilogramme|kilogrammes|kilogramm'],
  ['mg', 'mg|mgs|milligram|milligrams|milligramme|milligrammes|milligramm'],
  ['oz', 'oz|ozs|oz wt|oz av|ounce weight|ounces weight|ounces by weight|ounce|ounces|once|onces|unze|unzen'],
  ['lb', 'lb|lbs|pound|pounds'],
  ['metric lb', 'metric lb|livre|livres|pfund|pfd', 'metric pound'],
  ['ml', 'ml|mls|millilitre|millilitres|milliliter|milliliters'],
  ['cl', 'cl|cls|centilitre|centilitres|centiliter|centiliters|zentiliter'],
  ['dl', 'dl|dls|decilitre|decilitres|deciliter|deciliters|deziliter'],
  ['l', 'l|lt|ltr|litre|litres|liter|liters'],
  [
    'tsp',
    `${cuilleres('cafe|the|c')}|tsp|tsps|teasp|teaspoon|teaspoons|teaspoonful|teaspoonfuls|cac|ca c|c c|cc|tl|teeloffel|teeloeffel|kaffeeloffel`,
  ],
  ['dessertspoon', `${cuilleres('dessert')}|dessertspoon|dessertspoons|dsp|dessertloffel`],
  [
    'tbsp',
    `${cuilleres('soupe|table|tab|s')}|tbsp|tbsps|tbs|tblsp|tbl|tablesp|tablespoon|tablespoons|tablespoonful|tablespoonfuls|ca s|cas|cs|c s|el|essloffel|essloeffel`,
  ],
  ['cup', 'cup|cups|cupful|cupfuls|c'],
  ['cup', 'tasse|tasses|tassen', 'other cup'],
  ['fl oz', 'fl oz|floz|fluid ounce|fluid ounces|fl ounce|fl ounces'],
  ['pint', 'pint|pints|pt|pts', 'us measure'],
  ['quart', 'quart|quarts|qt|qts', 'us measure'],
  ['gallon', 'gallon|gallons|gal', 'us measure'],
  ['stick', 'stick|sticks', 'stick'],
  ['pinch', 'pinch|pinches|pincee|pincees|prise|prisen', 'estimate'],
  ['knife tip', 'messerspitze|messerspitzen|msp|pointe de couteau|knife tip|knife tips', 'estimate'],
  ['%', '%|percent|per cent|pour cent|pourcent|pct|prozent'],
]
const counted =
  'each|whole|piece|pieces|pc|pcs|clove|cloves|bulb|bulbs|head of|heads of|medium head|gousse|gousses|tete|tetes|unite|unites|stuck|stucke|stk|zehe|zehen|knolle|knollen'

/** Words with what they mean, in a row of them parted by `|`. */
export const wordsOf = <M>(words: string, meaning: (word: string) => M): (readonly [string, M])[] =>
  words.split('|').map(word => [word, meaning(word)] as const)

/** The units whose size is known, and the words for things that are counted. */
export const knownUnits: ReadonlyMap<string, UnitWord> = new Map([
  ...wordsOf(counted, (word): UnitWord => ({ kind: 'each', word })),
  ...spellings.flatMap(([unit, words, guess]) =>
    wordsOf(words, (): UnitWord => ({ kind: 'unit', unit, ...(guess ? { guess } : {}) })),
  ),
])

/** A pinch and the like, whose size is an estimate: they need no number. */
export const isEstimate = (unit: UnitWord | undefined): boolean =>
  unit?.kind === 'unit' && unit.guess === 'estimate'

/** Most words of one unit: `c à s`. */
export const mostUnitWords = 3

/** Every spelling of a unit that may stand in an expression → the unit, whatever its case and accents. */
class UnitWords extends Map<string, string> {
  override get(word: string): string | undefined {
    return super.get(folded(word))
  }
  override has(word: string): boolean {
    return super.has(folded(word))
  }
}

/** Every accepted spelling of a unit of one or two words → the unit; asked in any case and with any accents. */
export const unitWords: ReadonlyMap<string, string> = new UnitWords(
  [...knownUnits].flatMap(([words, meaning]) =>
    meaning.kind === 'each'
      ? [[words, 'each'] as const]
      : meaning.kind === 'unit' && meaning.unit !== '%'
        ? [[words, meaning.unit] as const]
        : [],
  ),
)

/** Whether a word is a unit that is always one, so that nothing else should be called by it: `tsp`, and not `pinch`. */
export const isOnlyUnit = (word: string): boolean => {
  const meaning = knownUnits.get(folded(word))
  return word === 'each' || (meaning?.kind === 'unit' && !meaning.guess)
}
