import { emulateMedia, sendMouse, setViewport } from '@web/test-runner-commands'
import { equal, match, ok, waitUntil } from '../assert'
import { press } from '../keys'
import { itCase, itOnce } from '../once'
import { cell, type Desk, field, focusIn, goTo, held, middleOf, setUp, sixLoaves } from './grid-desk'
import { passesAxe } from './mount'

const tall = `Final dough:\nBread flour = 100%\n${Array.from({ length: 60 }, (_, i) => `Honey = ${i + 1} g`).join('\n')}`

describe('Asking the grid how a number is worked out', () => {
  let desk: Desk

  beforeEach(() => setViewport({ width: 1280, height: 900 }))

  /** What was asked for, with the names of lines and stages in the place of their ids. */
  const asked = (): string =>
    desk.wishes
      .map((w): string => (w.want === 'working' ? w.cell : w.want))
      .map(text => {
        const { stages } = desk.sheet.formula
        const named = [
          ...stages.map(s => [s.id, s.name]),
          ...stages.flatMap(s => s.lines.map(l => [l.id, l.ingredient])),
        ]
        return named.reduce<string>((words, [id, name]) => words.replace(` ${id} `, ` ${name} `), text)
      })
      .join('; ')
  const menu = () => desk.grid.shadowRoot!.querySelector<HTMLElement>('[role=menu]')!
  const how = (row: string, column: string) =>
    cell(desk.grid, row, column).querySelector<HTMLElement>('button.how')

  for (const [at, [row, column, is]] of (
    [
      ['Water 2', 'weight', 'line Water weight'],
      ['Water 2', 'percent', 'line Water percent'],
      ['Water 2', 'wholeDough', 'line Water wholeDough'],
      ['Salt', 'batch', 'line Salt batch'],
      ['Salt', 'note', 'line Salt batch'],
      ['Levain 1', 'ingredient', 'stage Levain build'],
      ['Sum', 'weight', 'stage Levain weight'],
      ['Sum', 'percent', 'stage Levain base'],
      ['Dough', 'batch', 'stage Final dough build'],
    ] as const
  ).entries())
    itCase(at)(`by Alt+Enter at ${row} / ${column}`, async () => {
      desk = await setUp(undefined, { change: sixLoaves })
      await goTo(desk.grid, row, column)
      await press('Alt+Enter')
      equal(asked(), is)
      equal(field(desk.grid), null)
      ok(
        desk.sheet.working((desk.wishes[0] as { cell: Parameters<typeof desk.sheet.working>[0] }).cell).title,
      )
    })

  it('says where there is no number to ask about', async () => {
    desk = await setUp()
    await goTo(desk.grid, 'Add an ingredient 1')
    await press('Alt+Enter')
    await goTo(desk.grid, 'Water 1', 'wholeDough')
    await press('Alt+Enter')
    equal(asked(), '')
    equal(desk.said.join(' '), 'There is no number here to ask about. There is no number here to ask about.')
  })

  it('by Enter where nothing can be typed, also while it can only be read', async () => {
    desk = await setUp(undefined, { change: sixLoaves })
    await goTo(desk.grid, 'Salt', 'batch')
    await press('Enter')
    equal(asked(), 'line Salt batch')
    desk = await setUp(undefined, { readOnly: true })
    await goTo(desk.grid, 'Salt', 'weight')
    await press('Alt+Enter')
    equal(asked(), 'line Salt weight')
  })

  it('by a click on “how”, which only the computed cell with the focus shows; the focus stays on the cell', async () => {
    desk = await setUp(undefined, { change: held(['trueHydration', 0.75, 'Water']) })
    await goTo(desk.grid, 'Salt', 'percent')
    equal(how('Salt', 'percent'), null, 'a typed number has nothing to show')
    await goTo(desk.grid, 'Water 2', 'weight')
    equal(desk.grid.shadowRoot!.querySelectorAll('button.how').length, 1)
    match(how('Water 2', 'weight')!.getAttribute('aria-label')!, /^how 740 is worked out$/)
    await sendMouse({ type: 'click', position: middleOf(how('Water 2', 'weight')!) })
    equal(asked(), 'line Water weight')
    equal(focusIn(desk.grid), 'Water / weight')
  })

  for (const width of [1280, 660, 390])
    it(`“how” covers no figure and can be hit at ${width} px`, async () => {
      await setViewport({ width, height: 844 })
      desk = await setUp(undefined, { change: held(['trueHydration', 0.75, 'Water']) })
      for (const [row, column] of [
        ['Water 2', 'weight'],
        ['Water 2', 'percent'],
        ['Ripe starter', 'percent'],
        ['Dough', 'weight'],
        ['Dough', 'percent'],
      ] as const) {
        await goTo(desk.grid, row, column)
        const at = cell(desk.grid, row, column)
        const button = at.querySelector('.how')!.getBoundingClientRect()
        for (const part of at.querySelectorAll('.figure span')) {
          const words = document.createRange()
          words.selectNodeContents(part)
          const { left, right, width: wide } = words.getBoundingClientRect()
          ok(
            wide === 0 || button.left >= right - 1 || button.right <= left + 1,
            `${row} ${column}: ${part.textContent}`,
          )
        }
        ok(button.width >= 24 && button.height >= 24, `${row} ${column}: ${button.width} × ${button.height}`)
      }
    })

  it('by the menu of the row, about the number it was opened at', async () => {
    desk = await setUp()
    await goTo(desk.grid, 'Salt', 'weight')
    await press('Shift+F10', 'h')
    await waitUntil(() => menu().matches(':popover-open'), 'the menu is open')
    equal(menu().querySelector(':focus span')?.textContent, 'How is 21.0 g worked out?')
    await press('Enter')
    equal(asked(), 'line Salt weight')
    equal(focusIn(desk.grid), 'Salt / weight')
  })

  it('lights the lines a working speaks of, by a wash, a mark and words', async () => {
    desk = await setUp()
    const { lines } = desk.sheet.formula.stages[1]!
    desk.grid.lit = new Set([lines[0]!.id, lines[2]!.id])
    await desk.grid.updateComplete
    const lit = [...desk.grid.shadowRoot!.querySelectorAll('tr.lit')]
    equal(lit.map(row => row.querySelector('.name')!.textContent).join(), 'Bread flour,Water')
    for (const row of lit) {
      match(row.querySelector('th')!.textContent!, /part of the working shown/)
      ok(
        Number.parseFloat(getComputedStyle(row.querySelector('th')!, '::before').borderInlineStartWidth) >= 3,
      )
    }
    desk.grid.lit = new Set()
    await desk.grid.updateComplete
    equal(desk.grid.shadowRoot!.querySelectorAll('tr.lit').length, 0)
  })

  it('brings a lit line into view where none is in sight, and leaves the page alone otherwise', async () => {
    desk = await setUp(tall)
    const { lines } = desk.sheet.formula.stages[0]!
    desk.grid.lit = new Set([lines[1]!.id, lines[55]!.id])
    await desk.grid.updateComplete
    equal(scrollY, 0)
    desk.grid.lit = new Set([lines[55]!.id])
    await desk.grid.updateComplete
    ok(scrollY > 0)
    const { top, bottom } = desk.grid.shadowRoot!.querySelector('tr.lit')!.getBoundingClientRect()
    ok(top > 0 && bottom < innerHeight)
  })

  for (const scheme of ['light', 'dark'] as const)
    itOnce(`passes axe in the ${scheme} scheme: lit, with the way to the working`, async () => {
      await emulateMedia({ colorScheme: scheme })
      desk = await setUp(undefined, { change: held(['trueHydration', 0.75, 'Water']) })
      desk.grid.lit = new Set(desk.sheet.formula.stages[1]!.lines.map(l => l.id))
      await goTo(desk.grid, 'Water 2', 'weight')
      await passesAxe(desk.grid)
      await setViewport({ width: 390, height: 844 })
      desk.grid.narrow = true
      await desk.grid.updateComplete
      await passesAxe(desk.grid)
      await emulateMedia({ colorScheme: 'light' })
    })
})
