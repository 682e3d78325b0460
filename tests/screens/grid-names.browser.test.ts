import { emulateMedia, sendMouse, setViewport } from '@web/test-runner-commands'
import { nameAt } from '../../components/grid/editing/amount-names'
import type { Formula } from '../../src/dough/document/formula'
import { equal, match, ok } from '../assert'
import { press, type } from '../keys'
import { itOnce } from '../once'
import { amounts, cell, type Desk, field, focusIn, goTo, middleOf, setUp } from './grid-desk'
import { passesAxe } from './mount'

const withJotting = (formula: Formula): Formula => ({
  ...formula,
  jottings: [{ id: 'tin', name: 'tin_weight', text: '900 g' }],
})

describe('Names in an amount', () => {
  let desk: Desk

  beforeEach(async () => {
    await setViewport({ width: 1280, height: 900 })
    desk = await setUp(undefined, { change: withJotting })
  })

  const list = () => desk.grid.shadowRoot!.querySelector<HTMLElement>('#choices')
  const offered = () =>
    list()?.hidden === false
      ? [...list()!.querySelectorAll('li')].map(li => /^[\w.]+/.exec(li.textContent!.trim())![0])
      : []

  for (const [typed, is] of [
    ['2*sa', 'sa'],
    ['sal', 'sal'],
    ['max(bread_flour, wat', 'wat'],
    ['levain.w', 'levain.w'],
    ['20', undefined],
    ['2 tsp', undefined],
    ['2 ts', undefined],
    ['½ cup', undefined],
    ['70% + 20 g', undefined],
    ['g', undefined],
    ['70%', undefined],
    ['salt+', undefined],
  ] as const)
    itOnce(`${typed} ${is ? `is in the middle of the name ${is}` : 'is no beginning of a name'}`, () => {
      equal(nameAt(typed, typed.length)?.text, is)
    })

  it('are offered once a letter is typed, and never for a number or a unit', async () => {
    await goTo(desk.grid, 'Levain 2', 'weight')
    for (const [keys, open] of [
      ['2', false],
      ['*', false],
      ['s', true],
    ] as const) {
      await type(keys)
      await desk.grid.updateComplete
      equal(offered().length > 0, open, `after ${keys}`)
    }
    equal(offered()[0], 'salt')
    await press('Control+a')
    await type('2 tsp')
    await desk.grid.updateComplete
    equal(offered().length, 0)
  })

  it('are those of the stage, of jottings, of readings and of earlier stages; not the line’s own', async () => {
    await goTo(desk.grid, 'Salt', 'percent')
    await type('t')
    await desk.grid.updateComplete
    match(offered().join(), /tin_weight/)
    match(offered().join(), /true_hydration/)
    await press('Control+a')
    await type('sal')
    await desk.grid.updateComplete
    ok(!offered().includes('salt'), offered().join())
    await press('Escape')
    await goTo(desk.grid, 'Water 1', 'weight')
    await type('whole')
    await desk.grid.updateComplete
    equal(offered().join(), '', 'a line of the final dough is not called so in an earlier stage')
  })

  it('an arrow chooses, Enter puts the name at the caret and stays, another keeps the amount', async () => {
    await goTo(desk.grid, 'Levain 2', 'weight')
    await type('2*br')
    await desk.grid.updateComplete
    await press('ArrowDown')
    await desk.grid.updateComplete
    equal(field(desk.grid)!.getAttribute('aria-activedescendant'), 'choice-0')
    await press('Enter')
    await desk.grid.updateComplete
    equal(field(desk.grid)?.value, '2*bread_flour')
    equal(offered().length, 0)
    await type(' / 10')
    await press('Enter')
    await desk.grid.updateComplete
    equal(amounts(desk.sheet, 1).split('; ')[4], 'Levain 2*bread_flour / 10')
    equal(focusIn(desk.grid), 'Add an ingredient to Final dough / weight')
  })

  it('Enter with an open list and no choice keeps what was typed', async () => {
    await goTo(desk.grid, 'Levain 2', 'weight')
    await type('2*salt')
    await desk.grid.updateComplete
    ok(offered().length > 0)
    await press('Enter')
    await desk.grid.updateComplete
    equal(amounts(desk.sheet, 1).split('; ')[4], 'Levain 2*salt')
  })

  it('Tab takes the chosen name and goes on; Escape takes nothing', async () => {
    await goTo(desk.grid, 'Levain 2', 'weight')
    await type('wat')
    await press('ArrowDown', 'Escape')
    await desk.grid.updateComplete
    equal(field(desk.grid), null)
    equal(amounts(desk.sheet, 1).split('; ')[4], 'Levain 210 g')
    await type('wat')
    await press('ArrowDown', 'Tab')
    await desk.grid.updateComplete
    equal(amounts(desk.sheet, 1).split('; ')[4], 'Levain water')
    equal(focusIn(desk.grid), 'Levain / wholeDough')
  })

  it('a click on a name puts it at the caret, and the field’s own undo takes it back', async () => {
    await goTo(desk.grid, 'Levain 2', 'weight')
    await type('100 g + wat')
    await desk.grid.updateComplete
    await sendMouse({ type: 'click', position: middleOf(list()!.querySelector('li')!) })
    await desk.grid.updateComplete
    equal(field(desk.grid)?.value, '100 g + water')
    equal(focusIn(desk.grid), 'Levain / weight*')
    await press('Control+z')
    equal(field(desk.grid)?.value, '100 g + wat')
    await press('Escape')
  })

  it('the list is a listbox of the field, within the window also when that is narrow, and passes axe', async () => {
    for (const width of [1280, 320]) {
      await setViewport({ width, height: 800 })
      desk = await setUp(undefined, { change: withJotting })
      await goTo(desk.grid, 'Levain 2', 'percent')
      await type('2*s')
      await desk.grid.updateComplete
      equal(field(desk.grid)!.getAttribute('aria-controls'), list()!.id)
      equal(field(desk.grid)!.getAttribute('aria-expanded'), 'true')
      const { left, right } = list()!.getBoundingClientRect()
      ok(left >= 0 && right <= width, `${left} to ${right} of ${width}`)
      equal(document.documentElement.scrollWidth, width)
      await passesAxe(desk.grid)
      await emulateMedia({ colorScheme: 'dark' })
      await passesAxe(desk.grid)
      await emulateMedia({ colorScheme: 'light' })
      await press('Escape')
    }
  })

  it('leaves the cell as wide as its column when closed', async () => {
    await goTo(desk.grid, 'Levain 2', 'weight')
    const before = cell(desk.grid, 'Levain 2', 'weight').getBoundingClientRect().width
    await type('wat')
    equal(cell(desk.grid, 'Levain 2', 'weight').getBoundingClientRect().width, before)
    await press('Escape')
  })
})
