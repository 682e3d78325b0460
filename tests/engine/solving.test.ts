import assert from 'node:assert/strict'
import { test } from 'node:test'
import { solve } from '../../src/engine/solve'
import { randomOf } from '../random'

type System = readonly [matrix: number[][], right: number[]]

const exact: readonly (readonly [what: string, system: System, x: number[]])[] = [
  ['one unknown', [[[4]], [1]], [0.25]],
  [
    'fifths',
    [
      [
        [2, 1],
        [1, 3],
      ],
      [3, 5],
    ],
    [0.8, 1.4],
  ],
  [
    'rows that must change places',
    [
      [
        [0, 2],
        [3, 0],
      ],
      [1, 1],
    ],
    [1 / 3, 0.5],
  ],
  [
    'a pivot of rounding size in a row of large numbers',
    [
      [
        [1e-20, 1],
        [1, 1],
      ],
      [1, 2],
    ],
    [1, 1],
  ],
  [
    'rows of very different size',
    [
      [
        [1e9, 2e9],
        [3e-9, 1e-9],
      ],
      [4e9, 2e-9],
    ],
    [0, 2],
  ],
  [
    'three unknowns',
    [
      [
        [2, 1, -1],
        [-3, -1, 2],
        [-2, 1, 2],
      ],
      [8, -11, -3],
    ],
    [2, 3, -1],
  ],
  [
    'an equation too many that agrees',
    [
      [
        [1, 1],
        [1, -1],
        [2, 0],
      ],
      [3, 1, 4],
    ],
    [2, 1],
  ],
  ['no unknowns and nothing asked', [[], []], []],
]
for (const [what, [matrix, right], x] of exact) {
  test(`solves ${what}`, () => {
    const solution = solve(matrix, right)
    assert.ok('x' in solution, JSON.stringify(solution))
    for (const [i, value] of solution.x.entries())
      assert.ok(Math.abs(value - x[i]!) <= 2e-16 * Math.abs(x[i]!), `${value}`)
    assert.equal(solution.doubtful, false)
  })
}

test('thirds, sevenths and elevenths come out to the last digit', () => {
  const { x } = solve(
    [
      [3, 0, 0],
      [1, 7, 0],
      [1, 1, 11],
    ],
    [1, 1, 1],
  ) as { x: number[] }
  assert.deepEqual(x, [1 / 3, 2 / 21, 4 / 77])
})

const stuck: readonly (readonly [what: string, system: System, answer: object])[] = [
  [
    'two equal equations',
    [
      [
        [1, 1],
        [2, 2],
      ],
      [1, 2],
    ],
    { reason: 'many', unknowns: [0, 1] },
  ],
  [
    'two equations that contradict',
    [
      [
        [1, 1],
        [2, 2],
      ],
      [1, 3],
    ],
    { reason: 'none', equations: [0, 1] },
  ],
  [
    'decimals that are equal but for rounding',
    [
      [
        [0.1, 0.2],
        [0.3, 0.6],
      ],
      [0.3, 0.9],
    ],
    { reason: 'many', unknowns: [0, 1] },
  ],
  [
    'decimals that contradict',
    [
      [
        [0.1, 0.2],
        [0.3, 0.6],
      ],
      [0.3, 0.91],
    ],
    { reason: 'none', equations: [0, 1] },
  ],
  ['fewer equations than unknowns', [[[1, 1, 0]], [2]], { reason: 'many', unknowns: [0, 1, 2] }],
  [
    'an unknown that does not occur',
    [
      [
        [1, 0],
        [2, 0],
      ],
      [1, 2],
    ],
    { reason: 'many', unknowns: [1] },
  ],
  [
    'an unknown apart from two that can be traded',
    [
      [
        [1, 1, 0],
        [0, 0, 1],
        [2, 2, 0],
      ],
      [1, 5, 2],
    ],
    { reason: 'many', unknowns: [0, 1] },
  ],
  ['nothing that shall be something', [[[0]], [1]], { reason: 'none', equations: [0] }],
  [
    'a contradiction apart from a sound equation',
    [
      [
        [1, 1, 0],
        [0, 0, 1],
        [1, 1, 0],
      ],
      [1, 5, 2],
    ],
    { reason: 'none', equations: [0, 2] },
  ],
  [
    'a sum of two equations contradicted by a third',
    [
      [
        [1, 0],
        [0, 1],
        [1, 1],
      ],
      [1, 1, 3],
    ],
    { reason: 'none', equations: [0, 1, 2] },
  ],
]
for (const [what, [matrix, right], answer] of stuck) {
  test(`tells of ${what}`, () => assert.deepEqual(solve(matrix, right), answer))
}

