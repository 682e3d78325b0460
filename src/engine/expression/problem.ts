/** Why a cell has no number: an error as a value, in words for the person who typed. */
export interface CellError {
  readonly kind: 'cycle' | 'undefined' | 'domain' | 'text'
  readonly message: string // a sentence
  readonly origin: string // name of the cell in which it arose
  readonly path?: readonly string[] // cycle only: cell names, the first repeated at the end
}

/** What a cell holds: a finite number, or the reason there is none. */
export type CellValue = number | CellError

/** Thrown when a text is not an expression Tarebook accepts. `at` and `length` are UTF-16 offsets into it. */
export class ExpressionError extends Error {
  constructor(
    message: string, // a sentence that says what and what to do
    readonly at: number,
    readonly length: number,
  ) {
    super(message)
    this.name = 'ExpressionError'
  }
}
