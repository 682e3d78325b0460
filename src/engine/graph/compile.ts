import type { Expression, FunctionName, Operator, Tree } from '../expression/tree.js'
import { ceil, floor, nearly, round } from './arithmetic.js'

/**
 * Works an expression out. `values` holds one double per cell id; `slots` holds ids, those of this
 * expression from `from` on: first its names in slot order, then its numbers. Anything that meets a
 * NaN comes to NaN, except the branch of a conditional that is not taken. Truth is 1 or 0.
 */
export type Evaluate = (values: Float64Array, slots: Int32Array, from: number) => number

const compiled = new WeakMap<Tree, Evaluate>()

/** Compiled once per structure: expressions that share a tree share the function. */
export function compile(expression: Pick<Expression, 'tree' | 'names'>): Evaluate {
  const known = compiled.get(expression.tree)
  if (known) return known
  const evaluate = closure(expression.tree, expression.names.length)
  compiled.set(expression.tree, evaluate)
  return evaluate
}

/** Where a leaf's id stands among the expression's slots; -1 for anything else. */
function place(tree: Tree, names: number): number {
  if (tree.kind === 'name') return tree.slot
  if (tree.kind === 'number') return names + tree.slot
  return -1
}

function closure(tree: Tree, names: number): Evaluate {
  switch (tree.kind) {
    case 'name':
    case 'number': {
      const at = place(tree, names)
      return (values, slots, from) => values[slots[from + at]!]!
    }
    case 'constant': {
      const { value } = tree
      return () => value
    }
    case 'percent': {
      const of = closure(tree.of, names)
      return (values, slots, from) => of(values, slots, from) / 100
    }
    case 'if':
      return conditional(closure(tree.test, names), closure(tree.yes, names), closure(tree.no, names))
    case 'call':
      return call(
        tree.name,
        tree.of.map(argument => closure(argument, names)),
      )
    case 'operation':
      return operation(tree.operator, tree.of, names)
  }
}

function conditional(test: Evaluate, yes: Evaluate, no: Evaluate): Evaluate {
  return (values, slots, from) => {
    const truth = test(values, slots, from)
    if (Number.isNaN(truth)) return Number.NaN
    return truth !== 0 ? yes(values, slots, from) : no(values, slots, from)
  }
}

function operation(operator: Operator, of: readonly Tree[], names: number): Evaluate {
  const [first, second] = of as [Tree, Tree | undefined]
  if (!second) return unary(operator, closure(first, names))
  if (operator === '*' && first.kind === 'percent') return percentOf(first.of, second, names)
  const a = place(first, names)
  const b = place(second, names)
  if (b >= 0) {
    const quick = a >= 0 ? leafWithLeaf(operator, a, b) : withLeaf(operator, closure(first, names), b)
    if (quick) return quick
  }
  return binary(operator, closure(first, names), closure(second, names))
}

/** Multiplied before it is divided, so that 57 % of 100 g is 57 g and not 56.99999999999999 g. */
function percentOf(part: Tree, whole: Tree, names: number): Evaluate {
  const a = place(part, names)
  const b = place(whole, names)
  if (a >= 0 && b >= 0) return (v, s, from) => (v[s[from + a]!]! * v[s[from + b]!]!) / 100
  const left = closure(part, names)
  const right = closure(whole, names)
  return (v, s, from) => (left(v, s, from) * right(v, s, from)) / 100
}

// The common shapes, name by number and anything by name, without a call for the leaves.

function leafWithLeaf(operator: Operator, a: number, b: number): Evaluate | undefined {
  switch (operator) {
    case '+':
      return (v, s, from) => v[s[from + a]!]! + v[s[from + b]!]!
    case '-':
      return (v, s, from) => v[s[from + a]!]! - v[s[from + b]!]!
    case '*':
      return (v, s, from) => v[s[from + a]!]! * v[s[from + b]!]!
    case '/':
      return (v, s, from) => v[s[from + a]!]! / v[s[from + b]!]!
  }
  return undefined
}

function withLeaf(operator: Operator, left: Evaluate, b: number): Evaluate | undefined {
  switch (operator) {
    case '+':
      return (v, s, from) => left(v, s, from) + v[s[from + b]!]!
    case '-':
      return (v, s, from) => left(v, s, from) - v[s[from + b]!]!
    case '*':
      return (v, s, from) => left(v, s, from) * v[s[from + b]!]!
    case '/':
      return (v, s, from) => left(v, s, from) / v[s[from + b]!]!
  }
  return undefined
}

function unary(operator: Operator, of: Evaluate): Evaluate {
  switch (operator) {
    case 'neg':
      return (v, s, from) => -of(v, s, from)
    case 'not':
      return (v, s, from) => {
        const x = of(v, s, from)
        return Number.isNaN(x) ? x : x === 0 ? 1 : 0
      }
    default:
      return of
  }
}

const truths: Partial<Record<Operator, (a: number, b: number) => boolean>> = {
  '<': (a, b) => a < b && !nearly(a, b),
  '<=': (a, b) => a <= b || nearly(a, b),
  '>': (a, b) => a > b && !nearly(a, b),
  '>=': (a, b) => a >= b || nearly(a, b),
  '==': nearly,
  '!=': (a, b) => !nearly(a, b),
  and: (a, b) => a !== 0 && b !== 0,
  or: (a, b) => a !== 0 || b !== 0,
}

function binary(operator: Operator, left: Evaluate, right: Evaluate): Evaluate {
  switch (operator) {
    case '+':
      return (v, s, from) => left(v, s, from) + right(v, s, from)
    case '-':
      return (v, s, from) => left(v, s, from) - right(v, s, from)
    case '*':
      return (v, s, from) => left(v, s, from) * right(v, s, from)
    case '/':
      return (v, s, from) => left(v, s, from) / right(v, s, from)
    case '^':
      return (v, s, from) => {
        const a = left(v, s, from)
        return Number.isNaN(a) ? a : a ** right(v, s, from) // NaN to the power of 0 would be 1
      }
  }
  const holds = truths[operator]!
  return (v, s, from) => {
    const a = left(v, s, from)
    const b = right(v, s, from)
    if (Number.isNaN(a) || Number.isNaN(b)) return Number.NaN
    return holds(a, b) ? 1 : 0
  }
}

function call(name: FunctionName, of: readonly Evaluate[]): Evaluate {
  const [first, second] = of as [Evaluate, Evaluate | undefined]
  switch (name) {
    case 'abs':
      return (v, s, from) => Math.abs(first(v, s, from))
    case 'ceil':
      return (v, s, from) => ceil(first(v, s, from))
    case 'floor':
      return (v, s, from) => floor(first(v, s, from))
    case 'round':
      return (v, s, from) => round(first(v, s, from), second ? second(v, s, from) : 0)
    case 'sum':
      return total(of)
    case 'average': {
      const sum = total(of)
      return (v, s, from) => sum(v, s, from) / of.length
    }
    case 'min':
      return gathered(of, Math.min)
    case 'max':
      return gathered(of, Math.max)
  }
}

function total(of: readonly Evaluate[]): Evaluate {
  return (v, s, from) => {
    let sum = of[0]!(v, s, from)
    for (let i = 1; i < of.length; i++) sum += of[i]!(v, s, from)
    return sum
  }
}

function gathered(of: readonly Evaluate[], better: (a: number, b: number) => number): Evaluate {
  return (v, s, from) => {
    let best = of[0]!(v, s, from)
    for (let i = 1; i < of.length; i++) best = better(best, of[i]!(v, s, from))
    return best
  }
}
