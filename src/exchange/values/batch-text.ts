import type { Batch, Pieces } from '../../dough/document/batch.js'
import { batchProblem } from '../../dough/document/batch-checks.js'
import { tidy } from '../../dough/document/words.js'
import { type DecimalMark, type PlainNumbers, plainNumbers } from './decimals.js'
import { gramsOf, gramsText, number, weight } from './written-weights.js'

const pieces = String.raw`(${number})\s*[×x*]\s*${weight}`
const allPieces = new RegExp(String.raw`^${pieces}(?:\s*\+\s*${pieces})*(\s+baked)?$`, 'i')
const inPieces = new RegExp(pieces, 'gi')
const ofDough = new RegExp(String.raw`^${weight}\s*(?:of\s+)?(dough|flour)$`, 'i')
const times = new RegExp(String.raw`^(${number})\s*times$`, 'i')
const allOf = /^(\s*all\s+of\s+[\d.,'’\s]+(?:e[+-]?\d+)?\s*(?:g|kg|oz|lb))\s([\s\S]*\S[\s\S]*)$/i
const allOfHead = new RegExp(String.raw`^\s*all\s+of\s+${weight}$`, 'i')

/** How much to make, without its losses: `6 × 900 g + 12 × 85 g`, `all of 310 g Levain`. Empty as written. */
export function makeText(batch: Batch): string {
  switch (batch.make) {
    case 'as written':
      return ''
    case 'pieces':
    case 'baked pieces': {
      const shapes = batch.pieces.map(p => `${tidy(p.count)} × ${gramsText(p.weight)}`).join(' + ')
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

/** The text with plain numbers; the name of an ingredient in it is not touched. */
export function plainMake(text: string, mark: DecimalMark): PlainNumbers {
  const [, head = text, name] = allOf.exec(text) ?? []
  const plain = plainNumbers(head, mark)
  return name === undefined ? plain : { ...plain, text: `${plain.text} ${name}` }
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
        ([, count, digits, unit]): Pieces => ({ count: Number(count), weight: gramsOf(digits, unit) }),
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
