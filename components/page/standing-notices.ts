import { emptyWorkbook } from '../../src/dough/document/workbook.js'
import { newsInWords } from '../../src/storage/news.js'
import type { OutsideCopy } from '../../src/storage/outside/outside-copy.js'
import { copyText } from '../base/copy-text.js'
import { downloadParts, downloadWorkbook } from '../base/download-stored.js'
import type { Wish } from '../base/events.js'
import type { NumberStyle } from '../base/numbers.js'
import type { KeptDesk } from '../desk/kept-desk.js'
import { nameFile } from '../desk/outside-desk.js'
import { nothingTyped, type TypedAgain } from '../desk/typed-again.js'
import { noticeWords } from './notice-words.js'

/** A sentence across the page, with what can be done about it. */
export interface Notice {
  readonly tone: 'plain' | 'warning'
  readonly text: string
  readonly actions: readonly { readonly label: string; readonly run: () => void }[]
  readonly dismiss?: () => void
}

/** What the notices are made of, and what their buttons do. */
export interface Circumstances {
  readonly kept: KeptDesk
  readonly typed: TypedAgain | undefined
  readonly newVersion: (() => void) | undefined
  readonly deleted: string // the name of a formula just deleted
  readonly seen: ReadonlySet<object> // what was told and dismissed
  readonly numbers: NumberStyle
  readonly goTo: (place: string) => void // a formula or a day by its id; and puts back what was typed there
  readonly dismiss: (what: 'deleted' | object) => void
}

/** The notices across the page, the gravest first; `ask` has the app do what a button is for. */
export function standingNotices(
  now: Circumstances,
  ask: (wish: Wish) => void,
  outside?: OutsideCopy,
): readonly Notice[] {
  const { desk, state: kept, gone, problems, takeOver, tryAgain, damaged } = now.kept
  const download = {
    label: noticeWords.download,
    run: () => {
      outside?.tookFile()
      void downloadWorkbook(desk?.workbook ?? emptyWorkbook)
    },
  }
  const notices: Notice[] = []
  if (kept.status === 'refused' || kept.status === 'full') {
    notices.push({
      tone: 'warning',
      text: kept.reason.message,
      actions: [download, { label: noticeWords.tryAgain, run: tryAgain }],
    })
  }
  if (kept.status === 'read-only') {
    notices.push({
      tone: kept.unsaved ? 'warning' : 'plain',
      text: kept.reason.message,
      actions: [{ label: noticeWords.editHere, run: takeOver }, ...(kept.unsaved ? [download] : [])],
    })
  }
  if (gone && !now.seen.has(gone)) {
    const savedAt = new Date(gone.savedAt).toLocaleString(now.numbers.language, {
      dateStyle: 'medium',
      timeStyle: 'short',
    })
    notices.push({
      tone: 'warning',
      text: noticeWords.gone(savedAt, gone.formulas),
      actions: [{ label: noticeWords.bringIn, run: () => ask({ want: 'bring-in' }) }],
      dismiss: () => now.dismiss(gone),
    })
  }
  for (const news of problems.filter(one => !now.seen.has(one))) {
    const isStored = /(?:Damaged|Unreadable)$/.test(news.code)
    notices.push({
      tone: 'warning',
      text: newsInWords(news),
      actions: isStored
        ? [{ label: noticeWords.downloadDamaged, run: () => void damaged().then(downloadParts) }]
        : [],
      dismiss: () => now.dismiss(news),
    })
  }
  const problem = outside?.problem
  if (problem && !now.seen.has(problem)) {
    notices.push({
      tone: 'warning',
      text: problem.message,
      actions: copyActions(problem.code, outside, ask),
      dismiss: () => now.dismiss(problem),
    })
  }
  const due = outside?.due
  if (due && kept.status === 'saved' && kept.at) {
    const since = new Date(due).toLocaleDateString(now.numbers.language, { dateStyle: 'medium' })
    notices.push({
      tone: 'plain',
      text: noticeWords.noneTaken(since),
      actions: [{ ...download, label: noticeWords.sendOut }],
      dismiss: () => outside.putOff(),
    })
  }
  const { again, elsewhere, lost } = now.typed?.told ?? nothingTyped
  if (again.length > 0) {
    notices.push({
      tone: 'plain',
      text: noticeWords.typedAgain(again),
      actions: [],
      dismiss: () => now.typed?.seen(),
    })
  }
  for (const { formula, name } of elsewhere) {
    notices.push({
      tone: 'plain',
      text: noticeWords.typedElsewhere(name),
      actions: [{ label: noticeWords.goThere, run: () => now.goTo(formula) }],
    })
  }
  for (const text of lost) {
    notices.push({
      tone: 'warning',
      text: noticeWords.typedLost(text.text),
      actions: [{ label: noticeWords.copy, run: () => void copyText(text.text) }],
      dismiss: () => now.typed?.forget(text),
    })
  }
  if (now.newVersion) {
    notices.push({
      tone: 'plain',
      text: noticeWords.newVersion,
      actions: [{ label: noticeWords.reload, run: now.newVersion }],
    })
  }
  if (now.deleted) {
    notices.push({
      tone: 'plain',
      text: noticeWords.deleted(now.deleted),
      actions: [{ label: noticeWords.undo, run: () => ask({ want: 'undo' }) }],
      dismiss: () => now.dismiss('deleted'),
    })
  }
  return notices
}

/** What can be done about a copy that is not up to date. */
function copyActions(code: string, copy: OutsideCopy, ask: (wish: Wish) => void): Notice['actions'] {
  const again = { label: noticeWords.tryAgain, run: () => void copy.flush({ ask: true }) }
  switch (code) {
    case 'copyNotAllowed':
      return [{ ...again, label: noticeWords.allow }]
    case 'copyFileGone':
      return [{ label: noticeWords.nameFile, run: () => void nameAnother(copy) }]
    case 'copyFileOther':
      return [
        { label: noticeWords.bringIn, run: () => ask({ want: 'bring-in' }) },
        { label: noticeWords.writeOver, run: () => void copy.flush({ ask: true, over: true }) },
      ]
    default:
      return [again]
  }
}

async function nameAnother(copy: OutsideCopy): Promise<void> {
  const file = await nameFile(copy.notes.file?.name ?? '')
  if (file) await copy.keepIn(file)
}
