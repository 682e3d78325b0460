import { gramsPerMeasure } from '../../dough/amounts/measures.js'
import type { Measure } from '../../dough/amounts/units.js'
import { weightUnits } from '../../dough/amounts/units.js'
import type { Larder } from '../../dough/document/larder.js'
import { guessCountsAs } from '../../dough/larder/counts-as-guess.js'
import { larderWith } from '../../dough/larder/usual-larder.js'
import { ingredientNamed } from './larder-names.js'
import { numberText } from './numbers.js'
import { type Quantity, shareOf, type Term } from './quantity.js'
import { gramsInPinch } from './unit-words.js'

/** One amount of a line: as Tarebook writes it, and what there is to say about how it was read. */
export interface AmountRead {
  readonly text: string // '' where it has to be asked for
  readonly said: readonly string[] // sentences
  readonly note: string // what the amount loses: the range, the handful
  readonly rank: number // of two for one line the higher is taken
  readonly value: number
  readonly unit: string // '' for none
  readonly share?: number | 'rest' // of an earlier stage
}

const water = larderWith([]).find('Water')!
const isWeight = (unit: string): unit is keyof typeof weightUnits => unit in weightUnits
const isMetric = (unit: string): boolean => unit === 'g' || unit === 'kg'

/** Grams, or millilitres of a volume, in one of a unit; undefined for what is counted and for per cents. */
function size(unit: string): number | undefined {
  if (isWeight(unit)) return weightUnits[unit]
  return unit === '' || unit === '%' || unit === 'each' ? undefined : gramsPerMeasure(water, unit as Measure)
}

const ranks = { ml: 4, l: 4, each: 2, '%': 1, '': 0 } as const
const rankOf = (unit: string): number =>
  isMetric(unit) ? 6 : isWeight(unit) ? 5 : ((ranks as Readonly<Record<string, number>>)[unit] ?? 3)

export const amountText = (number: string, unit: string): string =>
  unit === '' ? '' : unit === '%' ? `${number}%` : `${number} ${unit}`

/** In a note beside the weights of a batch a measure must not be taken for what that one needs. */
export const asWritten = (measures: string): string => `${measures} as written`

interface Plain {
  readonly value: number
  readonly number: string
  readonly unit: string // '' when nobody knows
  readonly said?: string
}

/** A measure by the words of its line: butter comes in sticks, cinnamon does too. */
function plain({ number, unit }: Term, name: string, larder: Larder): Plain {
  const { value, text } = number
  if (!unit) return counted(value, text, name, larder)
  switch (unit.kind) {
    case 'unit': {
      const said = unit.unit === 'tsp' ? '“t” was read as a teaspoon.' : '“T” was read as a tablespoon.'
      const sure = !unit.letter || ingredientNamed(larder, name) !== undefined
      return { value, number: text, unit: unit.unit, ...(sure ? {} : { said }) }
    }
    case 'converted': {
      const inUnit = value * unit.times
      const isStick = unit.unit === 'oz' && unit.times === 4
      if (isStick && !/butter|margarine|shortening|beurre/i.test(name))
        return { value, number: text, unit: 'each' }
      const to = amountText(numberText(inUnit), unit.unit)
      const said = unit.said ?? (isStick ? `A stick of butter is 4 oz, so this is ${to}.` : undefined)
      return {
        value: inUnit,
        number: numberText(inUnit),
        unit: unit.unit,
        said: said ?? `Converted to ${to}.`,
      }
    }
    case 'pinch': {
      const grams = numberText(value * gramsInPinch)
      return {
        value: value * gramsInPinch,
        number: grams,
        unit: 'g',
        said: `A pinch was taken as ${gramsInPinch} g${value === 1 ? '' : `, so this is ${grams} g`}; weigh yours.`,
      }
    }
    case 'each':
      return { value, number: text, unit: 'each' }
    default:
      return { value, number: text, unit: '' }
  }
}

/** Kinds of the larder that are counted as well as weighed. */
const inPieces = new Set(['egg', 'nut', 'dried fruit', 'vegetable'])

/** A bare number: of what is counted, that many; of flour, water and salt, grams. */
function counted(value: number, number: string, name: string, larder: Larder): Plain {
  const known = ingredientNamed(larder, name)
  const kind = known?.countsAs.kind ?? guessCountsAs(name) ?? 'other'
  const weighed = known ? !known.each && !inPieces.has(known.kind) : kind !== 'other' || value > 24
  if (!weighed) return { value, number, unit: 'each' }
  return { value, number, unit: 'g', said: `No unit is given: taken as ${number} g.` }
}

function inUnit(from: Plain, unit: string): number {
  const [here, there] = [size(from.unit), size(unit)]
  return from.unit === unit || here === undefined || there === undefined
    ? from.value
    : (from.value * here) / there
}

