import { linkOf, readFormulas } from '../../src/exchange/index'
import { deepEqual, equal, match, ok, waitUntil } from '../assert'
import { press } from '../keys'
import { OpenApp } from './app'

const recipe = `Pond loaf

Levain
20 g ripe starter
50 g bread flour
50 g water

Dough
500 g bread flour
340–360 g water
10 g salt
120 g levain

Method
Bake at 240 °C.
`
const table =
  'Stufe;Zutat;Menge (g)\nSauerteig;Anstellgut;20\n;Roggenmehl;100\n;Wasser;100\nHauptteig;Weizenmehl;900\n;Wasser;600,5\n;Salz;20\n;Sauerteig;220\n'
const csv = `formula,stage,ingredient,amount
Gift loaf,Final dough,Bread flour,800 g
Gift loaf,Final dough,Water,560 g
Gift loaf,Final dough,Salt,16 g
`

/** The whole app with the real mouse and keys: a formula arrives in each way, and nothing that was there changes. */
describe('A formula arrives', () => {
  const run = Date.now()
  let app: OpenApp

  after(() => app.close())

  const text = (element: Element | undefined) => (element?.textContent ?? '').replace(/\s+/g, ' ').trim()
  // Their names: the readings beside them follow when they are worked out.
  const shelf = () => app.all('nav a').map(a => text(a).replace(/\d+ %.*/, ''))
  const weight = (stage: string, ingredient: string) => text(app.cell(stage, ingredient, /^Weight|^Grams/))
  const frameAddress = () => app.frame.contentWindow!.location

  it('as a recipe pasted on the page', async () => {
    app = await OpenApp.open(`arrive-${run}`)
    const before = shelf().length
    await app.paste(recipe)
    await app.find('#understood', /1 formula and 7 lines/)
    await app.click('button', /^Yes, that is right/)
    await app.click('button', 'Add 1 formula')
    await waitUntil(() => shelf().length === before + 1, 'it is on the shelf')
    await waitUntil(() => /^350/.test(weight('Dough', 'Water')), 'it is open, with the middle of the range')
  })

  it('as a table from elsewhere in a file', async () => {
    const before = shelf()
    await app.click('button', 'Bring in')
    const input = (await app.find('#file')) as HTMLInputElement
    // No test can work the browser's own window for choosing a file: it is given as if chosen there.
    const { DataTransfer, File, Event } = app.frame.contentWindow as Window & typeof globalThis
    const chosen = new DataTransfer()
    chosen.items.add(new File([table], 'Mühle.csv'))
    input.files = chosen.files
    input.dispatchEvent(new Event('change', { bubbles: true }))
    await app.find('#understood', /1 formula and 7 lines understood from Mühle\.csv/)
    await app.click('#name')
    await navigator.clipboard.writeText('Mill rye')
    await press('Control+v', 'Tab')
    await app.click('button', 'Add 1 formula')
    await waitUntil(() => shelf().some(name => name.startsWith('Mill rye')), 'it is on the shelf')
    equal(shelf().length, before.length + 1)
    await waitUntil(() => /^600[.,]5/.test(weight('Hauptteig', 'Wasser')), 'its decimal comma was read')
  })

  it('in a link, to be read first, also after a reload; then the address is plain again', async () => {
    const [gift] = readFormulas(csv).formulas
    const link = await linkOf(gift!, frameAddress().href)
    ok(typeof link === 'string')
    const before = shelf()
    frameAddress().hash = link.slice(link.indexOf('#'))
    await app.find('h2', 'A formula came with the link')
    await app.find('#understood', /1 formula and 3 lines/)
    await app.reload()
    await app.find('#understood', /1 formula and 3 lines/)
    await press('Escape')
    await waitUntil(() => !app.maybe('#understood'), 'the dialog is closed')
    ok(!frameAddress().href.includes('formula='), 'the formula is gone from the address')
    deepEqual(shelf(), before)
    frameAddress().hash = link.slice(link.indexOf('#'))
    await app.click('button', 'Add to my workbook')
    await waitUntil(() => shelf().some(name => name.startsWith('Gift loaf')), 'it is on the shelf')
    equal(shelf().length, before.length + 1)
    await waitUntil(() => /^560/.test(weight('Final dough', 'Water')), 'it is open')
    await waitUntil(() => app.focused?.closest('table'), 'the focus is in its grid')
    await press('Control+z')
    await waitUntil(() => shelf().length === before.length, 'one undo takes it away')
  })

  it('in a link that the app is opened with', async () => {
    const [gift] = readFormulas(csv).formulas
    const link = await linkOf(gift!, 'https://example.org/')
    ok(typeof link === 'string')
    app.close()
    app = await OpenApp.open(`guest-${run}${link.slice(link.indexOf('#'))}`)
    await app.click('button', 'Add to my workbook')
    await waitUntil(() => shelf().some(name => name.startsWith('Gift loaf')), 'it is on the shelf')
    match(frameAddress().hash, /^#[0-9a-f-]+$/)
  })
})
