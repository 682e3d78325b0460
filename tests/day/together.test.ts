import assert from 'node:assert/strict'
import { test } from 'node:test'
import { sharedStages } from '../../src/day/mixing/shared-stages.js'
import { openDay } from '../../src/day/plan/open-day.js'
import type { Day } from '../../src/dough/document/day.js'
import { emptyWorkbook } from '../../src/dough/document/workbook.js'
import { makeTogether } from '../../src/dough/edits/fetched/day-edits.js'
import { History } from '../../src/storage/index.js'
import { near } from './near.js'
import { bread, saturday } from './notation.js'

const wheat = (levain = 'Ripe starter 40 g\n Bread flour 100 g\n Water 80 g') =>
  bread(
    'Mill wheat',
    `Levain:
       ${levain}
       hands Mix: 10 min
       wait Ripen: 8–10 h
     Final dough:
       Bread flour 820 g
       Wholemeal spelt 180 g
       Water 690 g
       Salt 21 g
       Levain 210 g
       hands Mix: 10 min
       wait Bulk: =3 h
       bake Bake: 45 min`,
  )
/** Of the same levain, written otherwise: in another order, half as much, its flour in two lines. */
const rye = (levain = 'Water 40 g\n Bread flour 30 g\n Ripe starter 20 g\n bread flour 20 g') =>
  bread(
    'Light rye',
    `levain:
       ${levain}
       hands Mix: 10 min
       wait Ripen: 8–10 h
     Final dough:
       Rye flour 700 g
       Water 480 g
       Salt 15 g
       Levain 330 g
       hands Mix: 10 min
       wait Bulk: =2 h
       bake Bake: 50 min`,
  )

/** Six wheat of 900 g at 9:00, four rye of 800 g at 9:40, two bakers, two ovens. */
function dayOf(
  formulas: readonly [ReturnType<typeof wheat>, ReturnType<typeof rye>],
  more: Partial<Day> = {},
): Day {
  const day = saturday(
    [
      [formulas[0], 6],
      [formulas[1], 4],
    ],
    { bakers: 2, ...more },
  )
  const [first, second] = day.breads
  const [oven] = day.ovens
  return {
    ...day,
    ovens: [oven!, { ...oven!, id: 'second' }],
    breads: [
      first!,
      {
        ...second!,
        batch: { make: 'pieces', pieces: [{ count: 4, weight: 800 }] },
        ready: '9:40',
        oven: 'second',
      },
    ],
  }
}
const clock = (instant: number) => instant - Date.parse('2026-12-05T00:00Z') / 60_000

test('a stage of one name and one make-up is offered, whatever the order and the size it is written in', () => {
  const formulas = [wheat(), rye()] as const
  const [shared, ...more] = sharedStages(dayOf(formulas), formulas)
  assert.equal(more.length, 0)
  const { builds, ...rest } = shared!
  assert.deepEqual(rest, {
    key: 'levain',
    name: 'Levain',
    otherwise: [],
    isTogether: false,
    sameMethod: true,
  })
  assert.deepEqual(
    builds,
    formulas.map((f, i) => ({ bread: `b${i + 1}`, stage: f.stages[0]!.id })),
  )
})

for (const [what, levain, isShared] of [
  ['a part in a thousand million off', 'Water 40.00000001 g\n Bread flour 50 g\n Ripe starter 20 g', true],
  ['a part in a million off', 'Water 40.0001 g\n Bread flour 50 g\n Ripe starter 20 g', false],
  ['with an ingredient more', 'Water 40 g\n Bread flour 50 g\n Ripe starter 20 g\n Honey 1 g', false],
  ['with another flour', 'Water 40 g\n Rye flour 50 g\n Ripe starter 20 g', false],
  ['with a weight that is not known', 'Water 1 handful\n Bread flour 50 g\n Ripe starter 20 g', false],
] as const)
  test(`a stage ${what} is ${isShared ? 'the same' : 'another'}`, () => {
    const formulas = [wheat(), rye(levain)] as const
    assert.equal(sharedStages(dayOf(formulas), formulas).length, isShared ? 1 : 0)
  })

test('a build of a build is the same only where what it is made of is', () => {
  const of = (seed: string, water: number) =>
    bread(
      seed,
      `Chef:
         Ripe starter 10 g
         Flour ${100 - water} g
         Water ${water} g
       Levain:
         Chef 50 g
         Flour 100 g
         Water 100 g
       Final dough:
         Flour 1000 g
         Levain 200 g
         hands Mix: 10 min`,
    )
  const names = (a: number, b: number) => {
    const formulas = [of('A', a), of('B', b)]
    return sharedStages(
      saturday([
        [formulas[0]!, 1],
        [formulas[1]!, 1],
      ]),
      formulas,
    ).map(s => s.name)
  }
  assert.deepEqual(names(45, 45), ['Chef', 'Levain'])
  assert.deepEqual(names(45, 50), [])
})

