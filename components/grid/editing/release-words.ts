import type { Hold, Line } from '../../../src/dough/document/formula.js'
import { holdWords } from '../../../src/dough/document/words.js'

/** `Water is 700 g; released: true hydration held at 75 %.` */
export function releasedWords(
  { ingredient, amount }: Line,
  released: readonly Hold[],
  stillGives: boolean,
): string {
  const now = stillGives ? 'gives for what was typed' : `is ${amount || 'empty'}`
  return `${ingredient} ${now}; released: ${released.map(h => holdWords(h, ingredient)).join(', ')}.`
}
