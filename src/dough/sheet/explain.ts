import type { CellError, CellValue, Worded } from '../../engine/index.js'
import { holdWords } from '../document/words.js'
import { cellOf } from '../outline/names.js'
import type { LinePlan } from '../outline/outline.js'
import { type FigureDiagnostic, figureProblem, figureSentences } from './figure-words.js'
import type { FigureProblem } from './figures.js'
import { sheetProblem } from './words.js'
import type { WorkedOut } from './worked-out.js'

type Seen = Pick<WorkedOut, 'plan' | 'outline' | 'noticed'>

/** The lines that give whose weights lie on a circle. */
const givingOn = ({ outline }: Seen, path: readonly string[]): LinePlan[] =>
  outline.giving.filter(l => path.includes(cellOf.weight(l)))

/** Why there is no number, with cells called by their words; undefined for a number. */
export function explain(seen: Seen, value: CellValue): Worded | undefined {
  if (typeof value === 'number') return undefined
  const { reasons } = seen.noticed
  const known = reasons.get(value) ?? inWords(seen, value)
  reasons.set(value, known)
  return known
}

function inWords(seen: Seen, value: CellError): Worded {
  if (value.kind === 'cycle' && value.path) return inCircle(seen, value.path)
  // What the graph did not find itself was told to it, with a sentence.
  return isFound(value) ? { ...value, ...figureProblem(value) } : (value as CellError & Worded)
}

const isFound = (error: CellError): error is CellError & FigureDiagnostic =>
  Object.hasOwn(figureSentences, error.code)

function inCircle(seen: Seen, path: readonly string[]): Worded {
  const words = path.map(cell => seen.plan.cells.get(cell)?.words ?? cell)
  const steps = words.filter((word, i) => word !== words[i - 1])
  if (steps.length > 1 && steps.length === words.length && steps[0] !== steps.at(-1)) steps.push(steps[0]!)
  const holds = givingOn(seen, path).map(l => holdWords(l.gives!, l.line.ingredient))
  return sheetProblem({ code: 'figuresInCircle', path: steps, holds })
}

/** The same, with the place where it arose when that is another cell than `here`. */
export function placed(seen: Seen, value: CellValue, here?: string): FigureProblem | undefined {
  const why = explain(seen, value)
  if (!why || typeof value === 'number') return undefined
  const line = causeOf(seen, value)
  const cause = line === undefined ? {} : { cause: line }
  const at = seen.plan.cells.get(value.origin)?.words
  if (value.kind === 'cycle' || !at || value.origin === here) return { ...why, ...cause }
  return { ...sheetProblem({ code: 'aroseElsewhere', at, why }), ...cause }
}

/** The line in which an error arose, by its id: of a circle or of holds without an answer one that gives. */
function causeOf(seen: Seen, { path, origin }: CellError): string | undefined {
  if (path) return givingOn(seen, path)[0]?.line.id
  if (origin === 'holds') return seen.outline.giving[0]?.line.id
  const owner = seen.plan.cells.get(origin)?.owner
  return owner?.of === 'line' ? owner.id : undefined
}
