import { numberText } from './digits.js'
import type { Quantity } from './quantities.js'
import type { Term } from './terms.js'
import type { UnitGuess } from './unit-words.js'
import { multiples, sizeIn, type Unit, weightUnits } from './units.js'

/** What was guessed of an amount, by code; texts are as Tarebook writes them. */
export type AmountGuess =
  | { readonly code: 'two readings'; readonly read: string; readonly other: string } // numbers: `1,250`
  | { readonly code: 'range'; readonly low: string; readonly high: string; readonly read: string } // the middle was taken
  | { readonly code: 'times'; readonly times: number; readonly one: string }
  | { readonly code: 'converted'; readonly read: string } // `250 ml` of 25 cl
  | { readonly code: UnitGuess; readonly number: number; readonly read: string }
  | { readonly code: 'unknown measure'; readonly word: string }

/** What a quantity comes to in a unit that Tarebook writes. */
export interface Figure {
  readonly text: string // `1 lb + 4 oz`, `2 1/4 tsp`, `70%`; '' for an unknown measure
  readonly value: number // in `unit`: of a range its middle, of several all of them
  readonly unit: Unit | '%' | '' // '' for an unknown measure
  readonly grams?: number // of what is weighed
  readonly spread: number // from the one end of a range to the other, in `unit`; 0 of one number
  readonly step: number // what the last digit is worth, in `unit`; 0 of fractions
  readonly guesses: readonly AmountGuess[]
}

/** What a bare number is, by its value: the unit, or `''` where nobody can say. */
export type BareUnit = (value: number) => Unit | '%' | ''

/** An amount as Tarebook writes it: `20 g`, `70%`. */
export const amountText = (number: string, unit: string): string =>
  unit === '' ? '' : unit === '%' ? `${number}%` : `${number} ${unit}`

/** What is written of a unit in which Tarebook takes amounts but writes none. */
const written: Readonly<Partial<Record<Unit, { of: Unit; times: number }>>> = {
  ...multiples,
  mg: { of: 'g', times: weightUnits.mg },
  'metric lb': { of: 'g', times: weightUnits['metric lb'] },
  pinch: { of: 'g', times: weightUnits.pinch },
  'knife tip': { of: 'g', times: weightUnits['knife tip'] },
  stick: { of: 'oz', times: 4 },
}

interface Part {
  readonly value: number
  readonly text: string // the number
  readonly unit: Unit | '%' | ''
  readonly step: number
  readonly guesses: readonly AmountGuess[]
}

const stepOf = (text: string): number => {
  if (text.includes('/')) return 0
  const point = text.indexOf('.')
  return point < 0 ? 1 : Number(`1e${point + 1 - text.length}`)
}

function partOf({ number, unit }: Term, bare: BareUnit): Part {
  const { value, text, other } = number
  const guesses: AmountGuess[] = other ? [{ code: 'two readings', read: text, other: other.text }] : []
  const step = stepOf(text)
  const as = (unit: Unit | '%' | ''): Part => ({ value, text, unit, step, guesses })
  if (!unit) return as(bare(value))
  if (unit.kind === 'each') return as('each')
  if (unit.kind !== 'unit') {
    guesses.push({ code: 'unknown measure', word: unit.kind === 'unknown' ? unit.word : '' })
    return as('')
  }
  const to = unit.unit === '%' ? undefined : written[unit.unit]
  const inWritten = to
    ? {
        value: value * to.times,
        text: numberText(value * to.times),
        unit: to.of,
        step: step * to.times,
        guesses,
      }
    : as(unit.unit)
  const read = amountText(inWritten.text, inWritten.unit)
  if (unit.guess) guesses.push({ code: unit.guess, number: value, read })
  else if (to) guesses.push({ code: 'converted', read })
  return inWritten
}

/** A value in another unit of the same sort. */
function valueIn({ value, unit }: Part, to: string): number {
  const [here, there] = [sizeIn(unit), sizeIn(to)]
  return unit === to || here === undefined || there === undefined ? value : (value * here) / there
}

/**
 * What a quantity comes to. `bare` says what a number without a unit is. Units in which Tarebook writes no amounts are
 * converted (`25 cl` is 250 ml), of a range the middle is taken, several are multiplied; all of that is in `guesses`.
 */
export function figureOf(quantity: Quantity, bare: BareUnit): Figure {
  const { terms, upTo, times } = quantity
  const parts = terms.map(term => partOf(term, bare))
  const [first] = parts as [Part, ...Part[]]
  const guesses = parts.flatMap(part => part.guesses)
  const figure = (value: number, text: string, unit = first.unit, spread = 0, step = first.step): Figure => {
    const weighs = Object.hasOwn(weightUnits, unit)
      ? weightUnits[unit as keyof typeof weightUnits]
      : undefined
    const grams = weighs === undefined ? {} : { grams: Number((value * weighs).toPrecision(15)) }
    return { text, value, unit, ...grams, spread, step, guesses }
  }
  if (first.unit === '') return figure(0, '')
  if (times !== undefined) {
    guesses.push({ code: 'times', times, one: amountText(first.text, first.unit) })
    const value = first.value * times
    return figure(value, amountText(numberText(value), first.unit), first.unit, 0, first.step * times)
  }
  const signs = terms.map(term => (term.minus ? '-' : '+'))
  const value = parts.reduce((sum, part, i) => sum + Number(`${signs[i]}1`) * valueIn(part, first.unit), 0)
  const sum = parts.map((p, i) => `${i > 0 ? ` ${signs[i]} ` : ''}${amountText(p.text, p.unit)}`).join('')
  if (upTo) {
    const end = partOf(upTo, bare)
    const low = valueIn({ ...first, value }, end.unit)
    // sixteen tablespoons are a cup but for the rounding of their sizes
    const exact = parts.length > 1 ? Number(low.toPrecision(5)) : low
    const middle = numberText((exact + end.value) / 2)
    const read = amountText(middle, end.unit)
    // converted are both ends, or one
    const isConverted = guesses.some(({ code }) => code === 'converted')
    guesses.push(...end.guesses.filter(({ code }) => code !== 'converted' || !isConverted), {
      code: 'range',
      low: sum,
      high: amountText(end.text, end.unit),
      read,
    })
    return figure(Number(middle), read, end.unit, Math.abs(end.value - low), end.step)
  }
  const last = parts.at(-1)!
  return figure(value, sum, first.unit, 0, last.step * ((sizeIn(last.unit) ?? 1) / (sizeIn(first.unit) ?? 1)))
}
