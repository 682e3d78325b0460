import { dimensionOf, parse, straight } from '../../engine/index.js'
import type { DecimalMark } from '../lexicon/digits.js'
import { unitWords } from '../lexicon/unit-words.js'

/** What is typed as it is said in a kitchen rather than as a calculation. */
export interface Spoken {
  readonly text: string // as an expression: `1 lb + 4 oz`, `1/2 cup`, `3 each`
  readonly isBare: boolean // a number alone, perhaps with `about`
}

/** Reads an amount as it is said; `spoken.ts` has the one there is. */
export type SpokenReader = (text: string, mark: DecimalMark, names?: readonly string[]) => Spoken | undefined

let reader: SpokenReader | undefined

/** Gives the reader to all who ask from then on: a page fetches it after its first paint, or when an amount wants it. */
export const useSpoken = (spoken: SpokenReader): void => {
  reader = spoken
}

/** Whether there is a reader yet. Until then nobody is to be asked for an amount that may be said. */
export const isSpokenRead = (): boolean => reader !== undefined

export const readSpoken: SpokenReader = (text, mark, names) => reader?.(text, mark, names)

const plainly = /^-?(?:\d+(?:\.\d+)?|\.\d+)\s*(%|\p{L}*)$/u

/**
 * Whether a text is neither a number with its unit nor a calculation that comes to something, whatever lines it names: it
 * may have to be read as it is said, or be told about.
 */
export function mayBeSaid(text: string): boolean {
  const unit = plainly.exec(text)?.[1]
  if (text === '' || unit === '' || unit === '%') return false
  if (unit !== undefined && unitWords.has(unit)) return false
  try {
    const expression = parse(text, { units: unitWords })
    dimensionOf(expression, () => 'weight')
    straight(expression, () => true)
    return expression.tree.kind === 'name' // `pinch`
  } catch {
    return true
  }
}
