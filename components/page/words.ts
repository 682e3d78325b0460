import { html, type TemplateResult } from 'lit'
import type { KeeperState } from '../../src/storage/index.js'

export const programName = 'Tarebook'
export const pageTitle = (formula: string): string => `${formula} · ${programName}`

export const headWords = {
  formulas: 'Formulas',
  shelf: 'Shelf',
  workbookName: 'Name of the workbook',
  nameIt: 'Name this workbook',
  ways: 'Larder, bring in, send out, help',
  larder: 'Larder',
  bringIn: 'Bring in',
  sendOut: 'Send out',
  help: 'Help',
} as const

/** Names of the buttons that go a step back or forth. */
export const stepWords = {
  undo: (edit: string | undefined): string => (edit ? `Undo: ${edit}` : 'Nothing to undo'),
  redo: (edit: string | undefined): string => (edit ? `Redo: ${edit}` : 'Nothing to redo'),
} as const

/** Whether the workbook is kept, beside its name; with the time where it was kept just now. */
export function keptWords(kept: KeeperState, time: (at: Date) => string): string {
  switch (kept.status) {
    case 'loading':
      return 'Opening…'
    case 'saved':
      return kept.at ? `Saved ${time(kept.at)}` : ''
    case 'waiting':
    case 'saving':
      return 'Saving…'
    case 'refused':
      return 'Not saved: the browser refused'
    case 'full':
      return 'Not saved: storage full'
    case 'read-only':
      return kept.unsaved ? 'Not saved: open in another tab' : 'Read only: open in another tab'
  }
}

export const skipToSheet = 'Go to the sheet'
export const placesName = 'Places'
export const placeWords = { shelf: 'Shelf', sheet: 'Sheet', tally: 'Tally', days: 'Days' } as const
/** Behind a count of remarks, for those who listen. */
export const remarksCounted = (count: number): string => (count === 1 ? ' remark' : ' remarks')

/** Said once a formula is deleted. */
export const deletedSentence = (formula: string): string => `Deleted ${formula}. Undo takes it back.`
export const dropHint = 'Drop the file to bring its formulas in.'

/** Of the first start. */
export const lesson =
  (): TemplateResult => html`An example. What is <b class="typed">bold and underlined</b> is typed: change it and the rest follows.
  <span class="own"><b>New formula</b> starts your own.</span>`
export const lessonLearnt = 'Got it'
export const openWorkbook = 'Open a workbook file'
