import type { Expression } from '../../engine/index.js'

/** The name by which expressions speak of all that a line's stage makes. */
export const allOfIt = 'all_of_it'

const words = /^(?:all|all[ _]of[ _]it|(?:le )?tout|alles)$/i

/** Whether an amount is all of the stage that its line takes, in the shortest words. */
export const saysAllOfIt = (amount: string): boolean => words.test(amount)

/** Whether an amount that was read speaks of all that its line's stage makes. */
export const takesAll = (amount: { readonly expression: Expression } | object | undefined): boolean =>
  amount !== undefined && 'expression' in amount && amount.expression.names.includes(allOfIt)
