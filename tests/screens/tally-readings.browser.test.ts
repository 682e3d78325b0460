import { setViewport } from '@web/test-runner-commands'
import '../../components/tally/tb-tally'
import type { TbTally } from '../../components/tally/tb-tally'
import type { Formula } from '../../src/dough/document/formula'
import { openFormula } from '../../src/dough/formula-sheet'
import { deepEqual, equal, match, ok } from '../assert'
import { press } from '../keys'
import { itOnce } from '../once'
import { millWheat, straightDough } from './breads'
import { Around, dressPage, english, passesAxe, textOf } from './mount'

describe('The tally', () => {
  let tally: TbTally
  let around: Around

  async function show(formula: Formula, compact = false): Promise<void> {
    around = new Around()
    tally = around.hold(document.createElement('tb-tally'))
    Object.assign(tally, { sheet: openFormula(formula), numbers: english, compact })
    await tally.updateComplete
    await customElements.whenDefined('tb-remarks')
    await tally.shadowRoot!.querySelector('tb-remarks')?.updateComplete
  }

  /** The text of the group in which a reading of that name stands. */
  const reading = (name: string): string => {
    const term = [...tally.shadowRoot!.querySelectorAll('dt')].find(dt => textOf(dt) === name)
    return textOf(term?.parentElement)
  }
  const remarks = (): ShadowRoot => tally.shadowRoot!.querySelector('tb-remarks')!.shadowRoot!

  before(dressPage)
  afterEach(() => tally.remove())

  it('shows the readings of the dough with the starter counted', async () => {
    await show(millWheat())
    match(reading('True hydration'), /70\.5 %/)
    match(reading('Listed'), /69\.0 %/)
    match(reading('Salt'), /1\.88 %/)
    match(reading('Prefermented flour'), /10\.3 %/)
    match(reading('Levain on flour'), /21\.0 %/)
    match(reading('Total flour'), /1,115 g/)
    match(reading('Dough weight'), /1,921 g/)
  })

  it('says the usual range in words, and when a reading is outside it', async () => {
    await show(straightDough('Bread flour = 100%\nWater = 70%\nSalt = 0.9%', 'Hardly salted'))
    match(reading('True hydration'), /usual 58–85 %/)
    match(reading('Salt'), /below the usual 1\.6–2\.4 %/)
    await show(straightDough('Bread flour = 100%\nWater = 96%\nSalt = 2%', 'Very wet'))
    match(reading('True hydration'), /above the usual 58–85 %/)
  })

  it('shows fat, sugar, egg and milk only where they are', async () => {
    await show(millWheat())
    equal(reading('Milk'), '')
    await show(straightDough('Bread flour = 100%\nWhole milk = 60%\nSalt = 2%', 'Milk bread'))
    match(reading('Milk'), /60\.0 %/)
  })

  it('gives a dash and the reason for a reading without a number', async () => {
    await show(straightDough('Water = 100 g', 'Water only'))
    match(reading('True hydration'), /–/)
    ok(reading('True hydration').length > 'True hydration – '.length)
  })

  it('names the severity of a remark and leads to its place', async () => {
    const bread = straightDough('Bread flour = 100%\nMystery powder = 3%', 'Odd')
    await show(bread)
    const line = bread.stages[0]!.lines[1]!
    const row = [...remarks().querySelectorAll('li')].find(li => textOf(li).includes('Mystery powder'))
    match(textOf(row), /(Error|Warning|Remark)\./)
    row!.querySelector('button')!.focus()
    await press('Enter')
    deepEqual(around.wishes, [{ want: 'find', stage: bread.stages[0]!.id, line: line.id }])
  })

  it('is in its compact form the three main readings', async () => {
    await show(millWheat(), true)
    equal(
      textOf(tally.shadowRoot!.querySelector('dl')),
      'True hydration 70.5 % Salt 1.88 % Prefermented 10.3 %',
    )
  })

  for (const [width, height] of [
    [1440, 900],
    [768, 1024],
    [390, 844],
  ] as const) {
    itOnce(`has nothing that axe finds at ${width} pixels`, async () => {
      await setViewport({ width, height })
      await show(straightDough('Bread flour = 97%\nWater = 70%\nMystery powder = ', 'Odd'))
      await passesAxe(tally)
      tally.remove()
      await show(millWheat(), true)
      await passesAxe(tally)
    })
  }
})
