import { type Sentences, wording } from '../engine/index.js'

/** Whether a workbook is kept, and what of it could not be read. Formulas go by their names. */
export type StorageDiagnostic =
  // Why the workbook is not on disk, or not to be edited here.
  | { readonly code: 'storageRefused' | 'storageFull' | 'storedByNewerVersion' }
  | { readonly code: 'editedInAnotherTab' | 'takenOverUnsaved' }
  // What of what is stored could not be read.
  | { readonly code: 'shelfUnreadable' | 'formulaMissing' | 'dayMissing' | 'ingredientsUnreadable' }
  | { readonly code: 'formulaUnreadable' | 'dayUnreadable'; readonly name?: string }
  | { readonly code: 'asidesUnreadable'; readonly name: string }
  // What another tab changed meanwhile.
  | { readonly code: 'keptAsCopy'; readonly copy: string }

export const storageSentences: Sentences<StorageDiagnostic> = {
  storageRefused: 'This browser will not keep the workbook. Download it as CSV before closing this tab.',
  storageFull:
    'The browser’s storage is full and the latest changes are not saved. Download the workbook as CSV, then free some space.',
  storedByNewerVersion:
    'A newer version of Tarebook saved this workbook, and this one will not write over it. Reload the page to get the new version.',
  editedInAnotherTab: 'The workbook is open for editing in another tab. Take over to edit it here.',
  takenOverUnsaved:
    'Another tab has taken over before the latest changes here were saved. They are kept in this tab: take over to save them.',
  shelfUnreadable:
    'The order of the shelf, the name of the workbook and the larder could not be read. The formulas are here.',
  formulaMissing:
    'A formula of the shelf is missing from the browser’s storage. A copy you downloaded can be opened.',
  ingredientsUnreadable: 'Some ingredients of the larder could not be read. They are kept.',
  formulaUnreadable: ({ name }) =>
    `${name === undefined ? 'A formula' : `The formula “${name}”`} could not be read. What is stored of it is kept.`,
  dayMissing: 'A day is missing from the browser’s storage. A copy you downloaded can be opened.',
  dayUnreadable: ({ name }) =>
    `${name === undefined ? 'A day' : `The day “${name}”`} could not be read. What is stored of it is kept.`,
  asidesUnreadable: ({ name }) =>
    `A jotting or a kept state of ${name} could not be read. It stays stored with the formula.`,
  keptAsCopy: ({ copy }) => `What you had changed here is kept as “${copy}”.`,
}

/** A diagnostic of the storage with its sentence. */
export const storageProblem = wording(storageSentences)

/** The name of what was changed here as well, beside what another tab made of it. */
export const fromAnotherTab = (name: string): string => `${name} (from another tab)`

/** What a workbook that comes from elsewhere is called when it is told. */
export const loadLabels = {
  open: 'Open workbook',
  /** `copies`: what was kept of the changes here, a sentence each. */
  changedElsewhere: (copies: readonly string[]) =>
    ['The workbook was changed in another tab.', ...copies].join(' '),
} as const

/** For the console of those who look into a fault. */
export const storageFault = 'Tarebook could not read or write its storage.'
