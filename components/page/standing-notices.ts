import type { Problem } from '../../src/dough/document/formula.js'
import type { KeeperState } from '../../src/storage/index.js'

/** A sentence across the page, with what can be done about it. */
export interface Notice {
  readonly key: string
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
  readonly download: () => void
  readonly tryAgain: () => void
  readonly takeOver: () => void
  readonly undo: () => void
  readonly dismiss: (what: 'deleted' | 'problems') => void
}

/** The notices across the page, the gravest first. */
export function standingNotices(now: Circumstances): readonly Notice[] {
  const { kept } = now
  const download = { label: 'Download CSV', run: now.download }
  const notices: Notice[] = []
  if (kept.status === 'refused' || kept.status === 'full') {
    notices.push({
      key: kept.status,
      tone: 'warning',
      text: kept.reason.message,
      actions: [download, { label: 'Try again', run: now.tryAgain }],
    })
  }
  if (kept.status === 'read-only') {
    notices.push({
      key: 'read-only',
      tone: kept.unsaved ? 'warning' : 'plain',
      text: kept.reason.message,
      actions: [{ label: 'Edit here', run: now.takeOver }, ...(kept.unsaved ? [download] : [])],
    })
  }
  for (const { message } of now.problems) {
    notices.push({
      key: message,
      tone: 'warning',
      text: message,
      actions: [],
      dismiss: () => now.dismiss('problems'),
    })
  }
  if (now.newVersion) {
    notices.push({
      key: 'new version',
      tone: 'plain',
      text: 'A new version of Tarebook is ready.',
      actions: [{ label: 'Reload', run: now.newVersion }],
    })
  }
  if (now.deleted) {
    notices.push({
      key: 'deleted',
      tone: 'plain',
      text: `Deleted ${now.deleted}.`,
      actions: [{ label: 'Undo', run: now.undo }],
      dismiss: () => now.dismiss('deleted'),
    })
  }
  return notices
}
