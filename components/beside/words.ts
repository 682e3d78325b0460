export const besideWords = {
  beside: 'Beside each other',
  noFormula: 'There is no formula on the shelf yet to set beside another.',
  left: 'On the left',
  right: 'On the right',
  changeSides: 'Change sides',
  onlyWhatDiffers: 'Only what differs',
  now: (formula: string): string => `${formula} now`,
  stateOf: (formula: string, state: string): string => `${formula}, ${state}`,
  bringBack: (state: string): string => `Bring back ${state}`,
  broughtBack: (formula: string, state: string): string =>
    `${formula} is as it was in ${state}, with its amount to make, holds, jottings and notes from then. Undo takes it back.`,
} as const

export const tableWords = {
  readings: 'Readings',
  reading: 'Reading',
  difference: 'Difference',
  lines: 'Stages and lines',
  percent: 'Per cent of the stage’s flour or base',
  grams: 'Grams as written',
  ingredient: 'Ingredient',
  noIngredient: 'No ingredient',
  onlyIn: (side: string): string => `only in ${side}`,
  settings: 'Besides the lines',
  whatDiffers: 'What differs',
} as const

/** Of one figure and another. */
export const differenceWords = {
  same: 'same',
  points: 'points', // of per cent
  more: 'more',
  less: 'less',
} as const

const many = (count: number, what: string): string => `${count} ${what}${count === 1 ? '' : 's'}`

/** What there is to be seen. */
export const verdictWords = {
  areOne: 'The same formula is on both sides.',
  same: 'They are the same in every reading, every line and everything else.',
  differ: (readings: number, lines: number, others: number): string =>
    `${many(readings, 'reading')} and ${many(lines, 'line')} differ${
      others ? `, and ${many(others, 'thing')} besides the lines` : ''
    }.`,
} as const
