import { setViewport } from '@web/test-runner-commands'
import { equal, match, ok } from '../assert'
import { press, type } from '../keys'
import { itCase } from '../once'
import { cell, type Desk, field, goTo, setUp, shows } from './grid-desk'

describe('Amounts typed as a kitchen says them', () => {
  let desk: Desk
  const kept = (at: number) => desk.sheet.formula.stages[1]!.lines[at]!.amount
  /** As it is shown; where it may be broken over two lines is left out. */
  const saltShown = () => shows(cell(desk.grid, 'Salt', 'percent')).replaceAll('\u200b', '')
  const told = () => [...desk.grid.shadowRoot!.querySelectorAll('tr.problem p')].map(p => p.textContent!)

  async function typed(row: string, column: 'percent' | 'weight', text: string): Promise<void> {
    await goTo(desk.grid, row, column)
    await type(text)
    await press('Enter')
    await desk.grid.updateComplete
  }

  beforeEach(async () => {
    await setViewport({ width: 1280, height: 900 })
    desk = await setUp()
  })

  for (const [at, [text, grams]] of (
    [
      ['6 dl', '600'],
      ['1 lb 4 oz', '567'],
      ['~700 g', '700'],
      ['half a litre', '500'],
      ['1,5 kg', '1,500'],
    ] as const
  ).entries())
    itCase(at)(`${text} comes to ${grams} g, and stays as it was typed`, async () => {
      await typed('Water 2', 'weight', text)
      const water = cell(desk.grid, 'Water 2', 'weight')
      equal(water.querySelector('.figure')?.textContent?.trim(), grams)
      equal(water.querySelector('.expression')?.textContent, text.replace(',', '.'))
      await goTo(desk.grid, 'Water 2', 'weight')
      await press('F2')
      equal(field(desk.grid)?.value, text.replace(',', '.'))
    })

  it('asks which of its two readings a number has, where it was typed', async () => {
    await typed('Salt', 'percent', '1,000')
    equal(saltShown(), '1,000')
    match(told().join(), /two ways: type 1 or 1000/)
    await typed('Salt', 'percent', '2')
    equal(kept(3), '2%')
    equal(told().length, 0)
  })

  it('shows a number in doubt as it was typed where the comma is the decimal mark', async () => {
    desk = await setUp(undefined, { language: 'de' })
    await typed('Salt', 'percent', '1.000')
    equal(saltShown(), '1.000')
    match(told().join(), /two ways/)
    await goTo(desk.grid, 'Salt', 'percent')
    await press('F2')
    equal(field(desk.grid)?.value, '1.000')
  })

  it('says what could be written where it does not understand, and keeps what was typed', async () => {
    await typed('Salt', 'weight', '2 handfuls')
    match(told().join(), /such as 90 g/)
    equal(kept(3), '2 handfuls')
    ok(desk.sheet.reading('salt') === undefined)
  })
})