test('made together there is one build with the weights of both, one set of steps, and each takes it when it needs it', () => {
  const formulas = [wheat(), rye()] as const
  const sheet = openDay(dayOf(formulas, { together: ['levain'] }), formulas)
  const { events } = sheet.plan!
  const levain = events.filter(e => /levain/i.test(e.stageName))
  assert.deepEqual(
    levain.map(e => [e.step.does, e.breads]),
    [
      ['Mix', ['b1', 'b2']],
      ['Ripen', ['b1', 'b2']],
    ],
  )
  // 210 g × 5400/1921 and 330 g × 3200/1525, shared 40 : 100 : 80
  const grams = [300634080, 751585200, 601268160].map(of => of / 1288991)
  const list = sheet.weighList(levain[0]!.begins)
  assert.deepEqual(
    list.map(w => w.ingredient),
    ['Ripe starter', 'Bread flour', 'Water'],
  )
  for (const [i, w] of list.entries()) near(w.grams!, grams[i]!, 1e-12)
  assert.deepEqual(
    list.map(w => w.lines.length),
    [2, 3, 2],
  )
  // Wheat mixes at 5:05, rye at 6:40: 95 min apart, so that 9 h less and 9 h more 47.5 min is least; mixed from 20:42.5
  const mixed = (bread: string) =>
    events.find(e => e.breads.length === 1 && e.breads[0] === bread && e.step.does === 'Mix')!.from
  near(clock(mixed('b1')), 5 * 60 + 5, 1e-7)
  near(clock(mixed('b2')), 6 * 60 + 40, 1e-7)
  near(clock(levain[0]!.from), -(3 * 60 + 17.5), 1e-7)
  near(sheet.plan!.cost, (2 * 47.5 ** 2) / 120, 1e-7)
})

test('by themselves each has its own at its usual', () => {
  const formulas = [wheat(), rye()] as const
  const { plan } = openDay(dayOf(formulas), formulas)
  const [first, second] = plan!.events.filter(e => /levain/i.test(e.stageName) && e.step.does === 'Mix')
  near(clock(first!.from), -(4 * 60 + 5), 1e-7) // 5:05 less 9 h and 10 min
  near(clock(second!.from), -(2 * 60 + 30), 1e-7) // 6:40 less the same
})

test('what was made together and is no longer the same is made by itself, and told', () => {
  const formulas = [wheat(), rye('Water 50 g\n Bread flour 50 g\n Ripe starter 20 g')] as const
  const day = dayOf(formulas, { together: ['levain'] })
  assert.deepEqual(
    openDay(day, formulas)
      .plan!.events.filter(e => /levain/i.test(e.stageName) && e.step.does === 'Mix')
      .map(e => e.breads),
    [['b1'], ['b2']],
  )
  const [shared] = sharedStages(day, formulas)
  assert.deepEqual([shared!.isTogether, shared!.builds.length, shared!.otherwise], [true, 1, ['b2']])
})

test('the edit makes it so, lets go what was held of the builds that are no more, and is undone as one', () => {
  const formulas = [wheat(), rye()] as const
  const [{ stages }, other] = formulas
  const held = (bread: string, stage: string, step: string) => ({
    moment: `${bread} ${stage} ${step}`,
    at: '2026-12-04T21:00',
  })
  const kept = held('b1', stages[0]!.id, stages[0]!.method![0]!.id)
  const gone = held('b2', other.stages[0]!.id, other.stages[0]!.method![0]!.id)
  const bake = held('b2', other.stages[1]!.id, other.stages[1]!.method![2]!.id)
  const day = dayOf(formulas, { holds: [kept, gone, bake] })
  const history = new History({ ...emptyWorkbook, formulas, days: [day] })
  const [shared] = sharedStages(day, formulas)
  const edit = makeTogether(history.workbook, day.id, shared!, shared!.builds.slice(1))!
  assert.equal(edit.label, 'Make Levain together')
  history.apply(edit)
  assert.deepEqual(history.workbook.days![0]!.together, ['levain'])
  assert.deepEqual(history.workbook.days![0]!.holds, [kept, bake])
  assert.equal(makeTogether(history.workbook, day.id, shared!, []), undefined)
  history.undo()
  assert.deepEqual(history.workbook.days![0], day)
  assert.equal(makeTogether(history.workbook, day.id, shared!, undefined), undefined)
})
