import { expressionInWords } from '../../src/dough/amounts/expression-words'
import { type ParseOptions, parse } from '../../src/engine/expression/parse'
import { ExpressionError } from '../../src/engine/expression/problem'
import type { Expression, Tree } from '../../src/engine/expression/tree'
import { compile } from '../../src/engine/graph/compile'

export const units = new Map(
  ['g', 'kg', 'oz', 'tsp', 'tbsp', 'cup', 'fl oz'].map(unit => [unit, unit] as const),
).set('teaspoons', 'tsp')

/** Grams, so that a value in a table can be read: a cup here weighs 240 g, a teaspoon 5 g. */
export const kitchen: Readonly<Record<string, number>> = {
  base: 1000,
  'unit:g': 1,
  'unit:kg': 1000,
  'unit:oz': 28.349523125,
  'unit:tsp': 5,
  'unit:tbsp': 15,
  'unit:cup': 240,
  'unit:fl oz': 30,
  salt: 20,
  water: 700,
  'levain.water': 80,
}

export function worth(expression: Expression, scope: Readonly<Record<string, number>>, tree?: Tree): number {
  const { names, numbers } = expression
  const values = Float64Array.from([...names.map(name => scope[name] ?? Number.NaN), ...numbers])
  return compile({ names, tree: tree ?? expression.tree })(values, Int32Array.from(values.keys()), 0)
}

export function amount(text: string, options: ParseOptions = {}): number {
  return worth(parse(text, { units, ...options }), kitchen)
}

/** Why and where a text is refused, with its sentence; undefined if it is not. Anything but a refusal is thrown on. */
export function refusal(
  run: () => unknown,
): Pick<ExpressionError, 'problem' | 'at' | 'length' | 'message'> | undefined {
  try {
    run()
  } catch (error) {
    if (error instanceof ExpressionError) {
      const { problem, at, length } = error
      return { problem, at, length, message: expressionInWords(problem).message }
    }
    throw error
  }
  return undefined
}
