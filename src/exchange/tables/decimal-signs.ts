import type { DecimalMark } from '../values/decimals.js'
import { numberIn, readNumber } from './cell-quantity.js'
import type { Guess } from './types.js'

/** How many of these cells hold a number that can only have this decimal mark. */
export function signsOf(
  cells: Iterable<string>,
): Readonly<Record<DecimalMark, number>> & { doubtful: string[] } {
  const signs = { '.': 0, ',': 0, doubtful: [] as string[] }
  for (const cell of cells) {
    if (!/[.,]/.test(cell)) continue
    const number = numberIn(cell)
    if (number === undefined) continue
    const read = readNumber(number, '.')
    if (read?.sign) signs[read.sign]++
    if (read?.doubtful) signs.doubtful.push(number)
  }
  return signs
}

/**
 * The decimal mark of a table. What its numbers show decides; where all of them can be read in two ways, a
 * mark before three digits stands between thousands, but for columns of kilograms and pounds.
 */
export function guessDecimal(
  small: readonly string[], // cells of columns in kilograms and pounds
  others: readonly string[],
): { decimal: DecimalMark; guess: Guess } {
  const [ofSmall, ofOthers] = [signsOf(small), signsOf(others)]
  const points = ofSmall['.'] + ofOthers['.']
  const commas = ofSmall[','] + ofOthers[',']
  const answer = (decimal: DecimalMark, why: string, ask = false) => ({
    decimal,
    guess: { about: 'decimal', ask, why } as const,
  })
  const name = { '.': 'point', ',': 'comma' }
  if (points !== commas) {
    const decimal = commas > points ? ',' : '.'
    const few = Math.min(points, commas)
    const shown = Math.max(points, commas)
    return answer(
      decimal,
      `The decimal sign is the ${name[decimal]}, as ${shown === 1 ? 'one number shows' : `${shown} numbers show`}${few > 0 ? `, though ${few} have the other one` : ''}.`,
      few > 0,
    )
  }
  if (points > 0)
    return answer(
      '.',
      'As many numbers have a decimal point as have a decimal comma; each is read by itself.',
      true,
    )
  const doubtful = ofOthers.doubtful[0]
  if (doubtful !== undefined) {
    const decimal = doubtful.includes(',') ? '.' : ','
    return answer(
      decimal,
      `Nothing shows whether the ${name[decimal === '.' ? ',' : '.']} in ${doubtful} is a decimal sign; it was taken to stand between thousands.`,
      true,
    )
  }
  const kilos = ofSmall.doubtful[0]
  if (kilos !== undefined) {
    const decimal = kilos.includes(',') ? ',' : '.'
    return answer(
      decimal,
      `Nothing shows what the ${name[decimal]} in ${kilos} is; in kilograms or pounds it was taken as the decimal sign.`,
      true,
    )
  }
  return answer('.', 'No number has a decimal sign.')
}
