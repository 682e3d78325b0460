import { type ExpressionDiagnostic, type Sentences, wording } from '../../engine/index.js'

/** By a symbol: what to write in its place. */
const instead: ReadonlyMap<string, string> = new Map([
  ['=', 'to compare, write =='],
  ['!', 'for the opposite of a condition, write not'],
  ['&', 'write and'],
  ['|', 'write or'],
  ['~', 'write not'],
  ['.', 'a point stands inside a number or between a stage and its line, as in levain.water'],
  ["'", 'write names without quotes'],
  ['"', 'write names without quotes'],
  ['`', 'write names without quotes'],
  ['[', 'use ( and )'],
  [']', 'use ( and )'],
  ['{', 'use ( and )'],
  ['}', 'use ( and )'],
])

/** What cannot be seen, or would upset the sentence around it, goes by its number. */
function named(symbol: string): string {
  if (!/^[\p{C}\p{Z}\p{M}]/u.test(symbol)) return `"${symbol}"`
  return `The character U+${symbol.codePointAt(0)!.toString(16).toUpperCase().padStart(4, '0')}`
}

const choice = 'a choice between them'
const uses = { 'decimal places': 'the decimal places of round(…)', exponent: 'an exponent' } as const
const backwards = {
  condition: 'A condition on something that itself depends',
  product: 'A product of two things each of which depends',
  division: 'A division by something that itself depends',
  power: 'A power of something that itself depends',
  call: 'of something that itself depends',
} as const

export const expressionSentences: Sentences<ExpressionDiagnostic> = {
  nothingWritten: 'Nothing is written.',
  notAnExpression: 'This is not an expression Tarebook can work out.',
  comparedTwice: 'Compare two things at a time: write a < b and b < c.',
  tooManyCharacters: ({ most }) => `This is longer than ${most} characters.`,
  tooManyParts: ({ most }) => `This has more than ${most} parts; split it over several lines.`,
  tooDeep: ({ most }) => `This goes more than ${most} levels deep; take it apart.`,
  numberInTwoWays: ({ typed, readings }) =>
    `${typed} can be read in two ways: write ${readings.join(' or ')}.`,
  numberTooLarge: ({ typed }) => `${typed} is too large a number.`,
  symbolWithoutMeaning: ({ symbol, at }) => {
    const advice = instead.get(symbol)
    return `${named(symbol)} at character ${at + 1} has no meaning here${advice ? `: ${advice}` : ''}.`
  },
  missingAfter: ({ token }) => `Something is missing after "${token}".`,
  missingBefore: ({ token }) => `Something is missing before "${token}".`,
  neverClosed: 'This "(" is never closed; add a ")".',
  closesNothing: 'This ")" closes nothing; take it away or add a "(".',
  percentWithoutNumber: '"%" is per cent and needs a number before it, as in 3%.',
  percentTwice: 'One % is enough.',
  colonWithoutTest: '":" belongs after a "?", as in a > b ? a : b.',
  testWithoutColon: 'This "?" needs a ":" and what holds otherwise, as in a > b ? a : b.',
  commaIsDecimal: 'Here "," is the decimal mark: put ";" between the parts.',
  callOfNothing: ({ call }) => `${call}() needs something between its parentheses.`,
  tooManyArguments: ({ call, most }) =>
    `${call}(…) takes ${most === 1 ? 'one thing' : `at most ${most} things`}.`,
  unknownFunction: ({ name, known }) =>
    `"${name}" is not something Tarebook can work out here; it knows ${known.join(', ')}.`,
  pointWanted: ({ number }) => `Write ${number} with a point: "," only separates here.`,
  separatesInCalls: ({ separator }) =>
    `"${separator}" only separates what stands in a call, as in min(a, b).`,
  percentNotRemainder: ({ product }) =>
    `"%" is always per cent, never a remainder: ${product ? `write ${product}` : 'put +, -, * or / in between'}.`,
  notAUnit: ({ number, word, units }) => {
    const known = units.length ? `, which are ${units.join(', ')}` : ''
    return `${number} ${word}: ${word} is not one of the units${known}; to multiply write ${number}*${word}.`
  },
  spaceInNumber: ({ first, second }) => `${first} ${second}: write ${first}${second} without a space.`,
  operatorMissing: ({ first, second }) => `${first} ${second}: put +, -, * or / in between.`,
  twoPoints: ({ name }) => `${name}: a name has at most one point, as in levain.water.`,
  dividesByZero: ({ over, under }) => `${over}/${under} divides by zero.`,
  weightWithUnit: ({ part, unit }) => `${part} is a weight already; take away "${unit}".`,
  percentIsOfBase: ({ share, of, number }) =>
    `${share} is a weight here, per cent of the base: for that share of ${of} write ${number}*${of}.`,
  weightTimesWeight: ({ first, second }) =>
    `A weight times a weight is not a weight; multiply ${first} by a plain number instead of ${second}.`,
  numberOverWeight: ({ number, weight }) =>
    `${number} is a plain number and ${weight} a weight: a number divided by a weight is neither. Give ${number} a unit.`,
  powerOfWeight: ({ part }) =>
    `${part} is a weight, and a power of a weight is not a weight; multiply by plain numbers.`,
  percentOfWeight: ({ part }) =>
    `${part} is a weight already; for a share of it write a number, as in 0.5*${part}.`,
  notACondition: ({ part }) => `${part} is not a condition; write one such as ${part} > 0.`,
  conditionAsAmount: ({ part }) =>
    `${part} is a condition, not an amount; choose by it with ${part} ? a : b.`,
  notAPlainNumber: ({ part, as }) => `${part} has to be a plain number to be ${uses[as]}.`,
  conditionAmongAmounts: ({ where = choice, condition, other }) =>
    `${where}: ${condition} is a condition and ${other} is not; they do not go together.`,
  numberAmongWeights: ({ where = choice, number, weight, isWritten }) =>
    isWritten
      ? `${where}: give the ${number} a unit.`
      : `${where}: ${weight} is a weight and ${number} a plain number; give it a unit.`,
  cannotWorkBackwards: ({ of, call, names, part }) =>
    `${[call, backwards[of]].filter(Boolean).join(' ')} on ${names.join(' and ')} cannot be worked backwards: ${part}.`,
}

/** A diagnostic of expressions with its sentence. */
export const expressionInWords = wording(expressionSentences)
