import assert from 'node:assert/strict'
import { test } from 'node:test'
import { applyChanges } from '../../src/dough/document/workbook.js'
import { Refusal, renameWorkbook } from '../../src/dough/edits/edits.js'
import { setScale } from '../../src/dough/edits/fetched/batch-edits.js'
import { merge } from '../../src/storage/record/merge.js'
import { loaf, workbookOf } from './bread.js'
import { Disk, keeperOn } from './stand-ins.js'

const miche = loaf('Miche', 'flour 100%')
const spoonScale = { step: 5, fineStep: 0.01, fineBelow: 20 }
const shopScale = { step: 10, fineStep: 1, fineBelow: 0 }

test('the scale is set, and taken back to what it was, or to none', () => {
  const plain = workbookOf(miche)
  const first = applyChanges(plain, setScale(spoonScale).changes)
  assert.deepEqual(first.workbook, { ...plain, scale: spoonScale })
  const second = applyChanges(first.workbook, setScale(shopScale).changes)
  assert.deepEqual(second.workbook.scale, shopScale)
  assert.deepEqual(applyChanges(second.workbook, second.inverse).workbook, first.workbook)
  assert.deepEqual(applyChanges(first.workbook, first.inverse).workbook, plain)
})

test('another name leaves the scale as it is', () => {
  const start = { ...workbookOf(miche), scale: spoonScale }
  const { workbook, inverse } = applyChanges(start, renameWorkbook('Mill').changes)
  assert.deepEqual(workbook, { ...start, name: 'Mill' })
  assert.deepEqual(applyChanges(workbook, inverse).workbook, start)
})

for (const scale of [
  { step: 0, fineStep: 0.1, fineBelow: 10 },
  { step: 1, fineStep: -1, fineBelow: 10 },
  { step: Number.NaN, fineStep: 0.1, fineBelow: 10 },
  { step: 1, fineStep: 0.1, fineBelow: -1 },
  { step: 1, fineStep: 0.1, fineBelow: Number.POSITIVE_INFINITY },
])
  test(`no scale has ${JSON.stringify(scale)}`, () => {
    assert.throws(() => setScale(scale), Refusal)
  })

test('the scale is kept with the workbook, and gone when it is taken back', async () => {
  const disk = new Disk()
  const first = await keeperOn(disk)
  first.keeper.keep({ ...workbookOf(miche), scale: spoonScale })
  await first.keeper.flush()
  const second = await keeperOn(disk)
  assert.deepEqual(second.keeper.workbook, { ...workbookOf(miche), scale: spoonScale })
  second.keeper.keep(workbookOf(miche))
  await second.keeper.flush()
  assert.deepEqual((await keeperOn(disk)).keeper.workbook, workbookOf(miche))
})

test('a scale that cannot be read is the usual one', async () => {
  const disk = new Disk()
  const { keeper } = await keeperOn(disk)
  keeper.keep(workbookOf(miche))
  await keeper.flush()
  for (const scale of [5, null, { step: 1 }, { step: 0, fineStep: 1, fineBelow: 1 }]) {
    disk.parts.set('workbook', { ...(disk.parts.get('workbook') as object), scale })
    assert.deepEqual((await keeperOn(disk)).keeper.workbook, workbookOf(miche))
  }
})

const withScale = (scale: typeof spoonScale | undefined) => ({
  ...workbookOf(miche),
  ...(scale && { scale }),
})
for (const [what, base, mine, theirs, merged] of [
  ['set here', undefined, spoonScale, undefined, spoonScale],
  ['set there', undefined, undefined, spoonScale, spoonScale],
  ['set in both', undefined, spoonScale, shopScale, shopScale],
  ['taken back here', spoonScale, undefined, spoonScale, undefined],
] as const)
  test(`two tabs: the scale ${what}`, () => {
    const { workbook } = merge(withScale(base), withScale(mine), withScale(theirs))
    assert.deepEqual(workbook, withScale(merged))
  })
