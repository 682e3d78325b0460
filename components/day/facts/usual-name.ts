import { factWords } from './words.js'

/** What a day is called until the baker names it: by its weekday. */
export const usualName = (date: string, language: string): string =>
  factWords.usualName(
    new Intl.DateTimeFormat(language, { weekday: 'long', timeZone: 'UTC' }).format(
      Date.parse(`${date}T12:00Z`),
    ),
  )
