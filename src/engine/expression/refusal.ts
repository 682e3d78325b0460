import type { Token } from './lexer.js'
import { ExpressionError } from './problem.js'
import type { ExpressionDiagnostic } from './refusals.js'

export function refuse(
  diagnostic: ExpressionDiagnostic,
  { at, length }: Pick<Token, 'at' | 'length'>,
): never {
  throw new ExpressionError(diagnostic, at, length)
}

/** Refuses a character that no expression may hold. */
export const refuseSymbol = (token: Token): never =>
  refuse({ code: 'symbolWithoutMeaning', symbol: token.text, at: token.at }, token)
