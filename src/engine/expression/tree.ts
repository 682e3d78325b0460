/** The operators an expression may use. Unary minus and plus are written `neg` and `pos`. */
export type Operator =
  | '+'
  | '-'
  | '*'
  | '/'
  | '^'
  | 'neg'
  | 'pos'
  | '<'
  | '<='
  | '>'
  | '>='
  | '=='
  | '!='
  | 'and'
  | 'or'
  | 'not'

export type FunctionName = 'min' | 'max' | 'round' | 'sum' | 'abs' | 'ceil' | 'floor' | 'average'

/** What may be called, each with the most arguments it takes; all take at least one. */
export const functionNames: ReadonlyMap<string, number> = new Map<FunctionName, number>([
  ['min', Infinity],
  ['max', Infinity],
  ['round', 2],
  ['sum', Infinity],
  ['abs', 1],
  ['ceil', 1],
  ['floor', 1],
  ['average', Infinity],
])

/**
 * The only shapes an accepted expression can have. Slots number the names and the numbers of an
 * expression in the order of their first writing, so that one tree serves every text of its structure.
 */
export type Tree =
  | { readonly kind: 'name'; readonly slot: number } // index into Expression.names
  | { readonly kind: 'number'; readonly slot: number } // index into Expression.numbers
  | { readonly kind: 'percent'; readonly of: Tree }
  | { readonly kind: 'constant'; readonly value: number } // made by rearranging, never by parsing
  | {
      readonly kind: 'operation'
      readonly operator: Operator
      readonly of: readonly Tree[]
    }
  | {
      readonly kind: 'call'
      readonly name: FunctionName
      readonly of: readonly Tree[]
    }
  | {
      readonly kind: 'if'
      readonly test: Tree
      readonly yes: Tree
      readonly no: Tree
    }

/** A text understood. Expressions of one structure share `key` and `tree`. */
export interface Expression {
  readonly text: string // as given, with decimal points and commas between arguments
  readonly key: string // the structure: names as n0, n1, …, numbers as c0, c1, …
  readonly tree: Tree
  readonly names: readonly string[] // slot → name: lower case, NFC; a unit is `unit:tsp`; `%` refers to `base`
  readonly numbers: readonly number[] // slot → value
  readonly spans: readonly {
    readonly slot: number
    readonly at: number
    readonly length: number
  }[] // where names stand in `text`
}

/** What a name or an expression measures. */
export type Dimension = 'number' | 'weight' | 'truth'
