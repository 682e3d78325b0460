import { equal, match, ok, waitUntil } from '../assert.js'
import { press } from '../keys.js'
import { OpenApp } from './app.js'

const later = { of: [{ a: 'later version' }] }
const line = { id: 'flour', ingredient: 'Bread flour', amount: '500 g', note: '', later }
const stage = { id: 'dough', name: 'Final dough', lines: [line], later }
const formula = { id: 'kept', name: 'Kept loaf', note: '', flourWeight: 1000, stages: [stage], later }
const file = {
  format: 'tarebook workbook file',
  version: 1,
  savedAt: '2026-05-03T08:00:00.000Z',
  name: 'Old laptop',
  formulas: [{ ...formula, meanings: [], keptSettings: [] }],
  larder: [],
  later,
}

/** The whole app with the real mouse and keys: a workbook file takes the place of everything. */
describe('A workbook file is restored', () => {
  let app: OpenApp

  const shelf = () => app.all('nav a').map(a => a.textContent!.trim())

  before(async () => {
    app = await OpenApp.open(`restore-${Date.now()}`)
  })
  after(() => app.close())

  async function restore(): Promise<void> {
    await app.click('button', 'Bring in')
    const field = await app.find('#pasted')
    field.focus()
    await navigator.clipboard.writeText(JSON.stringify(file))
    await press('Control+v')
    await app.click('footer button', 'Read it')
    await app.find('#understood', /^Old laptop: 1 formula/)
    const ways = await app.find('.ways input')
    ways.focus()
    await press('ArrowDown')
    await app.click('footer button', 'Replace everything …')
    await waitUntil(
      () => app.focused?.textContent?.trim() === 'Keep what is here',
      'the safe answer has the focus',
    )
    await press('Tab', 'Enter')
    await app.find('.question', /^Really replace everything/)
    await press('Tab', 'Enter')
    await waitUntil(() => !app.maybe('dialog[open]'), 'the dialog is closed')
  }

  it('in place of all that was there, after two questions, and one undo brings that back', async () => {
    const before = shelf()
    ok(before.length > 1)
    await restore()
    await waitUntil(
      () => shelf().length === 1 && /^Kept loaf/.test(shelf()[0]!),
      'it has replaced everything',
    )
    equal(app.maybe('*', /^Deleted /), undefined)
    await press('Control+z')
    await waitUntil(() => shelf().length === before.length, 'all is back')
    await press('Control+Shift+z')
    await waitUntil(() => shelf().length === 1, 'it is restored again')
  })

  it('and what only a later version understands is in the next workbook file, after a reload', async () => {
    await app.reload()
    equal(shelf().length, 1)
    match(shelf()[0]!, /^Kept loaf/)
    await app.click('button', 'Send out')
    const what = await app.find('#what')
    what.focus()
    await press('ArrowDown', 'Home') // the whole workbook comes first where there is one formula
    const json = await waitUntil(
      () => (app.maybe('textarea#workbook') as HTMLTextAreaElement | undefined)?.value,
      'there is a workbook file',
    )
    const written = JSON.parse(json) as typeof file
    equal(written.name, 'Old laptop')
    for (const at of [
      written,
      written.formulas[0]!,
      written.formulas[0]!.stages[0]!,
      written.formulas[0]!.stages[0]!.lines[0]!,
    ])
      equal(JSON.stringify(at.later), JSON.stringify(later))
  })
})
