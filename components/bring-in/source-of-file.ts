import type { Source } from '../../src/exchange/arriving/arrival-source.js'
import type { PhotographsInFile } from '../../src/exchange/data/photographs-in-file.js'
import { megabytes, refusalWords } from './words.js'

const mega = 1024 * 1024
const largest = 5 * mega // bytes; some 50,000 lines
const largestWorkbook = 64 * mega // with all its kept states

/** What a file holds: what is read at once, and photographs, which are read one after the other when they are wanted. */
export interface FileSource {
  readonly source: Source
  readonly photographs?: PhotographsInFile
}

/** The bytes of a file, or in a sentence why it is not read: it is looked at before it is loaded. */
export async function sourceOfFile(
  file: File,
  language: string,
): Promise<FileSource | { readonly refusal: string }> {
  const size = () => megabytes((file.size / mega).toLocaleString(language, { maximumFractionDigits: 1 }))
  try {
    const isJson = /^\s*\{/.test(await file.slice(0, 1000).text())
    if (file.size > largest && !isJson) return { refusal: refusalWords.tooLarge(file.name, size()) }
    const photographs = isJson ? await photographsOf(file) : undefined
    const read = photographs?.workbook ?? file
    if (read.size > largestWorkbook) return { refusal: refusalWords.workbookTooLarge(file.name, size()) }
    const source = { bytes: new Uint8Array(await read.arrayBuffer()) }
    return photographs ? { source, photographs } : { source }
  } catch {
    return { refusal: refusalWords.notOpened(file.name) }
  }
}

const photographsOf = async (file: File): Promise<PhotographsInFile | undefined> =>
  (await import('../../src/exchange/data/photographs-in-file.js')).photographsIn(file)

/** A pasted text, or in a sentence why it is not read. */
export const sourceOfText = (text: string): FileSource | { readonly refusal: string } =>
  text.length > largest ? { refusal: refusalWords.textTooLarge } : { source: { text } }
