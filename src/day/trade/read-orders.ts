import { typedNumber } from '../../dough/amounts/typed.js'
import { cardinalAt } from '../../dough/lexicon/cardinals.js'
import type { DecimalMark } from '../../dough/lexicon/digits.js'
import { tokensOf } from '../../dough/lexicon/text-tokens.js'
import { type Match, matchBread, type Orderable } from './bread-matches.js'

/** So many of one bread, as a part of the text says. */
export interface Ordered extends Match {
  readonly text: string // as written
  readonly name: string // of it what is no number
  readonly count: number
}

/** What a text of orders came to: everything that stands in it is in one of these. */
export interface Orders {
  readonly rows: readonly Ordered[] // in the order of the text
  readonly unread: readonly string[] // parts without a number, or with one that cannot be
  readonly aside: readonly string[] // headings, and what stands before orders, as who ordered
}

const most = 100_000 // of one bread
const mostText = 50_000 // characters
const number = String.raw`\d[\d.,'’\u00a0\u202f/]*|[½¼¾⅓⅔]`
const atBegin = new RegExp(String.raw`^(${number})\s*(?:[x×*]\s*)?(?=[^\d])(.*)$`, 'isu')
const atEnd = new RegExp(String.raw`^(.*?[^\d.,])\s*(?:[x×*=:]|[-–—]\s)?\s*\(?\s*(${number})\s*\)?$`, 'isu')
const ofPieces =
  /^(?:(?:loaf|loaves|pieces?|pcs?|times|pains?|pi[eè]ces?|brote?|st[uü]ck|x|×)\b\.?\s*)?(?:(?:of|de|d['’]|von)\s*)?/iu
const pieces = /\s*\(?\b(?:loaf|loaves|pieces?|pcs?|pi[eè]ces?|st[uü]ck)\b\.?\)?\s*$/iu
const dozens = /^((?:.*\s)?)(dozens?|douzaines?|dutzend)\b\s*(?:of|de|d['’])?\s*(.*)$/iu
const bullet = /^\s*(?:[-*•–—·]|\d+[.)](?=\s+\d))\s+/u

/** A part of the text as it reads by itself. */
interface Part {
  readonly text: string
  readonly count: number | undefined
  readonly name: string
}

/** The whole number in words that a text is, `twelve`; undefined where it is none. */
function inWords(text: string): number | undefined {
  const said = text.trim()
  if (/^(?:an?|une?|eine?)?$/i.test(said)) return 1
  if (/^half\s+an?$|^une\s+demi[e-]?$|^ein\s+halbes$/i.test(said)) return 0.5
  const tokens = tokensOf(said)
  const found = cardinalAt(tokens, 0)
  return found?.to === tokens.length ? found.value : undefined
}

/** A text with its number before or behind its name; of both readings the one whose name `isKnown`. */
function partOf(text: string, mark: DecimalMark, isKnown: (name: string) => boolean): Part {
  const said = text.trim()
  const bare = typedNumber(said, mark)
  if (bare !== undefined) return { text: said, count: bare, name: '' }
  const [, times, , named] = dozens.exec(said) ?? []
  if (named !== undefined) {
    const count = typedNumber(times!.trim(), mark) ?? inWords(times!)
    if (count !== undefined) return { text: said, count: count * 12, name: named.trim() }
  }
  const [, first = '', behind = ''] = atBegin.exec(said) ?? []
  const [, before = '', last = ''] = atEnd.exec(said.replace(pieces, '')) ?? []
  const readings = [
    { count: typedNumber(first, mark), name: behind.trim() },
    { count: typedNumber(first, mark), name: behind.trim().replace(ofPieces, '').replace(pieces, '').trim() },
    { count: typedNumber(last, mark), name: before.replace(/[\s:=,\-–—(×*]+$/u, '').trim() },
  ].filter(({ count, name }) => count !== undefined && name !== '')
  const known = readings.find(({ name }) => isKnown(name)) ?? readings[1] ?? readings[0]
  if (known) return { text: said, ...known }
  const words = said.split(/\s+/)
  for (let length = Math.min(4, words.length - 1); length > 0; length--) {
    const count = inWords(words.slice(0, length).join(' '))
    const name = words.slice(length).join(' ').replace(ofPieces, '').trim()
    if (count !== undefined && name) return { text: said, count, name }
  }
  return { text: said, count: undefined, name: said }
}

const signs = /\t|[;|]/
/** Where a line goes on with another order: at a comma that is no decimal one, and before a number after `and`. */
const joints = /,(?!\d)|(?<!\d),|\s+(?:and|et|und|plus|&|\+)\s+(?=\d)/iu

/** `12 mill wheat 8 rye`: where all parts before a number are known by themselves, they are several. */
function severalIn(text: string, mark: DecimalMark, isKnown: (name: string) => boolean): readonly string[] {
  if (isKnown(text)) return [text]
  const one = partOf(text, mark, isKnown)
  if (one.name && isKnown(one.name)) return [text]
  const parts = text.split(/\s+(?=\d+\s*(?:[x×*]\s*)?\p{L})/u)
  const isSure = parts.every(part => {
    const { count, name } = partOf(part, mark, isKnown)
    return count !== undefined && isKnown(name)
  })
  return parts.length > 1 && isSure ? parts : [text]
}

/**
 * Orders as they are typed or pasted: `12 mill wheat, 8 rye`, one to a line, or a table of names and numbers in either order;
 * numbers may be words, and who ordered may stand before. `all` are the formulas there are, `isFirst` those that are meant first.
 * Nothing of the text is lost: what cannot be read comes back as it is.
 */
export function readOrders(
  text: string,
  all: readonly Orderable[],
  {
    mark,
    isFirst = () => false,
  }: { readonly mark: DecimalMark; readonly isFirst?: (formula: Orderable) => boolean },
): Orders {
  const rows: Ordered[] = []
  const unread: string[] = []
  const aside: string[] = []
  const matches = new Map<string, Match>()
  const match = (name: string): Match => {
    const known = matches.get(name) ?? matchBread(name, all, isFirst)
    matches.set(name, known)
    return known
  }
  const isKnown = (name: string) => match(name).formula !== undefined
  const put = ({ text, count, name }: Part) => {
    if (count === undefined || !(count >= 0 && count <= most) || !name) unread.push(text)
    else rows.push({ text, name, count, ...match(name) })
  }
  const lines = text.slice(0, mostText).split(/\r\n?|\n/)
  if (text.length > mostText) unread.push(text.slice(mostText))
  const first = lines.findIndex(line => line.trim() !== '')
  const isTable = signs.test(lines[first] ?? '') && /\d/.test(lines[first + 1] ?? '')
  for (const [at, written] of lines.entries()) {
    let line = written.replace(bullet, '').trim()
    if (!/[\p{L}\p{N}]/u.test(line)) continue
    // `Café Anker: 12 mill wheat`
    const [, who = '', what = ''] = /^([^\d:\t;|]+):\s*(.*\d.*|.*\p{L}.*)$/u.exec(line) ?? []
    if (who && what && typedNumber(what.trim(), mark) === undefined && !isKnown(who)) {
      aside.push(who.trim())
      line = what
    }
    const cells = line
      .split(signs.test(line) ? signs : joints)
      .map(cell => cell.trim().replace(/^"(.*)"$/, '$1'))
    const isHeading = isTable && at === first && cells.every(cell => !/\d/.test(cell) && !isKnown(cell))
    if (isHeading) {
      aside.push(...cells.filter(Boolean))
      continue
    }
    const parts = cells
      .filter(Boolean)
      .flatMap(cell => severalIn(cell, mark, isKnown).map(one => partOf(one, mark, isKnown)))
    for (let at = 0; at < parts.length; at++) {
      const [part, next] = [parts[at]!, parts[at + 1]]
      const isName = part.count === undefined
      const isNumber = part.name === ''
      const pair = next && ((isName && next.name === '') || (isNumber && next.count === undefined))
      // A name before a name and a number says who ordered.
      const before = isName && !isKnown(part.name) && next?.count === undefined && parts[at + 2]?.name === ''
      const behind = isName && next?.name && next.count !== undefined
      if (next && (before || (behind && !isKnown(part.name)))) aside.push(part.text)
      else if (pair) {
        const [name, count] = isName ? [part.name, next.count] : [next.name, part.count]
        put({ text: `${part.text} ${next.text}`, name, count })
        at += 1
      } else put(part)
    }
  }
  return { rows, unread, aside: [...new Set(aside)] }
}
