import { sendMouse, setViewport } from '@web/test-runner-commands'
import { equal, match, ok } from '../assert'
import { press, type } from '../keys'
import { amounts, cell, type Desk, field, focusIn, goTo, middleOf, setUp } from './grid-desk'

describe('Moving in the grid', () => {
  let desk: Desk

  beforeEach(async () => {
    await setViewport({ width: 1280, height: 900 })
    desk = await setUp()
  })

  it('is one tab stop', async () => {
    document.getElementById('before')!.focus()
    await press('Tab')
    equal(focusIn(desk.grid), 'Levain / ingredient')
    await press('ArrowDown', 'ArrowRight', 'Tab')
    equal(desk.grid.shadowRoot!.activeElement?.textContent, 'Add a stage')
    await press('Shift+Tab')
    equal(focusIn(desk.grid), 'Ripe starter / percent')
    await press('Shift+Tab')
    equal(document.activeElement?.id, 'before')
    equal(desk.grid.shadowRoot!.querySelectorAll('table [tabindex="0"]').length, 1)
  })

  const table: readonly (readonly [from: string, keys: readonly string[], to: string])[] = [
    ['Water 1 / percent', ['ArrowRight'], 'Water / weight'],
    ['Water 1 / percent', ['ArrowLeft'], 'Water / ingredient'],
    ['Water 1 / percent', ['ArrowUp'], 'Bread flour / percent'],
    ['Water 1 / percent', ['ArrowDown'], 'Add an ingredient to Levain / percent'],
    ['Water 1 / ingredient', ['ArrowLeft'], 'Water / ingredient'],
    ['Water 1 / actions', ['ArrowRight'], 'Water / actions'],
    ['Water 1 / weight', ['Home'], 'Water / ingredient'],
    ['Water 1 / weight', ['End'], 'Water / actions'],
    ['Salt / weight', ['Control+Home'], 'Levain / ingredient'],
    ['Salt / weight', ['Control+End'], 'Dough / actions'],
    ['Ripe starter / weight', ['ArrowUp', 'ArrowDown'], 'Ripe starter / weight'], // past a stage's name
    ['Levain 1 / ingredient', ['ArrowRight'], 'Levain / actions'],
    ['Levain 1 / ingredient', ['ArrowUp'], 'Levain / ingredient'],
    ['Ripe starter / percent', ['PageDown', 'PageUp'], 'Levain / ingredient'],
  ]
  for (const [from, keys, to] of table)
    it(`${keys.join(', ')} goes from ${from} to ${to}`, async () => {
      const [row, column] = from.split(' / ') as [string, string]
      await goTo(desk.grid, row, column)
      await press(...keys)
      equal(focusIn(desk.grid), to)
    })

  it('Alt and an arrow move a line, into the next stage at an end, and the focus goes with it', async () => {
    await goTo(desk.grid, 'Salt', 'percent')
    await press('Alt+ArrowUp')
    equal(focusIn(desk.grid), 'Salt / percent')
    match(amounts(desk.sheet, 1), /Salt 2\.1%; Water 69%/)
    await press('Alt+ArrowUp', 'Alt+ArrowUp', 'Alt+ArrowUp')
    equal(amounts(desk.sheet, 0), 'Ripe starter 40 g; Bread flour 100 g; Water 80 g; Salt 2.1%')
    equal(focusIn(desk.grid), 'Salt / percent')
    await press('Control+z')
    equal(focusIn(desk.grid), 'Salt / percent')
    match(amounts(desk.sheet, 1), /^Salt/)
  })

  it('Alt and an arrow on a stage’s name move the stage', async () => {
    await goTo(desk.grid, 'Levain 1')
    await press('Alt+ArrowDown')
    equal(desk.sheet.formula.stages.map(s => s.name).join(), 'Final dough,Levain')
    equal(focusIn(desk.grid), 'Levain / ingredient')
  })

  it('Ctrl+Enter adds a line below and opens it', async () => {
    await goTo(desk.grid, 'Water 2', 'percent')
    await press('Control+Enter')
    ok(field(desk.grid))
    await type('Honey')
    await press('Enter')
    match(amounts(desk.sheet, 1), /Water 69%; Honey; Salt/)
  })

  it('keeps its place when a line above comes or goes, and goes to a neighbour when its own goes', async () => {
    await goTo(desk.grid, 'Salt', 'weight')
    const stage = desk.sheet.formula.stages[1]!
    const without = (index: number) => ({
      ...desk.sheet.formula,
      stages: [desk.sheet.formula.stages[0]!, { ...stage, lines: stage.lines.filter((_, i) => i !== index) }],
    })
    desk.sheet.update(without(0))
    desk.grid.version++
    await desk.grid.updateComplete
    equal(focusIn(desk.grid), 'Salt / weight')
    desk.sheet.update(without(3))
    desk.grid.version++
    await desk.grid.updateComplete
    equal(focusIn(desk.grid), 'Water / weight')
  })

  it('goes to a place by ids', async () => {
    const [levain, dough] = desk.sheet.formula.stages
    desk.grid.goTo({ stage: dough!.id, line: dough!.lines[3]!.id, column: 'percent' })
    await desk.grid.updateComplete
    equal(focusIn(desk.grid), 'Salt / percent')
    desk.grid.goTo({ stage: levain!.id })
    await desk.grid.updateComplete
    equal(focusIn(desk.grid), 'Levain / ingredient')
  })

  it('takes the focus where it is clicked, without opening an editor', async () => {
    await sendMouse({ type: 'click', position: middleOf(cell(desk.grid, 'Salt', 'weight')) })
    await desk.grid.updateComplete
    equal(focusIn(desk.grid), 'Salt / weight')
    equal(field(desk.grid), null)
  })

  it('is not hidden by its head when the focus comes from below', async () => {
    desk = await setUp(`Final dough:\n${Array.from({ length: 60 }, (_, i) => `Honey = ${i} g`).join('\n')}`)
    await goTo(desk.grid, 'Dough', 'weight')
    for (let i = 0; i < 8; i++) await press('PageUp')
    for (let i = 0; i < 5; i++) await press('ArrowDown')
    const head = desk.grid.shadowRoot!.querySelector('thead th')!.getBoundingClientRect()
    const focused = desk.grid.shadowRoot!.activeElement!.getBoundingClientRect()
    ok(focused.top >= head.bottom - 1, `${focused.top} is below ${head.bottom}`)
  })
})
