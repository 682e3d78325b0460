import { sendMouse, setViewport } from '@web/test-runner-commands'
import { equal, match, ok, waitUntil } from '../assert'
import { press } from '../keys'
import { amounts, cell, type Desk, goTo, middleOf, setUp } from './grid-desk'

describe('Blocks of cells', () => {
  let desk: Desk

  beforeEach(async () => {
    await setViewport({ width: 1280, height: 900 })
    desk = await setUp()
  })

  const selected = () => desk.grid.shadowRoot!.querySelectorAll('[aria-selected=true]').length

  /** Puts texts on the clipboard as another program would, and pastes them. */
  async function paste(plain: string, html?: string): Promise<void> {
    const items: Record<string, Blob> = { 'text/plain': new Blob([plain], { type: 'text/plain' }) }
    if (html) items['text/html'] = new Blob([html], { type: 'text/html' })
    await navigator.clipboard.write([new ClipboardItem(items)])
    const before = desk.said.length
    await press('Control+v')
    await waitUntil(() => desk.said.length > before, 'the paste has been told of')
    await desk.grid.updateComplete
  }
  const clipboard = async (type: string) => {
    const [item] = await navigator.clipboard.read()
    return (await item!.getType(type)).text()
  }

  it('Shift and the arrows select a block, Shift and a click extend it, an arrow alone ends it', async () => {
    await goTo(desk.grid, 'Bread flour 2')
    await press('Shift+ArrowDown', 'Shift+ArrowRight', 'Shift+ArrowRight')
    equal(selected(), 6)
    const levain = cell(desk.grid, 'Levain 2', 'percent')
    await sendMouse({ type: 'move', position: middleOf(levain) })
    await press('ArrowDown')
    equal(selected(), 0)
  })

  it('Shift+Space, Ctrl+Space and Ctrl+A select the row, the column, everything', async () => {
    await goTo(desk.grid, 'Salt', 'percent')
    await press('Shift+Space')
    equal(selected(), 6)
    await press('Shift+ArrowDown')
    equal(selected(), 12)
    await press('ArrowUp', 'Control+Space')
    equal(selected(), desk.grid.shadowRoot!.querySelectorAll('[data-column=percent]').length)
    await press('Control+a')
    ok(selected() > 60)
  })

  it('copies what was typed as typed and what followed in full, for programs and for tables', async () => {
    await goTo(desk.grid, 'Salt')
    await press('Shift+ArrowDown', 'Shift+ArrowRight', 'Shift+ArrowRight', 'Shift+ArrowRight', 'Control+c')
    await waitUntil(() => desk.said.includes('Copied.'), 'the copy has been told of')
    equal(await clipboard('text/plain'), 'Salt\t2.1\t21\t1.88417618270799\nLevain\t21\t210\t')
    match(await clipboard('text/html'), /<table>.*<tr><td>Salt<\/td><td>2\.1<\/td>/s)
  })

  it('copies with the decimal mark of the language', async () => {
    desk = await setUp(undefined, { language: 'de' })
    await goTo(desk.grid, 'Salt', 'percent')
    await press('Control+c')
    await waitUntil(() => desk.said.length, 'the copy has been told of')
    equal(await clipboard('text/plain'), '2,1')
  })

  it('pastes its own lines with the typed amounts typed', async () => {
    await goTo(desk.grid, 'Water 1')
    await press('Shift+Space', 'Control+c')
    await goTo(desk.grid, 'Add an ingredient 2')
    await press('Control+v')
    await waitUntil(() => desk.done.length === 1, 'the line is there')
    match(amounts(desk.sheet, 1), /Levain 210 g; Water 80 g$/)
  })

  it('pastes tab-separated text as one edit, over the lines and past the last into new ones', async () => {
    await goTo(desk.grid, 'Salt')
    await paste('Sea salt\t2\r\nLevain\t\t200\r\nHoney\t3\r\nOlive oil\t\tsplash of it\r\n')
    match(amounts(desk.sheet, 1), /Sea salt 2%; Levain 200 g; Honey 3%; Olive oil splash of it$/)
    equal(desk.said.at(-1), '7 pasted, 1 not understood.')
    equal(desk.done.join(), 'Paste')
    await press('Control+z')
    equal(amounts(desk.sheet, 1), 'Bread flour 82%; Wholemeal spelt 18%; Water 69%; Salt 2.1%; Levain 210 g')
  })

  it('pastes amounts that begin with an equals sign without it', async () => {
    await goTo(desk.grid, 'Water 2', 'weight')
    await paste('=680+10\t\t=warm\n=21 g')
    equal(amounts(desk.sheet, 1).split('; ').slice(2, 4).join('; '), 'Water (680+10) g; Salt 21 g')
    equal(desk.sheet.formula.stages[1]!.lines[2]!.note, '=warm')
  })

  it('keeps line breaks inside a quoted cell, in text and in a table', async () => {
    await goTo(desk.grid, 'Salt', 'note')
    await paste('"fine,\nfrom ""Brackwater"""')
    equal(desk.sheet.formula.stages[1]!.lines[3]!.note, 'fine,\nfrom "Brackwater"')
    await goTo(desk.grid, 'Levain 2', 'note')
    await paste(
      'x',
      '<style>td{}</style><table><tr><td>ripe<br>at  dawn</td></tr></table><script>document.title="x"</script>',
    )
    equal(desk.sheet.formula.stages[1]!.lines[4]!.note, 'ripe\nat dawn')
  })

  it('leaves out a heading row, and reads the table where there is one', async () => {
    await goTo(desk.grid, 'Add an ingredient 2')
    await paste(
      'no table',
      '<table><tr><th>Ingredient</th><th>%</th></tr><tr><td>Honey</td><td>3 %</td></tr><tr><td>Milk</td><td>1,000</td></tr></table>',
    )
    match(amounts(desk.sheet, 1), /Levain 210 g; Honey 3 ?%; Milk 1000%$/)
    equal(desk.said.at(-1), '4 pasted.')
  })

  it('puts a single value into every cell of a block', async () => {
    await goTo(desk.grid, 'Water 2', 'percent')
    await press('Shift+ArrowDown')
    await paste('5')
    match(amounts(desk.sheet, 1), /Water 5%; Salt 5%/)
    equal(desk.said.at(-1), '2 pasted.')
  })

  it('refuses what typing would refuse and says so', async () => {
    await goTo(desk.grid, 'Add an ingredient 1')
    await paste('Final dough\nHoney')
    match(desk.said.at(-1)!, /^1 pasted\. .*A stage cannot be made of itself/)
    match(amounts(desk.sheet, 0), /Honey$/)
  })

  it('cuts as one edit', async () => {
    await goTo(desk.grid, 'Wholemeal spelt', 'percent')
    await press('Shift+ArrowDown', 'Control+x')
    await waitUntil(() => desk.done.length, 'the cells are cut')
    equal(desk.done.join(), 'Cut')
    match(amounts(desk.sheet, 1), /Wholemeal spelt; Water; Salt/)
    equal(await clipboard('text/plain'), '18\n69')
  })

  it('Delete clears what was typed, and removes lines that are selected whole', async () => {
    await goTo(desk.grid, 'Salt', 'weight')
    await press('Delete')
    await waitUntil(() => desk.said.length, 'something is said')
    equal(desk.said.at(-1), 'There is nothing typed here to clear.')
    await press('ArrowLeft', 'Backspace')
    match(amounts(desk.sheet, 1), /; Salt; /)
    await press('Shift+Space', 'Delete')
    equal(amounts(desk.sheet, 1), 'Bread flour 82%; Wholemeal spelt 18%; Water 69%; Levain 210 g')
    equal(desk.said.at(-1), 'Removed a line.')
  })

  it('a text that an office program would work out leaves as a text, and comes back as it was', async () => {
    desk = await setUp(undefined, { notes: ['Salt: =2+3', 'Levain: -5'] })
    await goTo(desk.grid, 'Salt', 'note')
    await press('Shift+ArrowDown', 'Control+c')
    await waitUntil(() => desk.said.length, 'the copy has been told of')
    const copy = await clipboard('text/plain')
    equal(copy, "'=2+3\n-5")
    await goTo(desk.grid, 'Bread flour 2', 'note')
    await paste(copy)
    equal(desk.sheet.formula.stages[1]!.lines[0]!.note, '=2+3')
  })

  it('pastes many rows as one step while the page goes on, and no more than a formula may have', async () => {
    const rows = (count: number) => Array.from({ length: count }, (_, i) => `Seed ${i}\t${i + 1}\n`).join('')
    await goTo(desk.grid, 'Add an ingredient 2')
    await paste(rows(4993)) // eight lines are there
    match(desk.said.at(-1)!, /^Nothing was pasted: the formula would have 5001 lines, and .* at most 5000\./)
    equal(desk.done.length, 0)
    let paints = 0
    const count = () => {
      paints += 1
      if (desk.done.length === 0) requestAnimationFrame(count)
    }
    requestAnimationFrame(count)
    await paste(rows(1500))
    await waitUntil(() => desk.said.at(-1) === '3000 pasted.', 'all are pasted')
    ok(paints > 2, `the page was painted ${paints} times meanwhile`)
    const lines = () => desk.sheet.formula.stages[1]!.lines
    equal(`${lines().length} ${lines().at(-1)!.ingredient} ${lines().at(-1)!.amount}`, '1505 Seed 1499 1500%')
    await press('Control+z')
    equal(lines().length, 5)
  })
})
