import { emulateMedia, sendMouse, setViewport } from '@web/test-runner-commands'
import { equal, match, ok, waitUntil } from '../assert'
import { press, type } from '../keys'
import { cell, type Desk, field, focusIn, goTo, middleOf, setUp } from './grid-desk'

const hard = `
  Levain:
    Ripe starter = 40 g
    Bread flour = 100 g
    Water = 80 g
  Seed soaker of the autumn:
    Sunflower seeds = 100%
    Brackwater old sour crumbs = 1/4 cup
  Final dough:
    Bread flour = 82%
    Barley malt syrup = 2 1/2 tsp
    Water = 1234.5 g
    Levain = levain.water * 2`

describe('The grid on a narrow screen', () => {
  let desk: Desk

  const wide = () => document.documentElement.scrollWidth
  const overflowing = () =>
    [...desk.grid.shadowRoot!.querySelectorAll<HTMLElement>('th, td')].filter(
      c => c.scrollWidth > c.clientWidth + 1 && !c.closest('tr.add'),
    )

  for (const width of [390, 320])
    it(`fits ${width} px with every cell, also while its editor is open`, async () => {
      await setViewport({ width, height: 844 })
      desk = await setUp(hard, { notes: ['Water: cold from the well, a litre kept back'] })
      ok(desk.grid.narrow)
      equal(wide(), width)
      equal(
        overflowing()
          .map(c => c.textContent)
          .join(),
        '',
      )
      for (const column of ['ingredient', 'percent', 'weight']) {
        await goTo(desk.grid, 'Water 2', column)
        await press('F2')
        equal(wide(), width, `editing ${column}`)
        const box = field(desk.grid)!.getBoundingClientRect()
        ok(box.left >= 0 && box.right <= width, `the editor of ${column} is in the window`)
        await press('Escape')
      }
    })

  it('shows the note beneath the ingredient, and edits it from the actions', async () => {
    await setViewport({ width: 390, height: 844 })
    desk = await setUp(undefined, { notes: ['Salt: fine'] })
    match(cell(desk.grid, 'Salt').textContent!, /Salt\s*fine/)
    await goTo(desk.grid, 'Salt')
    await press('Shift+F10', 'c')
    equal(desk.grid.shadowRoot!.activeElement?.querySelector('span')?.textContent, 'Change the note')
    await press('Enter')
    await desk.grid.updateComplete
    equal(field(desk.grid)?.value, 'fine')
    await press('Control+a')
    await type('coarse')
    await press('Tab')
    equal(desk.sheet.formula.stages[1]!.lines[3]!.note, 'coarse')
    equal(focusIn(desk.grid), 'Salt / percent')
  })

  it('goes through the columns it shows', async () => {
    await setViewport({ width: 390, height: 844 })
    desk = await setUp()
    await goTo(desk.grid, 'Salt', 'weight')
    await press('ArrowRight')
    equal(focusIn(desk.grid), 'Salt / actions')
    await press('Home')
    await type('Sea salt')
    await press('Tab', 'F2', 'Tab', 'F2', 'Tab')
    equal(focusIn(desk.grid), 'Levain / ingredient')
  })

  it('goes from amount to amount at Enter and at Next on a touch screen, without leaving the fields', async () => {
    const { matchMedia } = window
    window.matchMedia = query =>
      query === '(pointer: coarse)' ? matchMedia('all') : matchMedia.call(window, query)
    try {
      await setViewport({ width: 390, height: 844 })
      desk = await setUp()
      await goTo(desk.grid, 'Ripe starter', 'weight')
      await press('F2')
      const begun = await waitUntil(() => field(desk.grid), 'it is edited')
      equal(begun.enterKeyHint, 'next')
      await press('Control+a') // as a tap selects it; by a key the text stays, to be changed
      await waitUntil(() => {
        desk.grid.requestUpdate() // it is fetched
        return desk.grid.shadowRoot!.querySelector('.pad')
      }, 'the strip of signs is there')
      let left = 0
      const look = () => {
        if (!desk.grid.shadowRoot!.activeElement?.matches('.field')) left += 1
      }
      desk.grid.shadowRoot!.addEventListener('focusin', look)
      await type('45')
      await press('Enter')
      equal(focusIn(desk.grid), 'Bread flour / weight*')
      equal(desk.sheet.formula.stages[0]!.lines[0]!.amount, '45 g')
      await type('110')
      const next = [...desk.grid.shadowRoot!.querySelectorAll<HTMLElement>('.pad button')].at(-1)!
      await sendMouse({ type: 'click', position: middleOf(next) })
      equal(focusIn(desk.grid), 'Water / weight*')
      equal(desk.sheet.formula.stages[0]!.lines[1]!.amount, '110 g')
      await press('Enter') // nothing typed: on to the next stage
      equal(focusIn(desk.grid), 'Bread flour / weight*')
      equal(left, 0)
      await type('much')
      await press('Enter')
      await desk.grid.updateComplete
      equal(focusIn(desk.grid), 'Wholemeal spelt / weight*')
    } finally {
      window.matchMedia = matchMedia
    }
  })

  it('clips nothing when a reader spaces the text wider', async () => {
    await setViewport({ width: 390, height: 844 })
    desk = await setUp(hard)
    const spaced = document.createElement('style')
    spaced.textContent =
      '* { line-height: 1.5 !important; letter-spacing: 0.12em !important; word-spacing: 0.16em !important }'
    desk.grid.shadowRoot!.append(spaced)
    const cut = [...desk.grid.shadowRoot!.querySelectorAll<HTMLElement>('th, td')].filter(
      c => c.scrollHeight > c.clientHeight + 1,
    )
    equal(cut.length, 0)
    equal(wide(), 390)
  })

  it('prints black on white, with its head and notes and without its controls', async () => {
    await setViewport({ width: 1000, height: 800 })
    await emulateMedia({ colorScheme: 'dark' })
    desk = await setUp(undefined, { notes: ['Salt: fine'] })
    await emulateMedia({ media: 'print' })
    const look = (at: Element) => getComputedStyle(at)
    // What it is on paper is fetched with what else it can do.
    await waitUntil(() => look(cell(desk.grid, 'Salt', 'actions')).display === 'none', 'it is as on paper')
    equal(look(cell(desk.grid, 'Salt')).color, 'rgb(0, 0, 0)')
    equal(look(desk.grid.shadowRoot!.querySelector('thead')!).display, 'table-header-group')
    equal(look(desk.grid.shadowRoot!.querySelector('tr.add')!).display, 'none')
    equal(cell(desk.grid, 'Salt', 'note').textContent?.trim(), 'fine')
    await emulateMedia({ media: 'screen', colorScheme: 'light' })
  })

  it('a click on the cell that has the focus does not edit: only a tap does', async () => {
    await setViewport({ width: 390, height: 844 })
    desk = await setUp()
    const at = middleOf(cell(desk.grid, 'Salt', 'percent'))
    await sendMouse({ type: 'click', position: at })
    await goTo(desk.grid, 'Salt', 'percent')
    equal(field(desk.grid), null)
  })
})
