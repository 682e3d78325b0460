import { type Expression, ExpressionError, straight, type Tree, type Worded } from '../../engine/index.js'
import type { Amount } from '../amounts/amounts.js'
import { meaningOf } from './names.js'
import type { LinePlan, Outline } from './outline.js'

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

const nothing: ReadonlyMap<LinePlan, Half> = new Map()
const moves = (split: Split): boolean => split.slope !== 'none' || split.by.size > 0

/** The expression of a part of another's tree, with only the names and numbers that the part uses. */
function partOf(whole: Expression, part: Tree): Expression {
  const names: string[] = []
  const numbers: number[] = []
  const slots = { name: new Map<number, number>(), number: new Map<number, number>() }
  const moved = (kind: 'name' | 'number', slot: number): number => {
    const at = slots[kind].get(slot) ?? slots[kind].size
    slots[kind].set(slot, at)
    if (kind === 'name') names[at] = whole.names[slot]!
    else numbers[at] = whole.numbers[slot]!
    return at
  }
  const copy = (tree: Tree): Tree => {
    switch (tree.kind) {
      case 'name':
      case 'number':
        return { kind: tree.kind, slot: moved(tree.kind, tree.slot) }
      case 'constant':
        return tree
      case 'percent':
        return { kind: 'percent', of: copy(tree.of) }
      case 'operation':
        return { ...tree, of: tree.of.map(copy) }
      case 'call':
        return { ...tree, of: tree.of.map(copy) }
      case 'if':
        return { kind: 'if', test: copy(tree.test), yes: copy(tree.yes), no: copy(tree.no) }
    }
  }
  const tree = copy(part)
  return { text: whole.text, key: JSON.stringify(tree), tree, names, numbers, spans: [] }
}

/** Amounts that only the base moves come apart the same way in every formula. */
const splitsByBase = new WeakMap<Amount, Split>()

/** Takes every line's amount apart; lines that speak of each other in a circle do not depend on the base. */
export function splitLines(outline: Outline): Map<LinePlan, Split> {
  const splits = new Map<LinePlan, Split>()
  const open = new Set<LinePlan>()

  const splitOf = (line: LinePlan): Split => {
    const known = splits.get(line)
    if (known) return known
    if (open.has(line)) return { fixed: 'weight', slope: 'none', by: nothing }
    open.add(line)
    const split = takeApart(line)
    open.delete(line)
    splits.set(line, split)
    return split
  }

  const takeApart = (line: LinePlan): Split => {
    const { amount, gives } = line
    if (gives) return { fixed: 'none', slope: 'none', by: new Map([[line, 'one']]) }
    if (!amount) return { fixed: 'none', slope: 'none', by: nothing }
    if ('problem' in amount) return { fixed: 'weight', slope: 'none', by: nothing }
    const { expression } = amount
    const moving = new Map<number, readonly LinePlan[]>() // slot → lines whose halves it takes; none for the base
    for (const [slot, name] of expression.names.entries()) {
      const meant = meaningOf(name, line, outline)
      if (meant.kind === 'base') moving.set(slot, [])
      if (meant.kind === 'lines' && meant.lines.some(l => moves(splitOf(l)))) moving.set(slot, meant.lines)
    }
    if (moving.size === 0) return { fixed: 'weight', slope: 'none', by: nothing }
    const byBaseAlone = [...moving.values()].every(lines => lines.length === 0)
    const known = byBaseAlone && splitsByBase.get(amount)
    if (known) return known
    try {
      const split = joined(expression, moving)
      if (byBaseAlone) splitsByBase.set(amount, split)
      return split
    } catch (error) {
      if (!(error instanceof ExpressionError)) throw error
      const half = { problem: error.problem }
      return { fixed: half, slope: half, by: nothing }
    }
  }

  const joined = (expression: Expression, moving: ReadonlyMap<number, readonly LinePlan[]>): Split => {
    const { constant, coefficients } = straight(expression, slot => moving.has(slot))
    const fixed: SplitTerm[] = constant ? [{ expression: partOf(expression, constant) }] : []
    const slope: SplitTerm[] = []
    const by = new Map<LinePlan, SplitTerm[]>()
    for (const [slot, tree] of coefficients) {
      const coefficient = partOf(expression, tree)
      const lines = moving.get(slot)!
      if (lines.length === 0) slope.push({ expression: coefficient })
      for (const times of lines) {
        const other = splitOf(times)
        if (other.fixed !== 'none') fixed.push({ expression: coefficient, times })
        if (other.slope !== 'none') slope.push({ expression: coefficient, times })
        for (const [giving, half] of other.by) {
          const term = half === 'one' ? { expression: coefficient } : { expression: coefficient, times }
          by.set(giving, [...(by.get(giving) ?? []), term])
        }
      }
    }
    const half = (terms: readonly SplitTerm[]): 'none' | Half => (terms.length ? { terms } : 'none')
    return {
      fixed: half(fixed),
      slope: half(slope),
      by: new Map([...by].map(([line, terms]) => [line, { terms }])),
    }
  }

  for (const stage of outline.stages) for (const line of stage.lines) splitOf(line)
  return splits
}
