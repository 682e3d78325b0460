import { gramsIn } from '../../dough/amounts/measures.js'
import type { Ingredient, Larder } from '../../dough/document/larder.js'
import { guessCountsAs } from '../../dough/larder/counts-as-guess.js'
import { ingredientNamed } from '../../dough/larder/spelled-names.js'
import { numberText } from '../../dough/lexicon/digits.js'
import { packetGrams } from '../../dough/lexicon/kitchen-measures.js'
import type { Portion } from '../../dough/lexicon/portions.js'
import { millilitres, sizeIn } from '../../dough/lexicon/units.js'
import { amountText, type Figure, figureOf } from '../../dough/lexicon/written-figures.js'
import { isDoubtfulPart } from '../values/printed-tokens.js'
import type { SaidUnit } from '../values/written-weights.js'
import type { LineReason } from './words.js'

/** An amount of an ingredient, as it is written in a row. */
export interface Taken {
  readonly quantity: Portion
  readonly typed: string
  readonly ofEach: boolean // of each of those that are counted
  readonly isBefore: boolean // a parenthesis follows: `2 (400 g) tins`
  readonly isBehind: boolean // the name stands before it
}

/** One of them by itself. */
interface Read extends Taken {
  readonly figure: Pick<Figure, 'text' | 'value' | 'unit' | 'grams'>
  readonly reasons: readonly LineReason[]
  readonly note: string
  readonly rank: number
}

/** Of several measures of one thing the finest is taken: metric weights, other weights, volumes, counts. */
const weights = { g: 6, kg: 6, oz: 5, lb: 5 }
const volumes = { ml: 4, l: 4, 'fl oz': 3, cup: 3, tbsp: 3, tsp: 3 }
export const ranks: Readonly<Record<string, number>> = { ...weights, ...volumes, each: 2, '%': 1 }

/** Kinds of the larder that are counted as well as weighed. */
const inPieces = new Set(['egg', 'nut', 'dried fruit', 'vegetable'])
const mostPieces = 24 // of something nobody knows
const mostOfKnown = 40 // of what the larder counts
const mostOfFew = 6 // of that, among grams
const fats = /butter|margarine|shortening|beurre/i
export const agreement = 5 // per cent that two measures of one thing may differ by and still say the same
const rounding = 0.01
/** What some kitchens' measures are to those of the United States: a cup of 250 ml, a pint of 568. */
const otherSizes: Readonly<Partial<Record<string, number>>> = { cup: 250 / 236.6, pint: 1.2, 'fl oz': 0.96 }
/** What goes without saying: a stick of butter is four ounces. */
const certain: readonly LineReason['code'][] = ['converted', 'stick']
const nothing = { text: '', value: 0, unit: '' } as const

/** In a note beside the weights of a batch a measure must not be taken for what that one needs. */
const asWritten = (measures: string): string => `${measures} as written`

/** The amounts of an ingredient of a name. */
class Amounts {
  constructor(
    readonly name: string,
    readonly larder: Larder,
    readonly isFormula: boolean, // percentages stand beside its amounts
    readonly said: SaidUnit | undefined, // the unit that the text says its bare numbers have
  ) {}

