import { emptyWorkbook, type Workbook } from '../../src/dough/document/workbook.js'
import type { KeeperNews, KeeperState, TypedText } from '../../src/storage/index.js'
import { newsInWords } from '../../src/storage/news.js'
import { copyText } from '../base/copy-text.js'
import { downloadParts, downloadWorkbook } from '../base/download.js'
import { nothingTyped, type TypedTold } from '../desk/typed-again.js'
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
  readonly kept: KeeperState
  readonly problems: readonly KeeperNews[] // of storage; those that were not dismissed
  readonly newVersion: (() => void) | undefined
  readonly deleted: string // the name of a formula just deleted
  readonly typed: TypedTold | undefined
  readonly goTo: (formula: string) => void // and puts back what was typed there
  readonly forgetTyped: (text: TypedText) => void
  readonly workbook: Workbook | undefined // to be downloaded where it is not kept
  readonly damaged: () => Promise<ReadonlyMap<string, unknown>> // parts of the storage
  readonly tryAgain: () => void
  readonly takeOver: () => void
  readonly undo: () => void
  readonly dismiss: (what: 'deleted' | 'typed' | KeeperNews) => void
}

/** The notices across the page, the gravest first. */
export function standingNotices(now: Circumstances): readonly Notice[] {
  const { kept } = now
  const download = {
    label: noticeWords.download,
    run: () => void downloadWorkbook(now.workbook ?? emptyWorkbook),
  }
  const notices: Notice[] = []
  if (kept.status === 'refused' || kept.status === 'full') {
    notices.push({
      tone: 'warning',
      text: kept.reason.message,
      actions: [download, { label: noticeWords.tryAgain, run: now.tryAgain }],
    })
  }
  if (kept.status === 'read-only') {
    notices.push({
      tone: kept.unsaved ? 'warning' : 'plain',
      text: kept.reason.message,
      actions: [{ label: noticeWords.editHere, run: now.takeOver }, ...(kept.unsaved ? [download] : [])],
    })
  }
  for (const news of now.problems) {
    const isStored = /(?:Damaged|Unreadable)$/.test(news.code)
    notices.push({
      tone: 'warning',
      text: newsInWords(news),
      actions: isStored
        ? [{ label: noticeWords.downloadDamaged, run: () => void now.damaged().then(downloadParts) }]
        : [],
      dismiss: () => now.dismiss(news),
    })
  }
  const { again, elsewhere, lost } = now.typed ?? nothingTyped
  if (again.length > 0) {
    notices.push({
      tone: 'plain',
      text: noticeWords.typedAgain(again),
      actions: [],
      dismiss: () => now.dismiss('typed'),
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
      dismiss: () => now.forgetTyped(text),
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
      actions: [{ label: noticeWords.undo, run: now.undo }],
      dismiss: () => now.dismiss('deleted'),
    })
  }
  return notices
}
