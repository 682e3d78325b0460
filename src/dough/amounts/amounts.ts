import {
  compile,
  type Dimension,
  dimensionOf,
  type Expression,
  type ExpressionDiagnostic,
  ExpressionError,
  parse,
  type Worded,
} from '../../engine/index.js'
import type { AmountColumn } from '../document/reading-names.js'
import { type DecimalMark, longestTyped } from '../lexicon/digits.js'
import { inDoubt, plainNumbers, readingsInDoubt, typedText } from '../lexicon/plain-numbers.js'
import { unitWords } from '../lexicon/unit-words.js'
import { expressionProblem } from './expression-problem.js'
import { readingDimension } from './jottings.js'
import { isSpokenRead, readSpoken } from './spoken-reader.js'
import { type AmountDiagnostic, amountProblem } from './words.js'

/** An amount understood. */
export interface Amount {
  readonly expression: Expression
  readonly typedIn: 'percent' | 'weight' // the column that shows it as typed
  readonly typed: string // as that column shows it: `70` for `70%`
  readonly plain: boolean // only a number of the column's own unit
}

/** An amount that is not understood: why, by code and figures, with its sentence. */
export interface AmountProblem {
  readonly problem: Worded<AmountDiagnostic | ExpressionDiagnostic>
  readonly typedIn: 'percent' | 'weight' // the column that shows it
  readonly typed: string
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

/** An amount whose text is an expression. Throws ExpressionError. */
function readExpression(text: string, jottings: Dimensions): Amount | AmountProblem {
  const parsed = parse(text, { units: unitWords })
  const bare = dimensionOf(parsed, measures(jottings)) === 'number'
  const expression = bare ? parse(`(${text}) g`, { units: unitWords }) : parsed
  const dimension = dimensionOf(expression, measures(jottings))
  if (dimension === 'truth') return refused({ code: 'amountSaysYesOrNo', typed: text }, text)
  const { names } = expression
  const ofBase = names.includes('base') && names.every(n => n === 'base' || jottings.get(n) === 'number')
  const typedIn = ofBase || names.length === 0 ? 'percent' : 'weight'
  const [, number, unit] = plainAmount.exec(text) ?? []
  if (number && (unit === '%') === (typedIn === 'percent'))
    return { expression, typedIn, typed: number, plain: true }
  const [, inner] = wrappedAmount.exec(text) ?? []
  return { expression, typedIn, typed: inner && isNumber(inner, jottings) ? inner : text, plain: false }
}

const refused = (diagnostic: AmountDiagnostic, typed: string): AmountProblem => ({
  problem: amountProblem(diagnostic),
  typedIn: 'weight',
  typed,
})

/** A number of a kept text that was typed with a mark that may be either. */
function inTwoWays(text: string): AmountProblem | undefined {
  const doubt = readingsInDoubt(text)
  const problem = doubt && refused({ code: 'amountInTwoWays', ...doubt }, text)
  return problem && text.endsWith('%')
    ? { ...problem, typedIn: 'percent', typed: text.slice(0, -1) }
    : problem
}

/** Why an expression is not understood, with an amount that would be where the sentence of the expression has none. */
function whyNot(error: ExpressionError | undefined, text: string): AmountProblem {
  if (!error) return refused({ code: 'notAnAmount', typed: text }, text)
  const { problem } = error
  if (problem.code === 'notAUnit')
    return refused({ code: 'unknownMeasure', number: problem.number, word: problem.word }, text)
  // Two names side by side want a sign between them; anything longer, or with a number, is meant as an amount.
  const isSaid = problem.code === 'operatorMissing' && /\d|\S\s+\S+\s+\S/.test(text)
  if (isSaid || problem.code === 'symbolWithoutMeaning')
    return refused({ code: 'notAnAmount', typed: text }, text)
  return { problem: expressionProblem(problem), typedIn: 'weight', typed: text }
}

function read(text: string, jottings: Dimensions, names: readonly string[]): Amount | AmountProblem {
  let why: ExpressionError | undefined
  try {
    const amount = readExpression(text, jottings)
    const isName = 'expression' in amount && amount.expression.tree.kind === 'name'
    if (!isName || jottings.has(text) || !readSpoken(text, '.', names)) return amount
  } catch (error) {
    if (!(error instanceof ExpressionError)) throw error
    why = error
  }
  if (text.length > longestTyped) return whyNot(why, text)
  const doubt = inTwoWays(text)
  const spoken = doubt ? undefined : readSpoken(text, '.', names)
  if (!spoken) return doubt ?? whyNot(why, text)
  const amount = readExpression(spoken.text, noJottings)
  return 'expression' in amount ? { ...amount, typed: text, plain: false } : amount
}

const known = new Map<string, Amount | AmountProblem>()

/**
 * Reads the text of a line's amount, as kept (decimal points): a calculation, or an amount as it is said, such as
 * `1 lb 4 oz`, `half a cup`, `~20 g`, `a pinch`. Never throws. Undefined for an empty text. `jottings` says what the
 * formula's own names measure; `names` are the ingredient's, so that `3 eggs` can count it.
 */
export function readAmount(
  text: string,
  jottings: Dimensions = noJottings,
  names: readonly string[] = [],
): Amount | AmountProblem | undefined {
  if (!text) return undefined
  let amount = known.get(text)
  if (!amount) {
    if (known.size > 5000) known.clear()
    amount = read(text, noJottings, [])
    if (text.length <= longestTyped && (isSpokenRead() || 'expression' in amount)) known.set(text, amount)
  }
  if ('problem' in amount) return jottings.size + names.length > 0 ? read(text, jottings, names) : amount
  return amount.expression.names.some(n => jottings.has(n)) || jottings.has(text)
    ? read(text, jottings, names)
    : amount
}

const bareNumber = /^-?[\d.]+$/

/**
 * What is kept of an amount typed into a column: a bare number or a calculation without a unit gets the
 * column's own, anything else stays as typed. `decimal` is the sign the baker types; a sign that can only be the
 * other one is understood as well, and kept texts have points. Of a number that can be read in two ways, grams and
 * millilitres go by the baker's sign; of anything else (`1,000 %`, `1,250 kg`) the doubt is kept, with `,` between.
 * A text that is not understood is kept as it is. `jottings` says what the formula's own names measure.
 */
export function amountAsKept(
  typed: string,
  column: AmountColumn,
  decimal: DecimalMark,
  jottings: Dimensions = noJottings,
): string {
  if (typed.length > longestTyped) return typed
  const text = typedText(typed)
  const plain = plainNumbers(text, decimal)
  const unit = column === 'weight' ? ' g' : '%'
  const doubt = plain.doubts.find(
    d => !d.typed.includes(decimal) && !isSmall(plain.text.slice(d.at + d.read.length), unit),
  )
  if (doubt) {
    const kept = inDoubt(plain, doubt)
    return /^[\d,]+$/.test(kept) ? kept + unit : kept
  }
  try {
    const { text: canonical } = parse(plain.text, { units: unitWords })
    if (!isNumber(canonical, jottings)) return canonical
    return bareNumber.test(canonical) ? canonical + unit : `(${canonical})${unit}`
  } catch {
    return readSpoken(plain.text, '.')?.isBare ? plain.text + unit : plain.text
  }
}

/** Whether what follows a number is a unit of which people have thousands. */
function isSmall(after: string, unit: string): boolean {
  const word = /^\s*(%|\p{L}+)/u.exec(after)?.[1] ?? unit.trim()
  return ['g', 'ml', 'mg'].includes(unitWords.get(word) ?? '')
}

/** The per cent a text such as `78`, `70,5 %` or `70 + 8` comes to, or undefined when it is anything else. */
export function plainPercent(typed: string, decimal: DecimalMark): number | undefined {
  if (typed.length > longestTyped) return undefined
  const { text, doubts } = plainNumbers(typedText(typed), decimal)
  if (doubts.some(d => !d.typed.includes(decimal))) return undefined
  try {
    const expression = parse(text.replace(/%$/, ''), { units: unitWords, percentOf: null })
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
