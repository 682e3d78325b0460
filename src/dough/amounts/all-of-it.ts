import type { Expression } from '../../engine/index.js'

/** The name by which expressions speak of all that a line's stage makes: what `all of it` is read as. */
export const allOfIt = 'all_of_it'

/** Whether an amount that was read speaks of all that its line's stage makes. */
export const takesAll = (amount: { readonly expression: Expression } | object | undefined): boolean =>
  amount !== undefined && 'expression' in amount && amount.expression.names.includes(allOfIt)
