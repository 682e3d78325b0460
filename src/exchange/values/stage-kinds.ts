import { type Token, tokensOf } from '../../dough/lexicon/text-tokens.js'

/** What a stage is by its name: what it does before the dough, the dough itself, or what goes onto it. */
export type StageKind = 'ferments' | 'soaks' | 'dough' | 'other'

const words: Readonly<Record<StageKind, string>> = {
  ferments:
    'levain poolish biga sponge preferment pre-ferment pre-dough predough vorteig starter leaven sourdough build mother refresh refreshment rafraichi chef fermentee mere-levain sauerteig',
  soaks:
    'soaker tangzhong yudane scald porridge gruel roux trempage trempis empois mash quellstuck bruhstuck kochstuck',
  dough: 'dough pate mix petrissee petrissage pate-finale final-dough teig hauptteig',
  other:
    'topping filling glaze glacage dorure garniture finition finishing crust wash icing syrup sirop streusel crumble decoration coating bassinage autolyse seeds add-ins inclusions',
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

/** What kind of stage a word speaks of; lower case, without accents. */
export const kindOfWord = (key: string): StageKind | undefined => kinds.get(key)

/** What kind of stage a name speaks of, by its first word that says so; a dough of something is a dough. */
export function kindOf(name: readonly Token[]): StageKind | undefined {
  const said = name.map(t => kinds.get(t.key)).filter(kind => kind !== undefined)
  return said.includes('ferments') ? 'ferments' : said[0]
}

const singular = (key: string): string => key.replace(/s$/, '')

/** Is a stage that is made before the dough named by this word? */
export function namesEarlierStage(key: string): boolean {
  const kind = kinds.get(key) ?? kinds.get(singular(key))
  return kind === 'ferments' || kind === 'soaks'
}

/** The words of a name by which a stage made before the dough is known, in the singular. */
export const earlierStageWords = (name: string): string[] =>
  tokensOf(name)
    .filter(t => namesEarlierStage(t.key))
    .map(t => singular(t.key))

export const isBread = (key: string): boolean => breads.has(key)

/** Do words name a bread, though they speak of what a stage may be made of? `sourdough` by itself is both. */
export function namesBread(keys: readonly string[]): boolean {
  const said = keys.filter(key => kinds.has(key))
  if (keys.some(isBread)) return !said.some(key => kinds.get(key) === 'dough')
  return said.length > 0 && said.every(key => key === 'sourdough')
}
