import { articles } from './kitchen-words.js'
import { isApostrophe, type Token, tokensOf } from './tokens.js'

const table = (rows: readonly (readonly [words: string, purpose: string])[]): ReadonlyMap<string, string> =>
  new Map(rows.flatMap(([words, purpose]) => words.split(' ').map(word => [word, purpose] as const)))

/** What is done with an ingredient that may not go into the dough, in English and French. */
export const uses = table([
  ['glaze glazing brush brushing dorer dorure badigeonner', 'for glazing'],
  ['dust dusting flouring fleurer fleurage', 'for dusting'],
  ['grease greasing oiling lining graisser huiler beurrer', 'for greasing'],
  ['sprinkle sprinkling topping coat coating parsemer saupoudrer', 'for the top'],
  ['finish finishing garnish decorate decorating decorer decoration garnir finition', 'for the finish'],
  ['serve serving spreading servir service', 'for serving'],
  ['rolling shaping boiling', 'for the work on it'],
])

/** Where it goes instead, behind `for` or `pour`. */
export const places = table([
  ['tin tins pan dish mould moule moules plat', 'for the tin'],
  ['tray trays plaque paper papier', 'for the tray'],
  ['banneton bannetons basket peel bowl saladier', 'for what the dough lies in'],
  ['surface worktop bench board plan travail', 'for the bench'],
  ['top crust', 'for the top'],
])

const opens = new Set(['for', 'to', 'pour'])
const between = new Set([...articles, 'the', 'your', 'le', 'la', 'les', 'l', 'au'])

/** What a remark opens with if it says what an ingredient is for: `for the tin`, `pour dorer`. */
function purposeOf(remark: readonly Token[]): string | undefined {
  const [first, ...rest] = remark
  if (!first || !opens.has(first.key)) return undefined
  const word = rest.find(t => !between.has(t.key) && !isApostrophe(t))
  return word && (uses.get(word.key) ?? (first.key === 'to' ? undefined : places.get(word.key)))
}

/** What is to be said of an amount with such a remark: it may not belong to the dough. */
export function saidOfPurpose(remarks: readonly string[]): string[] {
  for (const remark of remarks) {
    const purpose = purposeOf(tokensOf(remark).slice(0, 8))
    if (purpose) return [`The text says it is ${purpose}: leave it out if it does not go into the dough.`]
  }
  return []
}
