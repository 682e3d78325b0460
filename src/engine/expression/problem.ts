import type { Worded } from './diagnostic.js'
import { type ExpressionDiagnostic, expressionProblem } from './words.js'

/** Why a cell has no number: an error as a value, by code and figures, and in words for the person who typed. */
export interface CellError extends Worded {
  readonly kind: 'cycle' | 'undefined' | 'domain' | 'text'
  readonly origin: string // name of the cell in which it arose
  readonly path?: readonly string[] // cycle only: cell names, the first repeated at the end
}

/** What a cell holds: a finite number, or the reason there is none. */
export type CellValue = number | CellError

/** Thrown when a text is not an expression Tarebook accepts. `at` and `length` are UTF-16 offsets into it. */
export class ExpressionError extends Error {
  readonly problem: Worded<ExpressionDiagnostic> // says what and what to do

  constructor(
    diagnostic: ExpressionDiagnostic,
    readonly at: number,
    readonly length: number,
  ) {
    const problem = expressionProblem(diagnostic)
    super(problem.message)
    this.name = 'ExpressionError'
    this.problem = problem
  }
}
