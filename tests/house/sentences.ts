import { type Token, tokensOf } from './tokens.js'

/** Something in a file that belongs elsewhere. */
export interface Finding {
  readonly line: number // 1-based
  readonly text: string
}

const faults = /^(?:Range|Type)?Error$/ // thrown at a program that calls wrongly: no baker reads them

/** Four words or more from a capital, or a figure, to a full stop. */
const isSentence = (text: string): boolean =>
  /^["“]?(?:\p{Lu}|…)[\s\S]*[.?!]["”]?$/u.test(text) && (text.match(/[\p{L}…][^\s]*/gu) ?? []).length >= 4

/** What people read of a text: itself, or the texts and the attributes of its markup. */
function piecesOf(text: string): string[] {
  if (!/<[a-z/]/.test(text)) return [text]
  const attributes = [...text.matchAll(/=\s*"([^"]*)"/g)].map(([, value]) => value!)
  return [...text.split(/<[^>]*>/), ...attributes]
}

/** The sentences in a TypeScript text; comments and what is thrown at programs are none. */
export function sentencesIn(code: string): Finding[] {
  const tokens = tokensOf(code)
  return tokens.flatMap((token, at) => {
    if (token.kind !== 'string') return []
    const isFault = tokens[at - 1]?.text === '(' && faults.test(tokens[at - 2]?.text ?? '')
    if (isFault) return []
    return piecesOf(token.text)
      .map(piece => piece.replace(/\s+/g, ' ').trim())
      .filter(isSentence)
      .map(text => ({ line: token.line, text }))
  })
}

/** What holds a sentence, by its name; `sentence` alone may be one of a recipe that is read. */
const sentenceNames = new Set(['message', 'label', 'refusal'])
const isSentenceName = (tokens: readonly Token[], at: number): boolean =>
  tokens[at]!.kind === 'word' &&
  (sentenceNames.has(tokens[at]!.text) || (tokens[at]!.text === 'sentence' && chainStart(tokens, at) < at))
const comparisons = new Set(['===', '!==', '==', '!='])
/** What looks into a text, or looks for it: of the text itself, or with it between the parentheses. */
const readers = new Set(
  'startsWith endsWith includes indexOf lastIndexOf match matchAll search replace replaceAll split slice substring charAt at localeCompare'.split(
    ' ',
  ),
)
const askers = new Set([...readers, 'test', 'exec', 'has', 'get'])

const isNothing = (token: Token | undefined): boolean =>
  token?.text === 'undefined' || token?.text === 'null' || (token?.kind === 'string' && token.text === '')

/** Where the chain `a.b?.c` that ends at a token begins. */
function chainStart(tokens: readonly Token[], end: number): number {
  let at = end
  while (tokens[at - 1]?.text === '.' || tokens[at - 1]?.text === '?.' || tokens[at - 1]?.text === '!') {
    if (tokens[at - 1]?.text === '!') at--
    else if (tokens[at - 2]?.kind === 'word') at -= 2
    else if (tokens[at - 2]?.text === '!' && tokens[at - 3]?.kind === 'word') at -= 3
    else break
  }
  return at
}

/** Where the token begins that comes after a name and the `!` behind it. */
const after = (tokens: readonly Token[], at: number): number =>
  tokens[at + 1]?.text === '!' ? at + 2 : at + 1

/** Whether a sentence that is called by its name is compared, searched or chosen by. */
function isDecidedBy(tokens: readonly Token[], at: number): boolean {
  const next = after(tokens, at)
  const start = chainStart(tokens, at)
  const before = tokens[start - 1]?.text ?? ''
  if (comparisons.has(tokens[next]?.text ?? '') && !isNothing(tokens[next + 1])) return true
  if (comparisons.has(before) && !isNothing(tokens[start - 2])) return true
  const isMember = tokens[next]?.text === '.' || tokens[next]?.text === '?.'
  if (isMember && readers.has(tokens[next + 1]?.text ?? '') && tokens[next + 2]?.text === '(') return true
  if (before !== '(' || tokens[next]?.text === '=>') return false
  const called = tokens[start - 2]?.text ?? ''
  return called === 'switch' || (askers.has(called) && tokens[start - 3]?.text === '.')
}

/** The beginning of a sentence: a capital and a second word. */
const beginsSentence = (token: Token): boolean =>
  token.kind === 'string'
    ? /^\p{Lu}\p{Ll}+ (?:\p{Ll}|$)/u.test(token.text)
    : token.kind === 'pattern' && /^\/\^?\p{Lu}\p{Ll}+ (?:\p{Ll}|\/|\\d)/u.test(token.text)

/** Whether something is compared with the beginning of a sentence, or a text searched for it. */
function isCompared(tokens: readonly Token[], at: number): boolean {
  const [second, first] = [tokens[at - 2]?.text ?? '', tokens[at - 1]?.text ?? '']
  if (comparisons.has(first) || comparisons.has(tokens[at + 1]?.text ?? '') || first === 'case') return true
  const isAsked = tokens[at + 1]?.text === '.' && askers.has(tokens[at + 2]?.text ?? '')
  if (tokens[at]!.kind === 'pattern' && isAsked) return true
  return first === '(' && askers.has(second) && tokens[at - 3]?.text === '.'
}

/** Where a TypeScript text decides by the text of a sentence rather than by a code. */
export function decisionsIn(code: string): Finding[] {
  const tokens = tokensOf(code)
  const rows = code.split('\n')
  const found = new Map<number, Finding>()
  for (const [at, token] of tokens.entries()) {
    const byName = isSentenceName(tokens, at) && isDecidedBy(tokens, at)
    if (byName || (beginsSentence(token) && isCompared(tokens, at)))
      found.set(token.line, { line: token.line, text: rows[token.line - 1]!.trim() })
  }
  return [...found.values()]
}
