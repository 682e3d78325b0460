import { lengthText } from '../../../src/day/course/clock.js'

export const padWords = {
  ok: 'Enter',
  cancel: 'Cancel',
  back: 'Delete the last digit',
  notANumber: (typed: string): string =>
    typed ? `“${typed}” is not a number. Write one like 25.5.` : 'Type a number first.',
} as const

/** Of times that are chosen. */
export const timeWords = {
  minutes: (minutes: number): string => lengthText(minutes),
  ago: (minutes: number): string => `${lengthText(minutes)} ago`,
  clock: 'At a time',
  clockTitle: 'Time on the clock',
  notAClock: (typed: string): string => `“${typed}” is not a time. Write one like 6:30 or 1845.`,
} as const
