import type { Ingredient, Larder } from '../../dough/document/larder.js'

const fold = (text: string): string =>
  text
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replaceAll('œ', 'oe')
    .replace(/[-'’‘´\s]+/g, ' ')
    .trim()
/** Words that are another's in names. */
const sames: ReadonlyMap<string, string> = new Map([
  ['dried', 'dry'],
  ['wholegrain', 'whole grain'],
  ['wholewheat', 'whole wheat'],
  ['acting', 'action'],
])
/** Without the endings of plurals, and one word for each of those that say the same. */
const single = (folded: string): string =>
  folded.replace(/\p{L}+/gu, word => sames.get(word) ?? word).replace(/(?<=\p{L}{2})(?:es|s|x)(?= |$)/gu, '')

interface Names {
  readonly exact: ReadonlyMap<string, string>
  readonly loose: ReadonlyMap<string, string>
}
const made = new WeakMap<Larder, Names>()

function namesOf(larder: Larder): Names {
  const known = made.get(larder)
  if (known) return known
  const all = larder.ingredients.flatMap(i => [i.name, ...i.otherNames])
  const exact = new Map(all.map(name => [fold(name), name]))
  const loose = new Map(all.map(name => [single(fold(name)), name]))
  const names = { exact, loose }
  made.set(larder, names)
  return names
}

/**
 * A name of the larder that says the same but for case, accents, hyphens and number, in the language it
 * was written in: `eau` is `Eau`, which the larder knows as water.
 */
export function larderName(larder: Larder, words: string): string | undefined {
  if (words.length > 60) return undefined
  const { exact, loose } = namesOf(larder)
  const folded = fold(words)
  return exact.get(folded) ?? loose.get(single(folded))
}

/** The ingredient of a name, whichever way it is spelled. */
export function ingredientNamed(larder: Larder, words: string): Ingredient | undefined {
  const name = larderName(larder, words)
  return name === undefined ? undefined : larder.find(name)
}
