import { knownUnits } from '../../dough/lexicon/unit-words.js'
import { millilitres, multiples } from '../../dough/lexicon/units.js'
import { folded, wordsOf } from '../values/labels.js'
import type { ColumnUse } from './types.js'

const usesOfUnits: Readonly<Record<string, ColumnUse>> = {
  kg: 'kilograms',
  g: 'grams',
  oz: 'ounces',
  lb: 'pounds',
}
const useOfUnit = (word: string): ColumnUse | undefined => {
  const unit = knownUnits.get(word)
  if (unit?.kind !== 'unit') return undefined
  return usesOfUnits[unit.unit] ?? (unit.unit in millilitres || unit.unit in multiples ? 'amount' : undefined)
}

// The first that fits; `leave out` ends the search.
const headings: readonly (readonly [ColumnUse, RegExp])[] = [
  [
    'leave out',
    /price|cost|preis|kosten|prix|cout|allergen|supplier|lieferant|fournisseur|^p\.? ?u\.?(?: |$)|(?<![a-z])(?:ht|ttc)$|[€$£]|kcal|energ|^(?:id|no\.?|nr\.?|nº|n°|#|pos\.?|row|line)$/,
  ],
  ['unit', /^(?:units?|uom|einheit(?:en)?|unites?|me)$/],
  ['note', /note|remark|comment|kommentar|bemerkung|anmerkung|hinweis|notiz|remarque|observation/],
  ['stage', /stage|phase|^step$|^part|section|stufe|^teil|etape|stade|partie|^build|^mix$/],
  ['ingredient', /ingredi|zutat|rohstoff|material|matiere|^item|component|komponente|composant|^what$|^was$/],
  ['formula', /formula|formule|recipe|rezept|recette|^bread|^brot|^pain|^product|^produkt|^produit/],
  ['amount', /amount|quantit|qty|qte|weight|menge|gewicht|poids|masse?$|einwaage|^scaling/],
  ['ingredient', /^name|^nom$|^bezeichnung|^designation|^description/],
]

const isPercent = /%|percent|prozent|pourcent|(?<![a-z])pct(?![a-z])/
const ofAllDough = /total|overall|whole|gesamt|dough|teig|pate(?![a-z])|global/
const ofFlour = /flour|mehl|farine|baker|backer|boulang/

/** What a column of this heading most likely holds; undefined: no idea. `2 kg` is the size of a batch and no unit. */
export function headingUse(heading: string): ColumnUse | 'other percent' | undefined {
  const text = folded(heading)
  if (text === '' || text.length > 60) return undefined
  if (headings[0]![1].test(text)) return 'leave out'
  if (isPercent.test(text)) return ofAllDough.test(text) && !ofFlour.test(text) ? 'other percent' : 'percent'
  const words = text.length > 60 || isSize(heading) ? [] : wordsOf(text).split(' ')
  // `Rev C`, `Mix T`: a letter is a cup or a spoon only by itself
  const isMeant = (word: string) => word.length > 1 || word === 'g' || words.length === 1
  const unit = words.length > 6 ? undefined : words.filter(isMeant).map(useOfUnit).find(Boolean)
  if (unit) return unit
  return headings.find(([, words]) => words.test(text))?.[0]
}

/** The measure that a heading names, of numbers alone below it: `Cups`, `Water (ml)`. */
export const measureOf = (heading: string): string =>
  wordsOf(heading)
    .split(' ')
    .slice(0, 6)
    .find(word => useOfUnit(word) === 'amount') ?? ''

/** `1,10 €`, `$2.50`, `3.20 €/kg`. */
export const isPrice = (cell: string): boolean =>
  /^(?:[€$£]\s?\d[\d.,]*|\d[\d.,]*\s?[€$£])(?:\s?\/\s?\p{L}{1,6})?$/u.test(cell)

/** A unit and nothing else. */
export const isUnit = (cell: string): boolean => knownUnits.has(folded(cell).replace(/\.$/, ''))

/** `12 loaves`, `2 kg`: how much is made. */
export const isSize = (heading: string): boolean =>
  /^\s*(?:x\s?)?\d+(?:[.,]\d+|(?:\s\d)?\/\d)?\s*(?:x|\p{L}.*)$/iu.test(heading)

/** … `2 kg`, and not so many loaves. */
export const isWeighed = (cell: string): boolean =>
  wordsOf(cell)
    .split(' ')
    .some(word => useOfUnit(word))
