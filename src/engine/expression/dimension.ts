import { ExpressionError } from './problem.js'
import type { ExpressionDiagnostic } from './refusals.js'
import type { Dimension, Expression, Operator, Tree } from './tree.js'
import { quantity, written } from './written.js'

/** A written 0 goes with anything: no grams, no ounces, no number. */
type Measure = Dimension | 'zero'

/**
 * What an expression measures, given what its names measure; `unit:…` names are weights and are not
 * asked for. Throws ExpressionError, naming the parts, when it measures nothing sensible.
 */
export function dimensionOf(expression: Expression, of: (name: string) => Dimension): Dimension {
  const { names, numbers, text } = expression
  const sayPart = (tree: Tree) => written(tree, expression)
  const refuse = (diagnostic: ExpressionDiagnostic): never => {
    throw new ExpressionError(diagnostic, 0, text.length)
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
        return alike([tree.yes, tree.no], undefined)
      case 'call': {
        const [first, ...rest] = tree.of as [Tree, ...Tree[]]
        if (tree.name !== 'round') return alike(tree.of, `${tree.name}(…)`, quantityOf)
        for (const places of rest) plain(places, 'decimal places')
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
    if (unit) refuse({ code: 'weightWithUnit', part: sayPart(first), unit: unit.trim() })
    for (const [share, other] of [
      [first, second],
      [second, first],
    ] as const) {
      const measured = quantity(share, expression)
      if (measured?.unit !== '%') continue
      refuse({
        code: 'percentIsOfBase',
        share: sayPart(share),
        of: sayPart(other),
        number: asNumber(measured.of),
      })
    }
    return refuse({ code: 'weightTimesWeight', first: sayPart(first), second: sayPart(second) })
  }

  function ratio(first: Tree, second: Tree): Measure {
    const a = quantityOf(first, measure(first))
    const b = quantityOf(second, measure(second))
    if (b !== 'weight') return a
    if (a === 'number') refuse({ code: 'numberOverWeight', number: sayPart(first), weight: sayPart(second) })
    return 'number'
  }

  function power(first: Tree, second: Tree): Measure {
    plain(second, 'exponent')
    if (quantityOf(first, measure(first)) === 'weight')
      refuse({ code: 'powerOfWeight', part: sayPart(first) })
    return 'number'
  }

  /** `where`: the parts as they stand together; undefined for those of a choice. */
  function alike(
    parts: readonly Tree[],
    where: string | undefined,
    check = (_: Tree, m: Measure) => m,
  ): Measure {
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

  function unlike(first: Tree, a: Measure, second: Tree, b: Measure, among: string | undefined): never {
    const where = among === undefined ? {} : { where: among }
    if (a === 'truth' || b === 'truth') {
      const [yes, other] = a === 'truth' ? [first, second] : [second, first]
      return refuse({
        code: 'conditionAmongAmounts',
        ...where,
        condition: sayPart(yes),
        other: sayPart(other),
      })
    }
    const [number, weight] = a === 'number' ? [first, second] : [second, first]
    return refuse({
      code: 'numberAmongWeights',
      ...where,
      number: sayPart(number),
      weight: sayPart(weight),
      isWritten: number.kind === 'number',
    })
  }

  function condition(tree: Tree): void {
    if (measure(tree) === 'truth') return
    refuse({ code: 'notACondition', part: sayPart(tree) })
  }

  function plain(tree: Tree, as: 'decimal places' | 'exponent'): void {
    const measured = measure(tree)
    if (measured === 'weight' || measured === 'truth')
      refuse({ code: 'notAPlainNumber', part: sayPart(tree), as })
  }

  function quantityOf(tree: Tree, measured: Measure): Measure {
    if (measured === 'truth') refuse({ code: 'conditionAsAmount', part: sayPart(tree) })
    return measured
  }

  function refusePercent(part: Tree): never {
    return refuse({ code: 'percentOfWeight', part: sayPart(part) })
  }

  function asNumber(part: Tree): string {
    if (part.kind === 'number') return String(numbers[part.slot]! / 100)
    return sayPart({ kind: 'operation', operator: '/', of: [part, { kind: 'constant', value: 100 }] })
  }

  const measured = measure(expression.tree)
  return measured === 'zero' ? 'number' : measured
}

const both = (a: Measure, b: Measure): Measure => (a === 'zero' || b === 'zero' ? 'zero' : 'number')
