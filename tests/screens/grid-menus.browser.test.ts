import { sendMouse, setViewport } from '@web/test-runner-commands'
import { equal, match, ok, waitUntil } from '../assert'
import { press, type } from '../keys'
import { amounts, cell, type Desk, field, focusIn, goTo, middleOf, setUp } from './grid-desk'

describe('The actions of a row', () => {
  let desk: Desk

  beforeEach(async () => {
    await setViewport({ width: 1280, height: 900 })
    desk = await setUp()
  })

  const menu = () => desk.grid.shadowRoot!.querySelector<HTMLElement>('[role=menu]')!
  const entries = () => [...menu().querySelectorAll('button')].map(b => b.querySelector('span')!.textContent!)
  const focused = () => menu().querySelector(':focus span')?.textContent ?? ''

  async function open(row: string): Promise<void> {
    await goTo(desk.grid, row)
    await press('Shift+F10')
    await waitUntil(() => menu()?.matches(':popover-open'), 'the menu is open')
  }
  async function choose(row: string, entry: string): Promise<void> {
    await open(row)
    for (let i = 0; focused() !== entry && i < 20; i++) await press('ArrowDown')
    equal(focused(), entry)
    await press('Enter')
    await desk.grid.updateComplete
  }

  it('open by the button, by Enter on it, and by the menu keys; the arrows, Home, End and letters move', async () => {
    await sendMouse({ type: 'click', position: middleOf(cell(desk.grid, 'Salt', 'actions')) })
    await waitUntil(() => menu()?.matches(':popover-open'), 'the menu is open')
    equal(focused(), 'Move up')
    await press('ArrowUp')
    equal(focused(), 'Remove')
    await press('Home', 'ArrowDown')
    equal(focused(), 'Move down')
    await press('End', 'p')
    equal(focused(), 'Paste')
    await press('Escape')
    await desk.grid.updateComplete
    equal(focusIn(desk.grid), 'Salt / actions')
    await press('Enter')
    await waitUntil(() => menu()?.matches(':popover-open'), 'the menu is open again')
    await press('Tab')
    equal(focusIn(desk.grid), 'Salt / actions')
  })

  it('move, add and remove lines', async () => {
    await choose('Salt', 'Move up')
    match(amounts(desk.sheet, 1), /Salt 2\.1%; Water 69%/)
    equal(focusIn(desk.grid), 'Salt / ingredient')
    await choose('Salt', 'Add a line above')
    await type('Honey')
    await press('Enter')
    match(amounts(desk.sheet, 1), /Wholemeal spelt 18%; Honey; Salt/)
    await choose('Honey', 'Remove')
    match(amounts(desk.sheet, 1), /Wholemeal spelt 18%; Salt/)
    equal(focusIn(desk.grid), 'Salt / ingredient')
  })

  it('offer no way past the ends', async () => {
    await open('Ripe starter')
    ok(!entries().includes('Move up'))
    await press('Escape')
    await open('Levain 2')
    ok(!entries().includes('Move down'))
    await press('Escape')
  })

  it('open a note, and the larder', async () => {
    await choose('Salt', 'Add a note')
    await type('fine')
    await press('Enter')
    equal(desk.sheet.formula.stages[1]!.lines[3]!.note, 'fine')
    await choose('Salt', 'Define in the larder…')
    equal(JSON.stringify(desk.wishes.at(-1)), '{"want":"define","ingredient":"Salt"}')
  })

  it('rename, move, remove and add stages, and say whether they ferment', async () => {
    await choose('Levain 1', 'Does not ferment')
    equal(desk.sheet.formula.stages[0]!.ferments, false)
    match(cell(desk.grid, 'Levain 1').textContent!, /does not ferment/)
    await open('Levain 1')
    equal(menu().querySelectorAll('[aria-checked=true]').length, 1)
    await press('Escape')
    await choose('Levain 1', 'Add a stage before')
    equal(field(desk.grid)?.value, 'New stage')
    await type('Seed soaker')
    await press('Enter')
    await choose('Seed soaker', 'Move later')
    equal(desk.sheet.formula.stages.map(s => s.name).join(), 'Levain,Seed soaker,Final dough')
    await choose('Seed soaker', 'Rename')
    await type('Scald')
    await press('Enter')
    await choose('Scald', 'Remove stage')
    equal(desk.sheet.formula.stages.map(s => s.name).join(), 'Levain,Final dough')
  })

  it('mark the base of a stage without flour', async () => {
    desk = await setUp('Soaker:\nLinseed = 50 g\nSunflower seeds = 50 g\nFinal dough:\nBread flour = 100%')
    match(cell(desk.grid, 'Linseed').textContent!, /base/)
    await choose('Sunflower seeds', 'Mark as base')
    match(cell(desk.grid, 'Sunflower seeds').textContent!, /base/)
    ok(!/base/.test(cell(desk.grid, 'Linseed').textContent!))
    await open('Bread flour')
    ok(!entries().some(e => /base/.test(e)))
    await press('Escape')
  })

  it('copy and paste a line without the clipboard keys', async () => {
    await choose('Salt', 'Copy')
    await waitUntil(() => desk.said.includes('Copied.'), 'the copy has been told of')
    await choose('Levain 2', 'Paste')
    await waitUntil(() => desk.done.includes('Paste'), 'the line is pasted')
    match(amounts(desk.sheet, 1), /Salt 2\.1%; Salt /)
  })

  it('add a stage after the sheet’s last row', async () => {
    const button = [...desk.grid.shadowRoot!.querySelectorAll('button')].find(
      b => b.textContent === 'Add a stage',
    )!
    await sendMouse({ type: 'click', position: middleOf(button) })
    await desk.grid.updateComplete
    await type('Poolish')
    await press('Enter')
    equal(desk.sheet.formula.stages.map(s => s.name).join(), 'Levain,Poolish,Final dough')
  })
})
