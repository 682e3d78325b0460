import type { DecimalMark } from '../../dough/lexicon/digits.js'
import { type Doubt, type PlainNumbers, plainNumbers } from '../../dough/lexicon/plain-numbers.js'

export { type DecimalMark, type Doubt, type PlainNumbers, plainNumbers }

const bareNumber = /^(?:\d+(?:\.\d+)?|\.\d+|(?:\d+ )?\d+\/\d+|\d*\s?[¼½¾⅐-⅞])$/

/** The amount of a line as Tarebook stores it: plain numbers, and grams where no unit is given. */
export function plainAmount(text: string, mark: DecimalMark): PlainNumbers & { readonly bare: boolean } {
  const plain = plainNumbers(text.trim(), mark)
  const bare = bareNumber.test(plain.text)
  return { ...plain, text: bare ? `${plain.text} g` : plain.text, bare }
}
