/** What a word after a number makes of it. */
export type UnitWord =
  | { readonly kind: 'unit'; readonly unit: string; readonly letter?: true } // a unit of Tarebook's; by one letter that may be none
  | {
      readonly kind: 'converted'
      readonly unit: string
      readonly times: number // of that unit
      readonly said?: string // what is not certain about it
    }
  | { readonly kind: 'each'; readonly word: string } // counted: cloves of garlic
  | { readonly kind: 'pinch' }
  | { readonly kind: 'unknown'; readonly word: string } // a measure of which nobody knows what it weighs
  | { readonly kind: 'share'; readonly of: number | 'rest' } // of what was made before: all of the levain
  | { readonly kind: 'not an amount'; readonly isWhen?: true } // loaves; minutes and degrees: when and how warm

const units: Readonly<Record<string, string>> = {
  g: 'g|gr|grs|gm|gms|gram|grams|gramme|grammes',
  kg: 'kg|kgs|kilo|kilos|kilogram|kilograms|kilogramme|kilogrammes',
  oz: 'oz|oz wt|oz av|ounce weight|ounces weight|ounces by weight|ounce|ounces|once|onces',
  lb: 'lb|lbs|pound|pounds',
  ml: 'ml|mls|millilitre|millilitres|milliliter|milliliters',
  l: 'l|lt|ltr|litre|litres|liter|liters',
  tsp: 'tsp|tsps|teasp|teaspoon|teaspoons|teaspoonful|teaspoonfuls|cuillere a cafe|cuilleres a cafe|cuilleree a cafe|cuillerees a cafe|cuill a cafe|cuil a cafe|c a cafe|c a c|cac|c c|cuillere a the|cuilleres a the|c a the|cc|tl|teeloffel',
  tbsp: 'tbsp|tbsps|tbs|tblsp|tbl|tablesp|tablespoon|tablespoons|tablespoonful|tablespoonfuls|cuillere a soupe|cuilleres a soupe|cuilleree a soupe|cuillerees a soupe|cuill a soupe|cuil a soupe|c a soupe|c a s|cas|cs|c s|el|essloffel',
  cup: 'cup|cups|cupful|cupfuls|c',
  'fl oz': 'fl oz|floz|fluid ounce|fluid ounces|fl ounce|fl ounces',
  '%': '%|percent|per cent|pour cent|pct',
}

const usPint = 'A pint was read as the US pint of 2 cups; the imperial pint is 568 ml.'
const usQuart = 'A quart was read as the US quart of 4 cups; the imperial quart is 1137 ml.'
const converted: readonly (readonly [string, unit: string, times: number, said?: string])[] = [
  ['mg|mgs|milligram|milligrams|milligramme|milligrammes', 'g', 0.001],
  ['cl|cls|centilitre|centilitres|centiliter|centiliters', 'ml', 10],
  ['dl|dls|decilitre|decilitres|deciliter|deciliters', 'ml', 100],
  ['dessertspoon|dessertspoons|dsp|cuillere a dessert|cuilleres a dessert', 'tsp', 2],
  ['pint|pints|pt|pts', 'cup', 2, usPint],
  ['quart|quarts|qt|qts', 'cup', 4, usQuart],
  [
    'gallon|gallons',
    'cup',
    16,
    'A gallon was read as the US gallon of 16 cups; the imperial gallon is 4.546 l.',
  ],
  ['stick|sticks', 'oz', 4],
  ['livre|livres', 'g', 500, 'A “livre” was read as 500 g.'],
  ['tasse|tasses', 'cup', 1, 'A “tasse” was read as a US cup of 237 ml; others are of 250 ml.'],
]

const counted =
  'clove|cloves|gousse|gousses|whole|piece|pieces|head of|heads of|bulb|bulbs|tete|tetes|each|unite|unites|medium head|stuck|stucke'
