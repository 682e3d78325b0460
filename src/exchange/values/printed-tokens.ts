import { type Token, tokensOf } from '../../dough/lexicon/text-tokens.js'

const footnotes = /[*_`†‡§¹²³]/
/** Where a number is glued to the word before it: `Yeast0.5%`, `Water350g`. */
const glued = /(?<=\p{L}{3})(?=\d{1,6}(?:[.,]\d{1,4})?\s?(?:%|(?:k?g|[cd]?l|ml|oz|lbs?)(?![\p{L}\d])))/gu
const isTied = (token: Token | undefined, text: string): boolean => token?.text === text && !token.gap

const tokensBetween = (row: string, cuts: readonly number[]): Token[] =>
  cuts.slice(1).flatMap((to, i) => {
    const from = cuts[i]!
    return tokensOf(row.slice(from, to)).map(t => ({ ...t, at: t.at + from, end: t.end + from }))
  })

/** `11/2`, a whole number glued to the part of one behind it, since nobody writes eleven halves. */
const gluedPart = /(?<![\d.,/])([1-9])([12]\/3|[13]\/4|1\/2|[1357]\/8)(?![\d.,/])/
/** What nobody writes in parts of one, but for a page that lost the blank. */
const inDecimals = new Set(['g', 'kg', 'ml', 'l', '%'])

/** Is `21/2 g` read as two and a half, and may be meant otherwise? Of cups and spoons it is in no doubt. */
export const isDoubtfulPart = (written: string, unit: string): boolean =>
  inDecimals.has(unit) && gluedPart.test(written)

function parted(tokens: readonly Token[], at: number): Token[] | undefined {
  const [number, slash, under] = [tokens[at], tokens[at + 1], tokens[at + 2]]
  if (number?.text.length !== 2 || !isTied(slash, '/') || !under || under.gap) return undefined
  const [, whole, part] = gluedPart.exec(`${number.text}/${under.text}`) ?? []
  if (!whole || !part) return undefined
  const over = part.charAt(0)
  const middle = number.at + 1
  return [
    { ...number, text: whole, low: whole, key: whole, end: middle },
    { ...number, text: over, low: over, key: over, at: middle, gap: true, wide: false },
  ]
}

/**
 * The tokens of a row as pages print them: footnotes' marks and the `(s)` of a plural are passed over, and what is
 * glued together is parted. `at` and `end` are offsets into the row.
 */
export function printedTokens(row: string): Token[] {
  const cuts = Array.from(row.matchAll(glued), ({ index }) => index)
  const tokens = cuts.length === 0 ? tokensOf(row) : tokensBetween(row, [0, ...cuts, row.length])
  const isPlural = (i: number) =>
    isTied(tokens[i], '(') && isTied(tokens[i + 1], 's') && isTied(tokens[i + 2], ')')
  const printed: Token[] = []
  for (let i = 0; i < tokens.length; i++) {
    const token = tokens[i]!
    if (isPlural(i)) i += 2
    else if (token.kind !== 'mark') printed.push(...(parted(tokens, i) ?? [token]))
    else if (!footnotes.test(token.text)) printed.push(token)
  }
  return printed
}
