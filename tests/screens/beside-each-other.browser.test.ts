import '../../components/beside/tb-beside'
import type { TbBeside } from '../../components/beside/tb-beside'
import type { Formula } from '../../src/dough/document/formula'
import { applyChanges, emptyWorkbook } from '../../src/dough/document/workbook'
import { enterAmount } from '../../src/dough/edits/edits'
import { keepState } from '../../src/dough/edits/fetched/state-edits'
import { openFormula } from '../../src/dough/formula-sheet'
import { deepEqual, equal, match, ok, waitUntil } from '../assert'
import { press } from '../keys'
import { millWheat, straightDough } from './breads'
import { holdsUp, Opened } from './dialogs'
import { dressPage, textOf } from './mount'

/** Mill wheat, kept at 690 g of water and now at 740 g. */
function wetter(): Formula {
  const formula = millWheat({ id: 'mill' })
  const [, dough] = formula.stages
  const water = { formula: 'mill', stage: dough!.id, line: dough!.lines[2]!.id }
  let workbook = { ...emptyWorkbook, formulas: [formula] }
  const make = (transaction: ReturnType<typeof keepState>) => {
    workbook = {
      ...emptyWorkbook,
      formulas: [...applyChanges(workbook, transaction.changes).workbook.formulas],
    }
  }
  make(keepState(workbook, 'mill', 'before', '2025-11-24T07:42:00.000Z'))
  make(enterAmount(workbook, water, 'weight', '740'))
  return workbook.formulas[0]!
}
const tin = () => ({
  ...straightDough('Bread flour = 100%\nWater = 66%\nSalt = 2%\nInstant yeast = 1%', 'Plain tin'),
  id: 'tin',
})

