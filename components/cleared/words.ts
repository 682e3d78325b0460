import type { BroughtBack } from '../../src/dough/edits/cleared/cleared-edits.js'

export const clearedWords = {
  heading: 'Cleared away',
  about: 'What you delete is kept here for 30 days, and can be brought back.',
  none: 'Nothing is cleared away.',
  formula: 'Formula',
  ingredient: 'Ingredient',
  state: (formula: string): string => `Kept state of ${formula}`,
  day: (date: string): string => `Day, ${date}`,
  unreadable: 'Something that cannot be read',
  /** Dates as the baker writes them. */
  dates: (deleted: string, until: string): string => `deleted ${deleted}, kept until ${until}`,
  bringBack: 'Bring back',
  bringBackThis: (name: string): string => `Bring back ${name}`,
  forget: 'Delete for good',
  forgetThis: (name: string): string => `Delete for good: ${name}`,
  forgetAll: 'Delete all for good …',
  sure: (count: number): string => (count === 1 ? 'Delete it for good?' : `Delete all ${count} for good?`),
  keep: (count: number): string => (count === 1 ? 'Keep it' : 'Keep them'),
  forgotten: (name: string): string => `${name} is deleted for good. Undo brings it back here.`,
  allForgotten: (count: number): string =>
    count === 1
      ? 'It is deleted for good. Undo brings it back here.'
      : `All ${count} are deleted for good. Undo brings them back here.`,
} as const

/** Where it is again, and under what name. */
export function broughtBackSentence({ of, name, now, called, alone }: BroughtBack): string {
  if (alone) return `${name} is back as a formula of its own, ${now}: ${called} is no longer on the shelf.`
  const place = {
    formula: 'on the shelf',
    ingredient: 'in the larder',
    day: 'among the days',
    state: `among the kept states of ${called}`,
  }[of]
  return now === name
    ? `${name} is back ${place}.`
    : `${name} is back ${place} as ${now}: there is another ${name} by now.`
}
