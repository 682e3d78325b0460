import assert from 'node:assert/strict'
import { test } from 'node:test'
import { finalDoughOf } from '../../src/dough/document/formula.js'
import { larderOf } from '../../src/dough/document/larder.js'
import { confirmedNote, isUnconfirmed, unconfirmedNote } from '../../src/dough/document/words.js'
import { applyChanges, emptyWorkbook } from '../../src/dough/document/workbook.js'
import { enterAmount, enterIngredient } from '../../src/dough/edits/line-edits.js'
import { openFormula } from '../../src/dough/formula-sheet.js'
import { lettersApart, nearlySpelled } from '../../src/dough/larder/misspelt.js'
import { usualLarder } from '../../src/dough/larder/usual-larder.js'
import { offersFor } from '../../src/dough/offers/offers.js'
import { remarksOnLine } from '../../src/dough/remarks/remarks.js'
import { randomOf } from '../random.js'
import { formulaOf } from './notation.js'

/** What is offered for a last line of the final dough by that name, and the formula with it. */
function offered(name: string) {
  const formula = formulaOf(
    `Soaker:\nSunflower seeds = 100%\nWater = 100%\n\nFinal dough:\nBread flour = 100%\nWater = 60%\n${name} = 30%`,
  )
  const line = finalDoughOf(formula).lines.at(-1)!
  const sheet = openFormula(formula)
  const offers = remarksOnLine(sheet.workedOut, line.id).flatMap(remark => offersFor(sheet, remark))
  return { formula, offers }
}

const labels = (name: string) => offered(name).offers.map(({ label }) => label)

test('a name left unfinished is offered what it begins', () => {
  const { formula, offers } = offered('Soa')
  assert.deepEqual(
    offers.map(({ label }) => label),
    ['It is Soaker'],
  )
  const workbook = { ...emptyWorkbook, formulas: [formula] }
  const { changes } = offers[0]!.edit(workbook)!
  const [changed] = applyChanges(workbook, changes).workbook.formulas
  assert.equal(finalDoughOf(changed!).lines.at(-1)!.ingredient, 'Soaker')
  // 100 g of seeds and of water, 30 % of 1,000 g of flour: 150 g of water carried in
  assert.equal(openFormula(changed!).reading('trueHydration'), 0.75)
})

test('of ingredients likewise, where few begin so', () => {
  assert.deepEqual(labels('Hone'), ['It is Honey'])
  assert.ok(!labels('Final d').includes('It is Final dough'), 'not the stage that it stands in')
  assert.deepEqual(
    labels('Who').filter(label => label.startsWith('It is')),
    [],
    'too many begin so',
  )
  assert.deepEqual(labels('Ho'), [], 'two letters say nothing')
})

const meant = (name: string) => labels(name).filter(label => label.startsWith('It is'))

/** [typed, the one name that may be meant; '' for none] */
const misspelt: readonly (readonly [typed: string, name: string])[] = [
  ['Watter', 'Water'],
  ['Slat', 'Salt'],
  ['Bred flour', 'Bread flour'],
  ['BRAED FLOUR', 'Bread flour'],
  ['Wholmeal wheat flour', 'Wholemeal wheat flour'],
  ['Instent yaest', 'Instant yeast'], // two letters
  ['Farinne T65', 'Farine T65'],
  ['farine conplete', 'Farine complète'],
  ['beure', 'Beurre'],
  ['farine T56', ''], // T55 and T65 are other flours
  ['Type 551', ''],
  ['Nut flour', ''], // two letters of a short word from oat
  ['Malz', ''], // a word of its own
  ['Watterr', ''], // two letters of seven
  ['Slt', ''], // of three letters nothing
]
for (const [typed, name] of misspelt)
  test(`${typed} ${name ? `is offered to be ${name}` : 'is offered no name that is near'}`, () => {
    const { formula, offers } = offered(typed)
    assert.deepEqual(meant(typed), name ? [`It is ${name}`] : [])
    if (!name) return
    const workbook = { ...emptyWorkbook, formulas: [formula] }
    const { changes } = offers[0]!.edit(workbook)!
    const [changed] = applyChanges(workbook, changes).workbook.formulas
    assert.equal(finalDoughOf(formula).lines.at(-1)!.ingredient, typed, 'not before it is taken')
    assert.equal(finalDoughOf(changed!).lines.at(-1)!.ingredient, name)
  })

