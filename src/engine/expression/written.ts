import type { Expression, Operator, Tree } from './tree.js'

/** Binds tighter from left to right, as in mathjs. */
const looseToTight: readonly (readonly (Operator | 'if')[])[] = [
  ['if'],
  ['or'],
  ['and'],
  ['<', '<=', '>', '>=', '==', '!='],
  ['+', '-'],
  ['*', '/'],
  ['neg', 'pos', 'not'],
  ['^'],
]
const strength = (operator: Operator | 'if'): number => looseToTight.findIndex(o => o.includes(operator))
const strongest = looseToTight.length

const signs: Partial<Record<Operator, string>> = {
  neg: '-',
  pos: '+',
  not: 'not ',
  '*': '*',
  '/': '/',
  '^': '^',
}

type Slots = Pick<Expression, 'names' | 'numbers'>

/** The name and the number of a quantity such as 20 g, and the number of a percentage of the base. */
export function quantity(tree: Tree, { names }: Slots): { of: Tree; unit: string } | undefined {
  if (tree.kind !== 'operation' || tree.operator !== '*') return undefined
  const [of, by] = tree.of as [Tree, Tree]
  const name = by.kind === 'name' ? names[by.slot]! : ''
  if (name.startsWith('unit:')) return { of, unit: ` ${name.slice('unit:'.length)}` }
  return of.kind === 'percent' && by.kind === 'name' ? { of: of.of, unit: '%' } : undefined
}

/** A tree, or a part of one, written out for a sentence: `20 g + 2*salt`. */
export function written(tree: Tree, slots: Slots): string {
  return write(tree, slots, 0)
}

function write(tree: Tree, slots: Slots, around: number): string {
  const inParentheses = (text: string, own: number) => (own < around ? `(${text})` : text)
  const measured = quantity(tree, slots)
  if (measured) return write(measured.of, slots, strongest) + measured.unit
  switch (tree.kind) {
    case 'name':
      return slots.names[tree.slot]!
    case 'number':
      return String(slots.numbers[tree.slot])
    case 'constant':
      return String(tree.value)
    case 'percent':
      return `${write(tree.of, slots, strongest)}%`
    case 'call':
      return `${tree.name}(${tree.of.map(argument => write(argument, slots, 0)).join(', ')})`
    case 'if': {
      const [test, yes, no] = [tree.test, tree.yes, tree.no].map(part => write(part, slots, 1))
      return inParentheses(`${test} ? ${yes} : ${no}`, 0)
    }
    case 'operation': {
      const own = strength(tree.operator)
      const [first, second] = tree.of as [Tree, Tree | undefined]
      if (!second) return inParentheses(`${signs[tree.operator]}${write(first, slots, own)}`, own)
      const sign = signs[tree.operator] ?? ` ${tree.operator} `
      const power = tree.operator === '^' // groups from the right, and its exponent may carry a sign
      const left = write(first, slots, power ? own + 1 : own)
      return inParentheses(`${left}${sign}${write(second, slots, power ? strength('neg') : own + 1)}`, own)
    }
  }
}
