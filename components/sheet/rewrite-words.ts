/** Of writing a formula anew, which is fetched when its fold is first opened. */
export const rewriteWords = {
  means: 'Writes every amount of this formula in one way. No weight changes, and lines that give still give.',
  grams: {
    write: 'Write in grams',
    written: 'Written in grams. Undo takes it back.',
    already: 'Every amount is in grams already.',
  },
  percentages: {
    write: 'Write in percentages',
    written: 'Written in percentages. Undo takes it back.',
    already: 'Every amount is in percentages already.',
  },
} as const
