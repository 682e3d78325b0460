import type { ListName } from '../../dough/larder/allergen-lists.js'

/** What stands on a label itself. */
export const labelWords = {
  ingredients: 'Ingredients:',
  contains: 'Contains:',
  netWeight: 'Net weight:',
  nutrition: 'Nutrition in 100 g of bread',
  or: ' or ', // between the weights of several shapes
} as const

/** Rows of the table: in the European Union as Annex XV of Regulation (EU) 1169/2011 orders them. */
export const nutrientWords = {
  energy: 'Energy',
  calories: 'Calories',
  fat: 'Fat',
  saturates: 'of which saturates',
  carbohydrate: 'Carbohydrate',
  sugars: 'of which sugars',
  fibre: 'Fibre',
  protein: 'Protein',
  salt: 'Salt',
  totalFat: 'Total Fat',
  saturatedFat: 'Saturated Fat',
  sodium: 'Sodium',
  totalCarbohydrate: 'Total Carbohydrate',
  dietaryFiber: 'Dietary Fiber',
  totalSugars: 'Total Sugars',
} as const

/** How the figures came about, to stand with them. */
export const calculatedWords = {
  fromTable: (names: readonly string[]): string =>
    `USDA National Nutrient Database for Standard Reference, release 26 (public domain): ${names.join(', ')}`,
  fromLarder: (names: readonly string[]): string =>
    `what the larder was told from their labels: ${names.join(', ')}`,
  calculated: (sources: readonly string[]): string =>
    `Calculated, not analysed, from the batch and its loss in baking. Sources: ${sources.join('; ')}. All but water is taken to stay in the bread.`,
} as const

/** Above what the baker has to settle or to know. */
export const checkHeading = 'Before it is used'

export const checkWords = {
  sugarsUnknown: (names: readonly string[]): string =>
    `Sugars are left out: they are not recorded of ${names.join(', ')}.`,
  sugarsDoubtful: (names: readonly string[]): string =>
    `The sugars of ${names.join(', ')} are doubtful in that database: high against other wheats.`,
  saturatesUnknown: 'Saturates are left out: the database used here does not record them.',
  supplier: 'What a supplier prints of an ingredient goes before what the larder knows of it.',
  law: 'Local food law decides what a label says and how, and which bread may be sold with it: ask your food authority first.',
} as const

/** What is to be known of each way of writing. */
export const wayWords: Readonly<
  Record<ListName, { readonly written: string; readonly ofNutrition: string }>
> = {
  eu: {
    written:
      'Written as Regulation (EU) 1169/2011 has it: by weight as used, water by what is left of it in the bread; allergens of its list set apart. Energy by its factors; rounded by the Commission’s guidance of 2012.',
    ofNutrition:
      'A nutrition declaration has to have saturates and sugars as well: where they are left out here, it is none yet.',
  },
  us: {
    written:
      'Written as in the United States: by weight as used, water less its part of what baking drives off; the nine major allergens in a statement after the list. Calories by the factors 4, 4 and 9; rounded as 21 CFR 101.9 rounds a serving.',
    ofNutrition:
      'It is no Nutrition Facts panel: that speaks of a serving, and of more than is recorded here.',
  },
  canada: {
    written:
      'Written as in Canada: by weight before mixing, water with all that goes in, sugars together; its priority allergens and gluten sources in a statement after the list. It has to stand in French as well.',
    ofNutrition:
      'It is no Nutrition Facts table: that speaks of a serving, is rounded by rules of its own, and asks for more than is recorded here. These are plain figures.',
  },
}
