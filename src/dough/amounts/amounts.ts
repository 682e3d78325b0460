import {
  compile,
  type Dimension,
  dimensionOf,
  type Expression,
  ExpressionError,
  parse,
} from '../../engine/index.js'
import type { AmountColumn } from '../document/reading-names.js'
import { readingDimension } from './jottings.js'
import { typedText } from './typed.js'
import { unitWords } from './unit-words.js'

/** An amount understood. */
export interface Amount {
  readonly expression: Expression
  readonly typedIn: 'percent' | 'weight' // the column that shows it as typed
  readonly typed: string // as that column shows it: `70` for `70%`
  readonly plain: boolean // only a number of the column's own unit
}

/** An amount that is not understood: the sentence says why. */
export interface AmountProblem {
  readonly problem: string
}

const plainAmount = /^(-?[\d.]+)\s*(%|g)$/
const wrappedAmount = /^\((.*)\)\s*(%|g)$/s
/** What the names of jottings measure; every other name in an amount is a weight. */
export type Dimensions = ReadonlyMap<string, Dimension>

const noJottings: Dimensions = new Map()
const measures = (jottings: Dimensions) => (name: string) =>
  jottings.get(name) ?? readingDimension(name) ?? 'weight'
const everyNameIsAWeight = measures(noJottings)

/** Whether a text alone comes to a plain number, without a unit. */
function isNumber(text: string, jottings: Dimensions): boolean {
  try {
    return dimensionOf(parse(text, { units: unitWords }), measures(jottings)) === 'number'
  } catch {
    return false
  }
}

function read(text: string, jottings: Dimensions): Amount | AmountProblem {
  try {
    const parsed = parse(text, { units: unitWords })
    const bare = dimensionOf(parsed, measures(jottings)) === 'number'
    const expression = bare ? parse(`(${text}) g`, { units: unitWords }) : parsed
    const dimension = dimensionOf(expression, measures(jottings))
    if (dimension === 'truth')
      return { problem: `${text} says yes or no; an amount is a weight or a percentage.` }
    const { names } = expression
    const ofBase = names.includes('base') && names.every(n => n === 'base' || jottings.get(n) === 'number')
    const typedIn = ofBase || names.length === 0 ? 'percent' : 'weight'
    const [, number, unit] = plainAmount.exec(text) ?? []
    if (number && (unit === '%') === (typedIn === 'percent'))
      return { expression, typedIn, typed: number, plain: true }
    const [, inner] = wrappedAmount.exec(text) ?? []
    return { expression, typedIn, typed: inner && isNumber(inner, jottings) ? inner : text, plain: false }
  } catch (error) {
    if (error instanceof ExpressionError) return { problem: error.message }
    throw error
  }
}

const known = new Map<string, Amount | AmountProblem>()

/**
 * Reads the text of a line's amount, as kept (decimal points). Never throws. Undefined for an empty text.
 * `jottings` says what the formula's own names measure.
 */
export function readAmount(
  text: string,
  jottings: Dimensions = noJottings,
): Amount | AmountProblem | undefined {
  if (!text) return undefined
  let amount = known.get(text)
  if (!amount) {
    if (known.size > 5000) known.clear()
    amount = read(text, noJottings)
    known.set(text, amount)
  }
  const speaksOfNone = 'expression' in amount && !amount.expression.names.some(n => jottings.has(n))
  return jottings.size === 0 || speaksOfNone ? amount : read(text, jottings)
}

/**
 * What is kept of an amount typed into a column: a bare number or a calculation without a unit gets the
 * column's own, anything else stays as typed. `decimal` is the sign the baker types; kept texts have points.
 * A text that is not understood is kept as it is. `jottings` says what the formula's own names measure.
 */
export function amountAsKept(
  typed: string,
  column: AmountColumn,
  decimal: '.' | ',',
  jottings: Dimensions = noJottings,
): string {
  const text = typedText(typed)
  if (!text) return ''
  try {
    const { text: canonical } = parse(text, { units: unitWords, decimal })
    if (!isNumber(canonical, jottings)) return canonical
    const unit = column === 'weight' ? ' g' : '%'
    return /^-?[\d.]+$/.test(canonical) ? canonical + unit : `(${canonical})${unit}`
  } catch {
    return text
  }
}

/** The per cent a text such as `78`, `78 %` or `70 + 8` comes to, or undefined when it is anything else. */
export function plainPercent(typed: string, decimal: '.' | ','): number | undefined {
  try {
    const expression = parse(typedText(typed).replace(/%$/, ''), {
      units: unitWords,
      decimal,
      percentOf: null,
    })
    if (expression.names.length || dimensionOf(expression, everyNameIsAWeight) !== 'number') return undefined
    const value = compile(expression)(
      Float64Array.from(expression.numbers),
      Int32Array.from(expression.numbers.keys()),
      0,
    )
    return Number.isFinite(value) ? value : undefined
  } catch {
    return undefined
  }
}
