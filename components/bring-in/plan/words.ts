/** `2 formulas`, `1 line`. */
export const counted = (count: number, one: string, several = `${one}s`): string =>
  `${count} ${count === 1 ? one : several}`

/** What the edit is called. */
export const bringInLabels = {
  one: (formula: string): string => `Bring in ${formula}`,
  several: (count: number): string => `Bring in ${count} formulas`,
} as const

export const linesWords = {
  ingredient: 'Ingredient',
  amount: 'Amount',
  note: 'Note',
  countsAs: (kind: string): string => `counts as ${kind}`,
  starter: (percent: string): string => `starter ${percent}%`,
  none: 'none',
  more: (count: number): string => `And ${counted(count, 'more line')}.`,
} as const

/** Of what is weighed. */
export const toWeighWords = { ingredient: 'Ingredient', note: 'Note', toWeigh: 'To weigh' } as const

/** What a fact is called. */
export const factNames = {
  make: 'Make',
  flourWeight: 'Flour weight',
  hold: 'Hold',
  jotting: 'Jotting',
  kept: 'Kept as it stands',
  note: 'Note',
} as const

/** What a formula holds beside its lines, without a full stop. */
export const factWords = {
  lostOnTheWay: (part: string): string => `${part} lost on the way`,
  lostInTheOven: (part: string): string => `${part} lost in the oven`,
  lineGone: 'a line that is not there',
  gives: (hold: string, ingredient: string): string => `${hold}; ${ingredient} gives`,
  inProportion: (hold: string): string => `${hold}; every line gives, in proportion`,
  seedKeptBack: 'as much as went in kept back',
  keptBack: (weight: string): string => `${weight} kept back`,
  lost: (part: string): string => `${part} lost`,
  ferments: 'ferments',
  doesNotFerment: 'does not ferment',
  isBase: (ingredients: readonly string[]): string => `${ingredients.join(' and ')} is 100 %`,
  jotting: (name: string, text: string): string => `${name} = ${text}`,
} as const
