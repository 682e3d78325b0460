import type { Diagnostic } from './diagnostic.js'
import type { ExpressionDiagnostic } from './refusals.js'

/** Why a cell has no number: an error as a value, by code and figures. */
export interface CellError extends Diagnostic {
  readonly kind: 'cycle' | 'undefined' | 'domain' | 'text'
  readonly origin: string // name of the cell in which it arose
  readonly path?: readonly string[] // cycle only: cell names, the first repeated at the end
}

/** What a cell holds: a finite number, or the reason there is none. */
export type CellValue = number | CellError

/**
 * Thrown when a text is not an expression Tarebook accepts. `at` and `length` are UTF-16 offsets into it. The message is
 * for programs: the code and its figures. `dough/amounts/expression-words.ts` has the sentences.
 */
export class ExpressionError extends Error {
  constructor(
    readonly problem: ExpressionDiagnostic,
    readonly at: number,
    readonly length: number,
  ) {
    super(JSON.stringify(problem))
    this.name = 'ExpressionError'
  }
}
