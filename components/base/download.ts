import type { Formula } from '../../src/dough/document/formula.js'

/** Hands formulas to the browser's downloads as one CSV file. */
export async function downloadFormulas(formulas: readonly Formula[]): Promise<void> {
  const { writeFormulas } = await import('../../src/exchange/index.js')
  const file = new Blob([writeFormulas(formulas)], { type: 'text/csv;charset=utf-8' })
  const link = document.createElement('a')
  link.href = URL.createObjectURL(file)
  link.download = 'tarebook.csv'
  link.click()
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000) // Safari reads the file after the click has returned
}
