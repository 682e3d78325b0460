import type { Formula } from '../../src/dough/document/formula.js'
import {
  formulaFromLink,
  readFormulas,
  readPlainText,
  readWorkbookFile,
  writeFormulas,
} from '../../src/exchange/index.js'
import { deepEqual, equal, match, ok, waitUntil } from '../assert.js'
import { press } from '../keys.js'
import { OpenApp } from './app.js'

describe('One formula leaves by each way', () => {
  let app: OpenApp
  let csv = '' // what the formula is, as the CSV says it

  const dialog = () => app.maybe('dialog[open]')
  const said = (formula: Formula | undefined) => writeFormulas(formula ? [formula] : [])

  /** What a form shows. */
  async function sentAs(label: string, id: string): Promise<string> {
    await app.click('.form', label)
    return waitUntil(
      () => (app.maybe(`textarea#${id}`) as HTMLTextAreaElement | undefined)?.value,
      `there is ${id}`,
    )
  }
  async function copied(): Promise<ClipboardItem> {
    await app.click('dialog[open] footer button', 'Copy')
    await app.find('.told', 'Copied.')
    return (await navigator.clipboard.read())[0]!
  }
  const textIn = async (item: ClipboardItem, type: string) => (await item.getType(type)).text()

  before(async () => {
    app = await OpenApp.open(`leave-each-way-${Date.now()}`)
    await app.click('nav a', /^Two-build rye/)
    await app.find('nav a[aria-current=page]', /^Two-build rye/)
    await app.click('button', 'Send out')
    await waitUntil(dialog, 'the dialog is open')
  })
  after(() => app.close())

  it('as CSV', async () => {
    const { formulas, problems } = readFormulas(await sentAs('CSV', 'csv'))
    deepEqual(problems, [])
    equal(formulas[0]?.name, 'Two-build rye')
    csv = said(formulas[0])
  })

  it('as plain text that is read again, cups and spoons and all', async () => {
    await sentAs('Plain text', 'text')
    await app.click('label', /^With cups and spoons/)
    const field = (await app.find('textarea#text')) as HTMLTextAreaElement
    await waitUntil(() => field.value.includes('Cups and spoons'), 'they are in it')
    const { formulas, problems } = readPlainText(await textIn(await copied(), 'text/plain'))
    deepEqual(problems, [])
    equal(said(formulas[0]), csv)
  })

  it('as Markdown', async () => {
    const text = await sentAs('Markdown', 'markdown')
    match(text, /^# Two-build rye\n/)
    match(text, /\| Rye grain \| 65\.0 \|/)
  })

  it('as a table that pastes as one', async () => {
    await app.click('.form', 'Table to paste')
    await app.find('.page table')
    const page = new DOMParser().parseFromString(await textIn(await copied(), 'text/html'), 'text/html')
    equal(page.querySelectorAll('table').length, 6) // four stages, readings, settings
    ok(page.body.textContent!.includes('Dark rye flour'))
  })

  it('as a link that holds all of it', async () => {
    await sentAs('Link', 'link')
    const link = new URL(await textIn(await copied(), 'text/plain'))
    equal(link.origin, location.origin)
    const read = await formulaFromLink(link.hash)
    ok('formula' in read)
    equal(said(read.formula), csv)
  })

  it('as markup for a page of its own', async () => {
    const script = await sentAs('Recipe markup', 'recipe')
    const page = new DOMParser().parseFromString(script, 'text/html')
    const recipe = JSON.parse(page.querySelector('script')!.textContent!)
    equal(recipe.name, 'Two-build rye')
    ok(recipe.recipeIngredient.some((line: string) => /rye grain/i.test(line)))
  })

  it('on a card, alone on the page, and back again', async () => {
    await app.click('dialog[open] footer button', 'Print a card')
    await app.find('.paper h1', 'Two-build rye')
    equal(app.maybe('tb-head'), undefined)
    equal(app.maybe('tb-grid'), undefined)
    equal(app.all('main').length, 1)
    await waitUntil(() => app.focused?.textContent?.trim() === 'Print', 'Print has the focus')
    await press('Escape')
    await app.find('tb-grid')
    await waitUntil(() => app.focused?.textContent?.trim() === 'Send out', 'the focus is back')
  })

  it('in the workbook file, with all that is kept', async () => {
    await press('Enter')
    const what = await app.find('#what')
    what.focus()
    await press('Home', 'ArrowDown')
    const { workbook, problems } = readWorkbookFile(
      await waitUntil(
        () => (app.maybe('textarea#workbook') as HTMLTextAreaElement | undefined)?.value,
        'there is a workbook file',
      ),
    )
    deepEqual(problems, [])
    equal(workbook!.formulas.length, 6)
    equal(said(workbook!.formulas.find(f => f.name === 'Two-build rye')), csv)
  })
})
