import type { CellError } from '../expression/problem.js'
import { graphProblem } from './words.js'

export const missing = (name: string): CellError => ({
  kind: 'undefined',
  ...graphProblem({ code: 'unknownCell', name }),
  origin: name,
})

export const pending = (name: string): CellError => ({
  kind: 'undefined',
  ...graphProblem({ code: 'notWorkedOutYet', name }),
  origin: name,
})

export const domain = (name: string): CellError => ({
  kind: 'domain',
  ...graphProblem({ code: 'noResult' }),
  origin: name,
})

/** `path`: cell names, each taking from the next, the first repeated at the end. */
export const cycle = (path: readonly string[]): CellError => ({
  kind: 'cycle',
  ...graphProblem({ code: 'cellsInCircle', path }),
  origin: path[0]!,
  path,
})

/** Whether two errors say the same: the same code with the same figures, of the same cell. */
export const sameError = (a: CellError, b: CellError): boolean => a === b || same(a, b)

function same(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true
  if (typeof a !== 'object' || typeof b !== 'object' || !a || !b) return false
  const [left, right] = [Object.entries(a), Object.entries(b)]
  // Errors of one code are made in one place, which gives their fields one order.
  return (
    left.length === right.length &&
    left.every(([name, value], i) => name === right[i]![0] && same(value, right[i]![1]))
  )
}
