import type { Formula, Problem } from '../../src/dough/document/formula.js'
import type { KeeperState } from '../../src/storage/index.js'
import { downloadFormulas } from '../base/download.js'
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
  readonly problems: readonly Problem[] // of storage
  readonly newVersion: (() => void) | undefined
  readonly deleted: string // the name of a formula just deleted
  readonly formulas: readonly Formula[] // to be downloaded where they are not kept
  readonly tryAgain: () => void
  readonly takeOver: () => void
  readonly undo: () => void
  readonly dismiss: (what: 'deleted' | 'problems') => void
}

/** The notices across the page, the gravest first. */
export function standingNotices(now: Circumstances): readonly Notice[] {
  const { kept } = now
  const download = { label: noticeWords.download, run: () => void downloadFormulas(now.formulas) }
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
  for (const { message } of now.problems) {
    notices.push({
      tone: 'warning',
      text: message,
      actions: [],
      dismiss: () => now.dismiss('problems'),
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
