import { type Token, tokensOf } from '../../dough/lexicon/text-tokens.js'

const footnotes = /[*_`†‡§¹²³]/
/** Where a number is glued to the word before it: `Yeast0.5%`, `Water350g`. */
const glued = /(?<=\p{L}{3})(?=\d{1,6}(?:[.,]\d{1,4})?\s?(?:%|(?:k?g|[cd]?l|ml|oz|lbs?)(?![\p{L}\d])))/gu
const isTied = (token: Token | undefined, text: string): boolean => token?.text === text && !token.gap

/** `11/2 cups`: a whole number glued to the part of one behind it, since nobody writes eleven halves. */
function parted(tokens: readonly Token[], at: number): Token[] | undefined {
  const [number, slash, under] = tokens.slice(at, at + 3)
  const [, whole, over] = /^([1-9])([1-7])$/.exec(number?.text ?? '') ?? []
  if (!whole || !isTied(slash, '/') || !/^[2348]$/.test(under?.text ?? '') || under!.gap) return undefined
  if (Number(over) >= Number(under!.text)) return undefined
  const middle = number!.at + 1
  return [
    { ...number!, text: whole, low: whole, key: whole, end: middle },
    { ...number!, text: over!, low: over!, key: over!, at: middle, gap: true, wide: false },
  ]
}

/**
 * The tokens of a row as pages print them: footnotes' marks and the `(s)` of a plural are passed over, and what is
 * glued together is parted. `at` and `end` are offsets into the row.
 */
export function printedTokens(row: string): Token[] {
  const cuts = [0, ...Array.from(row.matchAll(glued), ({ index }) => index), row.length]
  const tokens = cuts.slice(1).flatMap((to, i) => {
    const from = cuts[i]!
    return tokensOf(row.slice(from, to)).map(t => ({ ...t, at: t.at + from, end: t.end + from }))
  })
  const isPlural = (i: number) =>
    isTied(tokens[i], '(') && isTied(tokens[i + 1], 's') && isTied(tokens[i + 2], ')')
  return tokens.flatMap((token, i) => {
    if (isPlural(i) || isPlural(i - 1) || isPlural(i - 2)) return []
    if (token.kind === 'mark' && footnotes.test(token.text)) return []
    return parted(tokens, i) ?? [token]
  })
}
