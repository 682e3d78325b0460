import { emulateMedia, setViewport } from '@web/test-runner-commands'
import { equal, match, ok } from '../assert'
import { press, type } from '../keys'
import { itOnce } from '../once'
import { cell, type Desk, field, focusIn, goTo, setUp, shows } from './grid-desk'
import { passesAxe } from './mount'

const troubled = `
  Soaker:
    Linseed = 50 g
    Bran of the mill = 1 cup
  Final dough:
    Bread flour = 100%
    Water = 70%
    Salt = some
    Soaker = 150 g`

describe('What the grid shows', () => {
  let desk: Desk

  beforeEach(() => setViewport({ width: 1280, height: 900 }))

  it('shows stages in words and the sum of each', async () => {
    desk = await setUp()
    // 100 g of water over 120 g of flour; in all 785.4545 g over 1,114.545 g
    match(shows(cell(desk.grid, 'Levain 1')), /ferments, 83.3 % hydration, 220 g as written, 210 g taken/)
    match(shows(cell(desk.grid, 'Final dough')), /^Final dough 70.5 % hydration, 1,921 g as written$/)
    match(shows(cell(desk.grid, 'Ripe starter')), /100 % hydration/)
    equal(shows(cell(desk.grid, 'Dough', 'weight')), '1,921')
    equal(shows(cell(desk.grid, 'Dough', 'percent')), '192.1')
    equal(shows(cell(desk.grid, 'Water 2', 'wholeDough')), '68.8')
    equal(cell(desk.grid, 'Ripe starter', 'wholeDough').getAttribute('aria-readonly'), 'true')
    equal(cell(desk.grid, 'Water 2', 'wholeDough').getAttribute('aria-readonly'), null)
  })

  it('tells the words that a line was read from, and goes on telling them when its amount changes', async () => {
    const source = '2¼ tsp fine sea salt'
    const read = <T extends { ingredient: string }>(line: T) =>
      line.ingredient === 'Salt' ? { ...line, source } : line
    desk = await setUp(undefined, {
      change: formula => ({
        ...formula,
        stages: formula.stages.map(stage => ({ ...stage, lines: stage.lines.map(read) })),
      }),
    })
    equal(cell(desk.grid, 'Salt').title, 'Read from “2¼ tsp fine sea salt”')
    equal(cell(desk.grid, 'Water 2').title, '')
    await goTo(desk.grid, 'Salt', 'weight')
    await type('22')
    await press('Enter')
    await desk.grid.updateComplete
    equal(shows(cell(desk.grid, 'Salt', 'weight')), '22')
    equal(cell(desk.grid, 'Salt').title, 'Read from “2¼ tsp fine sea salt”')
  })

  it('tells a problem where it arose, and of the rows that wait for it', async () => {
    desk = await setUp(troubled)
    const problems = [...desk.grid.shadowRoot!.querySelectorAll('tr.problem p')].map(p => p.textContent!)
    equal(problems.length, 2, problems.join('\n'))
    match(shows(cell(desk.grid, 'Soaker')), /waits for Bran of the mill/)
    equal(shows(cell(desk.grid, 'Dough', 'weight')), '–')
  })

  it('sets the decimal marks of a column under each other', async () => {
    desk = await setUp()
    const marks = ['Bread flour 2', 'Salt', 'Levain 2', 'Water 2'].map(row => {
      const figure = cell(desk.grid, row, 'percent').querySelector('.figure')!
      const text = [...figure.childNodes].find(node => node instanceof Text && node.data.includes('.'))
      if (!text) return Math.round(figure.querySelector('.rest')!.getBoundingClientRect().left) // unseen digits
      const range = new Range()
      range.setStart(text, (text as Text).data.indexOf('.'))
      range.setEnd(text, (text as Text).data.length)
      return Math.round(range.getBoundingClientRect().left)
    })
    match(shows(cell(desk.grid, 'Salt', 'percent')), /^2\.1/)
    equal(new Set(marks).size, 1, marks.join())
  })

  for (const amount of ['salt*0.5+salt*0.25+total_flour/1000', 'nonsense/4+salt-0.333+nonsense'])
    for (const width of [1280, 390])
      it(`breaks ${amount} beside its signs and never within a name or a number, ${width} px wide`, async () => {
        await setViewport({ width, height: 900 })
        desk = await setUp(`
          Final dough:
            Bread flour = 1000 g
            Salt = 20 g
            Water = ${amount}`)
        const shown = cell(desk.grid, 'Water', 'weight').querySelector('.expression, .raw')!
        equal(shown.textContent!.replaceAll('\u200b', ''), amount)
        const text = [...shown.childNodes].find(node => node instanceof Text)!
        const tops = new Set<number>()
        for (const { index, 0: word } of text.data.matchAll(/[a-z_]+|[\d.]+/g)) {
          const range = new Range()
          range.setStart(text, index)
          range.setEnd(text, index + word.length)
          const lines = new Set([...range.getClientRects()].map(rect => rect.top))
          equal(lines.size, 1, word)
          for (const top of lines) tops.add(top)
        }
        ok(tops.size > 1, 'it takes more than one line')
        ok(shown.scrollWidth <= shown.clientWidth, 'nothing sticks out')
      })

  it('opens no editor while it can only be read, and says so', async () => {
    desk = await setUp(undefined, { readOnly: true })
    await goTo(desk.grid, 'Salt', 'percent')
    await type('9')
    await press('F2', 'Enter', 'Delete', 'Alt+ArrowUp', 'Control+Enter', 'Control+x')
    equal(field(desk.grid), null)
    equal(desk.done.length, 0)
    equal(desk.sheet.formula.stages[1]!.lines[3]!.amount, '2.1%')
    equal(focusIn(desk.grid), 'Salt / percent')
    const cells = [...desk.grid.shadowRoot!.querySelectorAll('[data-column]')]
    ok(cells.every(c => c.getAttribute('aria-readonly') === 'true'))
    equal(desk.grid.shadowRoot!.querySelectorAll('button').length, 0)
  })

  for (const scheme of ['light', 'dark'] as const)
    itOnce(
      `passes axe in the ${scheme} scheme: at rest, troubled, editing, refused, with its menu, narrow, read only`,
      async () => {
        await emulateMedia({ colorScheme: scheme })
        const passes = () => passesAxe(desk.grid)
        desk = await setUp()
        await passes()
        desk = await setUp(troubled)
        await passes()
        await goTo(desk.grid, 'Add an ingredient 2')
        await type('so')
        await passes()
        await press('Escape')
        await goTo(desk.grid, 'Soaker 1')
        await type('Final dough')
        await press('Enter')
        await desk.grid.updateComplete
        ok(field(desk.grid)?.getAttribute('aria-invalid'))
        await passes()
        await press('Escape', 'Shift+F10')
        await passes()
        await press('Escape')
        await setViewport({ width: 390, height: 844 })
        desk = await setUp(troubled, { notes: ['Water: cold'] })
        await passes()
        desk = await setUp(troubled, { readOnly: true })
        await passes()
        await emulateMedia({ colorScheme: 'light' })
      },
    )

  it('paints a key press in 500 lines by touching the row it is about', async () => {
    desk = await setUp(
      `Final dough:\nBread flour = 100%\n${Array.from({ length: 500 }, (_, i) => `Honey = ${i + 1} g`).join('\n')}`,
    )
    await goTo(desk.grid, 'Bread flour', 'percent')
    const touched = new Set<Element>()
    const watch = new MutationObserver(records => {
      for (const { target } of records) {
        const row = (target instanceof Element ? target : target.parentElement)?.closest('tr[data-row]')
        if (row) touched.add(row)
      }
    })
    watch.observe(desk.grid.shadowRoot!, {
      subtree: true,
      attributes: true,
      childList: true,
      characterData: true,
    })
    await press('ArrowDown')
    await desk.grid.updateComplete
    watch.disconnect()
    equal(touched.size, 2)
  })
})
