/** Of the form that holds a reading, which is fetched when first wanted. */
export const holdFormWords = {
  name: (reading: string): string => `Hold ${reading}`,
  holdAt: (reading: string): string => `Hold ${reading} at`,
  inUnit: { '%': '(per cent)', g: '(grams)' },
  giverOf: (reading: string): string => `The line that gives for ${reading}`,
  everyLine: 'Every line in proportion',
  gives: 'gives',
  letsGo: (ingredient: string, hold: string): string => `${ingredient} gives for ${hold}: that is let go.`,
  hold: 'Hold',
  cancel: 'Cancel',
} as const

const examples = { '%': 'a percentage such as 75', g: 'grams such as 2000' } as const
export const notAValue = (typed: string, unit: '%' | 'g'): string =>
  typed ? `“${typed}” is not a number. Write ${examples[unit]}.` : `Write ${examples[unit]}.`
export const noGiver = 'The final dough has no line that could give. Add one first.'