test('a name as near to two ingredients is offered neither, one as near to two names of the same is', () => {
  const own = (name: string, ...otherNames: string[]) => ({
    ...usualLarder[0]!,
    id: name,
    name,
    otherNames,
  })
  assert.equal(nearlySpelled('Mill grost', larderOf([own('Mill grist'), own('Mill grast')])), undefined)
  assert.equal(nearlySpelled('Mill grost', larderOf([own('Mill grist', 'Mill grast')])), 'Mill grist')
  // of two the nearer
  const two = larderOf([own('Gristmehlert'), own('Gristmehlart')])
  assert.equal(nearlySpelled('Grostmehlart', two), 'Gristmehlart')
})

/** Letters apart as the definition has it, with neither bound nor rows. */
function apart(a: string, b: string): number {
  if (a === '' || b === '') return a.length + b.length
  const [s, t] = [a.slice(0, -1), b.slice(0, -1)]
  const ways = [apart(s, b) + 1, apart(a, t) + 1, apart(s, t) + (a.at(-1) === b.at(-1) ? 0 : 1)]
  if (a.at(-1) === b.at(-2) && a.at(-2) === b.at(-1) && a.length > 1 && b.length > 1)
    ways.push(apart(a.slice(0, -2), b.slice(0, -2)) + 1)
  return Math.min(...ways)
}

test('letters are counted as the definition has them, seed 41', () => {
  const { below, pick } = randomOf(41)
  const word = () => Array.from({ length: below(6) }, () => pick(['a', 'b', 'c'])).join('')
  for (let i = 0; i < 300; i++) {
    const [a, b] = [word(), word()]
    for (const most of [1, 2])
      assert.equal(lettersApart(a, b, most), Math.min(apart(a, b), most + 1), `${a} ${b}`)
  }
})

test('a line that was guessed is offered to be right; so it is, or with another amount, no longer marked', () => {
  const bare = formulaOf('Final dough:\nBread flour = 100%\nWater = 65%\nSalt = 2%')
  const final = finalDoughOf(bare)
  const water = { ...final.lines[1]!, note: unconfirmedNote('cold', '630–670 g of cold water') }
  const stage = { ...final, lines: final.lines.with(1, water) }
  const formula = { ...bare, stages: bare.stages.with(-1, stage) }
  assert.equal(water.note, 'cold. Not confirmed: read from “630–670 g of cold water”')
  const sheet = openFormula(formula)
  const remarks = remarksOnLine(sheet.workedOut, water.id)
  assert.deepEqual(
    remarks.map(({ code, message }) => [code, message]),
    [['lineNotConfirmed', `Water in ${final.name} was guessed. Look whether it is right.`]],
  )
  assert.ok(final.lines.every(({ id }) => id === water.id || remarksOnLine(sheet.workedOut, id).length === 0))
  const workbook = { ...emptyWorkbook, formulas: [formula] }
  const at = { formula: formula.id, stage: final.id, line: water.id }
  const [right] = remarks.flatMap(remark => offersFor(sheet, remark))
  assert.equal(right!.label, 'The line is right')
  for (const edit of [right!.edit(workbook)!, enterAmount(workbook, at, 'percent', '66')]) {
    const [changed] = applyChanges(workbook, edit.changes).workbook.formulas
    assert.equal(finalDoughOf(changed!).lines[1]!.note, 'cold')
  }
  const renamed = applyChanges(workbook, enterIngredient(workbook, at, 'Whole milk').changes)
  assert.equal(finalDoughOf(renamed.workbook.formulas[0]!).lines[1]!.note, water.note)
})

test('of a note only the mark goes when its line is confirmed, and what is no mark is none', () => {
  for (const [own, source] of [
    ['', ''],
    ['cold', 'about “two” cups of water'],
    ['as written.', '500 g'],
  ] as const) {
    const marked = unconfirmedNote(own, source)
    assert.ok(isUnconfirmed(marked), marked)
    assert.equal(confirmedNote(marked), own.replace(/\.$/, ''))
    assert.equal(confirmedNote(`${marked}, less in winter`), `${own.replace(/\.$/, '')}, less in winter`)
  }
  for (const note of ['', 'cold', 'Not confirmed: ask the mill', 'read from “500 g”']) {
    assert.ok(!isUnconfirmed(note), note)
    assert.equal(confirmedNote(note), note)
  }
})
