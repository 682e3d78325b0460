import type { Ingredient, Larder } from '../document/larder.js'
import { folded } from '../lexicon/folded.js'

const longestName = 40 // letters and signs
const longWord = 8 // letters; a shorter word is off by one at most: rice is no misspelt rye

/** Words of their own, though other names are near: malt is no misspelt salt. */
const ownWords = new Set(['malt', 'malz', 'batter'])

/** A name of the larder, as its letters are compared. */
interface Spelled {
  readonly name: string
  readonly key: string
  readonly digits: string
  readonly ingredient: Ingredient
}

const keyOf = (name: string): string => folded(name.trim()).replace(/[-'’‘´\s]+/g, ' ')
const digitsOf = (key: string): string => key.replace(/\D/g, '')
const lettersOf = (key: string): number => key.replace(/[^\p{L}\d]/gu, '').length

/** By how many letters a name of so many may be off. */
const mostFor = (letters: number): number => (letters < 4 ? 0 : letters < longWord ? 1 : 2)

const made = new WeakMap<Larder, ReadonlyMap<number, readonly Spelled[]>>()

/** The names of a larder by their length. */
function namesOf(larder: Larder): ReadonlyMap<number, readonly Spelled[]> {
  const known = made.get(larder)
  if (known) return known
  const names = new Map<number, Spelled[]>()
  for (const ingredient of larder.ingredients)
    for (const name of [ingredient.name, ...ingredient.otherNames]) {
      const key = keyOf(name)
      const one = { name, key, digits: digitsOf(key), ingredient }
      const others = names.get(key.length)
      if (others) others.push(one)
      else names.set(key.length, [one])
    }
  made.set(larder, names)
  return names
}

/**
 * How many letters have to be put in, left out, changed or swapped with their neighbour to come from one text to the other, no
 * letter twice (optimal string alignment); `most + 1` where that are more than `most`.
 */
export function lettersApart(a: string, b: string, most: number): number {
  const tooFar = most + 1
  if (Math.abs(a.length - b.length) > most) return tooFar
  let above: number[] = []
  let row = Array.from({ length: b.length + 1 }, (_, at) => at)
  for (let i = 1; i <= a.length; i++) {
    const next = [i]
    let least = i
    for (let j = 1; j <= b.length; j++) {
      const isSame = a[i - 1] === b[j - 1]
      let far = Math.min(row[j]! + 1, next[j - 1]! + 1, row[j - 1]! + (isSame ? 0 : 1))
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1])
        far = Math.min(far, above[j - 2]! + 1)
      next.push(far)
      least = Math.min(least, far)
    }
    if (least > most) return tooFar
    above = row
    row = next
  }
  return Math.min(row[b.length]!, tooFar)
}

/** Is no short word of the two off by more than a letter? Where they have as many words, each is compared with its own. */
function isOffByWords(a: string, b: string): boolean {
  const [words, others] = [a.split(' '), b.split(' ')]
  return (
    words.length !== others.length ||
    words.every((word, at) => word.length >= longWord || lettersApart(word, others[at]!, 1) < 2)
  )
}

/**
 * The name of the larder that a name it does not know is nearly spelled like: one letter off, or two where it has eight and
 * more; case and accents aside, with the same digits, and only where no other ingredient is as near. Only ever a question to
 * the baker.
 */
export function nearlySpelled(written: string, larder: Larder): string | undefined {
  if (written.length > longestName) return undefined
  const key = keyOf(written)
  const most = mostFor(lettersOf(key))
  if (most === 0 || ownWords.has(key)) return undefined
  const digits = digitsOf(key)
  const names = namesOf(larder)
  let near = most
  let best: Spelled[] = []
  for (let length = key.length - most; length <= key.length + most; length++)
    for (const one of names.get(length) ?? []) {
      if (one.digits !== digits) continue
      const far = lettersApart(key, one.key, near)
      if (far > near || !isOffByWords(key, one.key)) continue
      if (far < near) best = []
      near = far
      best.push(one)
    }
  const [first, ...others] = best
  return others.some(({ ingredient }) => ingredient !== first?.ingredient) ? undefined : first?.name
}
