/** Of the batches of several formulas, before all of them. */
export const severalWords = {
  toMake: 'To make',
  doughHead: 'Dough',
  dough: (weight: string): string => `${weight} of dough`,
  lost: (part: string): string => `${part} lost on the way`,
  lostInBaking: (part: string): string => `${part} lost in baking`,
} as const
