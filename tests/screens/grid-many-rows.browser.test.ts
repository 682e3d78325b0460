import { setViewport } from '@web/test-runner-commands'
import type { Formula, Line } from '../../src/dough/document/formula'
import { equal, ok, waitUntil } from '../assert'
import { press, type } from '../keys'
import { amounts, cell, type Desk, focusIn, goTo, setUp } from './grid-desk'

/** A dough of so many spices, each 1 g; every third with a note, so that rows are not all of one height. */
const spiced = (spices: number): string =>
  `Final dough:
    Bread flour = 1000 g
    Water = 700 g
    ${Array.from({ length: spices }, (_, i) => `Spice ${i + 1} = 1 g`).join('\n')}
    Salt = 20 g`

const noted = (formula: Formula): Formula => ({
  ...formula,
  stages: formula.stages.map(stage => ({
    ...stage,
    lines: stage.lines.map((line, i) => (i % 3 ? line : { ...line, note: 'toasted\nand ground' })),
  })),
})

const rowsOf = ({ grid }: Desk) => [...grid.shadowRoot!.querySelectorAll<HTMLElement>('tr.line')]
const namesOf = (desk: Desk) => rowsOf(desk).map(row => row.querySelector('.name')!.textContent)
const isBusy = ({ grid }: Desk) => grid.shadowRoot!.querySelector('[role=grid]')!.hasAttribute('aria-busy')
const areAllThere = (desk: Desk) => waitUntil(() => !isBusy(desk), 'all rows are there')
const isInSight = (element: Element | null) => {
  const { top, bottom } = element!.getBoundingClientRect()
  return top >= 0 && bottom <= innerHeight
}
const focused = ({ grid }: Desk) => grid.shadowRoot!.activeElement

describe('A grid of many rows', () => {
  beforeEach(async () => {
    await setViewport({ width: 1280, height: 900 })
    scrollTo(0, 0) // where the rows of the test before were
  })

  it('renders only the rows that an edit touches', async () => {
    const rendered: string[] = []
    // A line's template is the only one that asks where it was read from.
    const watched = (line: Line): Line => ({
      ...line,
      get source() {
        rendered.push(line.ingredient)
        return ''
      },
    })
    const desk = await setUp(spiced(300), {
      change: formula => ({
        ...formula,
        stages: formula.stages.map(s => ({ ...s, lines: s.lines.map(watched) })),
      }),
    })
    await areAllThere(desk)
    await goTo(desk.grid, 'Salt', 'weight')
    equal(new Set(rendered).size, 303)
    await type('25')
    rendered.length = 0
    await press('Enter')
    await desk.grid.updateComplete
    equal(desk.done.length, 1)
    // Of the salt, as it was edited and then as it is; the other lines neither weigh nor share otherwise.
    equal([...new Set(rendered)].join(), 'Salt')
  })

  it('shows the first rows at once, and soon all of them, in their order', async () => {
    const desk = await setUp(spiced(1000), { change: noted, atOnce: true })
    const first = rowsOf(desk).length
    ok(first >= 60, 'more than a window shows')
    ok(isBusy(desk) && first < 1003, 'the others are still to come, and readers are told')
    await areAllThere(desk)
    equal(
      namesOf(desk).join(),
      ['Bread flour', 'Water', ...Array.from({ length: 1000 }, (_, i) => `Spice ${i + 1}`), 'Salt'].join(),
    )
  })

  it('keeps what is seen in its place while the others come', async () => {
    const desk = await setUp(spiced(1000), { change: noted, atOnce: true })
    await goTo(desk.grid, 'Spice 10', 'weight')
    const at = cell(desk.grid, 'Spice 10', 'weight').getBoundingClientRect().top
    ok(isBusy(desk))
    const tops = new Set<number>()
    await waitUntil(() => {
      tops.add(cell(desk.grid, 'Spice 10', 'weight').getBoundingClientRect().top)
      return !isBusy(desk)
    }, 'all rows are there')
    equal([...tops].join(), String(at))
    equal(focusIn(desk.grid), 'Spice 10 / weight')
  })

  it('goes by keys to rows that are still to come, and on from there', async () => {
    const desk = await setUp(spiced(1500), { change: noted, atOnce: true })
    ok(isBusy(desk), 'not all are there')
    await goTo(desk.grid, 'Water', 'weight')
    await press('Control+End')
    equal(focusIn(desk.grid), 'Dough / actions')
    ok(isInSight(focused(desk)), 'the last row is in sight')
    await press('ArrowUp', 'ArrowUp')
    equal(focusIn(desk.grid), 'Salt / actions')
    await press('ArrowUp', 'PageUp')
    ok(focusIn(desk.grid).startsWith('Spice 14'), focusIn(desk.grid))
    ok(isInSight(focused(desk)), 'a screenful further up is in sight')
    await areAllThere(desk)
    ok(isInSight(focused(desk)), 'and stays so')
  })

  it('is typed in, far down, as anywhere', async () => {
    const desk = await setUp(spiced(400))
    await goTo(desk.grid, 'Water', 'weight')
    await press('Control+End', 'ArrowUp', 'ArrowUp', 'ArrowUp', 'Home', 'ArrowRight', 'ArrowRight')
    equal(focusIn(desk.grid), 'Spice 400 / weight')
    await type('7')
    await press('Enter')
    equal(focusIn(desk.grid), 'Salt / weight')
    ok(amounts(desk.sheet, 0).endsWith('Spice 399 1 g; Spice 400 7 g; Salt 20 g'))
    await press('Control+z')
    equal(focusIn(desk.grid), 'Spice 400 / weight')
    ok(isInSight(focused(desk)))
  })

  it('has all its rows before it is printed', async () => {
    const desk = await setUp(spiced(1000), { atOnce: true })
    ok(isBusy(desk))
    dispatchEvent(new Event('beforeprint')) // which no key brings about here
    equal(rowsOf(desk).length, 1003)
    equal(isBusy(desk), false)
  })

  it('leaves no row out of what is searched and read out', async () => {
    const desk = await setUp(spiced(200))
    await areAllThere(desk)
    const rows = rowsOf(desk)
    ok(rows.at(-1)!.getBoundingClientRect().top > 2 * innerHeight)
    // A browser may leave rows that it skips out of the tree that screen readers get; Chromium 156 does.
    equal(rows.filter(row => row.checkVisibility({ contentVisibilityAuto: true })).length, 203)
  })

  it('is found in, also out of sight', async () => {
    const desk = await setUp(spiced(200))
    await areAllThere(desk)
    const row = rowsOf(desk).find(r => r.querySelector('.name')!.textContent === 'Spice 190')!
    equal(isInSight(row), false)
    row.scrollIntoView({ block: 'center' }) // as the browser's own search does with what it finds
    ok(isInSight(row))
  })
})
