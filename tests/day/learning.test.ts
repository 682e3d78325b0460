import assert from 'node:assert/strict'
import { test } from 'node:test'
import type { Bake, BakeFigure } from '../../src/day/bench/bake.js'
import { learntFrom, quantile } from '../../src/day/learning/inner-range.js'
import { Learning } from '../../src/day/learning/learning.js'
import { lessonOf, speedLesson, waitLesson } from '../../src/day/learning/lessons.js'
import { ripeningLearnt, saysSo, takeStepTime, waitLearnt } from '../../src/day/learning/taking-over.js'
import type { Formula, Stage } from '../../src/dough/document/formula.js'
import { applyChanges, type Unread, type Workbook } from '../../src/dough/document/workbook.js'
import { larderWith } from '../../src/dough/larder/usual-larder.js'
import { openSheet } from '../../src/dough/sheet/sheet.js'
import { randomOf } from '../random.js'
import { near } from './near.js'
import { bread } from './notation.js'

const larder = larderWith([])

test('the range is where the inner 80 % lie, by places of n + 1, and the middle is the median', () => {
  const nine = [1, 2, 3, 4, 5, 6, 7, 8, 9]
  assert.deepEqual([quantile(nine, 0.1), quantile(nine, 0.5), quantile(nine, 0.9)], [1, 5, 9])
  // Of nineteen the places are 2 and 18.
  const nineteen = Array.from({ length: 19 }, (_, i) => 10 * (i + 1))
  assert.deepEqual(learntFrom(nineteen), { count: 19, middle: 100, low: 20, high: 180, isFew: false })
  // Of six the tenth lies before the first: 0.7 of a place.
  assert.deepEqual(learntFrom([6, 1, 5, 2, 4, 3]), { count: 6, middle: 3.5, low: 1, high: 6, isFew: false })
})

test('below five bakes the range is no narrower than a tenth either way, of five it may be', () => {
  assert.deepEqual(learntFrom([2]), { count: 1, middle: 2, low: 1.8, high: 2.2, isFew: true })
  assert.deepEqual(learntFrom([2, 2.1, 1.95, 2]), { count: 4, middle: 2, low: 1.8, high: 2.2, isFew: true })
  assert.deepEqual(learntFrom([2, 2, 2, 2, 2]), { count: 5, middle: 2, low: 2, high: 2, isFew: false })
  assert.equal(learntFrom([1.5, 1.5], 0.5)!.low, 1)
  assert.equal(learntFrom([]), undefined)
})

test('only the latest twenty bakes are learnt from', () => {
  const all = [...Array.from({ length: 30 }, () => 9), ...Array.from({ length: 20 }, () => 1)]
  assert.deepEqual(learntFrom(all), { count: 20, middle: 1, low: 1, high: 1, isFew: false })
})

const wheat: Formula = {
  ...bread(
    'Mill wheat',
    `Levain:
       Ripe starter 40 g
       Bread flour 100 g
       Water 80 g
       hands Feed: 10 min
       wait Ripen: 8–10 h, at 24 °C
     Final dough:
       Bread flour 820 g
       Wholemeal spelt 180 g
       Water 690 g
       Salt 21 g
       Levain 210 g
       hands Mix: 10 min
       wait Bulk: 3.5–4.5 h, at 24 °C
       hands Shape: 20 min
       wait Retard: 12–15 h, in the fridge
       bake Bake: 45 min`,
  ),
  batch: { make: 'pieces', pieces: [{ count: 6, weight: 900 }] },
}
const [levain, dough] = wheat.stages as [Stage, Stage]
const stepOf = (stage: Stage, does: string) => stage.method!.find(one => one.does === does)!
const moment = (stage: Stage, does: string) => `b ${stage.id} ${stepOf(stage, does).id}`

/** The growth of a sourdough yeast by temperature, written down again. */
const y = (t: number) => 0.01251 * (35.99 - t) ** 2.976 * Math.exp(-0.3352 * (35.99 - t))

interface Truth {
  readonly rise: number // °C
  readonly loss: number
  readonly bakeLoss: number
  readonly speed: number
  readonly bulk: number // times its written time
}

/** How one bake went. Lengths: minutes. */
interface Went {
  readonly room: number
  readonly flour: number
  readonly water: number
  readonly dough: number
  readonly raw: number
  readonly baked: number
  readonly ripened: number
  readonly bulk: number
}

