import '../../components/bring-in/tb-bring-in'
import type { TbBringIn } from '../../components/bring-in/tb-bring-in'
import { openFormula } from '../../src/dough/formula-sheet'
import { writeFormulas } from '../../src/exchange/index'
import { deepEqual, equal, match, near, ok, waitUntil } from '../assert'
import { press, type } from '../keys'
import { itCase } from '../once'
import { millWheat, straightDough } from './breads'
import { holdsUp, Opened } from './dialogs'
import { dressPage, textOf } from './mount'

const spelt = () => straightDough('Bread flour = 100%\nWater = 66%\nSalt = 2%', 'Spelt tin')
const two = () => writeFormulas([millWheat(), spelt()])
const faulty = `formula,stage,ingredient,amount,counts as
Tin,Final dough,Bread flour,"1,000 g",
Tin,Final dough,,20 g,
Tin,Final dough,Water,70%,liquid
Tin,Final dough,Hill meal,30,flour
`

describe('Bringing in formulas', () => {
  let opened: Opened<TbBringIn>

  async function show(detail: { file?: File; text?: string } = {}, formulas = [millWheat()]): Promise<void> {
    opened = new Opened(document.createElement('tb-bring-in'), { formulas })
    opened.dialog.show(detail)
    await opened.whenOpen()
    if (detail.file || detail.text !== undefined)
      await waitUntil(() => opened.root.querySelector('#understood, .refusal'), 'it is read')
  }
  const shelf = () => opened.around.history.workbook.formulas
  const names = () => shelf().map(f => f.name)
  const messages = (severity: string) =>
    [...opened.root.querySelectorAll(`.of-${severity} li`)].map(li => textOf(li))

  before(dressPage)
  afterEach(() => opened.remove())

  it('shows formulas, stages and lines before anything is added', async () => {
    await show({ text: two() }, [])
    match(textOf(opened.find('#understood')), /^2 formulas and 11 lines understood/)
    match(textOf(opened.find('.formula', 'Mill wheat')), /Levain 3 lines, Final dough 5 lines/)
    await opened.click('summary')
    equal(textOf(opened.find('tr:not(.stage)', 'Ripe')), 'Ripe starter 40 g')
    equal(names().length, 0)
  })

  it('adds them in one step, opens the first, and gives the focus back', async () => {
    await show({ text: two() }, [])
    await opened.click('footer .main', 'Add 2 formulas')
    await opened.whenClosed()
    deepEqual(names(), ['Mill wheat', 'Spelt tin'])
    deepEqual(opened.around.wishes, [{ want: 'open', formula: shelf()[0]!.id }])
    near(openFormula(shelf()[0]!).reading('trueHydration'), 785.4545454545455 / 1114.5454545454545)
    opened.around.history.undo()
    equal(opened.around.history.workbook.formulas.length, 0, 'one undo takes both away')
  })

  it('says which are here already, the same, and adds those only when told so', async () => {
    await show({ text: two() })
    match(textOf(opened.find('.formula', 'Mill wheat')), /On the shelf already, the same in everything\./)
    ok(!/Replace|already/.test(textOf(opened.find('.formula', 'Spelt tin'))))
    await opened.click('footer .main', 'Add 1 formula')
    deepEqual(names(), ['Mill wheat', 'Spelt tin'])
    opened.remove()
    await show({ text: writeFormulas([millWheat()]) })
    ok(opened.find<HTMLButtonElement>('footer .main', 'Nothing to add').disabled)
    await opened.click('.choice', 'Keep both: this one is added as Mill wheat 2')
    await opened.click('footer .main', 'Add 1 formula')
    deepEqual(names(), ['Mill wheat', 'Mill wheat 2'])
  })

  it('keeps a formula of the same name unless told to replace it', async () => {
    await show({ text: two() }, [millWheat({ note: 'the old one' })])
    match(textOf(opened.find('.choices', 'Keep both')), /added as Mill wheat 2/)
    await opened.click('footer .main')
    deepEqual(names(), ['Mill wheat', 'Mill wheat 2', 'Spelt tin'])
  })

  it('replaces it in its place when told so', async () => {
    const before = millWheat({ note: 'the old one' })
    await show({ text: two() }, [before, spelt()])
    await opened.click('.choice', 'Replace the Mill wheat')
    await opened.click('.formula:nth-of-type(2) .choice', 'Leave it out')
    await opened.click('footer .main', 'Add 1 formula')
    deepEqual(names(), ['Mill wheat', 'Spelt tin'])
    equal(shelf()[0]!.id, before.id)
    equal(shelf()[0]!.note, '')
    deepEqual(opened.around.wishes, [{ want: 'open', formula: before.id }])
  })

  it('tells what was not understood, by row, and copies it as text', async () => {
    await show({ text: faulty })
    match(messages('error').join(), /^Row 3 names no ingredient/)
    match(messages('warning').join(), /Row 4 says that Water counts as “liquid”/)
    await opened.click('.of-error button', 'Copy')
    await waitUntil(() => textOf(opened.find('.told')) === 'Copied.', 'it says so')
    match(await navigator.clipboard.readText(), /^Row 3 names no ingredient/)
  })

  it('reads a pasted table with the keyboard alone', async () => {
    await show({}, [])
    opened.find('#pasted').focus()
    await type('ingredient,amount')
    await press('Enter')
    await type('Bread flour,500 g')
    await press('Tab', 'Enter')
    await waitUntil(() => opened.root.querySelector('#understood'), 'it is read')
    await opened.click('footer .main', 'Add 1 formula')
    equal(shelf()[0]!.stages[0]!.lines[0]!.amount, '500 g')
  })

  it('asks before a pasted text is lost', async () => {
    await show()
    opened.find('#pasted').focus()
    await type('ingredient')
    await press('Escape')
    match(textOf(opened.find('.question')), /Leave without keeping/)
    await press('Enter')
    equal(opened.find<HTMLTextAreaElement>('#pasted').value, 'ingredient')
    ok(opened.root.activeElement?.id === 'pasted', 'the focus is back in the text')
  })

  it('reads Western text that is not UTF-8, with a remark', async () => {
    const bytes = Uint8Array.from('ingredient,amount\nMéteil,500 g\n', c => c.charCodeAt(0))
    await show({ file: new File([bytes], 'méteil.csv') })
    match(textOf(opened.find('.remark')), /not in UTF-8/)
    match(textOf(opened.find('table')), /Méteil 500 g/)
  })

  for (const [at, [name, content, words]] of (
    [
      [
        'big.csv',
        new Uint8Array(5 * 1024 * 1024 + 1),
        /big\.csv is 5 MB\. Tarebook reads files of up to 5 MB/,
      ],
      ['book.xlsx', new Uint8Array([0x50, 0x4b, 3, 4, 0, 0]), /save the sheet as CSV/],
      ['picture.png', new Uint8Array([0x89, 0x50, 0, 0, 1]), /not a text file/],
    ] as const
  ).entries()) {
    itCase(at)(`says in a sentence why ${name} is not read`, async () => {
      await show({ file: new File([content], name) })
      match(textOf(opened.find('.refusal')), words)
      ok(opened.find('#file'), 'another can be chosen')
    })
  }

  it('shows a file without a formula as what it is, with nothing to add', async () => {
    await show({ text: 'name;price\nflour;1,20\n' })
    match(textOf(opened.find('#understood')), /No formula understood/)
    equal(messages('error').length, 1)
    ok(opened.find<HTMLButtonElement>('footer .main').disabled)
  })

  it('adds nothing where the workbook can only be read', async () => {
    await show({ text: two() })
    opened.dialog.readOnly = true
    await opened.dialog.updateComplete
    ok(opened.find<HTMLButtonElement>('footer .main').disabled)
  })

  it('holds up on a laptop and a phone, before and after reading', async () => {
    await show()
    await holdsUp(opened)
    opened.dialog.show({ text: two() + faulty.slice(faulty.indexOf('\n') + 1) })
    await opened.dialog.updateComplete
    await holdsUp(opened)
    opened.dialog.show({ text: faulty })
    await opened.dialog.updateComplete
    await holdsUp(opened)
  })
})
