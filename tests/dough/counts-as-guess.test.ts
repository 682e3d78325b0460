import assert from 'node:assert/strict'
import { test } from 'node:test'
import type { CountsAs } from '../../src/dough/document/formula'
import { guessCountsAs } from '../../src/dough/larder/counts-as-guess'

const guesses: readonly (readonly [kind: CountsAs['kind'] | undefined, names: string])[] = [
  [
    'flour',
    'Flour, White flour, Rye flour, Weizenmehl, Farine de blé, Mąka pszenna, white and wholemeal flour',
  ],
  [
    'flour',
    'Rye, RYE, Spelt, Einkorn, Emmer, Kamut, Wheat, Whole wheat, Dark rye, Stoneground rye, Roggen 1150',
  ],
  ['flour', 'Wheat and rye, Seigle T130, Petit épeautre'],
  [
    undefined,
    'Wheat bran, Wheat germ, Rye chops, Rye flakes, Rye malt, Rye bread, Rye berries, Wheat sprouts',
  ],
  [
    undefined,
    'Mill wheat, Country rye, Cracked wheat, Sprouted spelt, Emmer grains, Wheat starch, Buckwheat, Roggenschrot, Roggen geschrotet',
  ],
  [undefined, 'Almond flour, Coconut flour, Mandelmehl, Paniermehl, Flax meal'],
  [
    'starter',
    'Levain, Leaven, Sourdough, Ripe levain, Mother, the mother, Rye sour, Sauerteig, Sourdough discard',
  ],
  ['starter', 'Levain liquide, Levain dur, Levain chef, Anstellgut, Weizensauer, Roggensauer, Lievito madre'],
  [undefined, 'Sourdough bread, Sourdough crumbs, Sourdough bread crumbs, Mother of vinegar, Mother dough'],
  ['water', 'Water, Filtered water, Warm water, Kaltes Wasser, Eau froide, Ice, Water / ice'],
  [undefined, 'Eau-de-vie, Ice cream, Water melon, Coconut water, honey and water'],
  ['salt', 'Salt, Sea salt, Meersalz, Fleur de sel, Sel'],
  [undefined, 'Salt and pepper, Salt butter, Beurre demi-sel, Salted caramel'],
  [undefined, 'Honey, Glitter, White, , /, Yeast'],
]
for (const [kind, names] of guesses)
  for (const name of names.split(', '))
    test(`“${name}” most likely counts as ${kind ?? 'nothing that its name tells'}`, () => {
      assert.equal(guessCountsAs(name), kind)
    })