/** A bake as a kitchen with that truth has it; `off` is how far each thing is off, a factor near 1. */
function wentSo(
  truth: Truth,
  { room, water, off, degrees }: { room: number; water: number; off: () => number; degrees: () => number },
): Went {
  const flour = room - 1
  // Of 1921 g: kJ/(kg·K) by parts of flour and water; the levain holds 120 of flour and 100 of water in 220.
  const levainHeat = (120 * 1.8 + 100 * 4.185) / 220
  const parts = [
    [1000, 1.8, flour],
    [690, 4.185, water],
    [21, 0.84, room],
    [210, levainHeat, room],
  ] as const
  const held = parts.reduce((sum, [grams, heat]) => sum + grams * heat, 0)
  const mixed = parts.reduce((sum, [grams, heat, at]) => sum + grams * heat * at, 0) / held
  const end = mixed + truth.rise * off() + degrees()
  const raw = (900 * (1 - truth.loss * off())) / 1 // the dough is made for 5400 g
  return {
    room,
    flour,
    water,
    dough: end,
    raw,
    baked: raw * (1 - truth.bakeLoss * off()),
    ripened: truth.speed * off() * (5.8 * Math.log(220 / 40) - 1.9) * (y(22) / y(room)) * 60,
    bulk: (truth.bulk * off() * 240 * y(24)) / y(end),
  }
}

const isoAt = (minutes: number) => new Date(Math.round(minutes * 60) * 1000).toISOString()

function bakeOf(id: string, at: number, went: Went, formula = wheat): Bake {
  const mixed = at + 10 + went.ripened
  const shaped = mixed + 10 + went.bulk
  const figure = (at: string, what: BakeFigure['what'], value: number): BakeFigure => ({
    moment: at,
    what,
    value,
  })
  return {
    id,
    at: isoAt(at),
    name: formula.name,
    formula,
    bread: 'b',
    zone: 'UTC',
    moments: [
      { moment: moment(levain, 'Feed'), at: isoAt(at) },
      { moment: moment(levain, 'Ripen'), at: isoAt(at + 10) },
      { moment: moment(dough, 'Mix'), at: isoAt(mixed) },
      { moment: moment(dough, 'Bulk'), at: isoAt(mixed + 10) },
      { moment: moment(dough, 'Shape'), at: isoAt(shaped) },
    ],
    weighed: [],
    figures: [
      figure(moment(levain, 'Feed'), 'room', went.room),
      figure(moment(dough, 'Mix'), 'room', went.room),
      figure(moment(dough, 'Mix'), 'flour', went.flour),
      figure(moment(dough, 'Mix'), 'water', went.water),
      figure(moment(dough, 'Mix'), 'dough', went.dough),
      figure(moment(dough, 'Shape'), 'raw', went.raw),
      figure(moment(dough, 'Bake'), 'baked', went.baked),
    ],
    timers: [],
    finished: isoAt(shaped + 900),
    note: '',
    verdict: '',
  }
}

const having = (bakes: readonly Bake[], formula = wheat): Workbook => ({
  name: '',
  formulas: [formula],
  larder: [],
  bakes: bakes as readonly unknown[] as readonly Unread[],
})

const lessons: Readonly<Record<keyof Truth, string>> = {
  rise: lessonOf.rise(wheat.id, dough),
  loss: lessonOf.loss(wheat.id),
  bakeLoss: lessonOf.bakeLoss(wheat.id),
  speed: speedLesson(openSheet(wheat, larder), levain.id)!,
  bulk: waitLesson(wheat.id, dough, stepOf(dough, 'Bulk')),
}

const exact = { off: () => 1, degrees: () => 0 }

test('one bake without any error tells the truth of each', () => {
  const truth: Truth = { rise: 1.5, loss: 0.02, bakeLoss: 0.14, speed: 1.11, bulk: 0.9 }
  const bake = bakeOf('one', 29_000_000, wentSo(truth, { room: 21, water: 27, ...exact }))
  // The truth is of exact weights: the scale here weighs them to a thousandth of a gram.
  const scale = { step: 0.001, fineStep: 0.001, fineBelow: 0 }
  const learning = new Learning({ ...having([bake]), scale }, larder)
  for (const what of Object.keys(truth) as (keyof Truth)[])
    near(learning.learnt(lessons[what])!.middle, truth[what], 2e-4)
})

test('what was not measured, or at a bake that is not finished, tells nothing', () => {
  const went = wentSo(
    { rise: 1, loss: 0, bakeLoss: 0.1, speed: 1, bulk: 1 },
    { room: 21, water: 27, ...exact },
  )
  const { finished: _finished, ...open } = bakeOf('one', 29_000_000, went)
  const bare = { ...bakeOf('two', 29_000_000, went), figures: [], moments: [] }
  const learning = new Learning(having([open, bare]), larder)
  for (const name of Object.values(lessons)) assert.equal(learning.learnt(name), undefined)
})

