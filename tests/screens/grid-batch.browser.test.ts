import { emulateMedia, setViewport } from '@web/test-runner-commands'
import type { Formula } from '../../src/dough/document/formula'
import { equal, match, ok, waitUntil } from '../assert'
import { press, type } from '../keys'
import { itOnce } from '../once'
import { amounts, cell, type Desk, field, focusIn, goTo, setUp, shows, sixLoaves } from './grid-desk'
import { passesAxe } from './mount'

const long = `
  Levain of the week:
    Ripe starter = 40 g
    Bread flour = 100 g
    Water = 80 g
  Final dough:
    Bread flour = 82%
    Barley malt syrup = 2 1/2 tsp
    Water = 1234.5 g
    Levain of the week = 210 g`

const times =
  (factor: number) =>
  (formula: Formula): Formula => ({ ...sixLoaves(formula), batch: { make: 'factor', factor } })

describe('The batch in the grid', () => {
  let desk: Desk

  beforeEach(() => setViewport({ width: 1280, height: 900 }))

  const headings = () => [...desk.grid.shadowRoot!.querySelectorAll('thead th')].map(h => h.className).join()
  const weighed = (row: string) => shows(cell(desk.grid, row, 'batch'))
  const number = (text: string) => Number(text.replace(',', ''))

  it('has no column while the formula is made as written', async () => {
    desk = await setUp()
    equal(headings(), 'ingredient,percent,weight,wholeDough,note,actions')
  })

  it('shows what is weighed of each line after the share of the whole dough', async () => {
    desk = await setUp(undefined, { change: sixLoaves })
    equal(headings(), 'ingredient,percent,weight,wholeDough,batch,note,actions')
    equal(weighed('Ripe starter'), '119')
    equal(cell(desk.grid, 'Ripe starter', 'batch').title, '118.6 g before it is rounded to the scale’s steps')
    equal(cell(desk.grid, 'Ripe starter', 'batch').getAttribute('aria-readonly'), 'true')
  })

  it('shows the decimals of the scale’s fine step', async () => {
    desk = await setUp('Final dough:\nBread flour = 500 g\nInstant yeast = 1 g\nWater = 350 g', {
      change: formula => ({ ...formula, batch: { make: 'factor', factor: 2 } }),
    })
    equal(weighed('Instant yeast'), '2.0')
    equal(weighed('Dough'), '1,702.0')
  })

  it('the sum is just that of the lines as they are shown', async () => {
    desk = await setUp(undefined, { change: sixLoaves })
    const levain = ['Ripe starter', 'Bread flour 1', 'Water 1'].map(row => number(weighed(row)))
    equal(
      levain.reduce((a, b) => a + b),
      number(weighed('Sum')),
    )
    const dough = ['Bread flour 2', 'Wholemeal spelt', 'Water 2', 'Salt', 'Levain 2'].map(r =>
      number(weighed(r)),
    )
    equal(
      dough.reduce((a, b) => a + b),
      number(weighed('Dough')),
    )
    equal(weighed('Dough'), '5,510') // the step nearest to 5,510.2 g
  })

  it('a stage says what is made of it, what is taken and what is kept back', async () => {
    desk = await setUp(undefined, { change: sixLoaves })
    match(shows(cell(desk.grid, 'Levain 1')), /220 g as written, 652 g made, 602 g taken, 50 g kept back$/)
  })

  it('comes and goes as the formula is made otherwise, the focus staying', async () => {
    desk = await setUp()
    await goTo(desk.grid, 'Salt', 'weight')
    desk.sheet.make({ make: 'factor', factor: 3 })
    desk.grid.version++
    await desk.grid.updateComplete
    equal(weighed('Salt'), '63')
    equal(focusIn(desk.grid), 'Salt / weight')
    desk.sheet.make({ make: 'as written' })
    desk.grid.version++
    await desk.grid.updateComplete
    equal(headings(), 'ingredient,percent,weight,wholeDough,note,actions')
    equal(focusIn(desk.grid), 'Salt / weight')
  })

  it('an edit of the formula moves the batch along', async () => {
    desk = await setUp(undefined, {
      change: formula => ({ ...formula, batch: { make: 'factor', factor: 2 } }),
    })
    await goTo(desk.grid, 'Water 2', 'percent')
    await type('70')
    await press('Enter')
    await desk.grid.updateComplete
    equal(weighed('Water 2'), '1,400')
  })

  it('cannot be typed in, and a block pasted from a sheet with a batch keeps to its columns', async () => {
    desk = await setUp(undefined, { change: sixLoaves, notes: ['Salt: fine'] })
    await goTo(desk.grid, 'Salt', 'batch')
    await type('5')
    equal(field(desk.grid), null)
    await press('Shift+Space', 'Control+c')
    desk = await setUp()
    await goTo(desk.grid, 'Add an ingredient 2')
    await press('Control+v')
    await waitUntil(() => /; Salt 2\.1%$/.test(amounts(desk.sheet, 1)), 'the line is there')
    equal(desk.sheet.formula.stages[1]!.lines[5]!.note, 'fine')
  })

  it('on a narrow screen it takes the place of the grams, which stand beneath', async () => {
    await setViewport({ width: 390, height: 844 })
    desk = await setUp(undefined, { change: sixLoaves })
    equal(headings(), 'ingredient,percent,batch,actions')
    equal(weighed('Levain 2'), '602210 as written,')
    ok(cell(desk.grid, 'Levain 2', 'batch').querySelector('.written .figure, .written .typed'))
    await goTo(desk.grid, 'Levain 2', 'batch')
    await press('Shift+F10', 's')
    equal(desk.grid.shadowRoot!.activeElement?.querySelector('span')?.textContent, 'Set the grams')
    await press('Enter')
    await desk.grid.updateComplete
    equal(field(desk.grid)?.value, '210')
    await type('220')
    await press('Enter')
    await desk.grid.updateComplete
    match(amounts(desk.sheet, 1), /Levain 220 g$/)
  })

  for (const [width, change, what] of [
    [390, times(20), '45 kg'],
    [320, times(20), '45 kg'],
    [390, times(1000), 'two tonnes'],
    [320, times(1000), 'two tonnes'],
  ] as const)
    it(`fits ${width} px with every cell of ${what}, also while its editor is open`, async () => {
      await setViewport({ width, height: 844 })
      desk = await setUp(long, {
        change,
        notes: ['Water: cold from the well, a litre kept back'],
      })
      ok(desk.grid.narrow)
      const cut = [...desk.grid.shadowRoot!.querySelectorAll<HTMLElement>('th, td')].filter(
        c => c.scrollWidth > c.clientWidth + 1 && !c.closest('tr.add'),
      )
      equal(cut.map(c => c.textContent).join(), '')
      for (const column of ['ingredient', 'percent', 'batch']) {
        await goTo(desk.grid, 'Water 2', column)
        await press('F2')
        await desk.grid.updateComplete
        equal(document.documentElement.scrollWidth, width, `at ${column}`)
        await press('Escape')
      }
    })

  for (const scheme of ['light', 'dark'] as const)
    itOnce(`passes axe in the ${scheme} scheme, wide and narrow`, async () => {
      await emulateMedia({ colorScheme: scheme })
      desk = await setUp(long, { change: sixLoaves })
      await goTo(desk.grid, 'Water 2', 'batch')
      await passesAxe(desk.grid)
      await setViewport({ width: 390, height: 844 })
      desk = await setUp(long, { change: sixLoaves })
      await passesAxe(desk.grid)
      await emulateMedia({ colorScheme: 'light' })
    })
})
