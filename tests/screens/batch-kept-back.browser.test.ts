import { setViewport } from '@web/test-runner-commands'
import type { Batch } from '../../src/dough/document/batch'
import type { Formula } from '../../src/dough/document/formula'
import { deepEqual, equal, near } from '../assert'
import { withStages } from '../dough/notation'
import { press } from '../keys'
import { itCase } from '../once'
import { BatchDesk } from './batch-desk'
import { millWheat, straightDough } from './breads'
import { dressPage, passesAxe } from './mount'

const six: Batch = { make: 'pieces', pieces: [{ count: 6, weight: 900 }], loss: 0.02 }
const keeping = (fields: object, batch: Batch = six): Formula =>
  withStages(millWheat({ batch }), stage => (stage.name === 'Levain' ? { ...stage, ...fields } : stage))

describe('What is made, kept back and left over', () => {
  let desk: BatchDesk

  before(dressPage)
  afterEach(() => desk.close())

  /** Opens what is seldom wanted. */
  async function more(): Promise<void> {
    desk.keepBack!.shadowRoot!.querySelector('summary')!.focus()
    await press('Enter')
    await desk.settled()
  }

  const leftOvers: readonly (readonly [what: string, formula: Formula, ...lines: string[]])[] = [
    ['as written', millWheat(), 'Levain: 220 g made, 210 g taken, 10 g left.'],
    [
      'with a batch and some levain kept back',
      keeping({ keepBack: 50 }),
      'Total to weigh 5,510 g: 6 × 900 g, 2 % lost.',
      'Levain: 652 g made, 602 g goes into Final dough, 50 g kept back.',
    ],
    [
      'with a loss on the way',
      keeping({ loss: 0.05 }, { make: 'dough', grams: 1921 }),
      'Total to weigh 1,921 g.',
      'Levain: 221 g made, 210 g goes into Final dough, 11.1 g lost.',
    ],
    [
      'when only something is kept back',
      keeping({ keepBack: 'seed' }, { make: 'as written' }),
      'Total to weigh 1,921 g.',
      'Levain: 257 g made, 210 g goes into Final dough, 47 g kept back.',
    ],
    [
      'with as much kept back as is weighed of the seed',
      keeping({ keepBack: 'seed' }),
      'Total to weigh 5,510 g: 6 × 900 g, 2 % lost.',
      'Levain: 736 g made, 602 g goes into Final dough, 134 g kept back.',
    ],
    [
      'when the batch is all of something that is not there',
      millWheat({ batch: { make: 'all of', ingredient: 'Rye', grams: 100 } }),
      'The batch cannot be worked out: There is no Rye in the formula to make all of.',
    ],
    ['when a weight is not known', straightDough('Bread flour = 100%\nWater = what', 'Odd')],
  ]
  for (const [at, [what, formula, ...lines]] of leftOvers.entries())
    itCase(at)(`is told ${what}`, async () => {
      desk = await BatchDesk.open(formula)
      deepEqual(desk.left, lines)
    })

  it('has for its total the sum of the lines as they are weighed', async () => {
    desk = await BatchDesk.open(keeping({}))
    const weighed = desk.formula.stages[1]!.lines.map(line => desk.sheet.weighed(line.id)!.grams)
    equal(
      desk.left[0],
      `Total to weigh ${weighed.reduce((sum, g) => sum + g, 0).toLocaleString('en')} g: 6 × 900 g, 2 % lost.`,
    )
  })

  it('is as much as the seed by one key, and back', async () => {
    desk = await BatchDesk.open(keeping({ keepBack: 50 }))
    await desk.change()
    const seed = () => desk.control('as much as the seed of Levain')
    seed().focus()
    await press('Space')
    await desk.settled()
    equal(desk.formula.stages[0]!.keepBack, 'seed')
    equal(desk.prose, 'Make 6 pieces of 900 g; 2 % lost in mixing; keep back as much Levain as its seed.')
    await press('Space')
    await desk.settled()
    equal(desk.formula.stages[0]!.keepBack, undefined)
    await desk.undo()
    equal(seed().checked, true)
    equal(desk.edits, 2)
  })

  it('is nothing when the field is emptied', async () => {
    desk = await BatchDesk.open(keeping({ keepBack: 50 }))
    await desk.change()
    await desk.enter('Keep back of Levain, grams', '')
    equal(desk.formula.stages[0]!.keepBack, undefined)
    deepEqual(desk.faults, [])
  })

  it('has losses of stages and the scale under More', async () => {
    desk = await BatchDesk.open(keeping({}))
    await desk.change()
    await more()
    await desk.enter('Lost of Levain, per cent', '2.5')
    near(desk.formula.stages[0]!.loss, 0.025)
    equal(desk.prose, 'Make 6 pieces of 900 g; 2 % lost in mixing; 2.5 % of Levain lost.')
    await desk.enter('Lost of Levain, per cent', '200')
    deepEqual(desk.faults, ['A loss is a percentage from 0 to below 100.'])
  })

  it('is weighed in the steps of the baker’s scale', async () => {
    desk = await BatchDesk.open(keeping({}))
    await desk.change()
    await more()
    await desk.enter('Step of the scale, grams', '5')
    await desk.enter('Weight below which the step is fine, grams', '20')
    await desk.enter('Fine step of the scale, grams', '0.5')
    deepEqual(desk.around.history.workbook.scale, { step: 5, fineStep: 0.5, fineBelow: 20 })
    equal(desk.left[0], 'Total to weigh 5,510 g: 6 × 900 g, 2 % lost.') // the step nearest to 5,510.2 g
    // Nearest in steps of 4 g: 2,352 + 516 + 1,980 + 60 + 604.
    await desk.enter('Step of the scale, grams', '4')
    equal(desk.left[0], 'Total to weigh 5,512 g: 6 × 900 g, 2 % lost, and 1.8 g that the scale’s steps add.')
    await desk.enter('Step of the scale, grams', '0')
    deepEqual(desk.faults, ['The steps of a scale are numbers of grams above 0.'])
    for (let edits = 0; edits < 4; edits++) await desk.undo()
    equal(desk.around.history.workbook.scale, undefined)
  })

  it('offers the seed only where there is one, and a soaker under More', async () => {
    const soaker = {
      id: 'soaker',
      name: 'Soaker',
      lines: [{ id: 'oats', ingredient: 'Oats', amount: '50 g', note: '' }],
    }
    const bread = millWheat()
    desk = await BatchDesk.open({ ...bread, stages: [soaker, ...bread.stages] })
    await desk.change()
    const field = desk.control('Keep back of Soaker, grams')
    equal(field.checkVisibility(), false)
    await more()
    equal(field.checkVisibility(), true)
    equal(desk.keepBack!.shadowRoot!.querySelectorAll('[type=checkbox]').length, 1)
  })

  for (const [width, height] of [
    [1440, 900],
    [390, 844],
    [320, 640],
  ] as const)
    it(`has nothing that axe finds, and fits, at ${width} pixels`, async () => {
      await setViewport({ width, height })
      const shapes: Batch = {
        make: 'baked pieces',
        pieces: [
          { count: 4, weight: 900 },
          { count: 12, weight: 85 },
        ],
        bakeLoss: 0.12,
      }
      const check = async () => {
        await passesAxe(desk.batch)
        await passesAxe(desk.leftOver)
        equal(document.documentElement.scrollWidth <= width, true, 'nothing is wider than the page')
      }
      for (const batch of [shapes, { make: 'all of', ingredient: 'Levain', grams: 310 } as const]) {
        desk = await BatchDesk.open(keeping({ keepBack: 50 }, batch))
        await check()
        await desk.change()
        await check()
        await more()
        await desk.enter('Keep back of Levain, grams', 'some')
        await desk.enter('Fine step of the scale, grams', 'fine')
        await check()
        desk.close()
      }
    })
})
