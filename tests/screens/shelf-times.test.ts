import { test } from 'node:test'
import { Desk } from '../../components/desk/desk'
import { emptyWorkbook } from '../../src/dough/document/workbook'
import { renameFormula, setFlourWeight } from '../../src/dough/edits/edits'
import { removeFormula } from '../../src/dough/edits/fetched/shelf-edits'
import { deepEqual } from '../assert'
import { straightDough } from './breads'

/** What a page has of the browser. */
class Page extends EventTarget {
  readonly kept = new Map<string, string>()
  getItem = (key: string) => this.kept.get(key) ?? null
  setItem = (key: string, value: string) => void this.kept.set(key, value)
}

test('what is opened and what is changed is noted, the latest last; what is deleted or comes from another tab is not', async () => {
  const page = new Page()
  Object.assign(globalThis, { window: page, localStorage: page })
  const { lastChanged, lastOpened, noteTimes } = await import('../../components/desk/shelf-times')
  const tins = ['one', 'two', 'three'].map(id => ({ ...straightDough('Bread flour = 100%', id), id }))
  const quiet = () => {}
  const desk = new Desk({ ...emptyWorkbook, formulas: tins }, { language: 'en', decimal: '.' }, quiet, quiet)
  const gone = new AbortController()
  noteTimes(desk, gone.signal)
  const open = (id: string) => {
    desk.open(id)
    page.dispatchEvent(new Event('hashchange'))
  }
  open('three')
  open('two')
  desk.edit(renameFormula(desk.workbook, 'two', 'Two'))
  desk.edit(setFlourWeight(desk.workbook, 'one', 500))
  desk.edit(removeFormula(desk.workbook, 'three'))
  desk.history.undo()
  desk.history.undo()
  deepEqual(Object.keys(lastOpened.all()), ['one', 'three', 'two'])
  deepEqual(Object.keys(lastChanged.all()), ['two', 'three', 'one'])
  gone.abort()
  open('one')
  desk.edit(renameFormula(desk.workbook, 'two', 'Tin two'))
  deepEqual(Object.keys(lastOpened.all()), ['one', 'three', 'two'])
  deepEqual(Object.keys(lastChanged.all()), ['two', 'three', 'one'])
})
