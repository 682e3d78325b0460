import { folded } from '../../dough/lexicon/folded.js'

/** A sentence of a method, with where it stands. `plain` is as long as `text`: lower case, without accents, hyphens for dashes. */
export interface Sentence {
  readonly row: number // 1-based
  readonly text: string
  readonly plain: string
}

const dashes = /[\u2010-\u2015\u2212]/
const apostrophes = /[\u2018\u2019\u00b4\u0060]/

/** A text to be searched: every character in its place, in lower case, without its accent. */
export const levelled = (text: string): string =>
  text.replace(/[^ -~]|[A-Z`]/gu, sign => {
    if (dashes.test(sign)) return '-'
    if (apostrophes.test(sign)) return "'"
    if (/\s/.test(sign)) return ' '
    const low = folded(sign)
    return low.length === sign.length ? low : sign
  })

// What stands before a step and says nothing of it: its number, a bullet, a box to tick.
const lead =
  /^\s*(?:(?:[-*+•‣▪●◦–—☐☑✓]|\[[ x]?\])\s+|(?:(?:step|etape|étape|phase)\s*)?\d{1,2}\s*(?:[.)]\s+|(?::|\s[-–—])\s+(?!\d))|(?:step|etape|étape|phase)\s+\d{1,2}\s*[:.)–—-]?\s*|#{1,6}\s+|[*_]{2}(?=\S))+/iu

/** A row without the number or the sign that makes it one of a list. */
export const withoutLead = (row: string): string => row.replace(lead, '').trim()

// After these a full stop ends no sentence.
const shortened = /(?:^|[\s(])(?:approx|env|ca|c|no|th|temp|e\.g|i\.e|p\.ex|ex|max)\.$/i

/** The sentences of a row, their words as they stand. */
export function sentencesOf(row: number, written: string): Sentence[] {
  const text = withoutLead(written.normalize('NFC').replaceAll('**', ''))
  const parts: string[] = []
  for (const part of text.split(/(?<=[.!?…;])\s+(?=[\p{Lu}\p{Ps}\p{Pi}"“«\d½¼¾])|(?<=[!?…;])\s+/u)) {
    const before = parts.at(-1)
    if (before !== undefined && shortened.test(before)) parts[parts.length - 1] = `${before} ${part}`
    else if (part.trim() !== '') parts.push(part.trim())
  }
  return parts.map(part => ({ row, text: part, plain: levelled(part) }))
}

const french =
  /(?<!\p{L})(?:le|la|les|une?|et|puis|dans|pendant|avec|du|des|de|au|aux|farine|eau|sel|levure|reposer|lever|cuire|cuisson|heures?|\p{L}*[àâçèéêëîïôùû]\p{L}*|\p{L}{3,}ez)(?!\p{L})|(?<!\p{L})[ld]['’]/giu
const english =
  /(?<!\p{L})(?:the|and|then|with|for|in|to|into|until|dough|flour|water|salt|oven|let|leave|bake|mix|rest|at|of|every|an?|from|hours?)(?!\p{L})/giu

/** What language a method is in. */
export type Tongue = 'english' | 'french'

/** By the words of the text, or where they do not tell, by those of the ingredients. */
export function tongueOf(text: string, ingredients = ''): Tongue {
  const count = (words: RegExp): number => text.match(words)?.length ?? 0
  const more = count(french) - count(english)
  return more > 0 || (more === 0 && ingredients !== '' && tongueOf(ingredients) === 'french')
    ? 'french'
    : 'english'
}
