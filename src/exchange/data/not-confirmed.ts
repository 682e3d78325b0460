/** A line whose guess nobody has confirmed. */
export interface NotConfirmed {
  readonly stage: string
  readonly ingredient: string
  readonly amount: string // '' for none
  readonly source: string // what it was guessed from
}

/** How a row of a formula's note begins that tells of such a line. Notes are read again: it is the same in every language. */
const mark = 'Not confirmed in '

/** The row of a formula's note that tells of the line: a CSV file holds nothing else of it. */
export const notConfirmedNote = ({ stage, ingredient, amount, source }: NotConfirmed): string =>
  `${mark}${stage}: ${ingredient}, ${amount || 'no amount'}, guessed from “${source.trim()}”`

/** Whether a row of a note tells of a line nobody has confirmed: then it is nothing to do. */
export const isNotConfirmedNote = (row: string): boolean => row.startsWith(mark)
