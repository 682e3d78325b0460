import { differenceOf, type LinePair, type Pair, type StagePair } from '../../src/dough/about/beside.js'
import { gramDigits, type NumberStyle, percentDigits } from '../base/numbers.js'
import { differenceWords } from './words.js'

/** How a figure is shown: a fraction of 1 as per cent, or grams. */
export type Unit = '%' | 'g'

/** Both figures with as many decimals as the finer of them needs, so that they and their difference go together. */
export interface Shown {
  readonly left: string | undefined // undefined: there is none
  readonly right: string | undefined
  readonly difference: string // `+2.0`, `−50`, `same`, or '' where one is missing
  readonly is: 'more' | 'less' | 'same' | 'unknown'
}

const minus = '\u2212'

/** Two figures and what the right one is more or less than the left. */
export function shown(pair: Pair, unit: Unit, { language }: NumberStyle): Shown {
  const times = unit === '%' ? 100 : 1
  const digitsOf = (value: number) => (unit === '%' ? percentDigits(value) : gramDigits(value))
  const values = [pair.left, pair.right].filter(v => v !== undefined)
  const digits = Math.max(0, ...values.filter(v => v !== 0).map(digitsOf))
  const format = new Intl.NumberFormat(language, {
    minimumFractionDigits: digits,
    maximumFractionDigits: digits,
  })
  const side = (value: number | undefined) => (value === undefined ? undefined : format.format(value * times))
  const [left, right] = [side(pair.left), side(pair.right)]
  if (left === undefined || right === undefined) return { left, right, difference: '', is: 'unknown' }
  const by = differenceOf(pair)
  if (by === undefined) return { left, right, difference: differenceWords.same, is: 'same' }
  // What does not show in these decimals shows in as many as it takes.
  const needed = Math.min(12, Math.max(digits, Math.ceil(-Math.log10(Math.abs(by) * times))))
  const size = new Intl.NumberFormat(language, {
    minimumFractionDigits: digits,
    maximumFractionDigits: needed,
  })
  const is = by > 0 ? 'more' : 'less'
  return { left, right, difference: `${by > 0 ? '+' : minus}${size.format(Math.abs(by) * times)}`, is }
}

/** A difference with its unit: `+2.0 points`, `−50 g`. */
export const withUnit = ({ difference, is }: Shown, unit: Unit): string =>
  is === 'more' || is === 'less'
    ? `${difference}\u00a0${unit === '%' ? differenceWords.points : 'g'}`
    : difference

export const lineDiffers = ({ only, weight, percent }: LinePair): boolean =>
  only !== undefined || differs(weight) || differs(percent)

export const stageDiffers = (stage: StagePair): boolean =>
  stage.only !== undefined || stage.lines.some(lineDiffers)

/** Whether two figures are not the same, one that is missing included. */
export const differs = (pair: Pair): boolean =>
  (pair.left === undefined) !== (pair.right === undefined) || differenceOf(pair) !== undefined
