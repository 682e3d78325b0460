import { type CountsAs, nameKey } from './formula.js'

// Whole words, then endings of compounds (`Roggenvollkornmehl`), in the languages bakers write to us in.
const words: readonly (readonly [CountsAs['kind'], RegExp])[] = [
  [
    'starter',
    /(^|\P{L})(starter|levain|sourdough|sauerteig|anstellgut|madre|mutterteig|surdeg|surdej|zuurdesem|desem|zakwas)(\P{L}|$)|(sauerteig|sauer|anstellgut)$/u,
  ],
  [
    'flour',
    /(^|\P{L})(flours?|farines?|mehl|farina|semola|semolina|wholemeal|harina|farinha|meel|bloem|mjöl|mąka|mouka|jauho|atta|maida)(\P{L}|$)|(mehl|meel|bloem|mjöl)$/u,
  ],
  [
    'water',
    /(^|\P{L})(water|eau|wasser|acqua|agua|água|vatten|vann|vand|woda|voda|vesi|ice)(\P{L}|$)|wasser$/u,
  ],
  ['salt', /(^|\P{L})(salt|sel|salz|sale|sal|zout|sól|sůl|suola)(\P{L}|$)|salz$/u],
]

/** What an ingredient of this name most likely counts as; undefined: no idea. Only ever a question to the baker. */
export function guessCountsAs(name: string): CountsAs['kind'] | undefined {
  const key = nameKey(name)
  return words.find(([, pattern]) => pattern.test(key))?.[0]
}
