import assert from 'node:assert/strict'
import { test } from 'node:test'
import { solveTimes, type TimeProblem } from '../../src/times/index'
import { timesOf } from './text'

const good = timesOf('a 10-20 b \n b 5 c \n a at 0 \n oven between 5 closed 40-50: b..c')
const [first, second] = good.spans as [(typeof good.spans)[0], (typeof good.spans)[0]]
const oven = good.alone![0]!

const cases: readonly [title: string, wrong: Partial<TimeProblem>, message: RegExp][] = [
  ['a moment named twice', { moments: ['a', 'b', 'c', 'a'] }, /the moment “a” is there twice/],
  [
    'a span from nowhere',
    { spans: [first, { ...second, from: 'x' }] },
    /span 1 \(“x” to “c”\) names a moment “x”, which is not among the moments/,
  ],
  [
    'a span that goes nowhere',
    { spans: [{ ...first, to: 'a' }] },
    /span 0 .* begins and ends at the same moment/,
  ],
  [
    'a span with its bounds the wrong way round',
    { spans: [{ ...first, least: 30 }] },
    /span 0 .* is at least 30 and at most 20 long/,
  ],
  [
    'a span with no number',
    { spans: [{ ...first, most: Number.NaN }] },
    /most of span 0 .* is NaN, not a number/,
  ],
  ['a span without an end', { spans: [{ ...first, least: Infinity, most: Infinity }] }, /infinitely long/],
  ['an endless usual', { spans: [{ ...first, usual: Infinity }] }, /the usual of span 0 .* is Infinity/],
  ['a leeway of nothing', { spans: [{ ...first, leeway: 0 }] }, /the leeway of span 0 .* is 0/],
  ['an endless leeway', { spans: [{ ...first, leeway: Infinity }] }, /the leeway of span 0 .* is Infinity/],
  ['a hold of nothing', { holds: [{ moment: 'z', at: 1 }] }, /hold 0 \(“z”\) names a moment “z”/],
  ['a hold without a time', { holds: [{ moment: 'a' }] }, /hold 0 \(“a”\) says no time/],
  ['a hold at no number', { holds: [{ moment: 'a', at: Number.NaN }] }, /the time of hold 0 .* is NaN/],
  ['a hold from no number', { holds: [{ moment: 'a', from: Number.NaN }] }, /from of hold 0 .* is NaN/],
  [
    'a hold at and until',
    { holds: [{ moment: 'a', at: 1, until: 2 }] },
    /is at a time, and from or until another/,
  ],
  ['a hold that ends before it begins', { holds: [{ moment: 'a', from: 3, until: 2 }] }, /is from 3 until 2/],
  ['a hold from the end of time', { holds: [{ moment: 'a', from: Infinity }] }, /leaves no time at all/],
  ['two groups of one name', { alone: [oven, oven] }, /group “oven” is there twice/],
  [
    'a group with less than no time between',
    { alone: [{ ...oven, between: -1 }] },
    /between two uses of group “oven” are -1/,
  ],
  [
    'a group with an endless change',
    { alone: [{ ...oven, change: Infinity }] },
    /a change in group “oven” takes Infinity/,
  ],
  [
    'closed hours the wrong way round',
    { alone: [{ ...oven, closed: [[50, 40]] }] },
    /closed hours 0 of group “oven” begin at 50 and end at 40/,
  ],
  [
    'closed hours with no number',
    { alone: [{ ...oven, closed: [[Number.NaN, 40]] }] },
    /beginning of closed hours 0 of group “oven” is NaN/,
  ],
  [
    'a use of nothing',
    { alone: [{ ...oven, uses: [{ from: 'b', to: 'x' }] }] },
    /use 0 of group “oven” names a moment “x”/,
  ],
]

for (const [title, wrong, message] of cases) {
  test(`${title} is an error in words that says where`, () => {
    assert.throws(() => solveTimes({ ...good, ...wrong }), { name: 'RangeError', message })
  })
}

test('nothing at all has a plan of no moments', () => {
  const answer = solveTimes({ moments: [], spans: [], holds: [] })
  assert.ok(answer.kind === 'plan')
  assert.equal(answer.at.size, 0)
  assert.equal(answer.cost, 0)
})
