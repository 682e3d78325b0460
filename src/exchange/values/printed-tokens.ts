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

/** What bakers write short, in full; those of one letter and more with full stops behind them have them, others may. */
const short: ReadonlyMap<string, string> = new Map(
  Object.entries({
    h2o: 'water',
    idy: 'instant yeast',
    ady: 'active dry yeast',
    evoo: 'extra virgin olive oil',
    nfdm: 'nonfat dry milk',
    vwg: 'vital wheat gluten',
    ap: 'all-purpose flour',
    apf: 'all-purpose flour',
    bf: 'bread flour',
    ww: 'whole wheat flour',
    wwf: 'whole wheat flour',
    'w.w.': 'whole wheat flour',
    'a.p.': 'all-purpose flour',
    med: 'medium',
    'med.': 'medium',
    lg: 'large',
    lge: 'large',
    'lg.': 'large',
    'sm.': 'small',
    inst: 'instant',
    'inst.': 'instant',
    'veg.': 'vegetable',
    'gran.': 'granulated',
    'unbl.': 'unbleached',
  }),
)
/** Those that are words besides, or say too little in small letters: `ap`, `bf`. */
const inCapitals = new Set(['ap', 'apf', 'bf', 'wwf'])
const flour = 'flour'

/** What is written short at a token, in full, and the token after it. */
function inFull(tokens: readonly Token[], at: number): { words: string[]; to: number } | undefined {
  const token = tokens[at]!
  if (token.kind !== 'word' || token.key.length > 4) return undefined
  let [key, to] = [token.key, at + 1]
  if (isTied(tokens[to], '.')) {
    key += '.'
    to++
    const next = tokens[to]
    if (token.key.length === 1 && next?.key.length === 1 && isTied(tokens[to + 1], '.')) {
      key += `${next.key}.`
      to += 2
    }
  }
  const full = short.get(key) ?? (to === at + 2 ? short.get(token.key) : undefined)
  const isSaid = !inCapitals.has(token.key) || token.text === token.text.toUpperCase()
  if (full === undefined || !isSaid) return undefined
  const words = full.split(' ')
  // `AP flour`, `flour, AP`
  const beside = [tokens[to], tokens[at - 1], isTied(tokens[at - 1], ',') ? tokens[at - 2] : undefined]
  const isThere = words.at(-1) === flour && beside.some(t => t?.key === flour || t?.key === 'flours')
  if (isThere && key === 'ap') return undefined // the larder has it
  return { words: isThere ? words.slice(0, -1) : words, to }
}

/** Before a quart as English kitchens have it; `un quart` is a quarter. */
const beforeQuart = new Set(['a', 'one', 'two', 'three', 'four', 'six', 'eight'])
/** `a quart of milk`, `half a yeast-cake`: a word that is a measure in English, or holds one. */
function asMeasure(token: Token, before: Token | undefined): readonly Token[] {
  if (/^yeast-cakes?$/.test(token.key)) return tokensFor(['cake', 'of', 'yeast'], token, token.end)
  const [, many, s] = /^(one-|three-)?fourth(s?)$/.exec(token.key) ?? []
  if (s !== undefined)
    return tokensFor([...(many ? [many.slice(0, -1)] : []), `quarter${s}`], token, token.end)
  const isQuart = /^quarts?$/.test(token.key) && beforeQuart.has(before?.low ?? '')
  return [isQuart ? { ...token, low: 'qt', key: 'qt' } : token]
}

/** Words in the place of what was written short; the first of them has its place in the row. */
const tokensFor = (words: readonly string[], { at, gap, wide }: Token, end: number): Token[] =>
  words.map((text, i) => ({
    ...{ kind: 'word', text, low: text, key: text },
    ...(i === 0 ? { at, end, gap, wide } : { at: end, end, gap: true, wide: false }),
  }))

/**
 * The tokens of a row as pages print them: footnotes' marks and the `(s)` of a plural are passed over, and what is
 * glued together is parted; what bakers write short is in full. `at` and `end` are offsets into the row.
 */
export function printedTokens(text: string): Token[] {
  const row = text.replace(/(?<=\d\s?)º(?=\s?[CF](?!\p{L}))/gu, '°')
  const cuts = Array.from(row.matchAll(glued), ({ index }) => index)
  const tokens = cuts.length === 0 ? tokensOf(row) : tokensBetween(row, [0, ...cuts, row.length])
  const isPlural = (i: number) =>
    isTied(tokens[i], '(') && isTied(tokens[i + 1], 's') && isTied(tokens[i + 2], ')')
  const printed: Token[] = []
  for (let i = 0; i < tokens.length; i++) {
    const token = tokens[i]!
    const full = inFull(tokens, i)
    if (full) {
      printed.push(...tokensFor(full.words, token, tokens[full.to - 1]!.end))
      i = full.to - 1
    } else if (isPlural(i)) i += 2
    else if (token.kind === 'word') printed.push(...asMeasure(token, tokens[i - 1]))
    else if (token.kind !== 'mark') printed.push(...(parted(tokens, i) ?? [token]))
    else if (!footnotes.test(token.text)) printed.push(token)
  }
  return printed
}
