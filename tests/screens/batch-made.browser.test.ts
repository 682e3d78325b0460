import { sendMouse } from '@web/test-runner-commands'
import { setBatch } from '../../src/dough/edits/fetched/batch-edits'
import { deepEqual, equal, match, near, ok } from '../assert'
import { press, type } from '../keys'
import { itCase } from '../once'
import { BatchDesk } from './batch-desk'
import { millWheat, straightDough } from './breads'
import { dressPage, textOf } from './mount'

describe('How much to make', () => {
  let desk: BatchDesk

  before(dressPage)
  afterEach(() => desk.close())

  const german = { language: 'de', decimal: ',' } as const
  const build = () => desk.sheet.stage(desk.formula.stages.at(-1)!.id).build

  it('is a sentence until it is changed', async () => {
    desk = await BatchDesk.open(millWheat())
    equal(desk.prose, 'As written: 1,921 g of dough.')
    equal(desk.isOpen, false)
    equal(desk.control('Change how much to make').ariaExpanded, 'false')
  })

  it('is pieces of a weight, each field taken as it is left', async () => {
    desk = await BatchDesk.open(millWheat())
    await desk.change()
    await desk.choose('pieces')
    equal(desk.edits, 0)
    match(desk.unfinished, /Something is still missing here/)
    await desk.enter('Number of pieces', '6')
    equal(desk.edits, 0)
    await desk.enter('Weight of a piece, grams', '900')
    equal(desk.edits, 1)
    equal(desk.unfinished, '')
    await desk.enter('Lost in mixing and shaping, per cent', '2')
    equal(desk.edits, 2)
    equal(desk.prose, 'Make 6 pieces of 900 g; 2 % lost in mixing.')
    near(build(), 5400 / 0.98)
    await desk.enter('Keep back of Levain, grams', '50')
    equal(desk.prose, 'Make 6 pieces of 900 g; 2 % lost in mixing; keep back 50 g of Levain.')
    near(desk.sheet.batchWeight('Levain', 'Ripe starter'), 118.612, 1e-5)
  })

  it('names a shape, and says beside its dough what a piece weighs baked', async () => {
    desk = await BatchDesk.open(millWheat())
    await desk.change()
    await desk.choose('pieces of a dough')
    await desk.enter('Number of pieces', '3')
    await desk.enter('Weight of a piece, grams', '852')
    await desk.enter('Name of the shape or the tin', 'round tin')
    await desk.enter('Lost in baking, per cent', '12')
    // 852 g × 0.88 = 749.76 g
    equal(desk.prose, 'Make 3 pieces of 852 g (750 g baked), round tin.')
    near(build(), 3 * 852)
  })

  it('is reached, filled in and closed by keys alone', async () => {
    desk = await BatchDesk.open(millWheat())
    desk.control('Change how much to make').focus()
    await press('Enter', 'Tab')
    await type('pieces')
    await press('Tab')
    await type('6')
    await press('Tab')
    await type('850')
    // past the name of the shape, another shape and what is lost in baking and in mixing
    await press('Enter', 'Tab', 'Tab', 'Tab', 'Tab', 'Tab')
    await type('60')
    await press('Enter', 'Escape')
    await desk.settled()
    equal(desk.prose, 'Make 6 pieces of 850 g; keep back 60 g of Levain.')
    equal(desk.focused, desk.control('Change how much to make'))
    equal(desk.isOpen, false)
  })

  it('is several shapes at once', async () => {
    desk = await BatchDesk.open(millWheat())
    await desk.change()
    await desk.choose('pieces')
    await desk.enter('Number of pieces', '4')
    await desk.enter('Weight of a piece, grams', '900')
    desk.control('Add a shape').focus()
    await press('Enter')
    await desk.settled()
    equal(desk.focused, desk.control('Number of pieces, shape 2'))
    await type('12')
    await press('Tab')
    await type('85')
    await press('Enter')
    await desk.settled()
    equal(desk.prose, 'Make 4 pieces of 900 g and 12 of 85 g.')
    near(build(), 4620)
    desk.control('Leave out shape 1').focus()
    await press('Enter')
    await desk.settled()
    equal(desk.prose, 'Make 12 pieces of 85 g.')
    equal(desk.focused, desk.control('Add a shape'))
    await desk.undo()
    equal(desk.prose, 'Make 4 pieces of 900 g and 12 of 85 g.')
  })

  it('is pieces by their baked weight', async () => {
    desk = await BatchDesk.open(millWheat())
    await desk.change()
    await desk.choose('pieces of a baked')
    await desk.enter('Number of pieces', '6')
    await desk.enter('Weight of a piece, grams', '800')
    equal(desk.control('Lost in baking, per cent').value, '12')
    await desk.enter('Lost in mixing and shaping, per cent', '2')
    equal(desk.prose, 'Make 6 pieces of 800 g when baked; 12 % lost in baking, 2 % lost in mixing.')
    near(build(), 4800 / 0.88 / 0.98)
  })

  for (const [at, [words, label, typed, prose, dough]] of (
    [
      ['an amount', 'Weight of dough, grams', '5.4 kg', 'Make 5,400 g of dough.', 5400],
      ['from', 'Weight of all flour, grams', '2229.09', 'Make the dough of 2,229.09 g of flour.', 3842],
      ['all of', 'Weight of the ingredient, grams', '310', 'Use all of 310 g of Levain.', (1921 * 310) / 210],
      ['a multiple', 'Times what is written', '2.5', 'Make 2.5 times what is written.', 4802.5],
    ] as const
  ).entries())
    itCase(at)(`is ${words} …: as much as now until another number is typed`, async () => {
      desk = await BatchDesk.open(millWheat())
      await desk.change()
      await desk.choose(words)
      near(build(), 1921, 1e-3)
      await desk.enter(label, typed)
      equal(desk.prose, prose)
      near(build(), dough, 1e-5)
      await desk.choose('as written')
      equal(desk.prose, 'As written: 1,921 g of dough.')
    })

  it('is all of whichever ingredient is chosen', async () => {
    desk = await BatchDesk.open(millWheat())
    await desk.change()
    await desk.choose('all of')
    await desk.choose('Salt', 'Ingredient')
    equal(desk.control('Weight of the ingredient, grams').value, '21')
    await desk.enter('Weight of the ingredient, grams', '42')
    near(build(), 3842)
    await desk.choose('Bread', 'Ingredient')
    equal(desk.control('Weight of the ingredient, grams').value, '42')
  })

  it('goes from one way to another and back without losing what was typed', async () => {
    desk = await BatchDesk.open(millWheat())
    await desk.change()
    await desk.choose('pieces')
    await desk.enter('Number of pieces', '6')
    await desk.enter('Weight of a piece, grams', '900')
    await desk.choose('an amount')
    equal(desk.control('Weight of dough, grams').value, '5400')
    await desk.enter('Weight of dough, grams', '3000')
    await desk.choose('pieces')
    equal(desk.prose, 'Make 6 pieces of 900 g.')
  })

  it('is typed with the baker’s own decimal sign', async () => {
    desk = await BatchDesk.open(millWheat(), german)
    await desk.change()
    await desk.choose('an amount')
    await desk.enter('Weight of dough, grams', '1,25 kg')
    deepEqual(desk.formula.batch, { make: 'dough', grams: 1250 })
    await desk.choose('a multiple')
    await desk.enter('Times what is written', '2,5')
    deepEqual(desk.formula.batch, { make: 'factor', factor: 2.5 })
    equal(desk.control('Times what is written').value, '2,5')
  })

  for (const [at, [label, typed, why]] of (
    [
      ['Number of pieces', 'six', 'Write how many pieces, like 6.'],
      ['Weight of a piece, grams', '-900', 'Write a weight above 0, like 900 or 1.2 kg.'],
      ['Weight of a piece, grams', '', 'Write a weight above 0, like 900 or 1.2 kg.'],
      ['Lost in mixing and shaping, per cent', '100', 'A loss is a percentage from 0 to below 100.'],
      ['Keep back of Levain, grams', 'some', 'Write a number of grams, or nothing.'],
      ['Keep back of Levain, grams', '-5', 'What is kept back is a number of grams, 0 or more.'],
    ] as const
  ).entries())
    itCase(at)(
      `says beneath “${label}” why ${typed || 'nothing'} is not taken, and Escape brings back what is kept`,
      async () => {
        const batch = { make: 'pieces', pieces: [{ count: 6, weight: 900 }] } as const
        desk = await BatchDesk.open(millWheat({ batch }))
        await desk.change()
        const kept = desk.control(label).value
        await desk.enter(label, typed)
        deepEqual(desk.faults, [why])
        equal(desk.control(label).value, typed)
        equal(desk.control(label).ariaInvalid, 'true')
        deepEqual([desk.edits, desk.formula.batch], [0, batch])
        desk.control(label).focus()
        await press('Escape')
        await desk.settled()
        deepEqual(desk.faults, [])
        equal(desk.control(label).value, kept)
        ok(desk.isOpen)
      },
    )

  it('keeps what was not taken in one field while another is', async () => {
    desk = await BatchDesk.open(millWheat({ batch: { make: 'pieces', pieces: [{ count: 6, weight: 900 }] } }))
    await desk.change()
    await desk.enter('Number of pieces', 'six')
    await desk.enter('Weight of a piece, grams', '850')
    equal(desk.control('Number of pieces').value, 'six')
    equal(desk.prose, 'Make 6 pieces of 850 g.')
  })

  it('follows an edit made elsewhere', async () => {
    desk = await BatchDesk.open(millWheat())
    await desk.change()
    await desk.choose('from')
    const { history } = desk.around
    history.apply(setBatch(history.workbook, desk.formula.id, { make: 'factor', factor: 3 }))
    await desk.undo()
    await desk.undo()
    equal(desk.prose, 'As written: 1,921 g of dough.')
    equal(desk.control<HTMLSelectElement>('Make').value, 'as written')
  })

  it('can be read and not changed where another tab writes', async () => {
    desk = await BatchDesk.open(millWheat())
    desk.batch.readOnly = true
    await desk.settled()
    equal(desk.batch.shadowRoot!.querySelector('button'), null)
    equal(textOf(desk.batch.shadowRoot!.querySelector('.prose')), 'As written: 1,921 g of dough.')
  })

  it('is opened and closed with the mouse', async () => {
    desk = await BatchDesk.open(straightDough('Bread flour = 100%\nWater = 70%', 'Plain'))
    for (const isOpen of [true, false]) {
      const box = desk.batch.shadowRoot!.querySelector('#toggle')!.getBoundingClientRect()
      await sendMouse({
        type: 'click',
        position: [Math.round(box.x + box.width / 2), Math.round(box.y + box.height / 2)],
      })
      await desk.settled()
      equal(desk.isOpen, isOpen)
    }
  })
})
