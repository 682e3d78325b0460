/** A ratio or a weight as numerator and denominator. */
export type Exact = readonly [number, number]

/**
 * What the examples come to, worked out apart from Tarebook in exact fractions: a free stage as its parts
 * to a hundred, spoons and eggs by the larder's weights (instant yeast 3.15 g, sea salt 5 g, salt 6 g a
 * teaspoon; olive oil 13.5 g, malt syrup and honey 21 g a tablespoon; 50 g an egg). Weights in grams.
 */
export const exampleReadings: readonly {
  readonly file: string
  readonly trueHydration: Exact
  readonly salt: Exact
  readonly prefermentedFlour: Exact
  readonly doughWeight: Exact
}[] = [
  {
    file: 'mill-wheat.csv',
    trueHydration: [1031, 1465],
    salt: [143, 7325],
    prefermentedFlour: [33, 293],
    doughWeight: [15536, 5],
  },
  {
    file: 'two-build-rye.csv',
    trueHydration: [698541, 874310],
    salt: [473683, 26229300],
    prefermentedFlour: [648, 2363],
    doughWeight: [9372, 5],
  },
  {
    file: 'poolish-baguette.csv',
    trueHydration: [1088399, 1600735],
    salt: [32021, 1600735],
    prefermentedFlour: [96000, 320147],
    doughWeight: [136469, 80],
  },
  {
    file: 'held-back-flatbread.csv',
    trueHydration: [38773, 51400],
    salt: [2723, 123360],
    prefermentedFlour: [125, 514],
    doughWeight: [1450, 1],
  },
  {
    file: 'morning-buns.csv',
    trueHydration: [9, 89],
    salt: [114, 5785],
    prefermentedFlour: [207, 1157],
    doughWeight: [1189, 1],
  },
  {
    file: 'seeded-spelt-tin.csv',
    trueHydration: [53789, 71040],
    salt: [6941, 355200],
    prefermentedFlour: [1, 6],
    doughWeight: [9319, 5],
  },
]
