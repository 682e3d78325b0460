import type { Workbook } from '../../src/dough/document/workbook.js'
import { askEdit } from './events.js'

/** The database of the workbook that the page shows. */
export const databaseOfPage = (): string => document.querySelector('tb-app')?.database || 'tarebook'

/** The workbook as it stands, asked for as an edit that changes nothing; undefined where no page has one. */
export function workbookOf(from: EventTarget): Workbook | undefined {
  let found: Workbook | undefined
  askEdit(from, workbook => {
    found = workbook
    return undefined
  })
  return found
}