const pinches = 'pinch|pinches|pincee|pincees|prise|prisen'
const unknown =
  'handful|handfuls|poignee|poignees|knob|knobs|noix de|noisette de|sachet|sachets|packet|packets|pack|packs|package|packages|pkg|pkgs|pkt|pkts|envelope|envelopes|enveloppe|enveloppes|paquet|paquets|tin|tins|can|cans|jar|jars|bag|bags|box|boxes|bottle|bottles|boite|boites|pot|pots|bouteille|bouteilles|brique|briques|cube|cubes|wurfel|packchen|block|blocks|verre|verres|glass|glasses|glassful|carton|cartons|tub|tubs|tube|tubes|pouch|pouches|punnet|barquette|barquettes|mugful|bowlful|fistful|fistfuls|capful|capfuls|jugful|ladleful|bowl|bowls|bol|bols|mug|mugs|tablette|tablettes|bar|bars|ladle|ladles|louche|louches|dash|dashes|trait|traits|splash|splashes|filet|filets|drizzle|glug|glugs|drop|drops|goutte|gouttes|sprinkle|sprinkling|bunch|bunches|bouquet|bouquets|sprig|sprigs|brin|brins|branche|branches|stalk|stalks|leaf|leaves|feuille|feuilles|slice|slices|tranche|tranches|spoon|spoons|spoonful|spoonfuls|cuillere|cuilleres|scoop|scoops|smear|lump|lumps|part|parts|portion of|volume|volumes|strip|strips|zeste|soupcon|peu|peu de|few|little|grating|gratings|twist|twists|shake|shakes|squeeze|squirt|dollop|dollops|nob|nut of|thumb of|scraping|trickle|slug|spray|turn of|tour de moulin|lichette|larme|rasade|louchee'
const timesAndDegrees =
  'minute|minutes|min|mins|mn|minuten|second|seconds|sec|secs|seconde|secondes|hour|hours|hr|hrs|h|heure|heures|std|stunde|stunden|day|days|jour|jours|week|weeks|semaine|semaines|month|months|mois|night|nights|nuit|nuits|degree|degrees|degre|degres|deg|celsius|fahrenheit|f|degrees c|degrees f'
const notAmounts =
  'cm|mm|inch|inches|in|metre|metres|pouce|pouces|loaf|loaves|pain|pains|baguette|baguettes|bun|buns|roll|rolls|ball|balls|boule|boules|paton|patons|portion|portions|serving|servings|people|persons|personne|personnes|convives|time|times|fois|fold|folds|rabat|rabats|turn|turns|tour|tours|step|steps|etape|etapes|stage|stages|part|batch|batches|tray|trays|tins of dough|equal|kcal|kj|calories|rpm|watt|watts|x|pm|am|oclock|st|nd|rd|th|er|eme|strips of dough|more|others|autres|%hydration'

const table = new Map<string, UnitWord>()
const enter = (words: string, of: (word: string) => UnitWord) => {
  for (const word of words.split('|')) table.set(word, of(word))
}
enter(notAmounts, () => ({ kind: 'not an amount' }))
enter(timesAndDegrees, () => ({ kind: 'not an amount', isWhen: true }))
enter(unknown, word => ({ kind: 'unknown', word }))
enter(counted, word => ({ kind: 'each', word }))
enter(pinches, () => ({ kind: 'pinch' }))
for (const [words, unit, times, said] of converted)
  enter(words, () => ({ kind: 'converted', unit, times, ...(said ? { said } : {}) }))
for (const [unit, words] of Object.entries(units)) enter(words, () => ({ kind: 'unit', unit }))

/** Units by their words without accents, the words of one unit parted by a space. */
export const unitTable: ReadonlyMap<string, UnitWord> = table
export const mostUnitWords = 3

/** A pinch between thumb and finger: the trade reckons about 0.3 g of fine salt; a guess to be confirmed. */
export const gramsInPinch = 0.3
