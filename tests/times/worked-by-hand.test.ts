import assert from 'node:assert/strict'
import { test } from 'node:test'
import { solveTimes } from '../../src/times/index'
import { timesOf } from './text'

// Each case was worked out by hand or with exact fractions (every set of bounds at their limit tried, the one kept
// that meets the conditions of Karush, Kuhn and Tucker). d is a length, u its usual, r its leeway. In a chain that
// is short by s every wait gives s·r ÷ Σr.

interface Case {
  readonly title: string
  readonly text: string
  readonly at: Readonly<Record<string, number>>
  readonly cost: number
}

const cases: readonly Case[] = [
  {
    title: 'waits in a chain give by the same part of their leeway', // 160 for 150: 10·20/60 and 10·40/60; 10²/60
    text: 'a 50-70 b \n b 80-120 c \n a at 0 \n c at 150',
    at: { b: 170 / 3 },
    cost: 5 / 3,
  },
  {
    title: 'waits in a chain are stretched by the same part of their leeway', // 15·20/60; 15²/60
    text: 'a 50-70 b \n b 80-120 c \n a at 0 \n c at 175',
    at: { b: 65 },
    cost: 15 / 4,
  },
  {
    title: 'a wait that is at its least leaves the rest to the other', // a–b would give 5 and has 2; 2²/20 + 13²/40
    text: 'a 50-70:52 b \n b 80-120 c \n a at 0 \n c at 137',
    at: { b: 50 },
    cost: 177 / 40,
  },
  {
    title: 'two waits at their least, one after the other', // fractions: 2²/10 + 3²/30 + 10²/40
    text: 'a 10-20:12 b \n b 30-60:33 c \n c 40-80 d \n a at 0 \n d at 90',
    at: { b: 10, c: 40 },
    cost: 16 / 5,
  },
  {
    title: 'what two waits say of the same length is weighed by their leeway', // (d−15)/5 + (d−20)/10 = 0
    text: 'a 10-20 b \n a 10-30 b \n a at 0',
    at: { b: 50 / 3 },
    cost: 5 / 6,
  },
  {
    title: 'a way round is weighed against the two waits beside it', // d = d₁ = d₂: 4(d−5)/10 + 4(2d−16)/20 = 0
    text: 'a 0-10 b \n b 0-10 c \n a 0-20:16 c \n a at 0',
    at: { b: 6.5, c: 13 },
    cost: 0.9,
  },
  {
    title: 'a bridge of five waits is at rest', // fractions
    text: 'a 0-20 b \n a 0-40 c \n b 0-16:2 c \n b 10-30:25 d \n c 0-20:12 d \n a at 0 \n d at 30',
    at: { b: 580 / 59, c: 918 / 59 },
    cost: 3337 / 1180,
  },
  {
    title: 'a bridge of other waits is at rest', // fractions
    text: 'a 5-15:9 b \n a 10-40 c \n b 0-8:2 c \n b 10-30:25 d \n c 5-20:12 d \n a at 0 \n d at 26',
    at: { b: 983 / 111, c: 1541 / 111 },
    cost: 13909 / 1665,
  },
  {
    title: 'a ladder with two waits at their most', // fractions
    text: `a 20-50 b \n b 20-30 c \n a 10-90:30 d \n d 30-60 e \n b -10-10:0 d \n c 0-30:20 e
      a at 0 \n e at 100`,
    at: { b: 10195 / 227, c: 32885 / 454, d: 10550 / 227 },
    cost: 10675 / 908,
  },
  {
    title: 'a wait counts by the leeway it says, not by its bounds', // 20 short: 20·10/50 and 20·40/50; 4²/10 + 16²/40
    text: 'a 50-90:70/10 b \n b 80-120 c \n a at 0 \n c at 150',
    at: { b: 66 },
    cost: 8,
  },
  {
    title: 'what may be early without an end shares with the wait before it', // 20 over: 20·40/50 and 20·10/50; 16²/40 + 4²/10
    text: 'a 100-140 p \n p 30 P \n P 0-:0/10 by \n a at 100 \n by at 270',
    at: { p: 236, P: 266 },
    cost: 8,
  },
  {
    title: 'holds from and until are gone to as far as it pays', // a at 10, c at 118: 108 for 100, 8·20/60; 8²/60
    text: 'a 20-40 b \n b 50-90 c \n a from 5 until 10 \n c from 118 until 120',
    at: { a: 10, b: 128 / 3, c: 118 },
    cost: 16 / 15,
  },
  {
    title: 'a hold in the middle parts a chain in two', // 12 over, 4 and 8; 12²/60; and 7 under: 7²/20
    text: 'a 20-40 b \n b 50-90 c \n c 10-30 d \n a at 0 \n c at 112 \n d at 125',
    at: { b: 34 },
    cost: 97 / 20,
  },
  {
    title: 'what lies within a wait is moved only as far as its bounds ask', // fractions
    text: 'a 60-90 d \n a 20-30 b \n b 20-30 c \n c 5-45:30 d \n a at 0 \n d at 66',
    at: { b: 68 / 3, c: 136 / 3 },
    cost: 179 / 30,
  },
  {
    title: 'a usual beyond the bounds is come near to', // 5²/10
    text: 'a 10-20:25 b \n a at 0',
    at: { b: 20 },
    cost: 2.5,
  },
  {
    title: 'what is only until a time ends at that time',
    text: 'a 30-50 b \n b 20 c \n c until 100',
    at: { a: 40, b: 80, c: 100 },
    cost: 0,
  },
  {
    title: 'what is only from a time begins at that time',
    text: 'a 30-50 b \n b 20 c \n a from 30',
    at: { a: 30, b: 70, c: 90 },
    cost: 0,
  },
  {
    title: 'what nothing holds begins at 0 with the first moment',
    text: 'b 20 c \n a 30-50 b \n d 5 e',
    at: { a: -40, b: 0, c: 20, d: 0, e: 5 },
    cost: 0,
  },
  {
    title: 'a wait without a usual is as late as it may, and one without an end as early',
    text: 'a [30-60] b \n a [10-] c \n a at 0',
    at: { b: 60, c: 10 },
    cost: 0,
  },
  {
    title: 'two loads part by half each, and the first given goes first', // q₂ − q₁ = 30; 15²/40 twice
    text: 'a 100-140 p \n p 30 P \n a 100-140 q \n q 30 Q \n a at 0 \n oven: p..P, q..Q',
    at: { p: 105, q: 135 },
    cost: 45 / 4,
  },
  {
    title: 'loads of unlike leeway part by their leeway; both orders cost the same', // 20 and 10; 20²/40 + 10²/20
    text: 'a 110-130 q \n q 30 Q \n a 100-140 p \n p 30 P \n a at 0 \n oven: p..P, q..Q',
    at: { p: 100, q: 130 },
    cost: 15,
  },
  {
    title: 'the oven rests between two loads', // q₂ − q₁ = 36
    text: 'a 100-140 p \n p 30 P \n a 100-140 q \n q 30 Q \n a at 0 \n oven between 6: p..P, q..Q',
    at: { p: 102, q: 138 },
    cost: 81 / 5,
  },
  {
    title: 'a change of heat counts where it is longer than the rest between loads', // q₂ − q₁ = 40
    text: `a 100-140 p \n p 30 P \n a 100-140 q \n q 30 Q \n a at 0
      oven between 6 change 10: p..P hot, q..Q mild`,
    at: { p: 100, q: 140 },
    cost: 20,
  },
  {
    title: 'the rest between loads counts where it is longer than a change of heat',
    text: `a 100-140 p \n p 30 P \n a 100-140 q \n q 30 Q \n a at 0
      oven between 6 change 2: p..P hot, q..Q mild`,
    at: { p: 102, q: 138 },
    cost: 81 / 5,
  },
  {
    title: 'work goes to the cheaper side of closed hours', // before: q ≤ 100, 20²/40; after: q ≥ 138, 18²/40
    text: 'a 100-140 q \n q 30 Q \n a at 0 \n hands closed 130-138: q..Q',
    at: { q: 138 },
    cost: 81 / 10,
  },
  {
    title: 'work that may as well be before closed hours as after comes after', // 10²/40 on both sides
    text: 'a 100-140 q \n a at 0 \n hands closed 110-130: q..q',
    at: { q: 130 },
    cost: 2.5,
  },
  {
    title: 'of the six orders of three loads the cheapest is taken', // 63/4, none, 685/76, 130/19, 185/8, 595/76
    text: `a 100-140 p \n p 15 P \n a 100-120 q \n q 15 Q \n a 90-140 s \n s 15 S \n a at 0
      oven: p..P, q..Q, s..S`,
    at: { p: 2520 / 19, q: 1950 / 19, s: 2235 / 19 },
    cost: 130 / 19,
  },
  {
    title: 'of the six orders of loads of unlike length the cheapest is taken', // 7/8, 103/8, 55/8, 223/8, 175/8, 247/8
    text: `a 60-140 p \n p 10 P \n a 80-140 q \n q 20 Q \n a 80-160 s \n s 30 S \n a at 0
      oven: p..P, q..Q, s..S`,
    at: { p: 97, q: 107, s: 127 },
    cost: 7 / 8,
  },
]

for (const { title, text, at, cost } of cases) {
  test(title, () => {
    const answer = solveTimes(timesOf(text))
    assert.ok(answer.kind === 'plan')
    for (const [moment, time] of Object.entries(at)) {
      const found = answer.at.get(moment)!
      assert.ok(Math.abs(found - time) < 1e-9, `${moment} at ${found}, not ${time}`)
    }
    assert.ok(Math.abs(answer.cost - cost) < 1e-9, `cost ${answer.cost}, not ${cost}`)
    assert.equal(answer.proven, true)
    assert.equal(answer.gap, 0)
  })
}
