import { type CountsAs, nameKey } from '../document/formula.js'

type Kind = CountsAs['kind']

// Words, and endings of compounds (`Roggenvollkornmehl`), in some languages bakers write in.
const words: readonly (readonly [kind: Kind, whole: string, endings: string])[] = [
  [
    'starter',
    'starter levain leaven sourdough madre mutterteig surdeg surdej zuurdesem desem zakwas (?:rye|wheat|white|spelt).sour',
    'sauerteig sauer anstellgut',
  ],
  [
    'flour',
    'flour flours farine farines farina semola semolina wholemeal harina farinha bloem mąka mouka jauho atta maida',
    'mehl meel mjöl',
  ],
  ['water', 'water eau acqua agua água vatten vann vand woda voda vesi ice', 'wasser'],
  ['salt', 'salt sel sale sal zout sól sůl suola', 'salz'],
]

const either = (list: string): string => list.replaceAll(' ', '|')
const whole = (list: string): string => `(?<!\\p{L})(?:${either(list)})(?!\\p{L})`

const patterns = words.map(([kind, list, endings]) => {
  const source = `${whole(list)}|(?:${either(endings)})(?!\\p{L})`
  return [kind, new RegExp(source, 'u')] as const
})

// A grain by its name alone is its flour: with no other word than how it was milled, so that `Mill wheat` is a bread.
const grain =
  /^(?:(?:whole|wholegrain|whole grain|dark|medium|light|white|fine|coarse|strong|organic|stoneground|freshly milled|milled|sifted|petit|bio) )*(?:rye|spelt|einkorn|emmer|kamut|khorasan|wheat|roggen|dinkel|weizen|seigle|épeautre)(?: (?:wholemeal|vollkorn|bio|(?:t|type|typ)? ?\d{2,4}))*$/u

// Nothing made of a dough, and nothing of which flour, water or salt is only the lesser part of the name.
const neither = new RegExp(
  `${whole(
    `bread(?!.flour) breads crumb crumbs crouton croutons crackers brot brösel chips cream melon butter beurre pepper pfeffer poivre caramel
almond almonds hazelnut hazelnuts walnut chestnut coconut nut nuts amande amandes noisette noisettes châtaigne coco flax linseed
psyllium eau.de.vie`.replaceAll('\n', ' '),
  )}|(?<!\\p{L})(?:mandel|haselnuss|nuss|kokos|kastanien|lein|panier)mehl`,
  'u',
)

function guessOf(name: string): Kind | undefined {
  if (/^(?:the )?mother$/.test(name)) return 'starter'
  if (neither.test(name)) return undefined
  const kind = patterns.find(([, pattern]) => pattern.test(name))?.[0]
  return kind ?? (grain.test(name) ? 'flour' : undefined)
}

/** Is it the name of a grain alone, which is as often the name of a bread? */
export const isGrain = (name: string): boolean => grain.test(nameKey(name))

/** What an ingredient of this name most likely counts as; undefined: no idea. Only ever a question to the baker. */
export function guessCountsAs(name: string): Kind | undefined {
  const parts = nameKey(name).split(/ (?:and|und|et|or|oder|ou|&|\+) | ?\/ ?/)
  const kinds = parts.map(guessOf)
  const last = kinds.at(-1)
  // `white and wholemeal flour` is flour; `honey and water` is no water
  return kinds.every(kind => kind === last || (kind === undefined && last === 'flour')) ? last : undefined
}
