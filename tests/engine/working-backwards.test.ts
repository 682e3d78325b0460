import assert from 'node:assert/strict'
import { test } from 'node:test'
import { straight } from '../../src/engine/expression/linear'
import { parse } from '../../src/engine/expression/parse'
import type { Expression } from '../../src/engine/expression/tree'
import { randomOf } from '../random'
import { kitchen, refusal, units, worth } from './expressions'

function parts(expression: Expression, unknown: readonly string[], scope: Readonly<Record<string, number>>) {
  const { constant, coefficients } = straight(expression, slot => unknown.includes(expression.names[slot]!))
  return {
    constant: constant ? worth(expression, scope, constant) : 0,
    of: Object.fromEntries(
      [...coefficients].map(([slot, tree]) => [expression.names[slot]!, worth(expression, scope, tree)]),
    ),
  }
}

const split: readonly (readonly [text: string, constant: number, of: Record<string, number>])[] = [
  ['20 g', 20, {}],
  ['70% + 20 g', 20, { base: 0.7 }],
  ['20 g - 70%', 20, { base: -0.7 }],
  ['(8 + 2)%', 0, { base: 0.1 }],
  ['2*salt', 0, { salt: 2 }],
  ['water - (salt - 5 g)/2', 702.5, { salt: -0.5 }],
  ['-(salt - base)', 0, { salt: -1, base: 1 }],
  ['sum(salt, 70%, water)', 700, { salt: 1, base: 0.7 }],
  ['average(salt, 10 g)', 5, { salt: 0.5 }],
  ['water > 500 g ? 2*salt : base', 0, { salt: 2, base: 0 }],
  ['max(water, 1 kg) + salt', 1000, { salt: 1 }],
  ['salt - salt', 0, { salt: 0 }],
]
for (const [text, constant, of] of split) {
  test(`${text} in salt and the base is ${constant} and ${JSON.stringify(of)}`, () => {
    assert.deepEqual(parts(parse(text, { units }), ['salt', 'base'], kitchen), { constant, of })
  })
}

const refused: readonly (readonly [text: string, words: string])[] = [
  [
    'min(70%, 20 g)',
    'min(…) of something that itself depends on base cannot be worked backwards: min(70%, 20 g).',
  ],
  [
    'round(salt)',
    'round(…) of something that itself depends on salt cannot be worked backwards: round(salt).',
  ],
  [
    'salt * base',
    'A product of two things each of which depends on salt and base cannot be worked backwards: salt*base.',
  ],
  ['2 / salt', 'A division by something that itself depends on salt cannot be worked backwards: 2/salt.'],
  ['salt^2', 'A power of something that itself depends on salt cannot be worked backwards: salt^2.'],
  [
    'salt > 2 g ? 1 g : 2 g',
    'A condition on something that itself depends on salt cannot be worked backwards: salt > 2 g.',
  ],
  [
    'not (base > 2 g)',
    'A condition on something that itself depends on base cannot be worked backwards: base > 2 g.',
  ],
]
for (const [text, words] of refused) {
  test(`${text} cannot be worked backwards, and says why`, () => {
    assert.equal(refusal(() => parts(parse(text, { units }), ['salt', 'base'], kitchen))?.message, words)
  })
}

test('1000 random amounts are their constant and their coefficients times the unknowns (seed 31)', () => {
  const random = randomOf(31).next
  const pick = <T>(from: readonly T[]): T => from[Math.floor(random() * from.length)]!
  const known = () => pick(['2', '0.5', '(water/salt)', '(1 + k)', '(k > 2 ? 3 : 4)'])
  const term = (depth: number): string => {
    if (depth === 0) return pick(['x', 'y', 'base', '12.5%', '20 g', 'water', 'max(water, 3 g)'])
    const next = () => term(depth - 1)
    return pick([
      () => `${next()} + ${next()}`,
      () => `(${next()} - ${next()})`,
      () => `${known()}*(${next()})`,
      () => `(${next()})*${known()}/${known()}`,
      () => `-(${next()})`,
      () => `sum(${next()}, ${next()}, ${next()})`,
      () => `average(${next()}, ${next()})`,
      () => `(k > ${pick(['1', '5'])} ? ${next()} : ${next()})`,
    ])()
  }
  for (let i = 0; i < 1000; i++) {
    const text = term(1 + Math.floor(random() * 4))
    const scope = {
      ...kitchen,
      base: 1000 * random(),
      x: 500 * random(),
      y: -200 * random(),
      k: 10 * random(),
    }
    const expression = refusalOrNot(() => parse(text, { units }))
    if (!expression) continue // longer than a text may be
    const { constant, of } = parts(expression, ['x', 'y', 'base'], scope)
    const direct = worth(expression, scope)
    const x: Record<string, number> = scope
    const rebuilt = Object.entries(of).reduce((sum, [name, share]) => sum + share * x[name]!, constant)
    const size = Object.entries(of).reduce(
      (sum, [name, share]) => sum + Math.abs(share * x[name]!),
      Math.abs(constant),
    )
    assert.ok(Math.abs(direct - rebuilt) <= 1e-9 * (1 + size), `${text}: ${direct} and ${rebuilt}`)
  }
})

function refusalOrNot<T>(run: () => T): T | undefined {
  let made: T | undefined
  const error = refusal(() => {
    made = run()
  })
  return error ? undefined : made
}