const seeds = 60
for (const count of [3, 6, 12])
  test(`simulated kitchens of ${count} bakes: the range holds the truth in at least 90 % of seeds 1–${seeds}`, () => {
    const held: Record<keyof Truth, number> = { rise: 0, loss: 0, bakeLoss: 0, speed: 0, bulk: 0 }
    for (let seed = 1; seed <= seeds; seed++) {
      const { next } = randomOf(seed * 1000 + count)
      const around = () => next() + next() + next() + next() - 2 // of a bell, σ 0.58
      const truth: Truth = {
        rise: 0.8 + 4 * next(),
        loss: 0.005 + 0.04 * next(),
        bakeLoss: 0.08 + 0.12 * next(),
        speed: 0.7 + 0.8 * next(),
        bulk: 0.7 + 0.6 * next(),
      }
      const off = () => 1 + 0.1 * around() // 6 % either way
      const degrees = () => 0.3 * around() // of the thermometers, °C
      const bakes = Array.from({ length: count }, (_, i) => {
        const went = wentSo(truth, { room: 18 + 8 * next(), water: 15 + 20 * next(), off, degrees })
        return bakeOf(`bake${i}`, 29_000_000 + i * 10_000, went)
      })
      const learning = new Learning(having(bakes), larder)
      for (const what of Object.keys(held) as (keyof Truth)[]) {
        const { low, high, count: told } = learning.learnt(lessons[what])!
        assert.equal(told, count)
        if (low <= truth[what] && truth[what] <= high) held[what]++
      }
    }
    for (const [what, times] of Object.entries(held))
      assert.ok(times >= 0.9 * seeds, `${what} in ${times} of ${seeds}`)
  })

test('taken over, a wait says the time that was learnt, and a levain the one that follows from its speed as it is fed', () => {
  const bakes = [1, 2, 3, 4, 5].map(i =>
    bakeOf(
      `bake${i}`,
      29_000_000 + i * 10_000,
      wentSo(
        { rise: 1, loss: 0, bakeLoss: 0.1, speed: 1.2, bulk: [0.8, 0.85, 0.9, 0.95, 1][i - 1]! },
        { room: 20 + i, water: 26, ...exact },
      ),
    ),
  )
  const workbook = having(bakes)
  const learning = new Learning(workbook, larder)
  const bulk = stepOf(dough, 'Bulk')
  // 0.8–1.0 of four hours: 3 h 12–4 h, the middle 3 h 36, to five minutes as it is written.
  const length = waitLearnt(bulk, learning.learnt(lessons.bulk)!)!
  near(length.least, 192, 0.2)
  near(length.usual, 216, 0.2)
  const at = { formula: wheat.id, stage: dough.id, step: bulk.id }
  const after = applyChanges(workbook, takeStepTime(workbook, at, bulk, length)!.changes).workbook
  const said = after.formulas[0]!.stages[1]!.method!.find(({ id }) => id === bulk.id)!
  assert.equal(said.text, '3 h 10–4 h 00, at 24 °C'.replace(' 00', ''))
  assert.ok(saysSo(said, length))
  assert.equal(takeStepTime(after, at, said, length), undefined)

  const ripe = ripeningLearnt(openSheet(wheat, larder), levain.id, learning.learnt(lessons.speed)!, 20)!
  near(ripe.usual, (1.2 * (5.8 * Math.log(5.5) - 1.9) * y(22) * 60) / y(24), 0.5)
})

test('a levain made for two breads is told of by one bake, and both have its times', () => {
  const rye: Formula = { ...wheat, id: 'rye', name: 'Tin loaf' }
  const went = wentSo(
    { rise: 1, loss: 0, bakeLoss: 0.1, speed: 1.1, bulk: 1 },
    { room: 21, water: 27, ...exact },
  )
  const first: Bake = { ...bakeOf('one', 29_000_000, went), day: 'day' }
  const mine = first.moments.filter(({ moment: at }) => !at.includes(levain.id))
  const second: Bake = {
    ...first,
    id: 'two',
    bread: 'c',
    formula: rye,
    moments: [
      ...first.moments.filter(({ moment: at }) => at.includes(levain.id)),
      ...mine.map(one => ({ ...one, moment: one.moment.replace(/^b /, 'c ') })),
    ],
  }
  const learning = new Learning(having([first, second]), larder)
  assert.equal(learning.learnt(lessons.speed)!.count, 1)
})
