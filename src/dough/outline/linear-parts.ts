import { type Expression, ExpressionError, straight, type Tree } from '../../engine/index.js'
import type { Amount } from '../amounts/amounts.js'
import { expressionProblem } from '../amounts/expression-problem.js'
import { namedFirst } from '../amounts/named-first.js'
import { meaningOf } from './names.js'
import type { LinePlan, Outline, StagePlan } from './outline.js'
import type { Half, Split, SplitTerm } from './split.js'

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

/** What became of the parts of lines when some amounts were revised. */
export interface PartsRevised {
  readonly moved: readonly LinePlan[] // lines whose parts are others
  readonly reshaped: readonly StagePlan[] // stages of lines that have a part they had not, or the other way round
}

/** Every line's amount taken apart; lines that speak of each other in a circle do not depend on the base. */
export class LinearParts {
  readonly #splits = new Map<LinePlan, Split>()
  readonly #speaking = new Set<LinePlan>() // lines whose amounts name lines of their stage
  readonly #outline: Outline

  constructor(outline: Outline) {
    this.#outline = outline
    for (const stage of outline.stages) for (const line of stage.lines) this.#split(line)
  }

  get splits(): ReadonlyMap<LinePlan, Split> {
    return this.#splits
  }

  /** Takes apart anew, of the stages of these lines, what their amounts can have to do with. */
  revised(amounts: readonly LinePlan[]): PartsRevised {
    const stages = new Set(amounts.map(line => line.stage))
    const speaking = [...this.#speaking].filter(line => stages.has(line.stage))
    const before = new Map<LinePlan, Split>()
    for (const line of new Set([...amounts, ...speaking])) {
      before.set(line, this.#splits.get(line)!)
      this.#splits.delete(line)
      this.#speaking.delete(line)
    }
    // In the order of the lines: where a circle is entered decides what it comes to.
    for (const stage of stages) for (const line of stage.lines) if (before.has(line)) this.#split(line)
    const changed = [...before].filter(([line, split]) => !sameSplit(split, this.#splits.get(line)!))
    const reshaped = changed.filter(([line, split]) => !sameShape(split, this.#splits.get(line)!))
    return {
      moved: changed.map(([line]) => line),
      reshaped: [...new Set(reshaped.map(([line]) => line.stage))],
    }
  }

  /** A line that speaks of itself through others is a weight to them. */
  #splitOf(line: LinePlan): Split {
    return this.#splits.get(line) ?? { fixed: 'weight', slope: 'none', by: nothing }
  }

  /** Takes apart what a line names, then the line. */
  #split(line: LinePlan): void {
    namedFirst(
      line,
      one => this.#splits.has(one),
      one => this.#namedBy(one),
      one => this.#splits.set(one, this.#takeApart(one)),
    )
  }

  #namedBy(line: LinePlan): LinePlan[] {
    const { amount, gives } = line
    if (gives || !amount || 'problem' in amount) return []
    return amount.expression.names.flatMap(name => {
      const meant = meaningOf(name, line, this.#outline)
      return meant.kind === 'lines' ? meant.lines : []
    })
  }

  #takeApart(line: LinePlan): Split {
    const { amount, gives } = line
    if (gives) return { fixed: 'none', slope: 'none', by: new Map([[line, 'one']]) }
    if (!amount) return { fixed: 'none', slope: 'none', by: nothing }
    if ('problem' in amount) return { fixed: 'weight', slope: 'none', by: nothing }
    const { expression } = amount
    const moving = new Map<number, readonly LinePlan[]>() // slot → lines whose halves it takes; none for the base
    for (const [slot, name] of expression.names.entries()) {
      const meant = meaningOf(name, line, this.#outline)
      if (meant.kind === 'base') moving.set(slot, [])
      if (meant.kind !== 'lines') continue
      this.#speaking.add(line)
      if (meant.lines.some(l => moves(this.#splitOf(l)))) moving.set(slot, meant.lines)
    }
    if (moving.size === 0) return { fixed: 'weight', slope: 'none', by: nothing }
    const byBaseAlone = [...moving.values()].every(lines => lines.length === 0)
    const known = byBaseAlone && splitsByBase.get(amount)
    if (known) return known
    try {
      const split = this.#joined(expression, moving)
      if (byBaseAlone) splitsByBase.set(amount, split)
      return split
    } catch (error) {
      if (!(error instanceof ExpressionError)) throw error
      const half = { problem: expressionProblem(error.problem) }
      return { fixed: half, slope: half, by: nothing }
    }
  }

  #joined(expression: Expression, moving: ReadonlyMap<number, readonly LinePlan[]>): Split {
    const { constant, coefficients } = straight(expression, slot => moving.has(slot))
    const fixed: SplitTerm[] = constant ? [{ expression: partOf(expression, constant) }] : []
    const slope: SplitTerm[] = []
    const by = new Map<LinePlan, SplitTerm[]>()
    for (const [slot, tree] of coefficients) {
      const coefficient = partOf(expression, tree)
      const lines = moving.get(slot)!
      if (lines.length === 0) slope.push({ expression: coefficient })
      for (const times of lines) {
        const other = this.#splitOf(times)
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
}

const kindOf = (part: Split['fixed'] | 'one') => (typeof part === 'string' ? part : 'half')

/** Whether lines so taken apart have the same parts. */
export const sameShape = (a: Split, b: Split): boolean =>
  kindOf(a.fixed) === kindOf(b.fixed) &&
  kindOf(a.slope) === kindOf(b.slope) &&
  a.by.size === b.by.size &&
  [...a.by.keys()].every(line => b.by.has(line))

const sameSplit = (a: Split, b: Split): boolean =>
  a === b ||
  (sameShape(a, b) &&
    sameHalf(a.fixed, b.fixed) &&
    sameHalf(a.slope, b.slope) &&
    [...a.by].every(([line, half]) => sameHalf(half, b.by.get(line)!)))

function sameHalf(a: Split['fixed'] | 'one', b: Split['fixed'] | 'one'): boolean {
  if (typeof a === 'string' || typeof b === 'string') return a === b
  if ('problem' in a || 'problem' in b) return 'problem' in a && 'problem' in b && a.problem === b.problem
  return (
    a.terms.length === b.terms.length &&
    a.terms.every(({ expression, times }, i) => {
      const other = b.terms[i]!
      return times === other.times && sameExpression(expression, other.expression)
    })
  )
}

const sameExpression = (a: Expression, b: Expression): boolean =>
  a === b || (a.key === b.key && `${a.numbers}` === `${b.numbers}` && `${a.names}` === `${b.names}`)
