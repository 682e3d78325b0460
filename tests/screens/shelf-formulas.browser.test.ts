import { sendMouse } from '@web/test-runner-commands'
import '../../components/shelf/tb-shelf'
import type { TbMenu } from '../../components/controls/tb-menu'
import { Desk } from '../../components/desk/desk'
import type { TbShelf } from '../../components/shelf/tb-shelf'
import type { Formula } from '../../src/dough/document/formula'
import { deepEqual, equal, match, ok, waitUntil } from '../assert'
import { press, type } from '../keys'
import { itOnce } from '../once'
import { millWheat, straightDough } from './breads'
import { Around, dressPage, english, passesAxe, textOf } from './mount'

describe('The shelf', () => {
  let shelf: TbShelf
  let around: Around

  async function show(formulas: readonly Formula[]): Promise<void> {
    around = new Around({ formulas })
    shelf = around.hold(document.createElement('tb-shelf'))
    const desk = new Desk(
      around.history.workbook,
      english,
      () => {},
      () => {
        shelf.version += 1
      },
    )
    around.onEdit = workbook => {
      shelf.formulas = workbook.formulas
    }
    Object.assign(shelf, {
      formulas,
      current: formulas[0]?.id ?? '',
      readings: desk.shelfReading,
      numbers: english,
    })
    await shelf.updateComplete
  }
  const root = () => shelf.shadowRoot!
  const links = () => [...root().querySelectorAll('a')]
  const names = () => around.history.workbook.formulas.map(f => f.name)
  /** What the menus do is fetched, and done when it is there. */
  const holds = (wanted: string) =>
    waitUntil(() => names().join() === wanted, `the shelf holds ${wanted}; it holds ${names()}`)
  const spelt = () => straightDough('Bread flour = 100%\nWater = 66%\nSalt = 2%', 'Spelt tin')

  /** Puts the focus on the actions of a formula and opens them with the keyboard. */
  async function openActions(name: string): Promise<void> {
    root().querySelector<HTMLElement>(`tb-menu[label="Actions for ${name}"]`)!.focus()
    await press('ArrowDown')
  }

  before(dressPage)
  afterEach(() => shelf.remove())

  it('names each formula with its true hydration and prefermented flour', async () => {
    await show([millWheat(), spelt()])
    await waitUntil(() => !root().querySelector('[data-waits]'), 'both formulas are worked out')
    equal(textOf(links()[0]), 'Mill wheat70 % true, 10 % prefermented')
    equal(textOf(links()[1]), 'Spelt tin66 % true')
  })

  it('marks the open formula and opens another with the keyboard', async () => {
    const formulas = [millWheat(), spelt()]
    await show(formulas)
    equal(links()[0]!.getAttribute('aria-current'), 'page')
    equal(links()[1]!.hasAttribute('aria-current'), false)
    links()[1]!.focus()
    await press('Enter')
    deepEqual(around.wishes, [{ want: 'open', formula: formulas[1]!.id }])
  })

  it('renames in place: Enter keeps the new name, Escape the old one', async () => {
    await show([millWheat()])
    await openActions('Mill wheat')
    await press('Enter')
    await waitUntil(() => root().querySelector('.rename'), 'the name is being edited')
    await type('Weekday loaf')
    await press('Enter')
    await shelf.updateComplete
    equal(names().join(), 'Weekday loaf')
    equal(textOf(root().activeElement).startsWith('Weekday loaf'), true, 'the focus is back on the formula')
    await openActions('Weekday loaf')
    await press('Enter')
    await waitUntil(() => root().querySelector('.rename'), 'the name is being edited')
    await type('No')
    await press('Escape')
    equal(names().join(), 'Weekday loaf')
  })

  it('duplicates under a free name and opens the copy', async () => {
    await show([millWheat()])
    await openActions('Mill wheat')
    await press('ArrowDown', 'Enter')
    await holds('Mill wheat,Mill wheat 2')
    deepEqual(around.wishes, [{ want: 'open', formula: around.history.workbook.formulas[1]!.id }])
  })

  it('deletes at once; the edit can be undone', async () => {
    await show([millWheat(), spelt()])
    await openActions('Spelt tin')
    await press('End', 'Enter')
    await holds('Mill wheat')
    equal(around.history.undoLabel, 'Delete Spelt tin')
  })

  it('asks to send one formula out', async () => {
    await show([millWheat()])
    await openActions('Mill wheat')
    await press('s', 'Enter')
    deepEqual(around.wishes, [{ want: 'send-out', formula: around.history.workbook.formulas[0]!.id }])
  })

  it('closes a menu with Escape and gives the focus back', async () => {
    await show([millWheat()])
    await openActions('Mill wheat')
    await press('Escape')
    equal(root().activeElement?.getAttribute('label'), 'Actions for Mill wheat')
    equal(names().join(), 'Mill wheat')
  })

  it('begins a blank formula by percentages with the pointer', async () => {
    await show([])
    match(textOf(root().querySelector('nav')), /Nothing on the shelf yet/)
    const click = async (element: Element) => {
      const { x, y, width, height } = element.getBoundingClientRect()
      await sendMouse({ type: 'click', position: [Math.round(x + width / 2), Math.round(y + height / 2)] })
    }
    const menu = root().querySelector('#new')!
    await click(menu)
    await click(menu.shadowRoot!.querySelector('[role=menuitem]')!)
    await holds('New formula')
    const formula = around.history.workbook.formulas[0]!
    ok(formula.stages.every(s => s.lines.every(l => l.amount.endsWith('%'))))
    deepEqual(around.wishes, [{ want: 'open', formula: formula.id, toName: true }])
  })

  it('begins a formula from an example, as a copy', async () => {
    await show([millWheat()])
    shelf.examples = [millWheat()]
    await shelf.updateComplete
    root().querySelector<HTMLElement>('#new')!.focus()
    await press('ArrowUp', 'Enter')
    await holds('Mill wheat,Mill wheat 2')
  })

  it('looks for a formula when there are many', async () => {
    await show([...Array.from({ length: 7 }, (_, i) => ({ ...spelt(), name: `Tin ${i + 1}` })), millWheat()])
    root().querySelector('input')!.focus()
    await type('whEAT')
    await shelf.updateComplete
    equal(links().map(textOf).join(), links().length === 1 ? textOf(links()[0]) : 'one formula')
    match(textOf(links()[0]), /^Mill wheat/)
    await type('zz')
    await shelf.updateComplete
    match(textOf(root().querySelector('nav')), /No formula contains “whEATzz”/)
  })

  it('offers no edits while another tab edits', async () => {
    await show([millWheat()])
    shelf.readOnly = true
    await shelf.updateComplete
    equal(root().querySelector('#new'), null)
    const menu = root().querySelector('li tb-menu')!
    await (menu as TbMenu).updateComplete
    equal(textOf(menu.shadowRoot!.querySelector('[role=menu]')), 'Send out Set beside… Print a card Label…')
  })

  itOnce('has nothing that axe finds, its menu open or not', async () => {
    await show([millWheat(), spelt()])
    await passesAxe(shelf)
    await openActions('Mill wheat')
    await passesAxe(shelf)
  })

  it('shows a long shelf bit by bit, and finds at once what is still to come', async () => {
    const formulas = Array.from({ length: 90 }, (_, i) => ({ ...spelt(), id: `tin-${i}`, name: `Tin ${i}` }))
    await show(formulas)
    ok(links().length < 90, 'what is in sight comes first')
    root().querySelector<HTMLInputElement>('input[type=search]')!.focus()
    await type('Tin 89')
    await shelf.updateComplete
    deepEqual(
      links().map(a => a.getAttribute('href')),
      ['#tin-89'],
    )
    await press('Control+a')
    await press('Delete')
    await waitUntil(() => links().length === 90, 'all of them stand on the shelf')
    deepEqual(
      links().map(a => a.getAttribute('href')),
      formulas.map(f => `#${f.id}`),
    )
  })
})
