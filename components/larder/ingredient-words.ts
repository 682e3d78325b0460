import type { Kind } from './ingredient-draft.js'

/** What an ingredient may count as, and what a gram of it then does to the readings. */
export const countsAsWords: Readonly<
  Record<Kind, { readonly name: string; readonly group: string; readonly brings: string }>
> = {
  flour: { name: 'Flour', group: 'Flours', brings: 'is part of the 100 %' },
  water: { name: 'Water', group: 'Water', brings: 'counts in true hydration' },
  salt: { name: 'Salt', group: 'Salts', brings: 'counts in the salt' },
  starter: {
    name: 'Starter',
    group: 'Starters',
    brings: 'brings flour and water by its hydration; the flour is prefermented',
  },
  other: {
    name: 'Other',
    group: 'Everything else',
    brings: 'brings its weight only: milk, egg, butter, seeds',
  },
}

/** Kinds of what counts as other, by the larder's own words. */
export const kindWords: Readonly<Record<string, string>> = {
  other: 'Something else',
  yeast: 'Yeast',
  egg: 'Egg',
  dairy: 'Milk or cream',
  cheese: 'Cheese',
  fat: 'Fat or oil',
  sugar: 'Sugar or syrup',
  malt: 'Malt',
  grain: 'Grain',
  starch: 'Starch',
  bran: 'Bran',
  germ: 'Germ',
  gluten: 'Gluten',
  seed: 'Seed',
  nut: 'Nut',
  spice: 'Spice',
  'dried fruit': 'Dried fruit',
  vegetable: 'Vegetable',
  cocoa: 'Cocoa',
  chocolate: 'Chocolate',
  liquid: 'Liquid',
  'raising agent': 'Raising agent',
}
