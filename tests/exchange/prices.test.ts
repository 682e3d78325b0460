import assert from 'node:assert/strict'
import { test } from 'node:test'
import { emptyWorkbook, type Workbook } from '../../src/dough/document/workbook.js'
import { defineIngredient } from '../../src/dough/edits/fetched/larder-edits.js'
import { usualLarder } from '../../src/dough/larder/usual-larder.js'
import { partOfWorkbook } from '../../src/exchange/data/part-of-workbook.js'
import { mergeWorkbooks, readWorkbookFile, restorePlan, writeWorkbookFile } from '../../src/exchange/index.js'
import { History } from '../../src/storage/history.js'
import { bread } from '../day/notation.js'
import { Disk, keeperOn } from '../storage/stand-ins.js'

const salt = usualLarder.find(({ name }) => name === 'Salt')!
const bought = { ...salt, pack: 1000, price: 1.25, supplier: 'Brackwater Mill', stock: 400 }
const at = '2026-11-30T09:00:00.000Z'
const priced: Workbook = { ...emptyWorkbook, name: 'Mill', currency: 'EUR', larder: [bought] }
const textOf = (workbook: object) => writeWorkbookFile(workbook as Workbook, at)

test('packs, prices, suppliers, stock and the currency are in the workbook file, to the byte', () => {
  const { workbook, problems } = readWorkbookFile(textOf(priced))
  assert.deepEqual(problems, [])
  assert.equal(workbook!.currency, 'EUR')
  assert.equal(textOf(workbook!), textOf(priced))
  assert.deepEqual(JSON.parse(textOf(workbook!)).larder[0].price, 1.25)
})

test('and in the storage, in which a workbook without them is read as before', async () => {
  const disk = new Disk()
  const { keeper } = await keeperOn(disk)
  keeper.keep(priced)
  await keeper.flush()
  const again = (await keeperOn(disk)).keeper.workbook
  assert.equal(again.currency, 'EUR')
  assert.equal(again.larder[0]!.stock, 400)
  const plain = readWorkbookFile(textOf({ ...emptyWorkbook, larder: [salt] })).workbook!
  assert.ok(!('currency' in plain))
  assert.equal(plain.larder[0]!.price, undefined)
})

test('what cannot be read of them is left out and told, and the ingredient stays', () => {
  const damaged = { ...bought, pack: 0, price: -1, supplier: 7, stock: 'much' }
  const { workbook, problems } = readWorkbookFile(textOf({ ...priced, currency: 'euro', larder: [damaged] }))
  const { pack, price, supplier, stock, name } = workbook!.larder[0]!
  assert.deepEqual([pack, price, supplier, stock, name], [undefined, undefined, undefined, undefined, 'Salt'])
  assert.equal(workbook!.currency, undefined)
  assert.deepEqual(problems.map(({ code }) => code).toSorted(), [
    'currencyUnreadable',
    ...Array(4).fill('fieldNotUnderstood'),
  ])
})

test('a price and the currency it is in are one edit, undone as one', () => {
  const history = new History(emptyWorkbook)
  history.apply(defineIngredient(bought, 'EUR'))
  assert.deepEqual([history.workbook.currency, history.workbook.larder[0]!.price], ['EUR', 1.25])
  history.undo()
  assert.deepEqual(history.workbook, emptyWorkbook)
})

test('prices of a file in another currency are not taken for prices in this', () => {
  const pepper = { ...bought, id: 'own-pepper', name: 'Pepper', otherNames: [] }
  const theirs: Workbook = { ...priced, currency: 'USD', larder: [pepper] }
  const plan = restorePlan(priced, theirs)
  assert.deepEqual(plan.currencies, { current: 'EUR', incoming: 'USD' })
  const history = new History(priced)
  history.apply(mergeWorkbooks(priced, theirs, { way: 'merge', differing: 'take' }))
  const added = history.workbook.larder.find(({ name }) => name === 'Pepper')!
  assert.deepEqual([history.workbook.currency, added.pack, added.price], ['EUR', 1000, undefined])
  const replacing = new History(priced)
  replacing.apply(mergeWorkbooks(priced, theirs, { way: 'replace' }))
  assert.deepEqual([replacing.workbook.currency, replacing.workbook.larder[0]!.price], ['USD', 1.25])
  const first = new History(emptyWorkbook)
  first.apply(mergeWorkbooks(emptyWorkbook, theirs, { way: 'merge', differing: 'take' }))
  assert.deepEqual([first.workbook.currency, first.workbook.larder[0]!.price], ['USD', 1.25])
})

test('some formulas sent to others do not tell what is bought where and for how much', () => {
  const formula = bread('Miche', 'Final dough:\n Bread flour 1000 g\n Salt 20 g')
  const part = partOfWorkbook({ ...priced, larder: [bought] }, [formula])
  assert.equal(part.larder.length, 1)
  assert.doesNotMatch(textOf(part), /price|supplier|stock|currency/)
})
