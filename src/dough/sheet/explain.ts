import type { CellValue } from '../../engine/index.js'
import { holdWords } from '../document/words.js'
import { cellOf } from '../outline/names.js'
import type { WorkedOut } from './worked-out.js'

type Seen = Pick<WorkedOut, 'plan' | 'outline'>

/** The sentence of an error, with cells called by their words; none for a number. */
export function explain({ plan, outline }: Seen, value: CellValue): string {
  if (typeof value === 'number') return ''
  const { path } = value
  if (value.kind !== 'cycle' || !path) return value.message
  const words = path.map(cell => plan.cells.get(cell)?.words ?? cell)
  const steps = words.filter((word, i) => word !== words[i - 1])
  if (steps.length > 1 && steps.length === words.length && steps[0] !== steps.at(-1)) steps.push(steps[0]!)
  const held = outline.giving.filter(l => path.includes(cellOf.weight(l)))
  const holds = held.map(l => holdWords(l.gives!, l.line.ingredient)).join(', ')
  const way = holds
    ? `Release the hold (${holds}), or give one of them a number.`
    : 'Give one of them a number.'
  return `${steps.join(' is worked out from ')}: a circle, so there is no figure. ${way}`
}

/** The sentence, with the place where it arose when that is another cell than `here`. */
export function placed(seen: Seen, value: CellValue, here?: string): string {
  if (typeof value === 'number') return ''
  const sentence = explain(seen, value)
  const origin = seen.plan.cells.get(value.origin)?.words
  if (value.kind === 'cycle' || !origin || value.origin === here) return sentence
  return `${origin}: ${sentence}`
}
