import { emulateMedia, setViewport } from '@web/test-runner-commands'
import { equal, match, ok, waitUntil } from '../assert'
import { press, type } from '../keys'
import { itOnce } from '../once'
import { amounts, cell, type Desk, field, focusIn, goTo, held, setUp, shows } from './grid-desk'
import { passesAxe } from './mount'

const both = held(['trueHydration', 0.75, 'Water'], ['salt', 0.02, 'Salt'])
const contradictory = held(['trueHydration', 0.75, 'Water'], ['moistureHydration', 0.6, 'Salt'])

describe('Holds in the grid', () => {
  let desk: Desk

  beforeEach(() => setViewport({ width: 1280, height: 900 }))

  const settled = () => desk.grid.updateComplete
  const holds = () => (desk.sheet.formula.holds ?? []).map(h => `${h.reading} ${h.value}`).join()
  const menu = () => desk.grid.shadowRoot!.querySelector<HTMLElement>('[role=menu]')!
  const focused = () => menu().querySelector(':focus span')?.textContent ?? ''

  async function choose(row: string, entry: string): Promise<void> {
    await goTo(desk.grid, row, row === 'Final dough' ? 'ingredient' : 'weight')
    await press('Shift+F10')
    await waitUntil(() => menu().matches(':popover-open'), 'the menu is open')
    for (let i = 0; focused() !== entry && i < 20; i++) await press('ArrowDown')
    equal(focused(), entry)
    await press('Enter')
    await settled()
  }

  it('a share of the whole dough typed in the final dough is held, and shown as typed', async () => {
    desk = await setUp()
    await goTo(desk.grid, 'Water 2', 'wholeDough')
    await type('78')
    await press('Enter')
    await settled()
    equal(holds(), 'wholeDough 0.78')
    equal(shows(cell(desk.grid, 'Water 2', 'wholeDough')), '78')
    ok(cell(desk.grid, 'Water 2', 'wholeDough').querySelector('.figure.typed'))
    match(shows(cell(desk.grid, 'Water 2', 'weight')), /^793 ?gives for 78 % of all flour$/)
    equal(focusIn(desk.grid), 'Salt / wholeDough')
    equal(amounts(desk.sheet, 1).split('; ')[2], 'Water 69%', 'what was typed before is kept for the release')
  })

  it('a share that is emptied is let go, and one that is not a number is refused where it was typed', async () => {
    desk = await setUp(undefined, { change: held(['wholeDough', 0.78, 'Water']) })
    await goTo(desk.grid, 'Water 2', 'wholeDough')
    await type('salt')
    await press('Enter')
    await settled()
    match(
      desk.grid.shadowRoot!.querySelector('.refusal')?.textContent ?? '',
      /not a share of the whole dough/,
    )
    equal(field(desk.grid)?.value, 'salt')
    await press('Escape', 'Delete')
    await settled()
    equal(holds(), '')
    equal(shows(cell(desk.grid, 'Water 2', 'weight')), '690')
  })

  it('a line is begun by its share of the whole dough', async () => {
    desk = await setUp()
    await goTo(desk.grid, 'Add an ingredient 2', 'wholeDough')
    await type('3')
    await press('Enter')
    await settled()
    equal(holds(), 'wholeDough 0.03')
    equal(desk.done.join(), 'Add a line')
  })

  it('lets nothing be typed there in an earlier stage', async () => {
    desk = await setUp()
    await goTo(desk.grid, 'Ripe starter', 'wholeDough')
    await press('F2')
    equal(field(desk.grid), null)
    equal(cell(desk.grid, 'Ripe starter', 'wholeDough').getAttribute('aria-readonly'), 'true')
  })

  it('says in words which lines give and for what, at the name and at the weight', async () => {
    desk = await setUp(undefined, { change: both })
    match(shows(cell(desk.grid, 'Water 2')), /gives for true hydration held at 75 %$/)
    match(shows(cell(desk.grid, 'Salt', 'weight')), /^22\.3 ?gives for salt held at 2 %$/)
    equal(cell(desk.grid, 'Salt', 'weight').title, 'Salt gives for salt held at 2 %')
    match(cell(desk.grid, 'Salt', 'percent').textContent!, /2\.23 ?gives/)
    equal(getComputedStyle(cell(desk.grid, 'Salt', 'weight').querySelector('.figure')!).fontStyle, 'italic')
  })

  it('an amount typed into a line that gives releases its hold, and says so', async () => {
    desk = await setUp(undefined, { change: both })
    await goTo(desk.grid, 'Water 2', 'weight')
    await type('700')
    await press('Enter')
    await settled()
    equal(holds(), 'salt 0.02')
    await waitUntil(() => desk.said.length, 'it is said')
    equal(desk.said.join(), 'Water is 700 g; released: true hydration held at 75 %.')
    await press('Control+z')
    await settled()
    equal(holds(), 'trueHydration 0.75,salt 0.02')
  })

  it('a share typed into a line that gives for a reading takes its place, and says so', async () => {
    desk = await setUp(undefined, { change: both })
    await goTo(desk.grid, 'Water 2', 'wholeDough')
    await type('70')
    await press('Enter')
    await settled()
    equal(holds(), 'salt 0.02,wholeDough 0.7')
    await waitUntil(() => desk.said.length, 'it is said')
    equal(desk.said.join(), 'Water gives for what was typed; released: true hydration held at 75 %.')
    await press('ArrowUp')
    await type('71')
    await press('Enter')
    equal(desk.said.length, 1, 'another share of the same line is no release')
  })

  it('the menu of a line that gives offers to release it', async () => {
    desk = await setUp(undefined, { change: both })
    await choose('Salt', 'Release salt held at 2 %')
    equal(holds(), 'trueHydration 0.75')
    equal(desk.done.join(), 'Release salt held at 2 %')
    equal(focusIn(desk.grid), 'Salt / weight')
  })

  it('tells holds without an answer once, and strikes the last good weights in words', async () => {
    desk = await setUp(undefined, { change: held(['trueHydration', 0.75, 'Water']) })
    equal(shows(cell(desk.grid, 'Water 2', 'weight')), '740gives for true hydration held at 75 %')
    desk.sheet.hold('moistureHydration', 0.6, { stage: 'Final dough', ingredient: 'Salt' })
    desk.grid.version++
    await settled()
    const at = cell(desk.grid, 'Water 2', 'weight')
    match(shows(at), /^740last good, gives for/)
    equal(getComputedStyle(at.querySelector('s')!).textDecorationLine, 'line-through')
    const problems = [...desk.grid.shadowRoot!.querySelectorAll('tr.problem > td > p')]
    equal(problems.length, 1)
    match(problems[0]!.textContent!, /No weight of Water and Salt gives true hydration held at 75 %/)
    for (const row of ['Water 2', 'Salt'])
      equal(cell(desk.grid, row, 'weight').getAttribute('aria-describedby'), problems[0]!.id)
    match(shows(cell(desk.grid, 'Final dough')), /^Final dough waits for Water$/)
    await goTo(desk.grid, 'Bread flour 2', 'percent')
    await type('80')
    await press('Enter')
    await settled()
    equal(shows(cell(desk.grid, 'Bread flour 2', 'weight')), '800', 'the rest of the sheet works')
  })

  it('says how far a reading goes that cannot be reached, and holds it there or releases it at one press', async () => {
    desk = await setUp(undefined, { change: held(['trueHydration', 0.05, 'Water']) })
    const offers = await waitUntil(
      () => desk.grid.shadowRoot!.querySelector<HTMLElement>('tb-offers p'),
      'there are offers',
    )
    // 95.4545 g of water in the levain over 1,114.545 g of flour
    match(
      offers.querySelector('span')!.textContent!,
      /^True hydration cannot be 5 %: at least 8\.57 % while Bread flour, Wholemeal spelt and Levain stay\.$/,
    )
    const [nearest, release] = offers.querySelectorAll('button')
    equal(release?.textContent, 'Release it')
    nearest!.focus()
    await press('Enter')
    await waitUntil(() => holds() === 'trueHydration 0.0857', 'it is held there')
    await waitUntil(() => focusIn(desk.grid) === 'Water / ingredient', 'the focus is on its line')
  })

  it('copies and pastes a share of the whole dough as typed', async () => {
    desk = await setUp(undefined, { change: held(['wholeDough', 0.7, 'Water']) })
    await goTo(desk.grid, 'Water 2')
    await press('Shift+Space', 'Control+c')
    await goTo(desk.grid, 'Add an ingredient 2')
    await press('Control+v')
    await waitUntil(() => /; Water$/.test(amounts(desk.sheet, 1)), 'the line is there')
    equal(holds(), 'wholeDough 0.7,wholeDough 0.7')
  })

  it('writes a stage in grams and back in percentages, no weight changing', async () => {
    desk = await setUp()
    const weights = () => desk.sheet.formula.stages[1]!.lines.map(l => desk.sheet.line(l.id).weight).join()
    const becomes = (all: string) => waitUntil(() => amounts(desk.sheet, 1) === all, all)
    const before = weights()
    await choose('Final dough', 'Write this stage in grams')
    await becomes('Bread flour 820 g; Wholemeal spelt 180 g; Water 690 g; Salt 21 g; Levain 210 g')
    equal(weights(), before)
    await choose('Final dough', 'Write this stage in percentages')
    await becomes('Bread flour 82%; Wholemeal spelt 18%; Water 69%; Salt 2.1%; Levain 21%')
    equal(weights(), before)
  })

  it('changes a starter for another of the larder, the flour and water staying', async () => {
    desk = await setUp()
    const others = desk.sheet.larder.ingredients.filter(
      i => i.countsAs.kind === 'starter' && i.name !== 'Ripe starter',
    )
    const hydration = desk.sheet.reading('trueHydration')
    await choose('Ripe starter', 'Change to another starter, dough unchanged…')
    await waitUntil(() => menu().matches(':popover-open'), 'the starters are offered')
    equal(menu().querySelectorAll('button').length, others.length)
    const first = focused()
    await press('Enter')
    await waitUntil(() => desk.sheet.formula.stages[0]!.lines[0]!.ingredient === first, `${first} is taken`)
    ok(Math.abs(desk.sheet.reading('trueHydration')! - hydration!) < 1e-9)
  })

  for (const scheme of ['light', 'dark'] as const)
    itOnce(`passes axe in the ${scheme} scheme: lines that give, without an answer, narrow`, async () => {
      await emulateMedia({ colorScheme: scheme })
      desk = await setUp(undefined, { change: both })
      await goTo(desk.grid, 'Salt', 'weight')
      await passesAxe(desk.grid)
      desk = await setUp(undefined, { change: contradictory })
      await passesAxe(desk.grid)
      await setViewport({ width: 390, height: 844 })
      desk = await setUp(undefined, { change: contradictory })
      await passesAxe(desk.grid)
      await emulateMedia({ colorScheme: 'light' })
    })
})
