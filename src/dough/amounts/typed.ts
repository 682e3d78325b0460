import { type DecimalMark, longestTyped, settled } from '../lexicon/digits.js'
import { sumFrom, termAt, typedLexicon } from '../lexicon/terms.js'
import { type Token, tokensOf } from '../lexicon/text-tokens.js'
import { weightUnits } from '../lexicon/units.js'
import { numberAt, type WrittenNumber } from '../lexicon/written-numbers.js'

/** The number in digits or a fraction that starts at a token, settled by the baker's mark. */
function figureAt(tokens: readonly Token[], at: number, mark: DecimalMark): WrittenNumber | undefined {
  const token = tokens[at]
  if (!token || token.kind === 'word' || /e/i.test(token.text)) return undefined
  const number = numberAt(tokens, at)
  return number && settled(number, !token.text.includes(mark))
}

const inNFKC = (typed: string): string => typed.normalize('NFKC').replaceAll('⁄', '/')

/**
 * The number a baker typed into a field of numbers, in digits or as a fraction; undefined when it is none. A single
 * mark before exactly three digits could be either; the baker's own decimal mark decides.
 */
export function typedNumber(typed: string, mark: DecimalMark): number | undefined {
  if (typed.length > longestTyped) return undefined
  const tokens = tokensOf(inNFKC(typed))
  const isNegative = tokens[0]?.text === '-'
  const number = figureAt(tokens, isNegative ? 1 : 0, mark)
  return number?.to === tokens.length ? (isNegative ? -number.value : number.value) : undefined
}

/** The grams a baker typed: `900`, `1,2 kg`, `8 oz`, `1 lb 4 oz`; undefined when it is no weight. */
export function typedGrams(typed: string, mark: DecimalMark): number | undefined {
  const alone = typedNumber(typed, mark)
  if (alone !== undefined || typed.length > longestTyped) return alone
  const tokens = tokensOf(inNFKC(typed))
  const reading = { ...typedLexicon, mark }
  const first =
    tokens[0]?.kind === 'number' || tokens[0]?.kind === 'fraction'
      ? termAt(tokens, 0, [], reading)
      : undefined
  const sum = first && sumFrom(tokens, first, [], reading)
  if (!sum || sum.to !== tokens.length) return undefined
  let grams = 0
  for (const { number, unit, minus } of sum.terms) {
    if (unit?.kind !== 'unit' || !Object.hasOwn(weightUnits, unit.unit)) return undefined
    grams += (minus ? -1 : 1) * number.value * weightUnits[unit.unit as keyof typeof weightUnits]
  }
  return grams
}

/** The fraction of 1 a baker typed as per cent: `2`, `2,5 %`; nothing typed is none of it. Undefined when it is no number. */
export function typedPart(typed: string, mark: DecimalMark): number | undefined {
  const text = typed.trim().replace(/\s*[%％]$/, '')
  const value = text === '' ? 0 : typedNumber(text, mark)
  return value === undefined ? undefined : value / 100
}
