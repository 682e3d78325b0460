import type { Token } from './lexer.js'
import { ExpressionError } from './problem.js'

const instead = new Map([
  ['=', 'to compare, write =='],
  ['!', 'for the opposite of a condition, write not'],
  ['&', 'write and'],
  ['|', 'write or'],
  ['~', 'write not'],
  ['.', 'a point stands inside a number or between a stage and its line, as in levain.water'],
  ["'", 'write names without quotes'],
  ['"', 'write names without quotes'],
  ['`', 'write names without quotes'],
  ['[', 'use ( and )'],
  [']', 'use ( and )'],
  ['{', 'use ( and )'],
  ['}', 'use ( and )'],
])

export function refuse(message: string, { at, length }: Pick<Token, 'at' | 'length'>): never {
  throw new ExpressionError(message, at, length)
}

/** Refuses a character that no expression may hold, and says what to write in its place. */
export function refuseSymbol(token: Token): never {
  const advice = instead.get(token.text)
  const what = `${named(token.text)} at character ${token.at + 1} has no meaning here`
  refuse(`${what}${advice ? `: ${advice}` : ''}.`, token)
}

/** What cannot be seen, or would upset the sentence around it, goes by its number. */
function named(symbol: string): string {
  if (!/^[\p{C}\p{Z}\p{M}]/u.test(symbol)) return `"${symbol}"`
  return `The character U+${symbol.codePointAt(0)!.toString(16).toUpperCase().padStart(4, '0')}`
}