describe('Two formulas beside each other', () => {
  let opened: Opened<TbBeside>

  async function show(
    asked: Parameters<TbBeside['show']>[0],
    formulas: readonly Formula[] = [wetter(), tin()],
  ) {
    opened = new Opened(document.createElement('tb-beside'), { formulas })
    if (formulas[0]) opened.dialog.sheet = openFormula(formulas[0])
    opened.dialog.show(asked)
    await opened.whenOpen()
  }
  const chosen = () =>
    (['left', 'right'] as const).map(id =>
      textOf(opened.find<HTMLSelectElement>(`#${id}`).selectedOptions[0]),
    )
  /** A row of a table as it is read: its head, and its figures. */
  const row = (head: string, table = 'table') =>
    [...opened.find('tr', head).closest(table)!.querySelectorAll('tr')]
      .filter(tr => textOf(tr.querySelector('th')).startsWith(head))
      .map(tr => [...tr.querySelectorAll('th, td')].map(textOf))[0]!
  const rows = () => [...opened.root.querySelectorAll('tbody th[scope=row]')].map(textOf)

  before(dressPage)
  afterEach(() => opened.remove())

  it('a kept state stands at the left of the formula as it is now', async () => {
    await show({ left: 'mill', state: 'gone' })
    deepEqual(chosen(), ['Mill wheat now', 'before'], 'a state that is not there falls back to the formula')
    opened.remove()
    const formula = wetter()
    await show({ left: 'mill', state: formula.states![0]!.id }, [formula, tin()])
    deepEqual(chosen(), ['before', 'Mill wheat now'])
    deepEqual(row('True hydration'), ['True hydration', '70.5 %', '75.0 %', '+4.5 points more'])
    deepEqual(row('Salt'), ['Salt', '1.88 %', '1.88 %', 'same'])
    deepEqual(row('Dough weight'), ['Dough weight', '1,921 g', '1,971 g', '+50 g more'])
    match(textOf(opened.find('.verdict')), /^5 readings and 1 line differ\./)
  })

  it('lines are matched by stage and ingredient, and what only one has says so in words', async () => {
    await show({ left: 'mill', right: 'tin' })
    deepEqual(chosen(), ['Mill wheat now', 'Plain tin'])
    match(textOf(opened.find('.stage', 'Levain')), /^Levain ?only in Mill wheat$/)
    match(textOf(opened.find('th', 'Instant yeast')), /Instant yeast ?only in Plain tin/)
    const spelt = row('Wholemeal spelt')
    deepEqual(spelt.slice(1), ['18.0 %', '–', '–', '180 g', '–', '–'])
    const flour = [...opened.root.querySelectorAll('.lines tbody')].at(-1)!.querySelectorAll('tr')[1]!
    deepEqual([...flour.querySelectorAll('td')].map(textOf), [
      '82.0 %',
      '100.0 %',
      '+18.0 points more',
      '820 g',
      '1,000 g',
      '+180 g more',
    ])
  })

  it('from a formula alone the open one stands at its right, or else its own latest state', async () => {
    await show({ left: 'tin' })
    deepEqual(chosen(), ['Plain tin', 'Mill wheat now'])
    opened.remove()
    await show({ left: 'mill' })
    deepEqual(chosen(), ['Mill wheat now', 'before'])
  })

  it('another is chosen with the keyboard, and the sides changed', async () => {
    await show({ left: 'mill', right: 'tin' })
    equal(opened.root.activeElement, opened.find('#right'), 'the choice has the focus')
    await press('Shift+Tab', 'Enter')
    await opened.dialog.updateComplete
    deepEqual(chosen(), ['Plain tin', 'Mill wheat now'])
    opened.find('#left').focus()
    await press('Home', 'ArrowDown')
    await waitUntil(() => chosen()[0] === 'before', 'the state is chosen')
    deepEqual(row('True hydration').slice(1), ['70.5 %', '75.0 %', '+4.5 points more'])
  })

  it('only what differs is shown when asked', async () => {
    const formula = wetter()
    await show({ left: 'mill', state: formula.states![0]!.id }, [formula])
    await opened.click('.verdict label', 'Only what differs')
    deepEqual(rows(), [
      'True hydration',
      'Listed hydration',
      'Moisture hydration',
      'Total water',
      'Dough weight',
      'Water',
    ])
    opened.find('#right').focus()
    await press('End')
    await waitUntil(() => chosen()[1] === 'before', 'the same is on both sides')
    match(textOf(opened.find('.verdict')), /The same formula is on both sides/)
    deepEqual(rows(), [])
  })

  it('what differs besides the lines stands below, then and now, in words', async () => {
    const formula = {
      ...wetter(),
      batch: { make: 'dough', grams: 5400 } as const,
      jottings: [{ id: 'j', name: 'per_loaf', text: 'dough_weight/6' }],
    }
    await show({ left: 'mill', state: formula.states![0]!.id }, [formula])
    match(textOf(opened.find('.verdict')), /^5 readings and 1 line differ, and 2 things besides the lines\./)
    deepEqual(row('how much to make', '.settings'), ['how much to make', 'as written', '5,400 g of dough'])
    deepEqual(row('the jotting', '.settings'), ['the jotting per_loaf', 'none', 'dough_weight/6'])
    await opened.click('footer button', 'Bring back before')
    equal(opened.root.querySelector('.settings'), null)
    await holdsUp(opened)
  })

  it('a state is brought back from here, which undo takes back', async () => {
    const formula = wetter()
    await show({ left: 'mill', state: formula.states![0]!.id }, [formula])
    await opened.click('footer button', 'Bring back before')
    match(
      textOf(opened.find('.told')),
      /Mill wheat is as it was in before, with its amount to make, holds, jottings and notes from then\. Undo takes it back/,
    )
    match(textOf(opened.find('.verdict')), /the same in every reading, every line and everything else/)
    equal(opened.around.history.undoLabel, 'Bring back before')
    await press('Escape')
    await opened.whenClosed()
  })

  it('figures are written in the baker’s way', async () => {
    await show({ left: 'mill', right: 'tin' })
    opened.dialog.numbers = { language: 'de', decimal: ',' }
    await opened.dialog.updateComplete
    deepEqual(row('True hydration').slice(1), ['75,0 %', '66,0 %', '−9,0 points less'])
  })

  it('says so when there is nothing to set beside', async () => {
    await show({}, [])
    match(textOf(opened.find('.body')), /no formula on the shelf yet/)
  })

  it('holds up on a laptop and a phone', async () => {
    await show({ left: 'mill', right: 'tin' })
    ok(opened.root.querySelectorAll('th[scope=row]').length > 10)
    await holdsUp(opened)
  })
})
