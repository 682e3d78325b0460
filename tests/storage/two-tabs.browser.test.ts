import { promisifyRequest } from 'idb-keyval'
import type { Workbook } from '../../src/dough/document/workbook'
import { type Keeper, openKeeper } from '../../src/storage/index'
import { newsInWords } from '../../src/storage/news'
import { equal, match, ok, waitUntil } from '../assert'
import { inWords, loaf, withFormula, workbookOf } from './bread'

const miche = (...lines: string[]) => loaf('Miche', 'flour 100%', ...lines)

/** Keepers of one page contend for lock and database as tabs do: both belong to whoever asked for them. */
describe('Two tabs with one workbook', () => {
  let database: string
  let tabs: Keeper[]

  async function openTab(): Promise<Keeper> {
    const tab = await openKeeper({ database, onState: () => {}, persist: async () => false })
    tabs.push(tab)
    return tab
  }
  const edit = (tab: Keeper, change: (workbook: Workbook) => Workbook) => tab.keep(change(tab.workbook))
  const salt = (tab: Keeper, amount: string) => edit(tab, w => withFormula(w, miche(`salt ${amount}`)))
  const becomes = (tab: Keeper, status: Keeper['state']['status']) =>
    waitUntil(() => tab.state.status === status, `the tab is ${status}, not ${tab.state.status}`)

  beforeEach(async () => {
    database = `test ${crypto.randomUUID()}`
    tabs = []
    const tab = await openTab()
    ok(tab.fresh)
    tab.keep(workbookOf(miche(), loaf('Rye', 'rye 100%')))
    await tab.flush()
  })

  afterEach(async () => {
    for (const tab of tabs) await tab.close()
    await promisifyRequest(indexedDB.deleteDatabase(database))
  })

  it('saves by itself, and a tab opened later has everything', async () => {
    const [first] = tabs as [Keeper]
    salt(first, '2%')
    equal(first.state.status, 'waiting')
    await becomes(first, 'saved')
    await first.close()
    const next = await openTab()
    equal(inWords(next.workbook), 'Miche flour 100% salt 2%; Rye rye 100%')
    equal(next.fresh, false)
    equal(next.state.status, 'saved')
  })

  it('lets the first edit, and the second follow live', async () => {
    const [first] = tabs as [Keeper]
    const second = await openTab()
    equal(second.state.status, 'read-only')
    salt(first, '2%')
    await waitUntil(() => inWords(second.workbook).includes('salt 2%'), 'the second tab shows the salt')
    equal(second.state.status, 'read-only')
  })

  it('hands over what had not been saved yet', async () => {
    const [first] = tabs as [Keeper]
    const second = await openTab()
    salt(first, '2%')
    await second.takeOver()
    equal(first.state.status, 'read-only')
    equal(second.state.status, 'saved')
    equal(inWords(second.workbook), 'Miche flour 100% salt 2%; Rye rye 100%')

    salt(second, '1.8%')
    await waitUntil(() => inWords(first.workbook).includes('1.8%'), 'the first tab follows in its turn')
  })

  it('hands over to and fro, also among three', async () => {
    const [first] = tabs as [Keeper]
    const [second, third] = [await openTab(), await openTab()]
    let n = 0
    for (const tab of [third, second, first, third, first]) {
      await tab.takeOver()
      for (const other of tabs) equal(other.state.status === 'read-only', other !== tab)
      n += 1
      salt(tab, `${n}%`)
    }
    await becomes(first, 'saved')
    await waitUntil(() => tabs.every(t => inWords(t.workbook).includes('salt 5%')), 'all show the last edit')
    ok(tabs.every(tab => tab.problems.length === 0))
  })

  it('passes to a waiting tab when the one that edits is closed', async () => {
    const [first] = tabs as [Keeper]
    const second = await openTab()
    salt(first, '2%')
    await first.close()
    await becomes(second, 'saved')
    equal(inWords(second.workbook), 'Miche flour 100% salt 2%; Rye rye 100%')
  })

  it('takes over after 2 seconds from a tab that does not answer', async () => {
    await tabs[0]!.close()
    let stolen = false
    const granted = new Promise<void>(resolve => {
      navigator.locks
        .request(`tarebook ${database}`, () => {
          resolve()
          return new Promise(() => {})
        })
        .catch(() => {
          stolen = true
        })
    })
    await granted
    const second = await openTab()
    equal(second.state.status, 'read-only')
    const { setTimeout } = globalThis
    const later: (() => void)[] = [] // what waits for 2 seconds to pass
    globalThis.setTimeout = ((work: () => void, ms?: number) => {
      if (ms !== 2000) return setTimeout(work, ms)
      return later.push(work)
    }) as typeof setTimeout
    const taken = second.takeOver()
    globalThis.setTimeout = setTimeout
    equal(later.length, 1)
    await navigator.locks.query() // after anything asked of the locks until now
    ok(!stolen, 'it waits for the other')
    equal(second.state.status, 'read-only')
    later[0]!()
    await taken
    ok(stolen)
    equal(second.state.status, 'saved')
  })

  it('loses nothing of a tab whose turn was taken without its answer', async () => {
    const [first] = tabs as [Keeper]
    const second = await openTab()
    // Its save does not begin before the turn is taken, however long that takes here: then nothing would be left over.
    const { setTimeout, requestAnimationFrame } = globalThis
    Object.assign(globalThis, { setTimeout: () => 0, requestAnimationFrame: () => 0 })
    salt(first, '2%')
    Object.assign(globalThis, { setTimeout, requestAnimationFrame })
    await navigator.locks.request(`tarebook ${database}`, { steal: true }, () => {})
    equal(first.state.status === 'read-only' && first.state.unsaved, true)
    await becomes(second, 'saved')
    salt(second, '1.8%')
    await second.flush()
    await waitUntil(() => inWords(first.workbook).includes('1.8%'), 'the first tab follows')
    equal(
      inWords(first.workbook),
      'Miche flour 100% salt 1.8%; Miche (from another tab) flour 100% salt 2%; Rye rye 100%',
    )
    match(newsInWords(first.problems[0]!), /kept as “Miche \(from another tab\)”/)

    await first.takeOver()
    await becomes(first, 'saved')
    await waitUntil(
      () => inWords(second.workbook).includes('(from another tab)'),
      'the second tab has it too',
    )
  })
})
