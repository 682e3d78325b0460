/** Hands a text to the browser's downloads as a file. */
export function downloadFile(text: string, type: string, name: string): void {
  const link = document.createElement('a')
  link.href = URL.createObjectURL(new Blob([text], { type: `${type};charset=utf-8` }))
  link.download = name
  link.click()
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000) // Safari reads the file after the click has returned
}

/** Hands over one of the two files that are JSON: a workbook, or parts of the storage as they are. */
export const downloadJson = (text: string, name: 'tarebook' | 'tarebook-damaged'): void =>
  downloadFile(text, 'application/json', `${name}.json`)
