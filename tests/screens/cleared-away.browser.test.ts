import '../../components/cleared/tb-cleared'
import { newDay } from '../../src/dough/edits/fetched/day-edits'
import { usualLarder } from '../../src/dough/larder/usual-larder'
import { deepEqual, equal, match, ok } from '../assert'
import { press } from '../keys'
import { millWheat, straightDough } from './breads'
import { holdsUp, Opened } from './dialogs'
import { dressPage, textOf } from './mount'

const daysAgo = (days: number): string => new Date(Date.now() - days * 864e5).toISOString()
const inGerman = (at: string, days = 0): string =>
  new Intl.DateTimeFormat('de', { dateStyle: 'medium' }).format(Date.parse(at) + days * 864e5)

describe('What was deleted', () => {
  let opened: Opened<HTMLElementTagNameMap['tb-cleared']>

  const spelt = () => straightDough('Bread flour = 100%\nWater = 66%', 'Spelt tin')
  const rye = { ...millWheat(), id: 'rye', name: 'Rye' }
  const day = { ...newDay({ name: 'Saturday oven', date: '2026-12-05', zone: 'UTC' }), id: 'saturday' }
  const own = { ...usualLarder[0]!, id: 'own', name: 'Mill salt' }
  const state = { id: 's', name: 'before the new flour', keptAt: daysAgo(9), formula: spelt() }
  const cleared = [
    { id: 'a', at: daysAgo(4), of: 'formula', thing: rye, index: 0 },
    { id: 'b', at: daysAgo(3), of: 'state', thing: state, formula: 'gone', called: 'Spelt tin' },
    { id: 'c', at: daysAgo(2), of: 'ingredient', thing: own },
    { id: 'd', at: daysAgo(1), of: 'day', thing: day },
    { id: 'e', at: daysAgo(5), of: 'day', thing: 'a text' },
  ]

  async function show(more: readonly object[] = cleared, readOnly = false): Promise<void> {
    opened = new Opened(
      document.createElement('tb-cleared'),
      { formulas: [spelt()], cleared: more as typeof cleared },
      { language: 'de', decimal: ',' },
    )
    opened.dialog.readOnly = readOnly
    opened.dialog.show()
    await opened.whenOpen()
  }

  const workbook = () => opened.around.history.workbook
  const rows = () => [...opened.root.querySelectorAll('li')].map(textOf)
  const focused = () =>
    opened.root.activeElement?.getAttribute('aria-label') ?? textOf(opened.root.activeElement)
  const told = () => textOf(opened.find('.told'))

  before(dressPage)
  afterEach(() => opened.remove())

  it('is listed with its kind and its dates, the latest first, and what cannot be read among it', async () => {
    await show()
    const dates = (at: number) =>
      `deleted ${inGerman(cleared[at]!.at)}, kept until ${inGerman(cleared[at]!.at, 30)}`
    const buttons = 'Bring back Delete for good'
    deepEqual(rows(), [
      `Saturday oven Day, 05.12.2026, ${dates(3)} ${buttons}`,
      `Mill salt Ingredient, ${dates(2)} ${buttons}`,
      `before the new flour Kept state of Spelt tin, ${dates(1)} ${buttons}`,
      `Rye Formula, ${dates(0)} ${buttons}`,
      `Something that cannot be read ${dates(4)} Delete for good`,
    ])
    await holdsUp(opened)
  })

  it('comes back by keys, one after the other, each with a sentence, until nothing is left', async () => {
    await show(cleared.slice(0, 4))
    await press('Tab', 'Tab')
    equal(focused(), 'Bring back Saturday oven')
    await press('Enter')
    equal(told(), 'Saturday oven is back among the days.')
    equal(focused(), 'Bring back Mill salt')
    await press('Enter')
    equal(told(), 'Mill salt is back in the larder.')
    await press('Enter')
    match(told(), /^before the new flour is back as a formula of its own, Spelt tin, before the new flour: /)
    equal(focused(), 'Bring back Rye')
    await press('Enter')
    equal(told(), 'Rye is back on the shelf.')
    equal(focused(), 'Cleared away')
    match(textOf(opened.find('.body')), /^Nothing is cleared away\. What you delete is kept here for 30 days/)
    deepEqual(
      workbook().formulas.map(({ name }) => name),
      ['Rye', 'Spelt tin', 'Spelt tin, before the new flour'],
    )
    await press('Escape')
    await opened.whenClosed()
  })

  it('goes for good only when that is asked for twice, and undo brings it back', async () => {
    await show()
    await opened.click('li button', 'Delete for good')
    equal(told(), 'Saturday oven is deleted for good. Undo brings it back here.')
    await opened.click('footer button', 'Delete all for good …')
    equal(textOf(opened.find('.question')), 'Delete all 4 for good?')
    equal(focused(), 'Keep them')
    await press('Enter')
    equal(focused(), 'Delete all for good …')
    await press('Enter', 'Tab', 'Enter')
    equal(told(), 'All 4 are deleted for good. Undo brings them back here.')
    equal(workbook().cleared, undefined)
    equal(opened.around.history.undo()?.workbook.cleared?.length, 4)
  })

  it('can only be looked at where another tab edits', async () => {
    await show(cleared, true)
    ok(rows().every(row => !row.includes('Bring back')))
    equal(opened.root.querySelector('footer button'), null)
  })
})
