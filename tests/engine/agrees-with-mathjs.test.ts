import assert from 'node:assert/strict'
import { test } from 'node:test'
import { all, create } from 'mathjs/number'
import { parse } from '../../src/engine/expression/parse'
import { round } from '../../src/engine/graph/arithmetic'
import { randomOf, rounds } from '../random'
import { kitchen, units, worth } from './expressions'

const math = create(all!)
const names = ['salt', 'water', 'levain.water', 'base', 'ж', 'e']
const scope: Record<string, number> = { ...kitchen, ж: -3.75, e: 0 }

/** Random texts, number by number and condition by condition, with more parentheses than they need. */
function writer(random: () => number) {
  const pick = <T>(from: readonly T[]): T => from[Math.floor(random() * from.length)]!
  const gap = () => pick(['', ' '])
  const number = () => pick(['0', '1', '2', '3', '10', '0.1', '2.5', '7.25', '1e3', '0.333', '12', '99.995'])
  const several = (depth: number) =>
    Array.from({ length: 1 + Math.floor(random() * 4) }, () => value(depth)).join(', ')

  function value(depth: number): string {
    if (depth <= 0) return pick([number, number, () => pick(names)])()
    const next = depth - 1
    return pick([
      () => `${value(next)}${gap()}${pick(['+', '-', '*', '/'])}${gap()}${value(next)}`,
      () => `(${value(next)}${gap()}${pick(['+', '-', '*', '/', '^'])}${gap()}${value(next)})`,
      () => `(${value(next)})${pick(['*', '/'])}(${value(next)})`,
      () => `-${value(0)}^${number()}`,
      () => `${pick(['-', '+', '- -'])}(${value(next)})`,
      () => `${number()}${gap()}${pick(['%', ' g', ' cup', 'fl oz'])}`,
      () => `(${value(next)})${pick(['%', ' tsp'])}`,
      () => `${pick(['min', 'max', 'sum', 'average'])}(${several(next)})`,
      () => `${pick(['abs', 'ceil', 'floor', 'round'])}(${value(next)})`,
      () => `round(${value(next)}, ${Math.floor(random() * 5)})`,
      () => `(${truth(next)} ? ${value(next)} : ${value(next)})`,
    ])()
  }

  function truth(depth: number): string {
    const next = depth - 1
    const compare = () =>
      `${value(Math.max(0, next))} ${pick(['<', '<=', '>', '>=', '==', '!='])} ${value(0)}`
    if (depth <= 0) return compare()
    return pick([
      compare,
      () => `(${truth(next)}) ${pick(['and', 'or'])} (${truth(next)})`,
      () => `not (${truth(next)})`,
    ])()
  }
  return value
}

for (const seed of [1, 2, 3, 4]) {
  test(`700 random expressions come to what mathjs makes of them, to the last bit (seed ${seed})`, () => {
    const random = randomOf(seed).next
    const write = writer(random)
    let finite = 0
    for (let i = 0; i < 700; i++) {
      const text = write(1 + Math.floor(random() * 3))
      const expression = parse(text, { units })
      const ours = worth(expression, scope)
      // Per cent is ours: mathjs would read a transpose.
      const key = expression.key.replaceAll(/'\*(n\d+)\)/g, '*$1/100)')
      const given = new Map<string, unknown>([['average', math.mean]])
      for (const [slot, name] of expression.names.entries()) given.set(`n${slot}`, scope[name]!)
      for (const [slot, value] of expression.numbers.entries()) given.set(`c${slot}`, value)
      const theirs = Number(math.evaluate(key, given))
      if (Number.isNaN(ours) && Number.isFinite(theirs)) {
        // mathjs forgets a NaN in comparisons and in powers of 0.
        const lost = math.parse(key).filter(node => Number.isNaN(node.evaluate(given)))
        assert.ok(lost.length > 0, `${text} is NaN, and ${theirs} to mathjs`)
      } else if (Number.isFinite(ours) || Number.isFinite(theirs)) {
        assert.equal(ours + 0, theirs + 0, text)
        finite++
      }
    }
    assert.ok(finite > 525, `${finite} were finite`)
  })
}

test('20000 random numbers are rounded as mathjs rounds them (seed 5)', () => {
  const random = randomOf(5).next
  for (let i = 0; i < rounds(20_000); i++) {
    const places = Math.floor(random() * 16)
    const half = (Math.floor(random() * 1e4) + 0.5) / 10 ** Math.floor(random() * 12)
    const x =
      (random() < 0.5 ? half : (random() - 0.5) * 10 ** Math.floor(random() * 24 - 8)) *
      (random() < 0.2 ? -1 : 1)
    assert.equal(round(x, places) + 0, math.round(x, places) + 0, `round(${x}, ${places})`)
  }
})

test('rounding to anything but 0 to 15 places has no value', () => {
  for (const places of [-1, 16, 0.5, Number.NaN, Infinity]) assert.equal(round(1, places), Number.NaN)
})
