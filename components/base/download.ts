import type { Workbook } from '../../src/dough/document/workbook.js'

/** Hands a text to the browser's downloads as a file. */
export function downloadFile(text: string, type: string, name: string): void {
  const link = document.createElement('a')
  link.href = URL.createObjectURL(new Blob([text], { type: `${type};charset=utf-8` }))
  link.download = name
  link.click()
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000) // Safari reads the file after the click has returned
}

/** Hands all of a workbook to the browser's downloads, larder and days too. */
export async function downloadWorkbook(workbook: Workbook): Promise<void> {
  const { writeWorkbookFile } = await import('../../src/exchange/data/workbook-file.js')
  downloadFile(writeWorkbookFile(workbook), 'application/json', 'tarebook.json')
}

/** Hands parts of the storage to the browser's downloads, whatever is in them. */
export async function downloadParts(parts: ReadonlyMap<string, unknown>): Promise<void> {
  const { asJson } = await import('../../src/storage/record/as-json.js')
  downloadFile(asJson(parts), 'application/json', 'tarebook-damaged.json')
}
