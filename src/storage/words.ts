import { type Sentences, wording } from '../engine/index.js'

/** Whether a workbook is kept. */
export type StorageDiagnostic =
  // Why the workbook is not on disk, or not to be edited here.
  | { readonly code: 'storageRefused' | 'storageFull' | 'storageUnread' | 'storedByNewerVersion' }
  | { readonly code: 'editedInAnotherTab' | 'takenOverUnsaved' }
  // What another tab changed meanwhile.
  | { readonly code: 'keptAsCopy'; readonly copy: string }

export const storageSentences: Sentences<StorageDiagnostic> = {
  storageRefused: 'This browser will not keep the workbook. Download it before closing this tab.',
  storageFull:
    'The browser’s storage is full and the latest changes are not saved. Download the workbook, then free some space.',
  storageUnread:
    'The workbook in this browser could not be read. It was not changed. Close other tabs of Tarebook and try again.',
  storedByNewerVersion:
    'A newer version of Tarebook saved this workbook, and this one will not write over it. Reload the page to get the new version.',
  editedInAnotherTab: 'The workbook is open for editing in another tab. Take over to edit it here.',
  takenOverUnsaved:
    'Another tab has taken over before the latest changes here were saved. They are kept in this tab: take over to save them.',
  keptAsCopy: ({ copy }) => `What you had changed here is kept as “${copy}”.`,
}

/** A diagnostic of the storage with its sentence. */
export const storageProblem = wording(storageSentences)

/** What a workbook that comes from elsewhere is called when it is told. */
export const loadLabels = {
  open: 'Open workbook',
  /** `copies`: what was kept of the changes here, a sentence each. */
  changedElsewhere: (copies: readonly string[]) =>
    ['The workbook was changed in another tab.', ...copies].join(' '),
} as const

/** For the console of those who look into a fault. */
export const storageFault = 'Tarebook could not read or write its storage.'
