import { readWorkbookFile, writeWorkbookFile } from '../../src/exchange/data/workbook-file.js'
import { equal, match, ok, waitUntil } from '../assert.js'
import { press, type } from '../keys.js'
import { itOnce } from '../once.js'
import { straightDough } from '../screens/breads.js'
import { OpenApp } from './app.js'

/** The workbook file outside the browser: kept up to date, and opened in one step. The pickers are stand-ins. */
describe('A copy outside the browser', () => {
  let app: OpenApp

  beforeEach(async () => {
    app = await OpenApp.open(`copy-outside-${Date.now()}`)
  })
  afterEach(() => app.close())

  const shelf = () => app.all('nav a').map(a => a.textContent!.trim())
  const namesIn = (text: string) => readWorkbookFile(text).workbook?.formulas.map(({ name }) => name) ?? []

  /** Opens “Send out” at the workbook file. */
  async function toWorkbookFile(): Promise<void> {
    await app.click('button', 'Send out')
    ;(await app.find('#what')).focus()
    await press('Home', 'ArrowDown')
    await app.find('h3', 'A copy outside the browser')
  }

  async function rename(name: string): Promise<void> {
    await app.click('textarea[aria-label="Name of the formula"]')
    await press('Control+a')
    await type(name)
    await press('Enter')
    await app.find('.kept', /^Saved/)
  }

  // A file of the origin's own storage is a real handle; only the picker that names one cannot be driven.
  itOnce(
    'is written when a file is named and after each change, also after a reload, and told with its time',
    async () => {
      const page = () => app.frame.contentWindow as Window & { showSaveFilePicker?: unknown }
      if (!('storage' in navigator)) return // an engine that was run alone and knows no such files
      const folder = await navigator.storage.getDirectory()
      const name = `mill-${Date.now()}.json`
      const file = await folder.getFileHandle(name, { create: true })
      // While it is being written, what is read of it is of no moment.
      const text = () =>
        file
          .getFile()
          .then(f => f.text())
          .catch(() => '')
      await rename('Weekday loaf')
      page().showSaveFilePicker = async () => file
      await toWorkbookFile()
      await app.click('button', 'Name a file …')
      await app.find('p', new RegExp(`^${name} is kept up to date\\. Last written .*\\d`))
      ok(namesIn(await text()).includes('Weekday loaf'))
      await press('Escape')
      await rename('Sunday loaf')
      await waitUntil(async () => namesIn(await text()).includes('Sunday loaf') || undefined, 'it follows')
      await app.reload()
      page().showSaveFilePicker = async () => file
      await toWorkbookFile()
      await app.find('p', new RegExp(`^${name} is kept up to date\\.`))
      await app.click('button', 'Keep no copy')
      await app.find('p', `${name} is no longer kept up to date. It stays as it is.`)
      await folder.removeEntry(name)
    },
  )

  it('is opened in one step at a first start, in place of the examples, and one undo brings them back', async () => {
    const before = shelf()
    const wholemeal = straightDough('Bread flour = 100%\nWater = 66%', 'Kept loaf')
    const file = writeWorkbookFile({ name: 'Mill of old', formulas: [wholemeal], larder: [] })
    await app.click('.lesson button', 'Open a workbook file')
    const field = (await app.find('#file')) as HTMLInputElement
    const chosen = new DataTransfer()
    chosen.items.add(new File([file], 'tarebook.json', { type: 'application/json' }))
    field.files = chosen.files
    field.dispatchEvent(new Event('change', { bubbles: true }))
    await waitUntil(() => !app.maybe('dialog[open]') && shelf().length === 1, 'it is there, and nothing else')
    match(shelf()[0]!, /^Kept loaf/)
    equal(app.maybe('button', /^Cleared away/), undefined)
    await app.click('button', /^Undo: Replace/)
    await waitUntil(() => shelf().length === before.length, 'the examples are back')
  })
})
