import { type Token, tokensOf } from '../../dough/lexicon/text-tokens.js'

/** What a stage is by its name: what it does before the dough, the dough itself, or what goes onto it. */
export type StageKind = 'ferments' | 'soaks' | 'dough' | 'other'

const words: Readonly<Record<StageKind, string>> = {
  ferments:
    'levain poolish biga sponge preferment pre-ferment pre-dough predough starter leaven sourdough build mother madre refresh refreshment rafraichi chef fermentee mere-levain sour desem lievito rinfresco ferment',
  soaks:
    'trempe trempee trempes trempees soaker tangzhong yudane scald porridge gruel roux trempage trempis empois mash mush soaked scalded autolyse autolysis',
  dough: 'dough impasto detrempe pate mix petrissee petrissage pate-finale final-dough batter',
  other:
    'topping filling glaze glacage dorure garniture finition finish finishing crust wash icing frosting syrup sirop streusel crumble decoration decor tourage coating bath bassinage seeds fruit add-ins inclusions fullung belag guss bestreichen bestreuen',
}
const kinds: ReadonlyMap<string, StageKind> = new Map(
  (Object.keys(words) as StageKind[]).flatMap(kind =>
    words[kind].split(' ').map(word => [word, kind] as const),
  ),
)
const breads = new Set(
  'bread breads loaf loaves baguette baguettes roll rolls bun buns boule miche pain pains brioche brioches focaccia ciabatta bagel bagels brot brotchen'.split(
    ' ',
  ),
)

/** German compounds, by how they end: `Roggensauer`, `Quellstück`, `Hauptteig`. */
const endings: readonly (readonly [ending: RegExp, kind: StageKind])[] = [
  [/(?:sauer|vor)teig$|sauer$/, 'ferments'],
  [/(?:quell|bruh|koch|aroma|saaten)stuck$/, 'soaks'],
  [/teig$/, 'dough'],
]

/** What kind of stage a word speaks of; lower case, without accents. */
export const kindOfWord = (key: string): StageKind | undefined =>
  kinds.get(key) ?? endings.find(([ending]) => ending.test(key))?.[1]

/** What kind of stage a name speaks of, by its first word that says so; a dough of something is a dough. */
export function kindOf(name: readonly Token[]): StageKind | undefined {
  const said = name.map(t => kindOfWord(t.key)).filter(kind => kind !== undefined)
  return said.includes('ferments') ? 'ferments' : said[0]
}

/** Other words for the same. */
const sames: Readonly<Record<string, string>> = {
  leaven: 'levain',
  predough: 'pre-dough',
  preferment: 'pre-ferment',
  scalded: 'scald',
  soaked: 'soaker',
  trempe: 'trempage',
  trempee: 'trempage',
  trempes: 'trempage',
  trempees: 'trempage',
}
const singular = (key: string): string => sames[key] ?? key.replace(/s$/, '')

/** Is a stage that is made before the dough named by this word? */
export function namesEarlierStage(key: string): boolean {
  const kind = kindOfWord(key) ?? kindOfWord(singular(key))
  return kind === 'ferments' || kind === 'soaks'
}

/** The words of a name by which a stage made before the dough is known, in the singular. */
export const earlierStageWords = (name: string): string[] =>
  tokensOf(name)
    // sour cream is none
    .filter((t, i, all) => namesEarlierStage(t.key) && (t.key !== 'sour' || all[i + 1]?.kind !== 'word'))
    .map(t => singular(t.key))

export const isBread = (key: string): boolean => breads.has(key)

/** Do words name a bread, though they speak of what a stage may be made of? `sourdough` by itself is both. */
export function namesBread(keys: readonly string[]): boolean {
  const said = keys.filter(key => kinds.has(key))
  if (keys.some(isBread)) return !said.some(key => kinds.get(key) === 'dough')
  return said.length > 0 && said.every(key => key === 'sourdough')
}
