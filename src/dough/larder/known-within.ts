import { type CountsAs, nameKey } from '../document/formula.js'
import type { Ingredient, Larder } from '../document/larder.js'
import { guessCountsAs } from './counts-as-guess.js'
import { ingredientNamed } from './spelled-names.js'

const longestName = 8 // words

/** How an ingredient was grown, milled, kept or done: what is left of a name without such words is what it is. */
const manners = new Set(
  `organic stoneground stone ground milled freshly fresh local heritage home good best quality fine finely coarse coarsely
sifted unsifted bolted unbleached bleached raw plain dark light strong soft hard warm cold cool lukewarm tepid hot ice iced boiling
melted softened cubed toasted roasted chopped crushed whole large medium small extra free range ripe active mature young old spare my our
the of bio biologique moulue meule pierre locale paysanne de du des la le tiède froide chaude fondu mou mûr mon ma notre
frisch gemahlen fein grob warm kalt lauwarm weich reif mein unser`
    .split(/\s+/)
    .map(nameKey),
)

/** What an ingredient the larder does not know may count as, for its name holds one that it knows, or for the words of it. */
export interface Likeness {
  readonly like: Ingredient | undefined // the one whose name it holds
  readonly countsAs: CountsAs
}

const isManner = (words: readonly string[]): boolean => words.every(word => manners.has(nameKey(word)))

/**
 * The ingredient whose name stands in another: the longest name at its end, as in `stoneground emmer flour`, or at its
 * beginning, as in `T65 bio`. A name of one word counts only beside words of how it was grown, milled or kept, since peanut
 * butter is no butter.
 */
export function knownWithin(name: string, larder: Larder): Ingredient | undefined {
  const words = name.trim().split(/\s+/)
  if (words.length > longestName) return undefined
  for (let count = words.length - 1; count > 0; count--)
    for (const at of [words.length - count, 0]) {
      const held = words.slice(at, at + count)
      const rest = [...words.slice(0, at), ...words.slice(at + count)]
      const known = ingredientNamed(larder, held.join(' '))
      if (known && (count > 1 || isManner(rest))) return known
    }
  return undefined
}

/** What a name that the larder does not know most likely counts as; undefined: no idea. */
export function likenessOf(name: string, larder: Larder): Likeness | undefined {
  const guess = guessCountsAs(name)
  const like = knownWithin(name, larder)
  // `rye bread crumbs` holds no flour, whatever stands in it
  if (like && (guess === like.countsAs.kind || like.countsAs.kind === 'other'))
    return { like, countsAs: like.countsAs }
  if (guess && guess !== 'starter') return { like: undefined, countsAs: { kind: guess } }
  return undefined
}
