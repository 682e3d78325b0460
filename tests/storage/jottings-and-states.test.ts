import assert from 'node:assert/strict'
import { test } from 'node:test'
import type { Formula } from '../../src/dough/document/formula.js'
import { applyChanges, type Transaction, type Workbook } from '../../src/dough/document/workbook.js'
import { putJotting } from '../../src/dough/edits/fetched/jotting-edits.js'
import { bringBack, keepState } from '../../src/dough/edits/fetched/state-edits.js'
import { openFormula } from '../../src/dough/formula-sheet.js'
import { newsInWords } from '../../src/storage/news.js'
import { inWords, loaf, withFormula, workbookOf } from './bread.js'
import { Disk, keeperOn } from './stand-ins.js'

const after = (workbook: Workbook, transaction: Transaction) =>
  applyChanges(workbook, transaction.changes).workbook
const at = '2025-11-24T07:42:00.000Z'

/** Miche with a jotting and a kept state. */
function miche(): Formula {
  let workbook = workbookOf(loaf('Miche', 'flour 100%', 'salt 2%'))
  workbook = after(workbook, putJotting(workbook, 'Miche', { id: 'j', name: 'tin', text: '21*11' }))
  workbook = after(workbook, keepState(workbook, 'Miche', 'before', at))
  return workbook.formulas[0]!
}

async function diskWith(...formulas: readonly Formula[]): Promise<Disk> {
  const disk = new Disk()
  const { keeper } = await keeperOn(disk)
  keeper.keep(workbookOf(...formulas))
  await keeper.flush()
  return disk
}

/** Puts other values in the stored record of Miche. */
function spoil(disk: Disk, fields: Readonly<Record<string, unknown>>): void {
  disk.parts.set('formula Miche', { ...(disk.parts.get('formula Miche') as object), ...fields })
}

test('jottings and kept states are loaded as they were saved', async () => {
  const { keeper } = await keeperOn(await diskWith(miche()))
  const [formula] = keeper.workbook.formulas
  assert.deepEqual(formula!.jottings, [{ id: 'j', name: 'tin', text: '21*11' }])
  assert.equal(formula!.states![0]!.name, 'before')
  assert.deepEqual(keeper.problems, [])
  const back = after(keeper.workbook, bringBack(keeper.workbook, 'Miche', formula!.states![0]!.id))
  assert.equal(inWords(back), 'Miche flour 100% salt 2%')
})

const good = miche()
const damages: readonly (readonly [what: string, fields: Readonly<Record<string, unknown>>])[] = [
  ['a jotting without a text', { jottings: [{ id: 'x', name: 'half' }, ...good.jottings!] }],
  ['jottings that are no list', { jottings: 'tin = 231' }],
  ['a state without a formula', { states: [...good.states!, { id: 's', name: 'lost', keptAt: at }] }],
  [
    'a state whose formula has no stages',
    { states: [...good.states!, { ...good.states![0], id: 's', formula: { ...good, stages: [] } }] },
  ],
  ['states that are nothing', { states: null }],
]
for (const [what, fields] of damages) {
  test(`${what}: the formula is there with the rest, it is said, and nothing stored is lost`, async () => {
    const disk = await diskWith(miche())
    spoil(disk, fields)
    const { keeper } = await keeperOn(disk)
    assert.equal(inWords(keeper.workbook), 'Miche flour 100% salt 2%')
    assert.match(newsInWords(keeper.problems[0]!), /“Miche” is damaged\. Not read of it: (?:jotting|.*state)/)
    const [formula] = keeper.workbook.formulas
    const lists = [formula!.jottings, formula!.states]
    assert.ok(lists.every((list = []) => Array.isArray(list) && list.every(item => item.id)))
    assert.equal(openFormula(formula!).reading('totalFlour'), 0)

    // saved with a change, what could not be read is put aside, and is not complained of again
    keeper.keep(withFormula(keeper.workbook, { ...formula!, note: 'dark' }))
    await keeper.flush()
    const stored = JSON.stringify([...disk.parts].filter(([key]) => /^damaged .* formula Miche$/.test(key)))
    const [damaged] = Object.values(fields)
    const whole: readonly unknown[] = [...good.jottings!, ...good.states!]
    for (const item of (Array.isArray(damaged) ? damaged : [damaged]).filter(i => !whole.includes(i)))
      assert.ok(stored.includes(JSON.stringify(item)), `${JSON.stringify(item)} is in ${stored}`)
    assert.deepEqual((await keeperOn(disk)).keeper.problems, [])
  })
}

test('a damaged jotting inside a kept state does not take the state with it', async () => {
  const disk = await diskWith(miche())
  const [state] = good.states!
  spoil(disk, { states: [{ ...state, formula: { ...state!.formula, jottings: [5, ...good.jottings!] } }] })
  const { keeper } = await keeperOn(disk)
  assert.deepEqual(keeper.workbook.formulas[0]!.states![0]!.formula.jottings, good.jottings)
})
