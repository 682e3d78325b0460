import { ExpressionError } from './problem.js'
import type { ExpressionDiagnostic } from './refusals.js'
import type { Expression, Operator, Tree } from './tree.js'
import { written } from './written.js'

/** An expression as constant + Σ coefficient × unknown. The trees use the expression's slots; null is zero. */
export interface Straight {
  readonly constant: Tree | null
  readonly coefficients: ReadonlyMap<number, Tree> // by the unknown's name slot
}

/**
 * Takes apart an expression that is linear in the names for which `unknown` says so. Trees are worked
 * out with `compile({ ...expression, tree })`. Throws ExpressionError, in words, where it is not linear.
 */
export function straight(expression: Expression, unknown: (slot: number) => boolean): Straight {
  const split = (tree: Tree): Straight => {
    switch (tree.kind) {
      case 'name':
        if (!unknown(tree.slot)) return known(tree)
        return { constant: null, coefficients: new Map([[tree.slot, constant(1)]]) }
      case 'number':
      case 'constant':
        return known(tree)
      case 'percent':
        return mapped(split(tree.of), of => ({ kind: 'percent', of }))
      case 'if':
        return choice(tree, split)
      case 'call':
        return call(tree, split)
      case 'operation':
        return operation(tree, split)
    }
  }

  const choice = (tree: Tree & { kind: 'if' }, split: (tree: Tree) => Straight): Straight => {
    const of = { yes: split(tree.yes), no: split(tree.no) }
    if (!isKnown(split(tree.test))) refuse('condition', tree.test)
    if (isKnown(of.yes) && isKnown(of.no)) return known(tree)
    return joined(of.yes, of.no, (yes, no) => ({
      kind: 'if',
      test: tree.test,
      yes: yes ?? constant(0),
      no: no ?? constant(0),
    }))
  }

  const call = (tree: Tree & { kind: 'call' }, split: (tree: Tree) => Straight): Straight => {
    const parts = tree.of.map(split)
    if (parts.every(isKnown)) return known(tree)
    if (tree.name !== 'sum' && tree.name !== 'average') refuse('call', tree, `${tree.name}(…)`)
    const total = parts.reduce((sum, part) => joined(sum, part, plus))
    if (tree.name === 'sum') return total
    return mapped(total, part => operate('/', part, constant(parts.length)))
  }

  const operation = (tree: Tree & { kind: 'operation' }, split: (tree: Tree) => Straight): Straight => {
    const parts = tree.of.map(split)
    if (parts.every(isKnown)) return known(tree)
    const [first, second] = parts as [Straight, Straight | undefined]
    if (!second) {
      if (tree.operator === 'not') refuse('condition', tree)
      return tree.operator === 'neg' ? mapped(first, part => operate('neg', part)) : first
    }
    switch (tree.operator) {
      case '+':
        return joined(first, second, plus)
      case '-':
        return joined(first, second, minus)
      case '*': {
        const [a, b] = tree.of as [Tree, Tree]
        if (isKnown(first)) return mapped(second, part => operate('*', a, part))
        if (isKnown(second)) return mapped(first, part => operate('*', part, b))
        return refuse('product', tree)
      }
      case '/':
        if (isKnown(second)) return mapped(first, part => operate('/', part, tree.of[1]!))
        return refuse('division', tree)
      case '^':
        return refuse('power', tree)
      default:
        return refuse('condition', tree)
    }
  }

  const refuse = (of: NotStraight['of'], tree: Tree, call = ''): never => {
    const names = [...new Set(namesIn(tree))].filter(unknown).map(slot => expression.names[slot]!)
    const part = written(tree, expression)
    throw new ExpressionError(
      { code: 'cannotWorkBackwards', of, call, names, part },
      0,
      expression.text.length,
    )
  }

  return split(expression.tree)
}

type NotStraight = Extract<ExpressionDiagnostic, { readonly code: 'cannotWorkBackwards' }>

const constant = (value: number): Tree => ({ kind: 'constant', value })
const operate = (operator: Operator, ...of: Tree[]): Tree => ({ kind: 'operation', operator, of })
const known = (tree: Tree): Straight => ({ constant: tree, coefficients: new Map() })
const isKnown = (part: Straight): boolean => part.coefficients.size === 0

const plus = (a: Tree | null, b: Tree | null): Tree | null => (a && b ? operate('+', a, b) : (a ?? b))
const minus = (a: Tree | null, b: Tree | null): Tree | null =>
  a && b ? operate('-', a, b) : b ? operate('neg', b) : a

/** The same done to the constant and to every coefficient. */
function mapped({ constant, coefficients }: Straight, change: (part: Tree) => Tree): Straight {
  return {
    constant: constant && change(constant),
    coefficients: new Map([...coefficients].map(([slot, part]) => [slot, change(part)])),
  }
}

function joined(a: Straight, b: Straight, join: (a: Tree | null, b: Tree | null) => Tree | null): Straight {
  const coefficients = new Map<number, Tree>()
  for (const slot of new Set([...a.coefficients.keys(), ...b.coefficients.keys()])) {
    const part = join(a.coefficients.get(slot) ?? null, b.coefficients.get(slot) ?? null)
    if (part) coefficients.set(slot, part)
  }
  const anyConstant = a.constant || b.constant
  return { constant: anyConstant && join(a.constant, b.constant), coefficients }
}

function* namesIn(tree: Tree): Generator<number> {
  if (tree.kind === 'name') yield tree.slot
  else if (tree.kind === 'percent') yield* namesIn(tree.of)
  else if (tree.kind === 'if') for (const part of [tree.test, tree.yes, tree.no]) yield* namesIn(part)
  else if (tree.kind === 'call' || tree.kind === 'operation') for (const part of tree.of) yield* namesIn(part)
}
