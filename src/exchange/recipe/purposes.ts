import { articles } from '../../dough/amounts/number-words.js'
import { isApostrophe, type Token, tokensOf } from '../../dough/amounts/text-tokens.js'

/** What an ingredient is for, where that may not be the dough. */
export type Purpose =
  | 'glazing'
  | 'dusting'
  | 'greasing'
  | 'top'
  | 'finish'
  | 'serving'
  | 'work'
  | 'tin'
  | 'tray'
  | 'basket'
  | 'bench'

const table = (rows: readonly (readonly [words: string, purpose: Purpose])[]): ReadonlyMap<string, Purpose> =>
  new Map(rows.flatMap(([words, purpose]) => words.split(' ').map(word => [word, purpose] as const)))

/** What is done with an ingredient that may not go into the dough, in English and French. */
export const uses = table([
  ['glaze glazing brush brushing dorer dorure badigeonner', 'glazing'],
  ['dust dusting flouring fleurer fleurage', 'dusting'],
  ['grease greasing oiling lining graisser huiler beurrer', 'greasing'],
  ['sprinkle sprinkling topping coat coating parsemer saupoudrer', 'top'],
  ['finish finishing garnish decorate decorating decorer decoration garnir finition', 'finish'],
  ['serve serving spreading servir service', 'serving'],
  ['rolling shaping boiling', 'work'],
])

/** Where it goes instead, behind `for` or `pour`. */
export const places = table([
  ['tin tins pan dish mould moule moules plat', 'tin'],
  ['tray trays plaque paper papier', 'tray'],
  ['banneton bannetons basket peel bowl saladier', 'basket'],
  ['surface worktop bench board plan travail', 'bench'],
  ['top crust', 'top'],
])

const opens = new Set(['for', 'to', 'pour'])
const between = new Set([...articles, 'the', 'your', 'le', 'la', 'les', 'l', 'au'])

/** What a remark opens with if it says what an ingredient is for: `for the tin`, `pour dorer`. */
function purposeIn(remark: readonly Token[]): Purpose | undefined {
  const [first, ...rest] = remark
  if (!first || !opens.has(first.key)) return undefined
  const word = rest.find(t => !between.has(t.key) && !isApostrophe(t))
  return word && (uses.get(word.key) ?? (first.key === 'to' ? undefined : places.get(word.key)))
}

/** Do the words before one say that it is what an ingredient is for? `to glaze`, `for the tin`. */
export const isForUse = (words: readonly Token[], at: number): boolean =>
  uses.has(words[at]!.key) ||
  (places.has(words[at]!.key) &&
    words.slice(Math.max(1, at - 3), at).some(t => t.key === 'for' || t.key === 'pour'))

/** What the remarks on an ingredient say it is for, where it may not belong to the dough. */
export function purposeOf(remarks: readonly string[]): Purpose | undefined {
  for (const remark of remarks) {
    const purpose = purposeIn(tokensOf(remark).slice(0, 8))
    if (purpose) return purpose
  }
  return undefined
}
