import { ExpressionError } from './problem.js'
import type { Dimension, Expression, Operator, Tree } from './tree.js'
import { quantity, written } from './written.js'

/** A written 0 goes with anything: no grams, no ounces, no number. */
type Measure = Dimension | 'zero'

/**
 * What an expression measures, given what its names measure; `unit:…` names are weights and are not
 * asked for. Throws ExpressionError, with a sentence naming the parts, when it measures nothing sensible.
 */
export function dimensionOf(expression: Expression, of: (name: string) => Dimension): Dimension {
  const { names, numbers, text } = expression
  const sayPart = (tree: Tree) => written(tree, expression)
  const refuse = (message: string): never => {
    throw new ExpressionError(message, 0, text.length)
  }

  function measure(tree: Tree): Measure {
    switch (tree.kind) {
      case 'name': {
        const name = names[tree.slot]!
        return name.startsWith('unit:') ? 'weight' : of(name)
      }
      case 'number':
        return numbers[tree.slot] === 0 ? 'zero' : 'number'
      case 'constant':
        return tree.value === 0 ? 'zero' : 'number'
      case 'percent': {
        const part = measure(tree.of)
        if (part === 'weight') return refusePercent(tree.of)
        return quantityOf(tree.of, part)
      }
      case 'if':
        condition(tree.test)
        return alike([tree.yes, tree.no], 'a choice between them')
      case 'call': {
        const [first, ...rest] = tree.of as [Tree, ...Tree[]]
        if (tree.name !== 'round') return alike(tree.of, `${tree.name}(…)`, quantityOf)
        for (const places of rest) plain(places, 'the decimal places of round(…)')
        return quantityOf(first, measure(first))
      }
      case 'operation':
        return operation(tree.operator, tree.of)
    }
  }

  function operation(operator: Operator, [first, second]: readonly Tree[]): Measure {
    if (!first) throw new RangeError(`${operator} of nothing`)
    if (!second) {
      if (operator !== 'not') return quantityOf(first, measure(first))
      condition(first)
      return 'truth'
    }
    switch (operator) {
      case '+':
      case '-':
        return alike([first, second], `${sayPart(first)} ${operator} ${sayPart(second)}`, quantityOf)
      case '*':
        return product(first, second)
      case '/':
        return ratio(first, second)
      case '^':
        return power(first, second)
      case 'and':
      case 'or':
        condition(first)
        condition(second)
        return 'truth'
      default:
        alike([first, second], `${sayPart(first)} ${operator} ${sayPart(second)}`, quantityOf)
        return 'truth'
    }
  }

  function product(first: Tree, second: Tree): Measure {
    const a = quantityOf(first, measure(first))
    const b = quantityOf(second, measure(second))
    if (a !== 'weight' || b !== 'weight') return a === 'weight' || b === 'weight' ? 'weight' : both(a, b)
    const unit = quantity({ kind: 'operation', operator: '*', of: [first, second] }, expression)?.unit
    if (unit) refuse(`${sayPart(first)} is a weight already; take away "${unit.trim()}".`)
    for (const [share, other] of [
      [first, second],
      [second, first],
    ] as const) {
      const measured = quantity(share, expression)
      if (measured?.unit !== '%') continue
      const here = `${sayPart(share)} is a weight here, per cent of the base`
      refuse(`${here}: for that share of ${sayPart(other)} write ${asNumber(measured.of)}*${sayPart(other)}.`)
    }
    return refuse(
      `A weight times a weight is not a weight; multiply ${sayPart(first)} by a plain number instead of ${sayPart(second)}.`,
    )
  }

  function ratio(first: Tree, second: Tree): Measure {
    const a = quantityOf(first, measure(first))
    const b = quantityOf(second, measure(second))
    if (b !== 'weight') return a
    if (a === 'number') {
      refuse(
        `${sayPart(first)} is a plain number and ${sayPart(second)} a weight: a number divided by a weight is neither. Give ${sayPart(first)} a unit.`,
      )
    }
    return 'number'
  }

  function power(first: Tree, second: Tree): Measure {
    plain(second, 'an exponent')
    if (quantityOf(first, measure(first)) === 'weight') {
      refuse(
        `${sayPart(first)} is a weight, and a power of a weight is not a weight; multiply by plain numbers.`,
      )
    }
    return 'number'
  }

  function alike(parts: readonly Tree[], where: string, check = (_: Tree, m: Measure) => m): Measure {
    let first: Tree | undefined
    let common: Measure = 'zero'
    for (const part of parts) {
      const measured = check(part, measure(part))
      if (measured === 'zero' || measured === common) continue
      if (first) unlike(first, common, part, measured, where)
      first = part
      common = measured
    }
    return common
  }

  function unlike(first: Tree, a: Measure, second: Tree, b: Measure, where: string): never {
    if (a === 'truth' || b === 'truth') {
      const [yes, other] = a === 'truth' ? [first, second] : [second, first]
      return refuse(
        `${where}: ${sayPart(yes)} is a condition and ${sayPart(other)} is not; they do not go together.`,
      )
    }
    const [number, weight] = a === 'number' ? [first, second] : [second, first]
    const advice =
      number.kind === 'number'
        ? `give the ${sayPart(number)} a unit`
        : `${sayPart(weight)} is a weight and ${sayPart(number)} a plain number; give it a unit`
    return refuse(`${where}: ${advice}.`)
  }

  function condition(tree: Tree): void {
    if (measure(tree) === 'truth') return
    refuse(`${sayPart(tree)} is not a condition; write one such as ${sayPart(tree)} > 0.`)
  }

  function plain(tree: Tree, use: string): void {
    const measured = measure(tree)
    if (measured === 'weight' || measured === 'truth')
      refuse(`${sayPart(tree)} has to be a plain number to be ${use}.`)
  }

  function quantityOf(tree: Tree, measured: Measure): Measure {
    if (measured === 'truth') {
      refuse(`${sayPart(tree)} is a condition, not an amount; choose by it with ${sayPart(tree)} ? a : b.`)
    }
    return measured
  }

  function refusePercent(part: Tree): never {
    return refuse(
      `${sayPart(part)} is a weight already; for a share of it write a number, as in 0.5*${sayPart(part)}.`,
    )
  }

  function asNumber(part: Tree): string {
    if (part.kind === 'number') return String(numbers[part.slot]! / 100)
    return sayPart({ kind: 'operation', operator: '/', of: [part, { kind: 'constant', value: 100 }] })
  }

  const measured = measure(expression.tree)
  return measured === 'zero' ? 'number' : measured
}

const both = (a: Measure, b: Measure): Measure => (a === 'zero' || b === 'zero' ? 'zero' : 'number')
