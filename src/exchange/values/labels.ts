import { folded as foldedWord } from '../../dough/lexicon/folded.js'
import { earlierStageWords } from './stage-kinds.js'

/** The same, worked out once for each text: rows say the same over and over. */
export function onceEach<T>(work: (text: string) => T): (text: string) => T {
  const known = new Map<string, T>()
  return text => {
    if (known.size > 5000) known.clear()
    if (!known.has(text)) known.set(text, work(text))
    return known.get(text) as T
  }
}

/** A text as words are compared here: lower case, without accents, one blank between words. */
export const folded = (text: string): string =>
  foldedWord(text)
    .replace(/[\s_]+/g, ' ')
    .trim()

/** The words of a name, accents, case and signs aside. */
export const wordsOf = (name: string): string =>
  folded(name)
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim()

const either = (words: string): string => `(?:${words.trim().replace(/\s*\|\s*/g, '|')})`
const wholly = (words: string): RegExp => new RegExp(`^${either(words)}$`)
const holding = (words: string): RegExp => new RegExp(`(?<![a-z])${either(words)}(?![a-z])`)

const numbering = /^(?:(?:step|stage|stufe|etape|phase|part|teil|partie)\s*\d+\s*[:.)–-]\s*|\d+\s*[.):]\s+)/i

