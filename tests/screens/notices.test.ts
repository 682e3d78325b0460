import assert from 'node:assert/strict'
import { test } from 'node:test'
import type { KeptDesk } from '../../components/desk/kept-desk.js'
import { type Circumstances, standingNotices } from '../../components/page/standing-notices.js'
import type { KeeperNews } from '../../src/storage/index.js'

/** The notices across the page, one after the other. */

function aPage() {
  const seen = new Set<object>()
  const problems: KeeperNews[] = []
  const kept = { state: { status: 'saved' }, problems, gone: undefined, damaged: async () => new Map() }
  const now: Circumstances = {
    kept: kept as unknown as KeptDesk,
    typed: undefined,
    newVersion: undefined,
    deleted: '',
    seen,
    numbers: { language: 'en', decimal: '.' },
    goTo() {},
    dismiss: what => {
      if (typeof what === 'object') seen.add(what)
    },
  }
  const notices = () => standingNotices(now, () => {})
  return { kept, problems, notices, texts: () => notices().map(({ text }) => text) }
}

const copy = (name: string): KeeperNews => ({
  code: 'keptAsCopy',
  message: `What you had changed here is kept as “${name}”.`,
  copy: name,
})

test('a notice dismissed hides no other, not even one that comes later and says the same', () => {
  const { problems, notices, texts } = aPage()
  problems.push(copy('Rye'), { code: 'formulaMissing' })
  assert.equal(texts().length, 2)
  notices()[0]!.dismiss!()
  assert.deepEqual(texts(), [
    'A formula of the shelf is missing from the browser’s storage. A copy you downloaded can be opened.',
  ])
  problems.push(copy('Rye'))
  assert.equal(texts().at(-1), 'What you had changed here is kept as “Rye”.')
  notices()[0]!.dismiss!()
  assert.equal(texts().length, 1)
})

test('a workbook that is gone is told with its day and size, until that is dismissed', () => {
  const { kept, notices, texts } = aPage()
  Object.assign(kept, { gone: { savedAt: '2026-11-28T12:00:00.000Z', formulas: 1 } })
  assert.match(texts()[0]!, /^There was a workbook here with 1 formula, last saved Nov 28, 2026/)
  notices()[0]!.dismiss!()
  assert.deepEqual(texts(), [])
})

test('what is damaged can be downloaded from its notice', () => {
  const { problems, notices } = aPage()
  problems.push({ code: 'formulaUnreadable', name: 'Rye' }, { code: 'dayMissing' })
  assert.deepEqual(
    notices().map(({ actions }) => actions.map(({ label }) => label)),
    [['Download as it is'], []],
  )
})
