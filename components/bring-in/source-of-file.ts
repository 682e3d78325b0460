import type { Source } from '../../src/exchange/arriving/arrival-source.js'
import { megabytes, refusalWords } from './words.js'

const mega = 1024 * 1024
const largest = 5 * mega // bytes; some 50,000 lines
const largestWorkbook = 64 * mega // with all its kept states

/** The bytes of a file, or in a sentence why it is not read: it is looked at before it is loaded. */
export async function sourceOfFile(
  file: File,
  language: string,
): Promise<Source | { readonly refusal: string }> {
  const size = () => megabytes((file.size / mega).toLocaleString(language, { maximumFractionDigits: 1 }))
  try {
    if (file.size > largest) {
      const start = await file.slice(0, 1000).text()
      if (!/^\s*\{/.test(start)) return { refusal: refusalWords.tooLarge(file.name, size()) }
      if (file.size > largestWorkbook) return { refusal: refusalWords.workbookTooLarge(file.name, size()) }
    }
    return { bytes: new Uint8Array(await file.arrayBuffer()) }
  } catch {
    return { refusal: refusalWords.notOpened(file.name) }
  }
}

/** A pasted text, or in a sentence why it is not read. */
export const sourceOfText = (text: string): Source | { readonly refusal: string } =>
  text.length > largest ? { refusal: refusalWords.textTooLarge } : { text }