// a name is not so long, and what is longer is not taken apart
const longest = 200
const plainName = /^\p{L}+(?:[ ’'-]\p{L}+)*$/u // of which there is nothing to take apart

/** `2. Levain (evening before):` as its name and its remark. */
export function headingName(text: string): { name: string; remark: string } {
  if (text.length > longest || plainName.test(text)) return { name: text.trim(), remark: '' }
  const bare = text
    .replace(/^[\s#*_=–—>-]+|[\s:*_=–—-]+$/g, '')
    .replace(numbering, '')
    .replace(/\s+/g, ' ')
    .trim()
    .replace(/^\d{1,2} (?=(\p{L}.*))/u, (number, name: string) => (isStageName(name) ? '' : number))
  const [, name, remark] =
    /^(.*\S)\s*[([]([^()[\]]*)[)\]]$/.exec(bare) ?? /^([^:]*\p{L})\s*[:–—]\s*(\d.*)$/u.exec(bare) ?? []
  const named = { name: (name ?? bare).replace(/[\s:]+$/, ''), remark: remark?.trim() ?? '' }
  return named.name === '' ? { name: text.trim(), remark: '' } : named
}

/** `Formula: Mill wheat` as the name of the bread. */
export const titleName = (text: string): string =>
  headingName(text).name.replace(
    /^(?:formula|recipe|bread|name|rezept(?:ur)?|brot|recette|formule|pain)\s*:\s*(?=\S)/i,
    '',
  )

const finalDough = wholly(
  `(?:the )?(?:final|main|finished|bread) (?:dough|mix|mixing) | final | (?:the )?dough | mix | main | hauptteig | brotteig
  | endteig | teig | fertiger teig | pate finale | pate | petrissage | petrie | petrissee | petrissage final | pate a pain
  | pate principale`,
)
/** Besides the words that recipes have for them. */
const earlierStage = holding(
  `autolyse | autolysis | detrempe | old dough | madre | vorstufe | altbrot | prefermentation | (?:stage|step|stufe|etape|day|jour|tag) \\d+
  | \\d+\\. stufe | [a-z]*(?:sauerteig|vorteig|sauer|stuck)(?: \\d+)?`,
)

export const isFinalDough = (name: string): boolean => finalDough.test(folded(name))

/** Does a row that holds nothing but this name head a stage, by the words of the trade? */
export function isStageName(name: string): boolean {
  const text = name.length > longest ? '' : folded(name)
  if (text.split(' ').length > 5) return finalDough.test(text)
  return finalDough.test(text) || earlierStage.test(text) || earlierStageWords(text).length > 0
}

const total =
  /^(?:grand |sub-?)?(?:totals?|totaux|sums?|summen?|zwischensumme|somme|sous-total)(?![a-z])|(?<![a-z])(?:totals?|totale?s?|totaux|insgesamt|gesamt|summe)$|^gesamt(?![a-z])|^gesamt(?:gewicht|teig|menge|mehl|wasser|summe)/
const doughTotal = wholly(
  `dough | dough weight | weight of dough | total dough | batch weight | batch | teig | teiggewicht | teigmenge | pate
  | poids de pate | poids de la pate | poids total | final weight`,
)
const totalWords =
  /(?<![a-z])(?:grand|sub|sous|total|totals|totale|totales|totaux|sum|sums|of|de|du|des|la|le|the|for|summe|summen|zwischensumme|somme|gesamt|insgesamt|in|all|weight|poids|gewicht)(?![a-z])|^gesamt/g

/** The name of a heading as words are compared. */
const said = (name: string): string => folded(headingName(name).name)

/** Is it a total by its words, and not only by a name that dough may bear? */
export const isTotalWord = (name: string): boolean => total.test(said(name))

/** `Totals`, `Total formula`: may rows of totals stand below it? */
export const isOfTotals = (name: string): boolean =>
  /^(?:grand )?(?:totals|totaux|summen)$|^(?:overall|total|gesamt)[ -]?(?:formula|recipe|formule|recette|rezept)/.test(
    said(name),
  )

/** What a row of this name totals; undefined when it is no total. `''` is whatever stands above it. */
export function totalOf(name: string): 'dough' | 'flour' | 'water' | { readonly named: string } | undefined {
  if (name.length > longest) return undefined
  const text = said(name)
  if (doughTotal.test(text)) return 'dough'
  if (!total.test(text)) return undefined
  if (/^gesamtmehl|(?<![a-z])(?:flours?|mehl|farines?)(?![a-z])/.test(text)) return 'flour'
  if (/^gesamtwasser|(?<![a-z])(?:water|wasser|eau)(?![a-z])/.test(text)) return 'water'
  if (/^gesamt(?:teig|gewicht|menge)/.test(text)) return 'dough'
  const named = wordsOf(text.replace(totalWords, ' '))
  return doughTotal.test(named) ? 'dough' : { named }
}

/** A row of this name tells of the dough and is no ingredient: its hydration, how many loaves, its temperature. */
const isFact = (name: string): boolean =>
  name.length <= longest &&
  /^(?:(?:true |total |overall |dough |final )*hydrat(?:ion|ation)|ta|teigausbeute|(?:dough )?yield|makes|pieces?|loaf|loaves|brote|pains|rendement|stuckzahl|anzahl(?: stuck)?|(?:piece|loaf|scaling) weight|(?:weight |poids |wt )?(?:per|par|pro|je) (?:piece|loaf|roll|bun|unit|pc|pain|paton|stuck|brot)|stuckgewicht|teigeinlage|(?:desired )?(?:dough )?temp(?:erature|eratur)?|ddt|teigtemperatur|prefermented flour|pff)(?![a-z])/.test(
    folded(name),
  )

/** Is it written as people write sentences and remarks, not names? */
export const isRemark = (text: string): boolean =>
  text.length > 70 ||
  /[.!?]$|^[*†](?!\*)|^#(?!#)\s*\p{Ll}/u.test(text.trim()) ||
  /^(?:notes?|nb|method|tip|source|date|datum|hinweis|anmerkung|bemerkung|zubereitung|remarque|methode|quelle)(?![a-z])/.test(
    folded(text),
  )

/** What a name by itself tells: `name` without its number, marks, and what stands in brackets, which is its `remark`. */
export const labelOf = onceEach((text: string) => ({
  text,
  ...headingName(text),
  hasColon: /:\s*$/.test(text) || /^[^:]*\p{L}:\s+\d/u.test(text),
  isStage: isStageName(headingName(text).name),
  isFinal: isFinalDough(headingName(text).name),
  isRemark: isRemark(text),
  isOfTotals: isOfTotals(text),
  /** A total by its words, or by what dough may be called too; or what tells of the dough and is no ingredient. */
  is: totalOf(text) ? (isTotalWord(text) ? 'total' : 'dough') : isFact(text) ? 'fact' : 'other',
}))
export type Label = ReturnType<typeof labelOf>
