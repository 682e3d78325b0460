import assert from 'node:assert/strict'
import { test } from 'node:test'
import { merge } from '../../src/storage/record/merge.js'
import { inWords, loaf, withFormula, workbookOf } from './bread.js'
import { Disk, keeperOn } from './stand-ins.js'

/** `Miche 70%; Rye 80%` as a workbook: breads with their water. */
const shelf = (text: string) =>
  workbookOf(
    ...text
      .split('; ')
      .filter(Boolean)
      .map(bread => {
        const [name = '', water = ''] = bread.split(' ')
        return loaf(name, `water ${water}`)
      }),
  )
const shown = (words: string) => words.replaceAll(' water', '')

for (const [what, base, mine, theirs, merged] of [
  ['different formulas changed', 'A 1%; B 1%', 'A 2%; B 1%', 'A 1%; B 3%', 'A 2%; B 3%'],
  [
    'one formula changed in both',
    'A 1%; B 1%',
    'A 2%; B 1%',
    'A 3%; B 1%',
    'A 3%; A (from another tab) 2%; B 1%',
  ],
  ['one formula changed alike', 'A 1%', 'A 2%', 'A 2%', 'A 2%'],
  ['formulas added in both', 'A 1%', 'A 1%; B 1%', 'A 1%; C 1%', 'A 1%; C 1%; B 1%'],
  ['deleted here', 'A 1%; B 1%', 'B 1%', 'A 1%; B 2%', 'B 2%'],
  ['deleted there', 'A 1%; B 1%', 'A 1%; B 2%', 'B 1%', 'B 2%'],
  ['deleted here and changed there', 'A 1%', '', 'A 2%', 'A 2%'],
  ['changed here and deleted there', 'A 1%', 'A 2%', '', 'A 2%'],
  ['moved here', 'A 1%; B 1%', 'B 1%; A 1%', 'A 1%; B 2%', 'B 2%; A 1%'],
  ['moved there', 'A 1%; B 1%', 'A 2%; B 1%', 'B 1%; A 1%', 'B 1%; A 2%'],
] as const) {
  test(`two tabs: ${what}`, () => {
    const { workbook } = merge(shelf(base), shelf(mine), shelf(theirs))
    assert.equal(shown(inWords(workbook)), merged)
  })
}

test('what a tab had not changed is the other’s workbook itself', () => {
  const theirs = shelf('A 1%; B 1%')
  assert.equal(merge(shelf('A 1%'), shelf('A 1%'), theirs).workbook, theirs)
})

/** Two keepers that do not hear of each other. */
async function twoTabs(mayWrite: boolean) {
  const disk = new Disk()
  const first = await keeperOn(disk)
  first.keeper.keep(shelf('A 1%; B 1%'))
  await first.keeper.flush()
  return { disk, first, second: await keeperOn(disk, { mayWrite }) }
}

const change = (text: string) => loaf(text.split(' ')[0]!, `water ${text.split(' ')[1]}`)

test('a save that finds another’s edits writes over none of them and keeps its own', async () => {
  const { disk, first, second } = await twoTabs(true)
  first.keeper.keep(withFormula(first.keeper.workbook, change('A 2%')))
  await first.keeper.flush()
  second.keeper.keep(withFormula(second.keeper.workbook, change('A 3%')))
  await second.keeper.flush()

  assert.equal(second.keeper.state.status, 'saved')
  const third = await keeperOn(disk)
  assert.equal(shown(inWords(third.keeper.workbook)), 'A 2%; A (from another tab) 3%; B 1%')
  assert.deepEqual(
    second.loaded.map(l => l.why),
    ['The workbook was changed in another tab. What you had changed here is kept as “A (from another tab)”.'],
  )
  assert.equal(second.keeper.problems.length, 1)
})

test('a read-only tab follows what the other saves, and unchanged formulas stay the same objects', async () => {
  const { first, second } = await twoTabs(false)
  assert.equal(second.keeper.state.status, 'read-only')
  const b = second.keeper.workbook.formulas[1]
  first.keeper.keep(withFormula(first.keeper.workbook, change('A 2%')))
  await first.keeper.flush()
  second.others.saved()
  await second.keeper.takeOver()
  assert.equal(shown(inWords(second.keeper.workbook)), 'A 2%; B 1%')
  assert.equal(second.keeper.workbook.formulas[1], b)
  assert.equal(second.loaded.length, 1)
})

test('what is read is prepared before it is taken in, with what a page that went away left behind', async () => {
  const { disk, first } = await twoTabs(false)
  first.keeper.keep(withFormula(first.keeper.workbook, change('A half')))
  first.leave()
  disk.fault = 'never ends' // of the save that the page begins as it goes
  const prepared: string[] = []
  let go = () => {}
  const gate = new Promise<void>(resolve => {
    go = resolve
  })
  let asked = () => {}
  const isAsked = new Promise<void>(resolve => {
    asked = resolve
  })
  const opened = keeperOn(new Disk(new Map(disk.parts)), {
    prepare: formulas => {
      prepared.push(...formulas.map(f => inWords(workbookOf(f))))
      asked()
      return gate
    },
  })
  let isOpen = false
  void opened.then(() => {
    isOpen = true
  })
  await isAsked
  await new Promise(resolve => setImmediate(resolve))
  assert.deepEqual(prepared.map(shown), ['A 1%', 'B 1%', 'A half'])
  assert.equal(isOpen, false)
  go()
  const { keeper } = await opened
  assert.equal(shown(inWords(keeper.workbook)), 'A half; B 1%')
})

test('a tab that is asked to hand over saves first and is read-only at once', async () => {
  const { disk, first } = await twoTabs(false)
  first.keeper.keep(withFormula(first.keeper.workbook, change('A 2%')))
  const handedOver = first.others.asked()
  assert.equal(first.keeper.state.status, 'read-only')
  await handedOver
  assert.equal(first.keeper.state.status, 'read-only')
  assert.equal(shown(inWords((await keeperOn(disk)).keeper.workbook)), 'A 2%; B 1%')
})

test('a tab that lost its turn before it could save keeps the edit, says so, and saves it when it is back', async () => {
  const { disk, first, second } = await twoTabs(true)
  first.keeper.keep(withFormula(first.keeper.workbook, change('A 2%')))
  first.others.lost()
  assert.deepEqual(
    [first.keeper.state.status, 'unsaved' in first.keeper.state && first.keeper.state.unsaved],
    ['read-only', true],
  )
  await first.keeper.flush()
  assert.equal(disk.written.length, 1, 'a read-only tab does not write')

  second.keeper.keep(withFormula(second.keeper.workbook, change('A 3%')))
  await second.keeper.flush()
  first.others.saved()
  await first.keeper.takeOver()
  await first.keeper.flush()
  assert.equal(first.keeper.state.status, 'saved')
  assert.equal(shown(inWords((await keeperOn(disk)).keeper.workbook)), 'A 3%; A (from another tab) 2%; B 1%')
})
