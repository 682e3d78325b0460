import { sendMouse, setViewport } from '@web/test-runner-commands'
import '../../components/working/tb-working'
import type { TbWorking } from '../../components/working/tb-working'
import { enterAmount } from '../../src/dough/edits/edits'
import { removeLines } from '../../src/dough/edits/fetched/row-edits'
import type { FormulaSheet } from '../../src/dough/formula-sheet'
import { openFormula } from '../../src/dough/formula-sheet'
import type { CellName } from '../../src/dough/workings/working'
import { deepEqual, equal, match, ok, waitUntil } from '../assert'
import { lineOf } from '../dough/notation'
import { press } from '../keys'
import { itOnce } from '../once'
import { millWheat } from './breads'
import { Around, dressPage, passesAxe, textOf } from './mount'

describe('A working', () => {
  let working: TbWorking
  let around: Around
  let sheet: FormulaSheet

  async function show(cell: CellName, formula = millWheat()): Promise<void> {
    around = new Around({ formulas: [formula] })
    sheet = openFormula(formula)
    around.onEdit = workbook => {
      sheet.update(workbook.formulas[0]!)
      working.version += 1
    }
    working = document.createElement('tb-working')
    Object.assign(working, { sheet, cell })
    around.hold(working)
    await working.updateComplete
  }

  const root = () => working.shadowRoot!
  const title = () => textOf(root().querySelector('h3'))
  const figures = () => textOf(root().querySelector('#figures'))
  const sources = () => [...root().querySelectorAll('.sources li')].map(textOf)
  const way = () => [...root().querySelectorAll('.way li')].map(textOf)
  const lit = () => around.wishes.filter(w => w.want === 'light').at(-1)?.lines ?? []
  const id = (stage: string, ingredient: string) => lineOf(sheet.formula, stage, ingredient).id
  const at = (stage: string, ingredient: string) => ({
    formula: sheet.formula.id,
    stage: sheet.formula.stages.find(s => s.name === stage)!.id,
    line: id(stage, ingredient),
  })

  /** Presses the button that starts with that text. */
  async function choose(text: string): Promise<void> {
    const button = [...root().querySelectorAll<HTMLElement>('button')].find(b => textOf(b).startsWith(text))
    ok(button, `a button “${text}”`)
    button.focus()
    await press('Enter')
    await working.updateComplete
  }

  before(dressPage)
  beforeEach(() => setViewport({ width: 1440, height: 900 }))
  afterEach(() => working.remove())

  it('shows the arithmetic in words, with its figures, and where they came from', async () => {
    await show('trueHydration')
    equal(title(), 'True hydration')
    equal(textOf(root().querySelector('#words')), 'all water ÷ all flour')
    equal(figures(), '785.5 g ÷ 1,114.5 g = 70.5 %')
    match(sources()[0]!, /^Water in Final dough\s*690 g/)
    match(sources()[1]!, /^Water carried by Levain\s*95\.5 g\s*210 g × 100 g ÷ 220 g/)
  })

  it('takes the focus to its heading, which is described by the figures', async () => {
    await show('trueHydration')
    const heading = root().querySelector('h3')!
    equal(root().activeElement, heading)
    equal(heading.getAttribute('aria-describedby'), 'words figures')
    equal(root().querySelector('section')!.getAttribute('aria-labelledby'), heading.id)
  })

  it('is followed down to what was typed, and back', async () => {
    await show('trueHydration')
    await choose('Water carried by Levain')
    equal(title(), 'Water in Levain')
    deepEqual(way(), ['True hydration'])
    await choose('Water in Levain')
    equal(textOf(root().querySelector('#words')), 'typed: 80 g')
    deepEqual(way(), ['True hydration', 'Water carried by Levain'])
    equal(root().activeElement, root().querySelector('h3'))
    await choose('Back')
    equal(title(), 'Water in Levain')
    match(textOf(root().activeElement), /^Water in Levain/)
    await choose('True hydration')
    equal(title(), 'True hydration')
    match(textOf(root().activeElement), /^Water carried by Levain/)
  })

  it('lights the lines its figures came from, and the line whose figure it is', async () => {
    await show('salt')
    await waitUntil(() => lit().length, 'lines are lit')
    ok(lit().includes(id('Final dough', 'Salt')))
    ok(lit().includes(id('Final dough', 'Levain')))
    ok(!lit().includes(id('Final dough', 'Water')))
    await choose('Salt in Final dough')
    deepEqual(lit(), [id('Final dough', 'Salt')])
  })

  it('follows the edits made while it is open', async () => {
    await show('trueHydration')
    around.history.apply(enterAmount(around.history.workbook, at('Final dough', 'Water'), 'weight', '740'))
    around.onEdit(around.history.workbook)
    await working.updateComplete
    equal(figures(), '835.5 g ÷ 1,114.5 g = 75 %')
  })

  it('says so when its line is gone, and still leads back', async () => {
    await show('salt')
    await choose('Salt in Final dough')
    around.history.apply(removeLines(around.history.workbook, [at('Final dough', 'Salt')]))
    around.onEdit(around.history.workbook)
    await working.updateComplete
    match(figures(), /no longer in the formula/)
    deepEqual(lit(), [])
    await choose('Back')
    equal(title(), 'Salt')
  })

  it('says why there is no figure', async () => {
    const bread = millWheat()
    const hold = {
      reading: 'trueHydration',
      value: 0.05,
      line: lineOf(bread, 'Final dough', 'Water').id,
    } as const
    await show('trueHydration', { ...bread, holds: [hold] })
    match(figures(), /below 0/)
    await passesAxe(working)
  })

  it('asks to be closed by Escape and by its button', async () => {
    await show('trueHydration')
    await press('Escape')
    equal(around.wishes.at(-1)?.want, 'close-working')
    around.wishes.length = 0
    const box = root().querySelector('.close')!.getBoundingClientRect()
    await sendMouse({
      type: 'click',
      position: [Math.round(box.x + box.width / 2), Math.round(box.y + box.height / 2)],
    })
    equal(around.wishes.at(-1)?.want, 'close-working')
  })

  it('is copied as text', async () => {
    await show('trueHydration')
    const said: string[] = []
    working.addEventListener('tb-say', event => said.push((event as CustomEvent<string>).detail))
    await choose('Copy')
    await waitUntil(() => said.length, 'it says that it is copied')
    const text = await navigator.clipboard.readText()
    match(
      text,
      /^True hydration\nall water ÷ all flour\n785\.5 g ÷ 1,114\.5 g = 70\.5 %\n {2}Water in Final dough: 690 g\n/,
    )
  })

  for (const [width, height] of [
    [1440, 900],
    [768, 1024],
    [390, 844],
  ] as const) {
    itOnce(`has nothing that axe finds at ${width} pixels, at its start and followed`, async () => {
      await setViewport({ width, height })
      await show('trueHydration')
      await passesAxe(working)
      await choose('Flour carried by Levain')
      working.foot = true
      await working.updateComplete
      await passesAxe(working)
    })
  }
})
