import { sendMouse, setViewport } from '@web/test-runner-commands'
import type { Formula } from '../../src/dough/document/formula'
import { equal, match, ok } from '../assert'
import { press, type } from '../keys'
import { amounts, cell, type Desk, field, focusIn, goTo, middleOf, setUp, shows } from './grid-desk'

describe('Typing in the grid', () => {
  let desk: Desk

  beforeEach(async () => {
    await setViewport({ width: 1280, height: 900 })
    desk = await setUp()
  })

  const settled = () => desk.grid.updateComplete

  it('replaces what a cell holds from the first key on, keeps it at Enter and goes down', async () => {
    await goTo(desk.grid, 'Water 2', 'percent')
    await type('72.5')
    equal(field(desk.grid)?.value, '72.5')
    await press('Enter')
    await settled()
    equal(shows(cell(desk.grid, 'Water 2', 'percent')), '72.5')
    equal(shows(cell(desk.grid, 'Water 2', 'weight')), '725')
    equal(focusIn(desk.grid), 'Salt / percent')
    equal(desk.done.join(), 'Set Water to 72.5%')
  })

  it('keeps what was typed as typed and works the other column out', async () => {
    await goTo(desk.grid, 'Salt', 'weight')
    await type('22')
    await press('Enter')
    await settled()
    equal(desk.sheet.formula.stages[1]!.lines[3]!.amount, '22 g')
    equal(shows(cell(desk.grid, 'Salt', 'weight')), '22')
    equal(shows(cell(desk.grid, 'Salt', 'percent')), '2.20')
    ok(cell(desk.grid, 'Salt', 'weight').querySelector('.figure.typed'))
    ok(cell(desk.grid, 'Salt', 'percent').querySelector('.figure.computed'))
  })

  it('shows an expression beneath its figure', async () => {
    await goTo(desk.grid, 'Salt', 'weight')
    await type('2 tsp')
    await press('Enter')
    await settled()
    equal(cell(desk.grid, 'Salt', 'weight').querySelector('.expression')?.textContent, '2 tsp')
    ok(cell(desk.grid, 'Salt', 'weight').querySelector('.figure.computed'))
  })

  it('takes an amount that begins with an equals sign without it, in every column', async () => {
    for (const [column, text] of [
      ['weight', '=20 + 2'],
      ['percent', '= 2.2'],
      ['wholeDough', '=1.9'],
    ] as const) {
      await goTo(desk.grid, 'Salt', column)
      await type(text)
      await press('Enter')
      await settled()
    }
    equal(desk.done.join(), 'Set Salt to (20 + 2) g,Set Salt to 2.2%,Hold Salt at 1.9 % of all flour')
  })

  for (const [key, way] of [
    ['F2', 'F2'],
    ['Enter', 'Enter'],
  ] as const)
    it(`edits in place at ${way}; the arrow keys move the caret`, async () => {
      await goTo(desk.grid, 'Water 2', 'percent')
      await press(key)
      equal(field(desk.grid)?.value, '69')
      await press('ArrowLeft')
      await type('.')
      equal(field(desk.grid)?.value, '6.9')
      await press('Enter')
      await settled()
      equal(desk.done.join(), 'Set Water to 6.9%')
    })

  it('after typing, an arrow key keeps the text and moves on; F2 hands the arrows to the caret', async () => {
    await goTo(desk.grid, 'Water 2', 'percent')
    await type('70')
    await press('ArrowUp')
    equal(focusIn(desk.grid), 'Wholemeal spelt / percent')
    await type('17')
    await press('F2', 'ArrowLeft')
    await type('0')
    equal(field(desk.grid)?.value, '107')
    await press('F2', 'ArrowRight')
    equal(focusIn(desk.grid), 'Wholemeal spelt / weight')
    equal(desk.done.join(), 'Set Water to 70%,Set Wholemeal spelt to 107%')
  })

  it('discards at Escape and nowhere else', async () => {
    await goTo(desk.grid, 'Salt', 'percent')
    await type('9')
    await press('Escape')
    equal(focusIn(desk.grid), 'Salt / percent')
    equal(desk.done.length, 0)
    await type('3')
    await sendMouse({ type: 'click', position: middleOf(cell(desk.grid, 'Levain 2', 'note')) })
    await settled()
    equal(desk.done.join(), 'Set Salt to 3%')
    equal(focusIn(desk.grid), 'Levain / note')
  })

  it('keeps the text when the focus goes to another control of the page', async () => {
    await goTo(desk.grid, 'Salt', 'percent')
    await type('3')
    await sendMouse({ type: 'click', position: middleOf(document.getElementById('after')!) })
    await settled()
    equal(desk.done.join(), 'Set Salt to 3%')
    equal(document.activeElement?.id, 'after')
  })

  it('makes no edit of a text left as it was', async () => {
    await goTo(desk.grid, 'Salt', 'weight')
    await press('Enter')
    equal(field(desk.grid)?.value, '21')
    await press('Enter')
    equal(desk.done.length, 0)
    equal(focusIn(desk.grid), 'Levain / weight')
  })

  it('Tab keeps and goes on through the cells that can be typed in; Shift+Tab goes back', async () => {
    await goTo(desk.grid, 'Salt', 'percent')
    await type('2')
    await press('Tab')
    equal(focusIn(desk.grid), 'Salt / weight')
    await type('20')
    await press('Tab')
    equal(focusIn(desk.grid), 'Salt / wholeDough')
    await press('F2', 'Tab')
    equal(focusIn(desk.grid), 'Salt / note')
    await type('fine')
    await press('Tab')
    equal(focusIn(desk.grid), 'Levain / ingredient')
    await press('F2', 'Shift+Tab')
    equal(focusIn(desk.grid), 'Salt / note')
    equal(amounts(desk.sheet, 1).split('; ')[3], 'Salt 20 g')
    equal(desk.sheet.formula.stages[1]!.lines[3]!.note, 'fine')
  })

  it('Tab in the last cell leaves the grid', async () => {
    await goTo(desk.grid, 'Add an ingredient 2', 'note')
    await press('F2', 'Tab')
    await settled()
    equal(desk.grid.shadowRoot!.activeElement?.textContent, 'Add a stage')
    equal(field(desk.grid), null)
  })

  it('begins a line where another ingredient is typed, and goes on to the next from its amount', async () => {
    await goTo(desk.grid, 'Add an ingredient 2')
    await type('Barley malt')
    await press('Tab')
    equal(focusIn(desk.grid), 'Barley malt / percent')
    await type('1.5')
    await press('Enter')
    equal(focusIn(desk.grid), 'Add an ingredient to Final dough / ingredient')
    await type('Olive oil')
    await press('Enter')
    equal(focusIn(desk.grid), 'Add an ingredient to Final dough / ingredient')
    match(amounts(desk.sheet, 1), /Levain 210 g; Barley malt 1\.5%; Olive oil$/)
  })

  it('an amount typed in the row for another ingredient begins a line as well', async () => {
    await goTo(desk.grid, 'Add an ingredient 1', 'weight')
    await type('10')
    await press('Enter')
    match(amounts(desk.sheet, 0), /; 10 g$/)
    equal(desk.done.length, 1)
  })

  it('completes names, the stages before first, from the list by arrow keys', async () => {
    await goTo(desk.grid, 'Add an ingredient 2')
    await type('le')
    const options = () => [...desk.grid.shadowRoot!.querySelectorAll('[role=option]')]
    match(options()[0]!.textContent!, /^Levain stage$/)
    const box = field(desk.grid)!
    equal(box.getAttribute('role'), 'combobox')
    equal(box.getAttribute('aria-expanded'), 'true')
    await press('ArrowDown')
    await settled()
    equal(box.getAttribute('aria-activedescendant'), options()[0]!.id)
    equal(options()[0]!.getAttribute('aria-selected'), 'true')
    await press('Enter')
    match(amounts(desk.sheet, 1), /; Levain$/)
  })

  it('takes a name from the list by the mouse', async () => {
    await goTo(desk.grid, 'Add an ingredient 1')
    await type('rye st')
    await sendMouse({
      type: 'click',
      position: middleOf(desk.grid.shadowRoot!.querySelector('[role=option]')!),
    })
    await settled()
    match(amounts(desk.sheet, 0), /; Rye starter$/)
    equal(focusIn(desk.grid), 'Rye starter / weight') // the levain is written in grams
  })

  it('takes a name the larder does not know, marks it in words and offers to define it', async () => {
    await goTo(desk.grid, 'Add an ingredient 2')
    await type('Brackwater bran')
    await press('Enter')
    await settled()
    match(cell(desk.grid, 'Brackwater bran').textContent!, /not in the larder/)
    const define = cell(desk.grid, 'Brackwater bran').querySelector('button')!
    await sendMouse({ type: 'click', position: middleOf(define) })
    equal(JSON.stringify(desk.wishes.at(-1)), '{"want":"define","ingredient":"Brackwater bran"}')
  })

  it('keeps the editor open with its text and says why when an edit is refused', async () => {
    await goTo(desk.grid, 'Water 1')
    await press('F2')
    await press('Control+a')
    await type('Final dough')
    await press('Enter')
    await settled()
    const box = field(desk.grid)!
    equal(box.value, 'Final dough')
    equal(box.getAttribute('aria-invalid'), 'true')
    const sentence = desk.grid.shadowRoot!.getElementById(box.getAttribute('aria-describedby')!)!.textContent!
    match(sentence, /Final dough.*Levain.*cannot be made of itself/)
    equal(desk.said.at(-1), sentence)
    equal(focusIn(desk.grid), 'Water / ingredient*')
    await press('Escape')
    equal(amounts(desk.sheet, 0), 'Ripe starter 40 g; Bread flour 100 g; Water 80 g')
  })

  it('goes back to a refused text when it is left for another cell', async () => {
    await goTo(desk.grid, 'Water 1')
    await type('Final dough')
    await sendMouse({ type: 'click', position: middleOf(cell(desk.grid, 'Salt', 'weight')) })
    await settled()
    equal(focusIn(desk.grid), 'Water / ingredient*')
    equal(field(desk.grid)?.value, 'Final dough')
    await press('Escape')
  })

  it('says of a number that only follows that it does', async () => {
    await goTo(desk.grid, 'Ripe starter', 'wholeDough')
    await type('2')
    equal(field(desk.grid), null)
    equal(desk.said.join(), 'This number follows from the others.')
  })

  it('tells of an amount that is not understood, by the cell and beneath the row', async () => {
    await goTo(desk.grid, 'Salt', 'weight')
    await type('some')
    await press('Enter')
    await settled()
    const at = cell(desk.grid, 'Salt', 'weight')
    equal(shows(at), 'some')
    equal(at.getAttribute('aria-invalid'), 'true')
    ok(desk.grid.shadowRoot!.getElementById(at.getAttribute('aria-describedby')!)?.textContent?.trim())
  })

  it('renames a stage, and the lines that take it', async () => {
    await goTo(desk.grid, 'Levain 1')
    await type('Young levain')
    await press('Enter')
    equal(desk.sheet.formula.stages[0]!.name, 'Young levain')
    match(amounts(desk.sheet, 1), /Young levain 210 g/)
  })

  it('undoes and redoes outside an editor, back to the cell; inside, the field has its own undo', async () => {
    await goTo(desk.grid, 'Salt', 'percent')
    await type('3')
    await press('Enter', 'ArrowUp', 'ArrowUp', 'Control+z')
    await settled()
    equal(shows(cell(desk.grid, 'Salt', 'percent')), '2.1')
    equal(focusIn(desk.grid), 'Salt / percent')
    await press('Control+y')
    await settled()
    equal(shows(cell(desk.grid, 'Salt', 'percent')), '3')
    await press('Control+z', 'Control+Shift+Z')
    await settled()
    equal(shows(cell(desk.grid, 'Salt', 'percent')), '3')
    await type('45')
    await press('Control+z')
    ok(field(desk.grid), 'the editor is still open')
    equal(desk.wishes.length, 4)
  })

  it('Tab from a new name goes to the grams where the dough is written in them', async () => {
    const lines = ['Flour: 500 g', 'Water: 350 g', 'Salt: 10 g']
    const inGrams = (formula: Formula): Formula => ({
      ...formula,
      stages: [
        {
          ...formula.stages[1]!,
          lines: lines.map((text, i) => {
            const [ingredient, amount] = text.split(': ')
            return { id: `g${i}`, ingredient: ingredient!, amount: amount!, note: '' }
          }),
        },
      ],
    })
    desk = await setUp(undefined, { change: inGrams })
    await goTo(desk.grid, 'Add an ingredient')
    await type('Honey')
    await press('Tab')
    await settled()
    equal(focusIn(desk.grid), 'Honey / weight')
    await type('30')
    await press('Enter')
    await settled()
    equal(desk.sheet.formula.stages[0]!.lines[3]!.amount, '30 g')
  })

  it('Tab from the last cell of the last line goes to a new line of its stage', async () => {
    await goTo(desk.grid, 'Water 1', 'note')
    await type('warm')
    await press('Tab')
    await settled()
    equal(focusIn(desk.grid), 'Add an ingredient to Levain / ingredient')
  })

  it('undo of a line begun goes to where it was', async () => {
    await goTo(desk.grid, 'Add an ingredient 2')
    await type('Honey')
    await press('Enter', 'Control+z')
    await settled()
    equal(focusIn(desk.grid), 'Add an ingredient to Final dough / ingredient')
  })

  it('reads and writes the decimal comma', async () => {
    desk = await setUp(undefined, { language: 'de' })
    equal(shows(cell(desk.grid, 'Salt', 'percent')), '2,1')
    await goTo(desk.grid, 'Salt', 'percent')
    await press('F2')
    equal(field(desk.grid)?.value, '2,1')
    await press('Control+a')
    await type('1,9')
    await press('Enter')
    await settled()
    equal(desk.sheet.formula.stages[1]!.lines[3]!.amount, '1.9%')
    equal(shows(cell(desk.grid, 'Salt', 'percent')), '1,9')
  })

  it('takes a note of several lines', async () => {
    await goTo(desk.grid, 'Water 1', 'note')
    await type('warm')
    await press('Alt+Enter')
    await type('26 °C')
    await press('Enter')
    equal(desk.sheet.formula.stages[0]!.lines[2]!.note, 'warm\n26 °C')
  })

  it('keeps focus, text and caret of an open editor while figures change around it', async () => {
    await goTo(desk.grid, 'Salt', 'percent')
    await type('1.')
    const box = field(desk.grid)
    desk.grid.version++
    desk.grid.names = [...desk.grid.names]
    await settled()
    equal(field(desk.grid), box)
    await type('8')
    equal(field(desk.grid)?.value, '1.8')
  })
})
