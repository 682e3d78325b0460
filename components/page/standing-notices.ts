import type { Formula, Problem } from '../../src/dough/document/formula.js'
import type { KeeperState, TypedText } from '../../src/storage/index.js'
import { copyText } from '../base/copy-text.js'
import { downloadFormulas } from '../base/download.js'
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
  readonly problems: readonly Problem[] // of storage
  readonly newVersion: (() => void) | undefined
  readonly deleted: string // the name of a formula just deleted
  readonly typed: TypedTold | undefined
  readonly goTo: (formula: string) => void // and puts back what was typed there
  readonly forgetTyped: (text: TypedText) => void
  readonly formulas: readonly Formula[] // to be downloaded where they are not kept
  readonly tryAgain: () => void
  readonly takeOver: () => void
  readonly undo: () => void
  readonly dismiss: (what: 'deleted' | 'problems' | 'typed') => void
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
