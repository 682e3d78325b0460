import type { Worded } from '../engine/index.js'
import { WrittenByNewer } from './record/record.js'
import { type StorageDiagnostic, storageProblem } from './words.js'

/** Why the workbook is not on disk, or not to be edited here. */
export type KeptReason = Worded<StorageDiagnostic>

/** Whether the workbook on the screen is on disk. */
export type KeeperState =
  | { readonly status: 'loading' }
  | { readonly status: 'saved'; readonly at?: Date } // `at` left out: nothing has been entered yet
  | { readonly status: 'waiting' | 'saving' }
  | { readonly status: 'refused' | 'full'; readonly reason: KeptReason } // the edits are in memory only
  | { readonly status: 'read-only'; readonly reason: KeptReason; readonly unsaved: boolean } // another tab writes

/** What keeps a workbook from the disk, or the disk's from the page. */
export type Failure = 'refused' | 'full' | 'unread'

const codes = { refused: 'storageRefused', full: 'storageFull', unread: 'storageUnread' } as const

/** What an error of the storage comes to; `unread`: nothing could be read so far. */
export function failureOf(error: unknown, unread: boolean): Failure | 'newer' {
  const name = error instanceof Error ? error.name : ''
  if (error instanceof WrittenByNewer || name === 'VersionError') return 'newer'
  if (name === 'QuotaExceededError') return 'full'
  return unread && name !== 'SecurityError' ? 'unread' : 'refused'
}

/** What a state follows from. */
export interface KeeperFacts {
  readonly loaded: boolean
  readonly newer: boolean // a newer version of Tarebook has written what is stored
  readonly role: 'writer' | 'leaving' | 'reader' // leaving: shown as read-only while the last edits are saved
  readonly dirty: boolean // the workbook on the screen is not the one on disk
  readonly saving: boolean
  readonly failure: Failure | undefined
  readonly savedAt: string | undefined // ISO 8601
}

export function stateOf({ loaded, newer, role, dirty, saving, failure, savedAt }: KeeperFacts): KeeperState {
  if (!loaded) return { status: 'loading' }
  if (newer) return { status: 'refused', reason: storageProblem({ code: 'storedByNewerVersion' }) }
  if (role !== 'writer') {
    const unsaved = role === 'reader' && dirty
    const reason = storageProblem({ code: unsaved ? 'takenOverUnsaved' : 'editedInAnotherTab' })
    return { status: 'read-only', reason, unsaved }
  }
  // A failure stays in sight until a save has succeeded.
  if (failure) {
    const status = failure === 'full' ? failure : 'refused'
    return { status, reason: storageProblem({ code: codes[failure] }) }
  }
  if (saving) return { status: 'saving' }
  if (dirty) return { status: 'waiting' }
  return savedAt ? { status: 'saved', at: new Date(savedAt) } : { status: 'saved' }
}
