import '../../components/send-out/tb-send-out'
import type { TbSendOut } from '../../components/send-out/tb-send-out'
import type { Formula } from '../../src/dough/document/formula'
import { openFormula } from '../../src/dough/formula-sheet'
import {
  formulaFromLink,
  readFormulas,
  readPlainText,
  readWorkbookFile,
  writePlainText,
  writeWorkbookFile,
} from '../../src/exchange/index'
import { deepEqual, equal, match, ok, waitUntil } from '../assert'
import { press } from '../keys'
import { itCase } from '../once'
import { randomOf } from '../random'
import { millWheat, straightDough } from './breads'
import { holdsUp, Opened } from './dialogs'
import { dressPage, textOf } from './mount'

describe('The forms in which formulas leave', () => {
  let opened: Opened<TbSendOut>
  const mill = () => millWheat({ id: 'mill' })
  const plain = () => straightDough('Bread flour = 100%\nWater = 66%\nSalt = 2%', 'Plain')

  async function show(
    detail: { formula?: string; formulas?: readonly string[] } = { formula: 'mill' },
    formulas: readonly Formula[] = [mill(), plain()],
  ) {
    localStorage.clear()
    opened = new Opened(document.createElement('tb-send-out'), { formulas, name: 'Brackwater Mill' })
    opened.dialog.show(detail)
    await opened.whenOpen()
  }
  const choose = (label: string) => opened.click('.form', label)
  const field = (form: string) => opened.root.querySelector<HTMLTextAreaElement>(`textarea#${form}`)
  const written = (form: string) => waitUntil(() => field(form)?.value, `there is ${form}`)
  const download = () => opened.find<HTMLAnchorElement>('a[download]')
  const labels = () => [...opened.root.querySelectorAll('.form')].map(textOf)

  before(dressPage)
  afterEach(() => {
    opened.remove()
    localStorage.clear()
  })

  it('are those that fit what is sent', async () => {
    await show()
    const forFormulas = [
      'CSV',
      'Plain text',
      'Markdown',
      'Table to paste',
      'Link',
      'Recipe markup',
      'Workbook file',
    ]
    deepEqual(labels(), forFormulas)
    opened.find('#what').focus()
    await press('Home')
    await opened.find('footer button', 'Print 2 cards')
    deepEqual(labels(), forFormulas)
    await press('ArrowDown')
    await waitUntil(() => labels().length === 1, 'the workbook is chosen')
    deepEqual(labels(), ['Workbook file'])
  })

  it('are chosen with the arrow keys, each with a sentence of its own', async () => {
    await show()
    opened.find('#what').focus()
    await press('Tab')
    const said = new Set<string>()
    for (let at = 0; at < 7; at++) {
      said.add(textOf(opened.find('.says')))
      await press('ArrowRight')
      await opened.dialog.updateComplete
    }
    equal(said.size, 7)
    equal(opened.find<HTMLInputElement>('.form :checked').value, 'csv')
  })

  it('plain text is read again as the same formula', async () => {
    await show()
    await choose('Plain text')
    const { formulas, problems } = readPlainText(await written('text'))
    deepEqual(problems, [])
    equal(writePlainText(openFormula(formulas[0]!)), writePlainText(openFormula(mill())))
    equal(download().download, 'Mill wheat.txt')
  })

  it('plain text takes cups and spoons along, weights first, and is still read again', async () => {
    await show()
    await choose('Plain text')
    await written('text')
    await opened.click('label.choice', 'cups and spoons')
    await waitUntil(() => field('text')?.value.includes('Cups and spoons (metric):'), 'they are there')
    match(field('text')!.value, /> Final dough\s+Salt\s+21 g\s+\S+.* tbsp/)
    match(field('text')!.value, /estimates/)
    ok(!/[⅛⅜⅝⅞]/.test(field('text')!.value))
    opened.find('#system').focus()
    await press('Home')
    await waitUntil(() => field('text')?.value.includes('Cups and spoons (US):'), 'they are those of the US')
    await press('Tab', 'Tab', 'Tab', 'Tab', 'Space')
    await waitUntil(() => /[⅛⅜⅝⅞]/.test(field('text')!.value), 'eighths are used')
    const { formulas, problems } = readPlainText(field('text')!.value)
    deepEqual(problems, [])
    equal(writePlainText(openFormula(formulas[0]!)), writePlainText(openFormula(mill())))
  })

  it('a link holds the whole formula, says how long it is and that no server sees it', async () => {
    await show()
    await choose('Link')
    const link = await written('link')
    const read = await formulaFromLink(new URL(link).hash)
    ok('formula' in read)
    equal(writePlainText(openFormula(read.formula)), writePlainText(openFormula(mill())))
    match(textOf(opened.find('.says')), /no server sees/)
    ok(textOf(opened.find('#length')).startsWith(`${link.length} characters`))
    equal(opened.root.querySelector('a[download]'), null)
    await opened.click('footer button', 'Copy')
    await waitUntil(() => textOf(opened.find('.told')) === 'Copied.', 'it says so')
    equal(await navigator.clipboard.readText(), link)
  })

  it('a formula too long for a link gets a sentence, and nothing to copy (seed 61)', async () => {
    const random = randomOf(61)
    const note = Array.from({ length: 9000 }, () => random.next().toString(36).slice(2, 4)).join('')
    await show({ formula: 'mill' }, [{ ...mill(), note }])
    await choose('Link')
    const told = await waitUntil(() => opened.root.querySelector('[role=alert]'), 'there is a sentence')
    match(textOf(told), /Mill wheat is too long for a link: \d+ characters.*Send it as a file instead/)
    ok(opened.find<HTMLButtonElement>('footer button', 'Copy').disabled)
  })

  it('a table is copied as what it looks like, with its text beside it', async () => {
    await show()
    await choose('Table to paste')
    await waitUntil(() => opened.root.querySelectorAll('.page table').length === 3, 'it is shown')
    await opened.click('footer button', 'Copy')
    await waitUntil(() => textOf(opened.find('.told')) === 'Copied.', 'it says so')
    const [item] = await navigator.clipboard.read()
    const pasted = new DOMParser().parseFromString(
      await (await item!.getType('text/html')).text(),
      'text/html',
    )
    equal(pasted.querySelectorAll('table').length, 3)
    const text = await (await item!.getType('text/plain')).text()
    equal(text, writePlainText(openFormula(mill())))
  })

  it('recipe markup is a script element to paste, or its JSON alone', async () => {
    await show()
    await choose('Recipe markup')
    match(await written('recipe'), /^<script type="application\/ld\+json">/)
    await opened.click('label.choice', 'JSON alone')
    await waitUntil(() => field('recipe')?.value.startsWith('{'), 'it is JSON')
    equal(JSON.parse(field('recipe')!.value)['@type'], 'Recipe')
    equal(download().download, 'Mill wheat.json')
  })

  it('the workbook file is everything, and says that kept states go along', async () => {
    const { states: _none, ...now } = mill()
    const states = [{ id: 's', name: 'Before', keptAt: '2026-08-01T08:00:00.000Z', formula: now }]
    await show({ formula: 'mill' }, [{ ...mill(), states }, plain()])
    match(textOf(opened.find('.body .hint')), /Kept states stay here/)
    opened.find('#what').focus()
    await press('ArrowUp')
    const text = await written('workbook')
    const { workbook, savedAt, problems } = readWorkbookFile(text)
    deepEqual(problems, [])
    equal(writeWorkbookFile(workbook!, savedAt), text)
    equal(workbook!.formulas[0]!.states![0]!.name, 'Before')
    equal(download().download, 'Brackwater Mill.json')
    equal(await (await fetch(download().href)).text(), text)
  })

  it('are all there for several chosen on the shelf, and for a group', async () => {
    const grouped = [mill(), plain(), straightDough('Dark rye flour = 100%\nWater = 80%', 'Rye')].map(f =>
      f.name === 'Rye' ? f : { ...f, group: 'Light' },
    )
    await show({ formulas: grouped.slice(1).map(({ id }) => id) }, grouped)
    equal(textOf(opened.find('#what option:checked')), 'The 2 formulas chosen')
    const names = (text: string) =>
      readFormulas(text)
        .formulas.map(({ name }) => name)
        .join()
    equal(names(await written('csv')), 'Plain,Rye')
    await choose('Link')
    const [first, link, , second] = (await written('link')).split('\n')
    equal([first, second].join(), 'Plain,Rye')
    const read = await formulaFromLink(new URL(link!).hash)
    ok('formula' in read && read.formula.name === 'Plain')
    await choose('Recipe markup')
    const page = new DOMParser().parseFromString(await written('recipe'), 'text/html')
    deepEqual(
      [...page.querySelectorAll('script')].map(script => JSON.parse(script.textContent!).name),
      ['Plain', 'Rye'],
    )
    await opened.click('label.choice', 'JSON alone')
    await waitUntil(() => field('recipe')?.value.startsWith('['), 'it is a list')
    equal(JSON.parse(field('recipe')!.value).length, 2)
    await choose('Workbook file')
    const { workbook } = readWorkbookFile(await written('workbook'))
    equal(workbook!.formulas.map(({ name }) => name).join(), 'Plain,Rye')
    match(textOf(opened.find('.says')), /these formulas with their kept states/)
    await choose('CSV')
    opened.find('#what').focus()
    await press('l') // Light
    await waitUntil(() => names(field('csv')?.value ?? '') === 'Mill wheat,Plain', 'the group is sent')
    equal(download().download, 'Light.csv')
    await opened.click('footer button', 'Print 2 cards')
    await opened.whenClosed()
    deepEqual(opened.around.wishes, [{ want: 'card', formulas: grouped.slice(0, 2).map(({ id }) => id) }])
  })

  it('leads to the printed card', async () => {
    await show()
    await opened.click('footer button', 'Print a card')
    await opened.whenClosed()
    deepEqual(opened.around.wishes, [{ want: 'card', formula: 'mill' }])
  })

  for (const [at, [form, id]] of (
    [
      ['Plain text', 'text'],
      ['Table to paste', ''],
      ['Link', 'link'],
      ['Recipe markup', 'recipe'],
    ] as const
  ).entries())
    itCase(at)(`${form} holds up on a laptop and a phone`, async () => {
      await show()
      await choose(form)
      if (id) await written(id)
      if (id === 'text') await opened.click('label.choice', 'cups and spoons')
      await holdsUp(opened)
    })
})
