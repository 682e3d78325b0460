export const doughBarWords = {
  notYet: 'The dough is drawn here once its weights can be worked out.',
  flour: 'Flour',
  water: 'Water',
  salt: 'Salt',
  other: 'The rest',
  cameWith: (carriers: string): string => `Flour and water from ${carriers}`,
} as const

/** `Levain`, `Levain and Soaker`: what brought flour and water of its own. */
export function carrierWords(names: readonly string[]): string {
  const last = names.at(-1) ?? 'earlier stages'
  return names.length > 1 ? `${names.slice(0, -1).join(', ')} and ${last}` : last
}

const percentWords = (percent: number): string =>
  percent > 0 && Math.round(percent) === 0 ? 'under 1 per cent' : `${Math.round(percent)} per cent`

/** The dough as it is drawn, for those who listen. Parts are per cent of the whole; `carried` is of flour and water together. */
export function doughInWords(
  parts: Readonly<Record<'flour' | 'water' | 'salt' | 'other' | 'carried', number>>,
  carriers: string,
): string {
  const { flour, water, salt, other, carried } = parts
  const said = [
    `Dough by weight: flour ${percentWords(flour)}`,
    `water ${percentWords(water)}`,
    ...(salt > 0 ? [`salt ${percentWords(salt)}`] : []),
    ...(other > 0 ? [`the rest ${percentWords(other)}`] : []),
  ].join(', ')
  const came = carried > 0 ? ` ${percentWords(carried)} is flour and water that came with ${carriers}.` : ''
  return `${said}.${came}`
}