/** A quantity as Tarebook writes it. `typed` is its text in the recipe, `name` the ingredient's. */
export function amountOf(quantity: Quantity, typed: string, name: string, larder: Larder): AmountRead {
  const { terms, upTo, times, about } = quantity
  const parts = terms.map(term => plain(term, name, larder))
  const first = parts[0]!
  const said = [...new Set(parts.flatMap(p => p.said ?? []))]
  const read = (value: number, number: string, unit = first.unit, note = ''): AmountRead => {
    const notes = [about.join(' '), note].filter(Boolean)
    const rank = terms[0].unit ? rankOf(unit) : ranks.each
    return { text: amountText(number, unit), said, note: notes.join(' '), rank, value, unit }
  }
  const share = shareOf(quantity)
  if (share !== undefined) return { ...read(0, '', '', share === 1 ? '' : typed), share }
  if (first.unit === '') {
    said.push(`How much ${typed} is nobody can say: type an amount.`)
    return { ...read(0, '', '', typed), note: typed }
  }
  for (const { number, unit } of [...terms, ...(upTo ? [upTo] : [])])
    if (number.thousands)
      said.push(
        `“${typed}” was read as ${amountText(number.text, plain({ number, unit }, name, larder).unit)}.`,
      )
  if (times !== undefined) {
    const value = first.value * times
    said.push(`${typed}: ${numberText(times)} times ${amountText(first.number, first.unit)}.`)
    return read(value, numberText(value))
  }
  if (upTo) {
    const end = plain(upTo, name, larder)
    const middle = numberText((inUnit(first, end.unit) + end.value) / 2)
    said.push(`${typed} is a range: its middle, ${amountText(middle, end.unit)}, was taken.`)
    return { ...read(Number(middle), middle, end.unit), note: asWritten(typed) }
  }
  if (parts.length === 1) return read(first.value, first.number)
  const signs = terms.map(term => (term.minus ? '-' : '+'))
  const value = parts.reduce((sum, part, i) => sum + Number(`${signs[i]}1`) * inUnit(part, first.unit), 0)
  const sum = parts.map((p, i) => `${i > 0 ? ` ${signs[i]} ` : ''}${amountText(p.number, p.unit)}`)
  return { ...read(value, ''), text: sum.join('') }
}

/** What an amount weighs by the larder, in grams; in millilitres of nothing known, with `water`. */
function gramsOf(
  amount: AmountRead,
  name: string,
  larder: Larder,
): { grams: number; by: string } | undefined {
  if (isWeight(amount.unit)) return { grams: amount.value * weightUnits[amount.unit], by: '' }
  const own = ingredientNamed(larder, name)
  const likely = own ?? (guessCountsAs(name) === 'flour' ? larder.find('All-purpose flour') : undefined)
  if (!likely || amount.unit === '' || amount.unit === '%') return undefined
  const one = gramsPerMeasure(likely, amount.unit as Measure)
  return one === undefined ? undefined : { grams: one * amount.value, by: likely.name }
}

const round = (value: number): string => String(Number(value.toPrecision(3)))

/** What two measures of one thing may differ by and still say the same, in per cent. */
const agreement = 1

/** The sentence on an amount given besides the one that is taken, and whether the two agree. */
export function compared(
  taken: AmountRead,
  other: AmountRead,
  typed: string,
  name: string,
  larder: Larder,
): { sentence: string; agrees: boolean } {
  const also = `Also given as ${typed}`
  if (taken.unit === '' || other.unit === '' || other.unit === '%')
    return { sentence: `${also}; ${taken.text} was taken.`, agrees: false }
  const volumes = [taken, other].every(a => !isWeight(a.unit) && size(a.unit) !== undefined)
  const here = volumes ? taken.value * size(taken.unit)! : gramsOf(taken, name, larder)?.grams
  const known = gramsOf(other, name, larder)
  const there = volumes ? other.value * size(other.unit)! : known?.grams
  if (here === undefined || there === undefined || !(here > 0))
    return {
      sentence: `${also}, which the larder cannot compare; ${taken.text} was taken.`,
      agrees: false,
    }
  const off = (there / here - 1) * 100
  const by = !volumes && known?.by ? ` by the larder’s ${known.by}` : ''
  const weighs = by ? `, ${round(there)} g${by}` : ''
  const differs = Math.abs(off) < 0.05 ? 'the same' : `${round(Math.abs(off))} % ${off > 0 ? 'more' : 'less'}`
  return {
    sentence: `${also}${weighs}: ${differs}. ${taken.text} was taken.`,
    agrees: Math.abs(off) <= agreement,
  }
}
