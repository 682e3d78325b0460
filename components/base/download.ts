import type { Formula } from '../../src/dough/document/formula.js'

/** Hands a text to the browser's downloads as a file. */
export function downloadFile(text: string, type: string, name: string): void {
  const link = document.createElement('a')
  link.href = URL.createObjectURL(new Blob([text], { type: `${type};charset=utf-8` }))
  link.download = name
  link.click()
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000) // Safari reads the file after the click has returned
}

/** Hands formulas to the browser's downloads as one CSV file. */
export async function downloadFormulas(formulas: readonly Formula[]): Promise<void> {
  const { writeFormulas } = await import('../../src/exchange/index.js')
  downloadFile(writeFormulas(formulas), 'text/csv', 'tarebook.csv')
}
