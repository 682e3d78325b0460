import { type Decimal, type Token, tokensOf } from './lexer.js'
import { normalise } from './normalise.js'
import { parseNormalised } from './parser.js'
import { ExpressionError } from './problem.js'
import type { Expression, Tree } from './tree.js'

export interface ParseOptions {
  readonly decimal?: Decimal // the decimal mark of the text; with ',' a `;` stands between arguments
  readonly units?: ReadonlyMap<string, string> // word or two words, lower case → unit: `teaspoons` → `tsp`
  readonly percentOf?: string | null // the name `%` refers to, `base` unless said; null: % is only ÷ 100
}

const noUnits: ReadonlyMap<string, string> = new Map()

const mostKept = 1000
const trees = new Map<string, Tree>() // by key, the longest unused first

/** Reads a typed text. Throws ExpressionError, whose place is in the text as given. */
export function parse(text: string, options: ParseOptions = {}): Expression {
  const { decimal = '.', units = noUnits, percentOf = 'base' } = options
  const tokens = tokensOf(text, decimal)
  const { key, names, numbers, written } = normalise(tokens, { decimal, units, percentOf })
  const begins = text.length - text.trimStart().length
  return {
    text: rewritten(text, tokens, '.', ',').trim(),
    key,
    tree: treeOf(key, text),
    names,
    numbers,
    spans: written.map(({ slot, token }) => ({ slot, at: token.at - begins, length: token.length })),
  }
}

function treeOf(key: string, text: string): Tree {
  let tree = trees.get(key)
  if (tree) trees.delete(key)
  else {
    try {
      tree = parseNormalised(key).tree
    } catch (error) {
      const known = error instanceof ExpressionError
      throw new ExpressionError(known ? error.problem : { code: 'notAnExpression' }, 0, text.length)
    }
  }
  trees.set(key, tree)
  if (trees.size > mostKept) trees.delete(trees.keys().next().value!)
  return tree
}

/**
 * An expression's text as a baker of this decimal mark writes it: `min(1.5, 2)` is `min(1,5; 2)`.
 * Parsing that with the same mark gives the text back. What cannot be read is left as it is.
 */
export function localise(text: string, decimal: Decimal): string {
  if (decimal === '.') return text
  try {
    return rewritten(text, tokensOf(text, '.'), ',', ';')
  } catch {
    return text
  }
}

function rewritten(text: string, tokens: readonly Token[], decimal: Decimal, separator: ',' | ';'): string {
  let out = ''
  let done = 0
  const put = (at: number, character: string) => {
    out += text.slice(done, at) + character
    done = at + 1
  }
  for (const token of tokens) {
    if (token.point >= 0) put(token.point, decimal)
    else if (token.kind === 'symbol' && (token.text === ',' || token.text === ';')) put(token.at, separator)
  }
  return out + text.slice(done)
}
