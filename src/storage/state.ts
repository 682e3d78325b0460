/** Whether the workbook on the screen is on disk. `reason` is a sentence for the baker. */
export type KeeperState =
  | { readonly status: 'loading' }
  | { readonly status: 'saved'; readonly at?: Date } // `at` left out: nothing has been entered yet
  | { readonly status: 'waiting' | 'saving' }
  | { readonly status: 'refused' | 'full'; readonly reason: string } // the edits are in memory only
  | { readonly status: 'read-only'; readonly reason: string; readonly unsaved: boolean } // another tab writes

const sentences = {
  refused: 'This browser will not keep the workbook. Download it as CSV before closing this tab.',
  full: 'The browser’s storage is full and the latest changes are not saved. Download the workbook as CSV, then free some space.',
  newer:
    'A newer version of Tarebook saved this workbook, and this one will not write over it. Reload the page to get the new version.',
  readOnly: 'The workbook is open for editing in another tab. Take over to edit it here.',
  unsaved:
    'Another tab has taken over before the latest changes here were saved. They are kept in this tab: take over to save them.',
}

/** What a state follows from. */
export interface KeeperFacts {
  readonly loaded: boolean
  readonly newer: boolean // a newer version of Tarebook has written what is stored
  readonly role: 'writer' | 'leaving' | 'reader' // leaving: shown as read-only while the last edits are saved
  readonly dirty: boolean // the workbook on the screen is not the one on disk
  readonly saving: boolean
  readonly failure: 'refused' | 'full' | undefined
  readonly savedAt: string | undefined // ISO 8601
}

export function stateOf({ loaded, newer, role, dirty, saving, failure, savedAt }: KeeperFacts): KeeperState {
  if (!loaded) return { status: 'loading' }
  if (newer) return { status: 'refused', reason: sentences.newer }
  if (role !== 'writer') {
    const unsaved = role === 'reader' && dirty
    return { status: 'read-only', reason: unsaved ? sentences.unsaved : sentences.readOnly, unsaved }
  }
  // A failure stays in sight until a save has succeeded.
  if (failure) return { status: failure, reason: sentences[failure] }
  if (saving) return { status: 'saving' }
  if (dirty) return { status: 'waiting' }
  return savedAt ? { status: 'saved', at: new Date(savedAt) } : { status: 'saved' }
}
