import type { Allergens } from '../document/larder.js'
import type { ListName } from '../larder/allergen-lists.js'

/** A stretch of a label's text. */
export interface LabelRun {
  readonly text: string
  readonly isAllergen: boolean // set apart from the rest
}

/** What a label has to name of one ingredient, by one public list. */
export interface Named {
  readonly word: string // as the list has it: `wheat`, `milk`
  readonly entry: string // of the list
  readonly isDoubtful: boolean // the list says when, or that its label has to be read
  readonly isOpen: boolean // the list asks which of them it is
}

const general: ReadonlySet<string> = new Set([
  'nuts',
  'tree nuts',
  'fish',
  'crustacean shellfish',
  'crustaceans',
])

/** The words by which an entry of a list is named on a label. */
function wordsOf(entry: string): readonly string[] {
  const toRead = /^check label: (.+)$/.exec(entry)?.[1]
  if (toRead) return toRead.split(', ')
  if (entry === 'wheat and triticale') return ['triticale']
  const within = /\(([^()]+)\)$/.exec(entry)?.[1]
  if (within) return [within]
  const plain = entry.replace(/ (?:unless|if) .*$|: .*$/, '')
  return [plain.startsWith('sulphur dioxide') ? 'sulphites' : plain]
}

const isPlain = (entry: string): boolean => !/^check label| unless | if |: /.test(entry)

/** What a list has a label name of an ingredient, each once. */
export function namedOf(allergens: Allergens | undefined, list: ListName): readonly Named[] {
  const all = (allergens?.[list] ?? []).flatMap(entry =>
    wordsOf(entry).map(word => ({
      word,
      entry,
      isDoubtful: !isPlain(entry),
      isOpen: general.has(entry),
    })),
  )
  return all.filter((one, at) => all.findIndex(other => other.word === one.word) === at)
}

const spelled: Readonly<Record<string, string>> = {
  soy: 'soya?(?: ?beans?)?',
  soybeans: 'soya?(?: ?beans?)?',
  egg: 'eggs?',
  eggs: 'eggs?',
  sesame: 'sesame(?: seeds?)?',
  'sesame seeds': 'sesame(?: seeds?)?',
  sulphites: 'sul(?:ph|f)ites?',
  lupin: 'lupine?s?',
}

/** What in a text is that word, in the singular or plural. */
function patternOf(word: string): string {
  const stem = word.replace(/s$/, '').replace(/[.*+?^${}()|[\]\\/]/g, '\\$&')
  return spelled[word] ?? `${stem}s?`
}

/** Whether a text says one of the words a list has. */
export const says = (text: string, word: string): boolean =>
  new RegExp(`\\b${patternOf(word)}\\b`, 'i').test(text)

/** A text with every one of the words set apart. */
export function apart(text: string, words: readonly string[]): readonly LabelRun[] {
  if (words.length === 0) return text ? [{ text, isAllergen: false }] : []
  const any = new RegExp(`\\b(${words.map(patternOf).join('|')})\\b`, 'gi')
  return text
    .split(any)
    .map((part, at) => ({ text: part, isAllergen: at % 2 === 1 }))
    .filter(run => run.text !== '')
}
