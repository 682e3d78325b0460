import { hasTexts } from './read-part.js'

/** What stands in a field and is not entered. */
export interface TypedText {
  readonly formula: string // id of the one it is of, or of the day; '' of none
  readonly field: string // as the page names it
  readonly text: string
}

/** The key of the part that holds what is being typed. */
export const typedKey = 'typed'

/** What a stored part says was being typed. */
export const typedIn = (part: unknown): readonly TypedText[] =>
  Array.isArray(part)
    ? part
        .filter(item => hasTexts(item, 'formula', 'field', 'text'))
        .map(({ formula, field, text }) => ({ formula, field, text }) as TypedText)
    : []
