import type { CellError } from '../expression/problem.js'

/** Why a cell has no number, where the graph itself found it. Cells go by their names. */
export type GraphDiagnostic =
  | { readonly code: 'unknownCell' | 'notWorkedOutYet'; readonly name: string }
  | { readonly code: 'noResult' } // divided by zero, or too large
  | { readonly code: 'cellsInCircle'; readonly path: readonly string[] } // each takes from the next, the first once more at the end

const found = (kind: CellError['kind'], origin: string, what: GraphDiagnostic): CellError => ({
  kind,
  ...what,
  origin,
})

export const missing = (name: string): CellError => found('undefined', name, { code: 'unknownCell', name })

export const pending = (name: string): CellError =>
  found('undefined', name, { code: 'notWorkedOutYet', name })

export const domain = (name: string): CellError => found('domain', name, { code: 'noResult' })

/** `path`: cell names, each taking from the next, the first repeated at the end. */
export const cycle = (path: readonly string[]): CellError =>
  found('cycle', path[0]!, { code: 'cellsInCircle', path })

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