  /** Asked for few amounts: most have a unit, and stand alone. */
  get #known(): Ingredient | undefined {
    return ingredientNamed(this.larder, this.name)
  }

  /** What a bare number is: of what is counted, that many; of flour, water and salt, and beside a per cent, grams. */
  #bareUnit(value: number): SaidUnit | 'each' {
    const known = this.#known
    if (this.said) return known?.each && value <= mostOfFew ? 'each' : this.said
    if (this.isFormula) return known?.each ? 'each' : 'g'
    // nobody takes 150 eggs
    if (known) return (known.each || inPieces.has(known.kind)) && value <= mostOfKnown ? 'each' : 'g'
    if (/yeast|levure|hefe/i.test(this.name)) return 'g'
    return (guessCountsAs(this.name) ?? 'other') === 'other' && value <= mostPieces ? 'each' : 'g'
  }

  read(taken: Taken): Read {
    const { quantity, typed, isBehind } = taken
    const { share, about, terms, upTo } = quantity
    const [{ number, unit }] = terms
    if (share !== undefined)
      return { ...taken, figure: nothing, reasons: [], note: share === 1 ? '' : typed, rank: 0 }
    // only butter comes in sticks of a known weight: cinnamon does too
    const isStick = unit?.kind === 'unit' && unit.unit === 'stick' && !fats.test(this.name)
    const counted = isStick ? { ...quantity, terms: [{ number, unit: undefined }] as const } : quantity
    const figure = figureOf(counted, value => (isStick ? 'each' : this.#bareUnit(value)))
    const read = figure.text
    // `asdf 42t`: one letter behind what nobody knows is no measure
    const isLetter = unit?.kind === 'unit' && unit.guess === 'letter'
    const weight = unit?.kind === 'unknown' ? packetGrams(unit.word, this.name) : undefined
    if (weight) {
      const grams = weight * number.value
      const inGrams = { text: `${numberText(grams)} g`, value: grams, unit: 'g', grams } as const
      const reason: LineReason = { code: 'portion', typed, read: inGrams.text }
      return { ...taken, figure: inGrams, reasons: [reason], note: typed, rank: 0 }
    }
    if (read === '' || (isLetter && isBehind && !this.#known))
      return { ...taken, figure: nothing, reasons: [{ code: 'nobodyKnows', typed }], note: typed, rank: 0 }
    const given = { typed, number: number.value, unit: unit?.kind === 'unit' ? unit.unit : '', read }
    const reasons = figure.guesses
      .filter(({ code }) => code !== 'letter' || !this.#known)
      .map((guess): LineReason => ({ ...guess, ...given }))
    if (!unit && figure.unit === 'g' && !this.said) reasons.unshift({ code: 'noUnit', read })
    if (isDoubtfulPart(typed, figure.unit)) reasons.push({ code: 'doubtfulPart', typed, read })
    const rank = ranks[unit ? figure.unit : 'each'] ?? 0
    return { ...taken, figure, reasons, note: upTo ? asWritten(typed) : about.join(' '), rank }
  }

  /** How an amount given besides the one that is taken compares with it. */
  compared(taken: Read, other: Read): { readonly reason: LineReason; readonly agrees: boolean } {
    const of = { typed: other.typed, taken: taken.figure.text }
    if (taken.rank < 2) return { reason: { code: 'alsoGiven', ...of }, agrees: false }
    const isFlour = guessCountsAs(this.name) === 'flour'
    const likely = this.#known ?? (isFlour ? this.larder.find('All-purpose flour') : undefined)
    const areVolumes = taken.figure.unit in millilitres && other.figure.unit in millilitres
    const gramsOf = ({ figure }: Read) =>
      areVolumes ? figure.value * sizeIn(figure.unit)! : gramsIn(figure, likely)
    const [here, grams] = [gramsOf(taken), gramsOf(other)]
    if (!here || grams === undefined) return { reason: { code: 'alsoNotCompared', ...of }, agrees: true }
    const more = (grams / here - 1) * 100
    const isByLarder = likely && !areVolumes && other.figure.grams === undefined
    const reason: LineReason = isByLarder
      ? { code: 'alsoWeighed', ...of, grams, by: likely.name, more }
      : { code: 'alsoMeasured', ...of, more }
    const { unit } = other.quantity.terms[0]
    const size = otherSizes[unit?.kind === 'unit' ? unit.unit : ''] ?? 1
    const least = Math.min(...[1, size].map(times => Math.abs((more + 100) * times - 100)))
    return { reason, agrees: least <= agreement + rounding }
  }
}

/**
 * The amount of highest rank: as Tarebook writes it, '' where it has to be asked for, or a share of an earlier stage.
 * `guesses` are to be confirmed, `said` need not be; `notes` are what the amount loses: the range, another measure.
 */
export function settle(
  all: readonly Taken[],
  name: string,
  larder: Larder,
  isFormula = false,
  bareUnit?: SaidUnit,
) {
  const amounts = new Amounts(name, larder, isFormula, bareUnit)
  const reads = all.map(taken => amounts.read(taken))
  const best = reads.toSorted((a, b) => b.rank - a.rank)[0]
  if (!best) return { amount: '', guesses: [], said: [], notes: [] }
  const { figure, quantity, note, reasons, typed: one } = best
  const share = quantity.share === undefined ? {} : { share: quantity.share }
  const count = reads.find(r => r !== best && r.rank < volumes.tsp && !r.quantity.upTo)
  const pieces = count?.quantity.terms[0].number.value ?? 1
  const isBare = count !== undefined && count.quantity.terms[0].unit === undefined
  const each = ingredientNamed(larder, name)?.each
  const isOfAll = each !== undefined && Math.abs((best.figure.grams ?? 0) / pieces / each - 1) < 0.3
  if (count && !isOfAll && pieces !== 1 && (best.ofEach || (isBare && count.isBefore))) {
    const amount = amountText(numberText(figure.value * pieces), figure.unit)
    const ofEach: LineReason = { code: 'ofEach', count: count.typed, one, read: amount }
    return { amount, guesses: [...reasons, ofEach], said: [], notes: [note, count.typed] }
  }
  const isSaid = (r: Read) => r === best || (r === count && isBare && pieces === 1) || r.quantity.share === 1
  const others = reads.filter(r => !isSaid(r))
  const measures = others.filter(r => r.rank > 1)
  const comparisons = measures.map(other => amounts.compared(best, other))
  const together = others
    .filter(r => r.rank === 0 && pieces !== 1)
    .map(({ typed }): LineReason => ({ code: 'ofAllTogether', count: typed, one }))
  const notes = [note, ...others.filter(r => r.rank < 2).map(r => r.typed)]
  if (measures.length > 0) notes.push(asWritten(measures.map(r => r.typed).join(', ')))
  return {
    amount: figure.text,
    ...share,
    guesses: [
      ...reasons.filter(r => !certain.includes(r.code)),
      ...together,
      ...comparisons.filter(c => !c.agrees).map(c => c.reason),
    ],
    said: [
      ...reasons.filter(r => certain.includes(r.code)),
      ...comparisons.filter(c => c.agrees).map(c => c.reason),
    ],
    notes,
  }
}

/** What nobody takes by the cup. */
export const bySpoons =
  /(?<!\p{L})(?:sel|levure|poudre|bicarbonate|cannelle|vanille|muscade|gingembre|anis|cumin|malt)(?!\p{L})/iu
export const inCups = (quantity: Portion): Portion => {
  const [{ number }] = quantity.terms
  return { ...quantity, terms: [{ number, unit: { kind: 'unit', unit: 'cup' } }] }
}
