/** The readings of a dough, by the names programs use. Ratios are fractions of 1, weights grams. */
export const readingNames = [
  'trueHydration',
  'listedHydration',
  'moistureHydration',
  'hydrationWithoutSoakers',
  'salt',
  'prefermentedFlour',
  'levainOnFlour',
  'totalFlour',
  'totalWater',
  'doughWeight',
  'fat',
  'sugar',
  'egg',
  'milk',
] as const
export type ReadingName = (typeof readingNames)[number]

/** The grid's columns in which an amount can be typed. */
export type AmountColumn = 'percent' | 'weight' | 'wholeDough'
