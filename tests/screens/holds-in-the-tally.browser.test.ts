import { setViewport } from '@web/test-runner-commands'
import '../../components/tally/tb-hold' // fetched when first wanted; here beforehand
import '../../components/tally/tb-tally'
import type { TbHold } from '../../components/tally/tb-hold'
import type { TbTally } from '../../components/tally/tb-tally'
import { type Formula, finalDoughOf } from '../../src/dough/document/formula'
import type { ReadingName } from '../../src/dough/document/reading-names'
import { holdReading } from '../../src/dough/edits/edits'
import type { FormulaSheet } from '../../src/dough/formula-sheet'
import { openFormula } from '../../src/dough/formula-sheet'
import { deepEqual, equal, match, near, ok, waitUntil } from '../assert'
import { formulaOf } from '../dough/notation'
import { press, type } from '../keys'
import { itOnce } from '../once'
import { millWheat, straightDough } from './breads'
import { Around, dressPage, english, passesAxe, textOf } from './mount'

describe('A hold on a reading', () => {
  let tally: TbTally
  let around: Around

  async function show(formula: Formula, numbers: TbTally['numbers'] = english, compact = false) {
    around = new Around({ formulas: [formula] })
    tally = around.hold(document.createElement('tb-tally'))
    const sheet = openFormula(formula)
    around.onEdit = workbook => {
      sheet.update(workbook.formulas[0]!)
      tally.version += 1
    }
    Object.assign(tally, { sheet, numbers, compact })
    await settled()
  }

  async function settled(): Promise<void> {
    await tally.updateComplete
    await form()?.updateComplete
  }

  const root = () => tally.shadowRoot!
  const form = () => root().querySelector<TbHold>('tb-hold')
  const inForm = <E extends Element>(selector: string): E => form()!.shadowRoot!.querySelector<E>(selector)!
  const field = () => inForm<HTMLInputElement>('input')
  const named = (name: string) =>
    [...root().querySelectorAll<HTMLElement>('button')].find(
      b => (b.getAttribute('aria-label') ?? textOf(b)) === name,
    )
  const held = () => [...root().querySelectorAll('.kept > span:first-child')].map(textOf)
  const reading = (name: ReadingName) => tally.sheet!.reading(name)
  const water = () => (tally.sheet as FormulaSheet).weight('Final dough', 'Water')
  const focused = () => root().activeElement?.getAttribute('aria-label')

  /** Presses the button of that name with the keyboard. */
  async function choose(name: string): Promise<void> {
    const button = named(name)
    ok(button, `a button “${name}”`)
    button.focus()
    await press('Enter')
    await settled()
  }

  async function enter(text: string): Promise<void> {
    await type(text)
    await press('Enter')
    await settled()
  }

  before(dressPage)
  beforeEach(() => setViewport({ width: 1440, height: 900 }))
  afterEach(() => tally.remove())

  itOnce('stays within a narrow tally, whatever reading it is on', async () => {
    await show(
      formulaOf(
        'Soaker:\nLinseed = 100 g\nWater = 150 g\n\nFinal dough:\nBread flour = 1000 g\nWholemeal spelt and emmer of the upper mill = 100 g\nWater = 760 g\nSalt = 20 g\nSoaker = 250 g',
      ),
    )
    tally.style.width = '254px' // beside the sheet of a laptop
    const readings = [...root().querySelectorAll<HTMLElement>('[data-hold]')].map(b => b.dataset.hold!)
    for (const name of ['hydrationWithoutSoakers', 'listedHydration']) ok(readings.includes(name), name)
    for (const name of readings) {
      root().querySelector<HTMLElement>(`[data-hold="${name}"]`)!.click()
      const open = await waitUntil(form, `${name} can be held`)
      await settled()
      for (const part of open.shadowRoot!.querySelectorAll('input, select, button, p')) {
        const { left, right } = part.getBoundingClientRect()
        const edges = tally.getBoundingClientRect()
        ok(left >= edges.left - 4 && right <= edges.right + 1, `${name}: ${left}–${right} in ${edges.right}`)
      }
      inForm<HTMLElement>('input').focus()
      await press('Escape')
      await waitUntil(() => !form(), 'it is closed')
    }
  })

  it('opens with the reading as it is shown and the natural line, ready to be typed over', async () => {
    await show(millWheat())
    await choose('Hold true hydration')
    equal(field().value, '70.5')
    equal(inForm<HTMLSelectElement>('select').selectedOptions[0]!.label, 'Water')
    equal(field().selectionEnd! - field().selectionStart!, 4)
    match(textOf(inForm('label')), /^Hold true hydration at/)
  })

  it('keeps the value typed while the line gives, and says so in words', async () => {
    await show(millWheat())
    await choose('Hold true hydration')
    await enter('75')
    near(reading('trueHydration'), 0.75)
    deepEqual(held(), ['True hydration held at 75 %, Water gives'])
    equal(form(), null)
    equal(focused(), 'Change the hold on true hydration')
  })

  it('reaches the worked check with three holds at once', async () => {
    await show(millWheat())
    for (const [name, value] of [
      ['true hydration', '75'],
      ['salt', '2'],
      ['prefermented flour', '15'],
    ] as const) {
      await choose(`Hold ${name}`)
      await enter(value)
    }
    near(water(), 735.2941176470588)
    near(reading('doughWeight'), 2082.3529411764707)
    deepEqual(held(), [
      'True hydration held at 75 %, Water gives',
      'Salt held at 2 %, Salt gives',
      'Prefermented flour held at 15 %, Levain gives',
    ])
  })

  it('lets another line give', async () => {
    await show(millWheat())
    await choose('Hold dough weight')
    equal(field().value, '1921')
    await press('Tab')
    await type('Wa')
    await press('Shift+Tab')
    await enter('2 kg')
    near(reading('doughWeight'), 2000)
    equal(held()[0], 'Held at 2000 g, Water gives')
  })

  it('says what is let go when the line chosen gives for something else', async () => {
    await show(millWheat())
    await choose('Hold true hydration')
    await enter('75')
    await choose('Hold total water')
    match(textOf(inForm('.lets')), /Water gives for true hydration held at 75 %: that is let go\./)
    await enter('800')
    deepEqual(held(), ['Held at 800 g, Water gives'])
  })

  it('is changed in the same form, which opens with the value held', async () => {
    await show(millWheat())
    await choose('Hold salt')
    await enter('2.25')
    await choose('Change the hold on salt')
    equal(field().value, '2.25')
    await enter('2.1')
    near(reading('salt'), 0.021)
  })

  it('is released, and the line has again what was typed for it', async () => {
    await show(millWheat())
    await choose('Hold true hydration')
    await enter('75')
    await choose('Release true hydration')
    equal(water(), 690)
    deepEqual(held(), [])
    equal(focused(), 'Hold true hydration')
  })

  it('is left with Escape or Cancel as it was', async () => {
    await show(millWheat())
    await choose('Hold true hydration')
    await type('90')
    await press('Escape')
    await settled()
    equal(form(), null)
    equal(focused(), 'Hold true hydration')
    await choose('Hold true hydration')
    await press('Tab', 'Tab', 'Tab', 'Enter')
    await settled()
    equal(form(), null)
    equal(around.history.undoLabel, undefined)
  })

  it('refuses at the field, in words, what is not a number or cannot be', async () => {
    await show(millWheat())
    await choose('Hold salt')
    await enter('two')
    match(textOf(inForm('#refusal')), /“two” is not a number\. Write a percentage such as 75\./)
    equal(field().getAttribute('aria-invalid'), 'true')
    equal(field().getAttribute('aria-describedby'), 'refusal')
    await passesAxe(tally)
    await enter('-1')
    match(textOf(inForm('#refusal')), /not below 0/)
    await enter('2')
    near(reading('salt'), 0.02)
  })

  it('is read and shown with the baker’s decimal sign', async () => {
    await show(millWheat(), { language: 'de', decimal: ',' })
    await choose('Hold salt')
    equal(field().value, '1,88')
    await enter('2,15')
    near(reading('salt'), 0.0215)
    equal(held()[0], 'Salt held at 2,15 %, Salt gives')
  })

  it('out of reach is refused at the field, with how far the reading goes', async () => {
    await show(millWheat())
    await choose('Hold true hydration')
    await enter('5')
    // 95.4545 g of water in the levain over 1,114.545 g of flour
    const refusal =
      'True hydration cannot be 5 %: at least 8.57 % while Bread flour, Wholemeal spelt and Levain stay.'
    equal(textOf(inForm('#refusal')), refusal)
    equal(field().value, '5')
    deepEqual(held(), [])
    await passesAxe(tally)
    await enter('8.57')
    deepEqual(held(), ['True hydration held at 8.57 %, Water gives'])
    near(reading('trueHydration'), 0.0857)
  })

  it('that has no answer gives its reason once, and stays to be changed or released', async () => {
    const bread = millWheat()
    const line = finalDoughOf(bread).lines[2]!.id
    await show({ ...bread, holds: [{ reading: 'trueHydration', value: 0.05, line }] })
    const reasons = [...root().querySelectorAll('.words.why')].map(textOf)
    equal(reasons.length, 1)
    match(reasons[0]!, /true hydration held at 5 %.*below 0/)
    ok(named('Change the hold on true hydration'))
    await passesAxe(tally)
    await choose('Release true hydration')
    near(reading('trueHydration'), 0.70473, 1e-4)
  })

  it('cannot be asked for where nothing can give or nothing can be changed', async () => {
    await show({ ...straightDough('', 'Nothing yet') })
    equal(named('Hold true hydration'), undefined)
    tally.remove()
    const bread = millWheat()
    const line = finalDoughOf(bread).lines[2]!
    const at = { formula: bread.id, stage: finalDoughOf(bread).id, line: line.id }
    await show(bread)
    around.history.apply(holdReading(around.history.workbook, at, 'trueHydration', 0.75))
    tally.sheet!.update(around.history.workbook.formulas[0]!)
    tally.readOnly = true
    await settled()
    equal(named('Hold salt'), undefined)
    equal(named('Release true hydration'), undefined)
    equal(held()[0], 'True hydration held at 75 %, Water gives')
  })

  it('is marked in the compact strip', async () => {
    const bread = millWheat()
    const water = finalDoughOf(bread).lines[2]!.id
    await show({ ...bread, holds: [{ reading: 'trueHydration', value: 0.75, line: water }] }, english, true)
    equal(textOf(root().querySelector('dl')), 'True hydration 75.0 % held Salt 1.88 % Prefermented 10.3 %')
  })

  it('is left when another formula is opened', async () => {
    await show(millWheat())
    await choose('Hold true hydration')
    tally.sheet = openFormula(straightDough('Bread flour = 100%\nWater = 66%', 'Tin'))
    await settled()
    equal(form(), null)
  })

  it('stands beside the batch as it is weighed', async () => {
    await show({ ...millWheat(), batch: { make: 'pieces', pieces: [{ count: 1, weight: 60 }] } })
    const weighed = await waitUntil(
      () => root().querySelector('.lead .reading .weighed'),
      'it says how the dough will be as weighed',
    )
    match(textOf(weighed), /^as weighed \d+\.\d %$/)
    match(textOf(root().querySelector('.ledger')), /Dough weight 1,921 g Hold in the batch \d\d\.\d g/)
  })

  for (const [width, height] of [
    [1440, 900],
    [768, 1024],
    [390, 844],
  ] as const) {
    itOnce(`has nothing that axe finds at ${width} pixels, held and being held`, async () => {
      await setViewport({ width, height })
      await show(millWheat())
      await choose('Hold levain on flour')
      await enter('25')
      await choose('Hold salt')
      await passesAxe(tally)
      tally.remove()
      await show(tally.sheet!.formula, english, true)
      await passesAxe(tally)
    })
  }
})
