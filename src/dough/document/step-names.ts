import { sameName } from './formula.js'

const parted = /(;|,(?!\d)|(?<!\d),)/ // a comma between digits is a decimal sign

/** The pieces of a step's text, parted by commas and semicolons. */
export const stepPieces = (text: string): string[] =>
  text
    .split(parted)
    .filter((_, i) => i % 2 === 0)
    .map(piece => piece.trim())
    .filter(piece => piece !== '')

/** How a list of the lines that go in at a step begins: `adds Salt, Water (2)`. */
export const addsWord = /^(?:adds?|ajoute[rz]?|gibt)\s+(?=\S)/iu

/** A step's text in which a line that it adds is called otherwise; the same text where it adds no such line. */
export function withAddedName(text: string, from: string, to: string): string {
  let isAdding = false
  return text
    .split(parted)
    .map((piece, i) => {
      if (i % 2) return piece
      const [, before = '', rest = '', after = ''] = /^(\s*)(.*?)(\s*)$/s.exec(piece)!
      const [adds = ''] = addsWord.exec(rest) ?? []
      isAdding ||= adds !== ''
      return isAdding && sameName(rest.slice(adds.length), from) ? `${before}${adds}${to}${after}` : piece
    })
    .join('')
}
