/** Of what bakes tell, where it is used. Figures come as they are shown, with their unit. */
export const learntWords = {
  /** `Your last 7: 1.2–1.9 °C, middle 1.5 °C.` `at`: the temperature at which they are so. */
  said: (count: number, range: string, middle: string, at = ''): string =>
    count === 1
      ? `Your last bake: ${middle}${at && ` at ${at}`}, so ${range} until there are more.`
      : `Your last ${count}: ${range}, middle ${middle}${at && `, at ${at}`}.`,
  same: (count: number, middle: string, at = ''): string =>
    `Your last ${count}: ${middle} each${at && `, at ${at}`}.`,
  between: 'Eight of ten lie between.',
  few: 'With so few bakes, allow at least a tenth either way.',
  range: (low: string, high: string): string => `${low}–${high}`,
  take: (value: string): string => `Take ${value}`,
  takeFor: (value: string, what: string): string => `Take ${value} for ${what}, as your bakes say`,
  isSo: 'It says so already.',
} as const

/** What is learnt, in a sentence's place. */
export const lessonWords = {
  rise: 'the rise in mixing',
  bakeLoss: 'the loss in baking',
  loss: 'the loss in mixing and shaping',
} as const
