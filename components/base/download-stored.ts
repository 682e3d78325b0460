import type { Workbook } from '../../src/dough/document/workbook.js'
import { downloadJson } from './download.js'

// What writes the files is fetched when one is wanted.

/** Hands all of a workbook to the browser's downloads, larder and days too. */
export async function downloadWorkbook(workbook: Workbook): Promise<void> {
  const { writeWorkbookFile } = await import('../../src/exchange/data/workbook-file.js')
  downloadJson(writeWorkbookFile(workbook), 'tarebook')
}

/** Hands parts of the storage to the browser's downloads, whatever is in them. */
export async function downloadParts(parts: ReadonlyMap<string, unknown>): Promise<void> {
  const { asJson } = await import('../../src/storage/record/as-json.js')
  downloadJson(asJson(parts), 'tarebook-damaged')
}
