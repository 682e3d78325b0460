import type { Batch, Pieces } from '../../dough/document/batch.js'
import { batchProblem } from '../../dough/document/batch-checks.js'
import { tidy } from '../../dough/document/words.js'
import { type DecimalMark, type PlainNumbers, plainNumbers } from './decimals.js'
import { gramsOf, gramsText, number, weight } from './written-weights.js'

const pieces = String.raw`(${number})\s*[×x*]\s*${weight}(?:\s*\(([^()]*)\))?`
const allPieces = new RegExp(String.raw`^${pieces}(?:\s*\+\s*${pieces})*(\s+baked)?$`, 'i')
const inPieces = new RegExp(pieces, 'gi')
const ofDough = new RegExp(String.raw`^${weight}\s*(?:of\s+)?(dough|flour)$`, 'i')
const times = new RegExp(String.raw`^(${number})\s*times$`, 'i')
const allOf = /^(\s*all\s+of\s+[\d.,'’\s]+(?:e[+-]?\d+)?\s*(?:g|kg|oz|lb))\s([\s\S]*\S[\s\S]*)$/i
const allOfHead = new RegExp(String.raw`^\s*all\s+of\s+${weight}$`, 'i')

/** ` (round tin)`; what parts shapes from each other is no part of a name. */
const shapeText = (name = ''): string => {
  const plain = name
    .replace(/[()]/g, sign => (sign === '(' ? '[' : ']'))
    .replace(/\s+/g, ' ')
    .trim()
  return plain && ` (${plain})`
}

/** How much to make, without its losses: `6 × 900 g + 12 × 85 g`, `3 × 852 g (round tin)`, `all of 310 g Levain`. Empty as written. */
export function makeText(batch: Batch): string {
  switch (batch.make) {
    case 'as written':
      return ''
    case 'pieces':
    case 'baked pieces': {
      const shapes = batch.pieces
        .map(({ count, weight, name }) => `${tidy(count)} × ${gramsText(weight)}${shapeText(name)}`)
        .join(' + ')
      return batch.make === 'pieces' ? shapes : `${shapes} baked`
    }
    case 'dough':
    case 'flour':
      return `${gramsText(batch.grams)} ${batch.make}`
    case 'all of':
      return `all of ${gramsText(batch.grams)} ${batch.ingredient}`
    case 'factor':
      return `${tidy(batch.factor)} times`
  }
}

/** The text with plain numbers; the name of an ingredient and those of shapes in it are not touched. */
export function plainMake(text: string, mark: DecimalMark): PlainNumbers {
  const [, head = text, name] = allOf.exec(text) ?? []
  if (name !== undefined) {
    const plain = plainNumbers(head, mark)
    return { ...plain, text: `${plain.text} ${name}` }
  }
  // Names are kept out of its sight, as long as they are: places in the text stay what they are.
  const names = text.match(/\([^()]*\)/g) ?? []
  const hidden = text.replace(/\([^()]*\)/g, shape => `(${'n'.repeat(shape.length - 2)})`)
  const plain = plainNumbers(hidden, mark)
  let at = 0
  return { ...plain, text: plain.text.replace(/\(n*\)/g, shape => names[at++] ?? shape) }
}

function read(text: string): Batch | undefined {
  const [, head, ingredient] = allOf.exec(text) ?? []
  if (head && ingredient) {
    const [, digits, unit] = allOfHead.exec(head) ?? []
    return digits ? { make: 'all of', ingredient, grams: gramsOf(digits, unit) } : undefined
  }
  const plain = text.trim()
  if (/^as\s+written$/i.test(plain)) return { make: 'as written' }
  const shapes = allPieces.exec(plain)
  if (shapes)
    return {
      make: shapes.at(-1) ? 'baked pieces' : 'pieces',
      pieces: [...plain.matchAll(inPieces)].map(
        ([, count, digits, unit, name = '']): Pieces => ({
          count: Number(count),
          weight: gramsOf(digits, unit),
          ...(name.trim() && { name: name.trim() }),
        }),
      ),
    }
  const [, digits, unit, what] = ofDough.exec(plain) ?? []
  if (digits && what)
    return { make: what.toLowerCase() === 'flour' ? 'flour' : 'dough', grams: gramsOf(digits, unit) }
  const factor = times.exec(plain)?.[1]
  return factor ? { make: 'factor', factor: Number(factor) } : undefined
}

/** The batch of a text with plain numbers; undefined where it is not understood or cannot be made. */
export function readMake(text: string): Batch | undefined {
  const batch = read(text)
  return batch && batchProblem(batch) === undefined ? batch : undefined
}
