export const deskWords = {
  gone: 'That is no longer here. Nothing was changed.',
  undone: (label: string): string => `Undone: ${label}`,
  doneAgain: (label: string): string => `Done again: ${label}`,
  /** What was done, and the true hydration that it moved. */
  withHydration: (done: string, hydration: string): string => `${done}; true hydration ${hydration}`,
  /** `Salt held at 2 %; Salt gives, 22.3 g` */
  held: (hold: string, ingredient: string, grams: string): string =>
    `${hold[0]!.toUpperCase()}${hold.slice(1)}; ${ingredient} gives, ${grams} g`,
  lineWeighs: (ingredient: string, grams: string): string => `${ingredient} ${grams} g`,
  lineProblem: (ingredient: string, sentence: string): string => `${ingredient}: ${sentence}`,
} as const
