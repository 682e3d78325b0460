/** Signs and units a number pad lacks, in a strip above the keyboard of a touch screen. */
export const padKeys: readonly { readonly shows: string; readonly types: string; readonly name: string }[] = [
  { shows: '%', types: '%', name: 'per cent' },
  { shows: 'g', types: ' g', name: 'grams' },
  { shows: 'tsp', types: ' tsp', name: 'teaspoons' },
  { shows: 'tbsp', types: ' tbsp', name: 'tablespoons' },
  { shows: 'cup', types: ' cup', name: 'cups' },
  { shows: '½', types: '½', name: 'a half' },
  { shows: '+', types: '+', name: 'plus' },
  { shows: '−', types: '-', name: 'minus' },
  { shows: '×', types: '*', name: 'times' },
  { shows: '÷', types: '/', name: 'divided by' },
  { shows: '(', types: '(', name: 'open bracket' },
  { shows: ')', types: ')', name: 'close bracket' },
]

export const padWords = { name: 'Signs and units', digits: '123', letters: 'abc', next: 'Next' } as const
