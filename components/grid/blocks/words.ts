/** Labels of the edits of blocks. */
export const editLabels = { paste: 'Paste', cut: 'Cut', clear: 'Clear cells' } as const

export const copiedWords = 'Copied.'
export const copyRefused = 'The browser did not let Tarebook copy. Press Ctrl+C, or ⌘C.'
export const pasteRefused = 'The browser did not let Tarebook read the clipboard. Press Ctrl+V, or ⌘V.'
export const nothingToPaste = 'There is no text to paste.'
export const tooLongToPaste = (most: number): string =>
  `This is too long to paste: at most ${most / 1e6} million characters. Bring it in as a file, or paste less at once.`
export const tooManyToPaste = (lines: number, most: number): string =>
  `Nothing was pasted: the formula would have ${lines} lines, and a formula has at most ${most}. Paste fewer, or make two formulas of it.`
export const pastingWords = (done: number, of: number): string => `Pasting: ${done} of ${of} rows.`
export const noPlaceToPaste = 'Paste on a line, or on “Add an ingredient”.'
export const nothingToClear = 'There is nothing typed here to clear.'
export const removedWords = (lines: number): string =>
  lines === 1 ? 'Removed a line.' : `Removed ${lines} lines.`

/** The sum's name in a copied block. */
export const sumName = (isFinal: boolean): string => (isFinal ? 'Dough' : 'Sum')

/** The first column's heading of a table from another program, and all that its headings may be. */
export const ingredientHeading = /^ingredients?$/i
export const anyHeading =
  /^(ingredient|ingredients|% of flour|percent|%|grams|g|weight|% whole dough|batch|note|notes|)$/i

const mostRefusals = 3 // that are spelled out

/** What became of a paste: cells, and the sentences of those that were refused. */
export interface PasteCount {
  pasted: number
  notUnderstood: number
  leftOut: number
  readonly refusals: string[]
}

export function pasteWords({ pasted, notUnderstood, leftOut, refusals }: Readonly<PasteCount>): string {
  if (pasted + notUnderstood + refusals.length === 0)
    return leftOut
      ? 'There is no room for this here.'
      : 'These cells follow from the others and take nothing.'
  const parts = [`${Math.max(0, pasted - refusals.length)} pasted`]
  if (notUnderstood) parts.push(`${notUnderstood} not understood`)
  if (leftOut) parts.push(`${leftOut} left out, past the last column`)
  const sentences = [...new Set(refusals)]
  const more = sentences.length - mostRefusals
  return [
    `${parts.join(', ')}.`,
    ...sentences.slice(0, mostRefusals),
    ...(more > 0 ? [`${more} more were refused likewise.`] : []),
  ].join(' ')
}
