import { articles, counted, numberWords } from './number-words.js'
import type { Token } from './text-tokens.js'
import { ands } from './written-numbers.js'

/** Words of whole numbers, those of amounts and the larger ones. */
const all: ReadonlyMap<string, number> = new Map([
  ...numberWords,
  ...counted('thirteen fourteen fifteen sixteen seventeen eighteen nineteen', 13),
  ...counted('twenty thirty forty fifty sixty seventy eighty ninety', 20, 10),
  ...counted('treize quatorze quinze seize', 13),
  ...counted('vingt trente quarante cinquante soixante', 20, 10),
  ...counted('dreizehn vierzehn funfzehn sechzehn siebzehn achtzehn neunzehn', 13),
  ...counted('zwanzig dreissig vierzig funfzig sechzig siebzig achtzig neunzig', 20, 10),
  ['vingts', 20],
])
const hundreds = new Set('hundred cent cents hundert'.split(' '))
const isHundred = (word: string): boolean => hundreds.has(word)
const thousands = new Set('thousand mille tausend'.split(' '))
const isThousand = (word: string): boolean => thousands.has(word)
const inOne = /hundert|tausend|und/
const severalInOne = /hundert|tausend|-/

/** Whether a word may begin a number. */
export const beginsCardinal = (key: string): boolean =>
  all.has(key) || hundreds.has(key) || thousands.has(key) || inOne.test(key)

/** A number in words as it grows; undefined where a word cannot go on with it. */
interface Growing {
  readonly total: number // of thousands
  readonly below: number
}

function grown({ total, below }: Growing, word: string): Growing | undefined {
  if (isThousand(word)) return total === 0 ? { total: (below || 1) * 1000, below: 0 } : undefined
  if (isHundred(word)) return below < 10 ? { total, below: (below || 1) * 100 } : undefined
  const value = all.get(word) ?? germanTens(word)
  if (value === undefined) return undefined
  const units = below % 100
  // quatre-vingt
  if (value === 20 && units === 4) return { total, below: below + 76 }
  // soixante-dix, quatre-vingt-douze
  const scores = units === 60 || units === 80
  const goesOn = units === 0 || (units >= 20 && units % 10 === 0 && value < (scores ? 20 : 10))
  return goesOn && value > 0 ? { total, below: below + value } : undefined
}

/** `funfundzwanzig`: the ones before the tens. */
function germanTens(word: string): number | undefined {
  const [ones, tens] = word.split('und').map(part => all.get(part) ?? 0)
  return ones! > 0 && ones! < 10 && tens! >= 20 ? ones! + tens! : undefined
}

/** The words of a number in one token: `quatre-vingt-dix`, `zweihundertfunfzig`. */
function partsOf(token: Token | undefined): string[] {
  if (token?.kind !== 'word' || token.key.length > 60) return token?.text === '-' && !token.gap ? [] : ['']
  if (!severalInOne.test(token.key)) return [token.key]
  return token.key
    .replace(/hundert|tausend/g, ' $& ')
    .replace(/ und(?=\p{L})/gu, ' ')
    .trim()
    .split(/[- ]+/)
}

/** Goes on with the parts of a token, all or none of them. */
const grownBy = (from: Growing, words: readonly string[]): Growing | undefined =>
  words.reduce<Growing | undefined>((growing, word) => growing && grown(growing, word), from)

const notHere = new Set(['a', 'an']) // articles do not go on with a number

/** The whole number in words that starts at a token: `three hundred and fifty`, `deux cent vingt-cinq`. */
export function cardinalAt(tokens: readonly Token[], at: number): { value: number; to: number } | undefined {
  const key = tokens[at]?.key ?? ''
  let growing = grownBy({ total: 0, below: 0 }, partsOf(tokens[at]))
  if (!growing) return key === 'zero' || key === 'null' ? { value: 0, to: at + 1 } : undefined
  let to = at + 1
  for (let i = to; i < tokens.length && i < to + 3; ) {
    const after = ands.has(tokens[i]!.key) && growing.below + growing.total >= 20 ? i + 1 : i
    const words = partsOf(tokens[after])
    // `a three pound loaf`, `un deux`: an article goes on with hundreds only
    const mayGoOn = !articles.has(key) || to > at + 1 || words.some(p => isHundred(p) || isThousand(p))
    const next: Growing | undefined =
      mayGoOn && !words.some(p => notHere.has(p)) ? grownBy(growing, words) : undefined
    if (!next) break
    growing = next
    i = after + 1
    if (words.length > 0) to = i
  }
  return { value: growing.total + growing.below, to }
}