test('warns of a condition above 1e8 and refuses one above 1e12', () => {
  const near = (gap: number) =>
    solve(
      [
        [1, 1],
        [1, 1 + gap],
      ],
      [1, 1],
    )
  assert.equal((near(1e-6) as { doubtful: boolean }).doubtful, false)
  assert.equal((near(1e-9) as { doubtful: boolean }).doubtful, true)
  assert.equal((near(1e-13) as { reason: string }).reason, 'unstable')
})

test('numbers that are none give no answer', () => {
  for (const bad of [Number.NaN, Infinity])
    assert.ok(
      'reason' in
        solve(
          [
            [bad, 1],
            [1, 1],
          ],
          [1, 1],
        ),
    )
})

for (const size of [1, 2, 3, 6, 12]) {
  test(`500 random systems of ${size} give back the unknowns they were made from (seed ${40 + size})`, () => {
    const random = randomOf(40 + size).next
    for (let round = 0; round < 500; round++) {
      const scale = Array.from({ length: size }, () => 10 ** Math.floor(random() * 13 - 6))
      const matrix = scale.map(s => scale.map(() => (random() < 0.3 ? 0 : (random() - 0.5) * s)))
      // Every other time the last row is nearly the sum of the others, so that some are close to singular.
      const gap = 10 ** -Math.floor(random() * 16)
      if (round % 2 && size > 1) {
        matrix[size - 1] = scale.map((_, j) =>
          matrix.slice(0, -1).reduce((sum, row) => sum + row[j]!, gap * random()),
        )
      }
      const x = scale.map(() => (random() - 0.5) * 2000)
      const right = matrix.map(row => row.reduce((sum, a, j) => sum + a * x[j]!, 0))
      const solution = solve(matrix, right)
      if (!('x' in solution)) continue
      // right itself is rounded, which the condition may magnify
      const most = Math.max(...x.map(Math.abs))
      const error = Math.max(...x.map((value, j) => Math.abs(solution.x[j]! - value)))
      assert.ok(
        error <= 1e-14 * size * solution.condition * most + 1e-12,
        `${error} at ${solution.condition}`,
      )
    }
  })
}

test('500 random whole-number systems made singular are never solved (seed 60)', () => {
  const random = randomOf(60).next
  for (let round = 0; round < 500; round++) {
    const size = 2 + Math.floor(random() * 6)
    const whole = () => Math.floor(random() * 19) - 9
    const matrix = Array.from({ length: size }, () => Array.from({ length: size }, whole))
    const right = matrix.map(whole)
    const shares = matrix.map(() => whole() / 10)
    const last = size - 1
    const mixed = (of: (i: number) => number) =>
      shares.reduce((sum, s, i) => (i < last ? sum + s * of(i) : sum), 0)
    matrix[last] = matrix[last]!.map((_, j) => mixed(i => matrix[i]![j]!))
    right[last] = mixed(i => right[i]!)
    const agreeing = solve(matrix, right)
    assert.ok('reason' in agreeing && agreeing.reason === 'many', JSON.stringify({ matrix, right, agreeing }))
    right[last]! += 1
    const contradicting = solve(matrix, right)
    assert.ok('reason' in contradicting && contradicting.reason === 'none', JSON.stringify(contradicting))
  }
})
