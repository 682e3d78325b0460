import type { Expression, Worded } from '../../engine/index.js'
import type { LinePlan } from './outline.js'

/** One product of a half: an expression's value, times the same half of another line. */
export interface SplitTerm {
  readonly expression: Expression
  readonly times?: LinePlan
}

/** A sum of products, or why an amount cannot be taken apart. */
export type Half = { readonly terms: readonly SplitTerm[] } | { readonly problem: Worded }

/**
 * A line's weight as fixed + slope × base of its stage + Σ by × weight of a line that gives. `none` is
 * zero; a fixed part of `weight` is the whole line, which then depends on none of them.
 */
export interface Split {
  readonly fixed: 'none' | 'weight' | Half
  readonly slope: 'none' | Half
  readonly by: ReadonlyMap<LinePlan, 'one' | Half> // 'one': the line itself gives
}
