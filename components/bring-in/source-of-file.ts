import type { Source } from '../../src/exchange/arriving/arrival-source.js'

const mega = 1024 * 1024
const largest = 5 * mega // bytes; some 50,000 lines
const largestWorkbook = 64 * mega // with all its kept states

/** The bytes of a file, or in a sentence why it is not read: it is looked at before it is loaded. */
export async function sourceOfFile(
  file: File,
  language: string,
): Promise<Source | { readonly refusal: string }> {
  const size = () => `${(file.size / mega).toLocaleString(language, { maximumFractionDigits: 1 })} MB`
  try {
    if (file.size > largest) {
      const start = await file.slice(0, 1000).text()
      if (!/^\s*\{/.test(start))
        return {
          refusal: `${file.name} is ${size()}. Tarebook reads files of up to 5 MB, some 50,000 lines. Nothing was read.`,
        }
      if (file.size > largestWorkbook)
        return {
          refusal: `${file.name} is ${size()}. A workbook file has at most 64 MB. Nothing was read.`,
        }
    }
    return { bytes: new Uint8Array(await file.arrayBuffer()) }
  } catch {
    return { refusal: `${file.name} could not be opened. It may have been moved; choose it again.` }
  }
}

/** A pasted text, or in a sentence why it is not read. */
export const sourceOfText = (text: string): Source | { readonly refusal: string } =>
  text.length > largest
    ? { refusal: 'That is more than 5 MB of text. Bring it in as several smaller ones. Nothing was read.' }
    : { text }
