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

/** Of the list of all that is known. */
export const larderWords = {
  larder: 'Larder',
  cleared: (count: number): string => `Cleared away: ${count}`,
  newIngredient: 'New ingredient',
  find: 'Find an ingredient',
  found: (count: number): string => `${count} found`,
  noneCalled: (sought: string): string => `Nothing here is called “${sought}”.`,
  add: (name: string): string => `Add ${name}`,
  notKnown: 'Not known yet',
  notKnownHint: 'Written in your formulas. Until you say what they count as, only their weight counts.',
  sayWhatItIs: 'Say what it is',
  changed: 'changed',
  yours: 'yours',
} as const

/** What is said of an ingredient beside its name. Figures come with their unit. */
export const factWords = {
  hydration: (percent: string): string => `${percent} hydration`,
  moisture: (percent: string): string => `moisture ${percent}`,
  fat: (percent: string): string => `fat ${percent}`,
  sugar: (percent: string): string => `sugar ${percent}`,
  one: (grams: string): string => `one ${grams}`,
  teaspoon: (grams: string): string => `teaspoon ${grams}`,
  cup: (grams: string): string => `cup ${grams}`,
  noAllergens: 'allergens not said',
  pack: (price: string, pack: string): string => (price ? `${price} for ${pack}` : `packs of ${pack}`),
} as const

/** Around the form of one ingredient, and what became of it. */
export const formWords = {
  usedIn: (formulas: readonly string[]): string =>
    `In ${formulas.join(', ')}. What you change here changes there.`,
  save: 'Save',
  cancel: 'Cancel',
  backToLarder: 'Back to the larder',
  backToUsual: 'Back to the usual values',
  remove: 'Remove',
  notSaved: 'Not saved yet: correct what is marked above.',
  saved: (name: string): string => `${name} is in the larder.`,
  savedWithoutAllergens: (name: string): string =>
    `${name} is in the larder. Its allergens are shown as not known.`,
  isUsualAgain: (name: string): string => `${name} is back to its usual values.`,
  removed: (name: string): string =>
    `${name} is no longer in the larder. Undo brings it back; for 30 days it is under Cleared away.`,
} as const

/** Of the form itself. */
export const ingredientWords = {
  name: 'Name',
  countsAs: 'Counts as',
  isAGuess: (countsAs: string): string => `${countsAs} is a guess from its name. Is that right?`,
  brings: (flour: string, water: string): string =>
    `100 g of it brings ${flour} g flour and ${water} g water.`,
  kind: 'Kind',
  kindHint: 'Yeast makes its stage ferment; egg and milk have readings of their own.',
  whatIsInIt: 'What is in it',
  whatIsInItHint:
    'Moisture is shown apart, and not in true hydration. Salt is salt already in it, as in salted butter.',
  measures: 'What spoons and cups of it weigh',
  measuresHint:
    'An estimate: a spoon heaped or levelled, a cup dipped or filled differ by a quarter. Weigh your own and write it here. An empty one is worked out from the others.',
  note: 'Note',
} as const

/** The fields for numbers. */
export const fieldWords = {
  hydration: 'Hydration',
  moisture: 'Moisture',
  fat: 'Fat',
  sugar: 'Sugar',
  salt: 'Salt',
  tsp: 'A teaspoon',
  tbsp: 'A tablespoon',
  cup: 'A cup (US)',
  density: 'A millilitre',
  each: 'One piece',
} as const

/** What its own label says, for the labels of breads. */
export const onLabelWords = {
  legend: 'What its own label says',
  madeOf: 'Made of',
  madeOfHint:
    'Of a bought ingredient that has ingredients of its own: as its label lists them. On the label of a bread they stand in brackets behind its name.',
  holdsHint:
    'In 100 g of it, for the nutrition on labels. Left empty, the usual figures count where there are any. Carbohydrate is meant without fibre, as European labels have it; elsewhere take the fibre off. Salt is 2.5 times sodium.',
  fat: 'Fat',
  saturates: 'Saturates',
  carbohydrate: 'Carbohydrate',
  sugars: 'Sugars',
  fibre: 'Fibre',
  protein: 'Protein',
  salt: 'Salt',
  wanted: 'Write this one too, or 0.',
  notGrams: (typed: string): string => `“${typed}” is not a weight in 100 g. Write grams from 0 to 100.`,
} as const

/** A unit after the name of a field, for those who listen. */
export const unitWords = { '%': ', per cent', g: ', grams' } as const

/** What is wrong with a field; an example comes in the baker's own way of writing. */
export const faultWords = {
  noHydration: 'Write its hydration: 100 for as much water as flour, 50 for half as much.',
  notANumber: (typed: string, example: string): string =>
    `“${typed}” is not a number. Write one such as ${example}.`,
  negative: 'This cannot be below 0. Write a number above 0.',
  hydrationOutOfRange: 'The hydration of a starter lies between 10 and 1000 %.',
  moreThanWhole: 'Write 100 at most: that is the whole of it.',
  weighsNothing: 'Write what it weighs, or leave this empty.',
  tooDense: (example: string): string =>
    `A millilitre of food weighs 5 g at most. Write the grams such as ${example}.`,
  notAWeight: (typed: string, example: string): string =>
    `“${typed}” is not a weight. Write one such as ${example} kg or 500 g.`,
  noPack: 'Say what a pack holds, such as 25 kg: the price is that of a pack.',
  noName: 'Give it a name, as you write it in a formula.',
  isInLarder: (name: string): string =>
    `${name} is in the larder already. Choose another name, or change that one.`,
  isOtherNameOf: (name: string, of: string): string =>
    `${name} is another name of ${of}. Choose another, or change that one.`,
  noCountsAs: 'Choose what it counts as.',
  sumTooLarge: (sum: string): string => `Together these come to ${sum} %, more than the whole.`,
} as const

/** Of how an ingredient is bought. */
export const boughtWords = {
  bought: 'Pack, price and stock',
  hint: 'For what to order and what it costs. Leave empty what you do not count; a price of 0 means that it costs nothing.',
  pack: 'A pack holds',
  packExample: (example: string): string => `${example} kg`,
  price: 'Price of a pack',
  currency: 'Prices are in',
  currencyHint: 'One currency for the whole workbook.',
  named: (code: string, name: string): string => (name === code ? code : `${code}, ${name}`),
  supplier: 'Supplier',
  stock: 'In stock',
  each: (price: string, weight: string): string => `${price} a kilogram: ${weight}.`,
} as const

export const allergenWords = {
  contains: 'Contains, by the public allergen lists',
  notSaid:
    'Not filled in yet: the sheet and the card show it as not known. Tick what it contains, or None of these.',
  noneOfThese: 'None of these',
  listNames: 'How the lists name it',
  notListed: 'not on its list',
  information: "For information only. The supplier's label and local food law decide.",
  starterInformation:
    "A starter carries the flour it is fed with. For information only. The supplier's label and local food law decide.",
} as const
