import { isHundred, isThousand, numberWords } from './kitchen-words.js'
import type { Token } from './tokens.js'

/** The words of a number: those of a token with hyphens, `quatre-vingt-dix`, are its parts. */
const partsOf = (token: Token | undefined): string[] =>
  token?.kind === 'word' ? token.key.split('-') : token?.text === '-' && !token.gap ? [] : ['']

/** A number in words as it grows; undefined where a word cannot go on with it. */
interface Growing {
  readonly total: number // of thousands
  readonly below: number
}

function grown({ total, below }: Growing, word: string): Growing | undefined {
  if (isThousand(word)) return total === 0 ? { total: (below || 1) * 1000, below: 0 } : undefined
  if (isHundred(word)) return below < 10 ? { total, below: (below || 1) * 100 } : undefined
  const value = numberWords.get(word)
  if (value === undefined) return undefined
  const units = below % 100
  // quatre-vingt
  if (value === 20 && units === 4) return { total, below: below + 76 }
  // soixante-dix, quatre-vingt-douze
  const scores = units === 60 || units === 80
  const goesOn = units === 0 || (units >= 20 && units % 10 === 0 && value < (scores ? 20 : 10))
  return goesOn && value > 0 ? { total, below: below + value } : undefined
}

/** Goes on with the parts of a token, all or none of them. */
const grownBy = (from: Growing, parts: readonly string[]): Growing | undefined =>
  parts.reduce<Growing | undefined>((growing, word) => growing && grown(growing, word), from)

const glue = new Set(['and', 'et'])
const notHere = new Set(['a', 'an']) // articles do not go on with a number

/** The whole number in words that starts at a token: `three hundred and fifty`, `deux cent vingt-cinq`. */
export function cardinalAt(tokens: readonly Token[], at: number): { value: number; to: number } | undefined {
  const key = tokens[at]?.key ?? ''
  const article = notHere.has(key) || key === 'un' || key === 'une'
  let growing = grownBy({ total: 0, below: 0 }, partsOf(tokens[at]))
  if (!growing) return key === 'zero' ? { value: 0, to: at + 1 } : undefined
  let to = at + 1
  for (let i = to; i < tokens.length; ) {
    const after = glue.has(tokens[i]!.key) && growing.below + growing.total >= 20 ? i + 1 : i
    const parts = partsOf(tokens[after])
    // `a three pound loaf`, `un deux`: an article goes on with hundreds only
    const mayGoOn = !article || to > at + 1 || parts.some(p => isHundred(p) || isThousand(p))
    const next: Growing | undefined =
      mayGoOn && !parts.some(p => notHere.has(p)) ? grownBy(growing, parts) : undefined
    if (!next) break
    growing = next
    i = after + 1
    if (parts.length > 0) to = i
  }
  return { value: growing.total + growing.below, to }
}
