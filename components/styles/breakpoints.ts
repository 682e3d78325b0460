import { unsafeCSS } from 'lit'

/**
 * The three widths at which the page is laid out anew, as media conditions for styles and scripts: slim (a phone held
 * upright), narrow (one place at a time), wide (shelf, sheet and tally side by side). In between: sheet and tally.
 */
const narrowest = { narrow: 900, wide: 1100, slim: 480 } as const // px at which it is no longer slim or narrow, and is wide

export const isSlim = `(max-width: ${narrowest.slim - 1}px)`
export const isNarrow = `(max-width: ${narrowest.narrow - 1}px)`
export const isBroader = `(min-width: ${narrowest.narrow}px)`
export const isWide = `(min-width: ${narrowest.wide}px)`
export const isBelowWide = `(max-width: ${narrowest.wide - 1}px)`

/** The same for `css`: `@media ${narrow} { … }`. */
export const slim = unsafeCSS(isSlim)
export const narrow = unsafeCSS(isNarrow)
export const broader = unsafeCSS(isBroader)
export const belowWide = unsafeCSS(isBelowWide)
