import type { FigureSheet } from './figures.js'

let ahead: FigureSheet | undefined

/** Keeps a sheet of a formula that is likely to be opened next; undefined: none is any more. */
export function keepAhead(sheet: FigureSheet | undefined): void {
  ahead = sheet
}

/** The sheet that was kept, where it is of that formula; it is given once. */
export function takeAhead(formula: string): FigureSheet | undefined {
  if (ahead?.formula.id !== formula) return undefined
  const sheet = ahead
  ahead = undefined
  return sheet
}
