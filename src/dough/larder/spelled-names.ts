import type { Ingredient, Larder } from '../document/larder.js'
import { folded } from '../lexicon/folded.js'

const longestName = 60 // characters

/** Words that are another's in names. */
const sames: ReadonlyMap<string, string> = new Map([
  ['dried', 'dry'],
  ['wholegrain', 'whole grain'],
  ['wholewheat', 'whole wheat'],
  ['acting', 'action'],
])

const plain = (text: string): string =>
  folded(text)
    .replace(/[-'’‘´\s]+/g, ' ')
    .trim()
/** Without the endings of plurals, and one word for each of those that say the same. */
const single = (text: string): string =>
  text
    .split(' ')
    .map(word => (sames.get(word) ?? word).replace(plural, ''))
    .join(' ')
const plural = /(?<=\p{L}{2})(?:es|s|x)$/u

const made = new WeakMap<Larder, ReadonlyMap<string, string>>()

/** The names of a larder, by themselves and as if there were one of each. */
function namesOf(larder: Larder): ReadonlyMap<string, string> {
  let names = made.get(larder)
  if (!names) {
    const all = larder.ingredients.flatMap(i => [i.name, ...i.otherNames])
    const exact = all.map(name => [plain(name), name] as const)
    names = new Map([...exact.map(([key, name]) => [single(key), name] as const), ...exact])
    made.set(larder, names)
  }
  return names
}

/**
 * A name of the larder that says the same but for case, accents, hyphens and number, in the language it
 * was written in: `eau` is `Eau`, which the larder knows as water. Undefined for one of more than 60 characters.
 */
export function larderName(larder: Larder, words: string): string | undefined {
  if (words.length > longestName) return undefined
  const names = namesOf(larder)
  const key = plain(words)
  return names.get(key) ?? names.get(single(key))
}

/** The ingredient of a name, whichever way it is spelled. */
export function ingredientNamed(larder: Larder, words: string): Ingredient | undefined {
  const name = larderName(larder, words)
  return name === undefined ? undefined : larder.find(name)
}
