import { type CountsAs, nameKey } from './formula.js'

// Words, and endings of compounds (`Roggenvollkornmehl`), in some languages bakers write in.
const words: readonly (readonly [kind: CountsAs['kind'], whole: string, endings: string])[] = [
  [
    'starter',
    'starter levain sourdough madre mutterteig surdeg surdej zuurdesem desem zakwas',
    'sauerteig sauer anstellgut',
  ],
  [
    'flour',
    'flour flours farine farines farina semola semolina wholemeal harina farinha bloem mąka mouka jauho atta maida',
    'mehl meel mjöl',
  ],
  ['water', 'water eau acqua agua água vatten vann vand woda voda vesi ice', 'wasser'],
  ['salt', 'salt (?<!demi.)sel sale sal zout sól sůl suola', 'salz'],
]

const patterns = words.map(([kind, whole, endings]) => {
  const either = (list: string) => list.replaceAll(' ', '|')
  const source = `(?:(?<!\\p{L})(?:${either(whole)})|${either(endings)})(?!\\p{L})`
  return [kind, new RegExp(source, 'u')] as const
})

/** What an ingredient of this name most likely counts as; undefined: no idea. Only ever a question to the baker. */
export function guessCountsAs(name: string): CountsAs['kind'] | undefined {
  const key = nameKey(name)
  return patterns.find(([, pattern]) => pattern.test(key))?.[0]
}
