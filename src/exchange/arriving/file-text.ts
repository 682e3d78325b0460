import { arrivingProblem } from './words.js'

/** The text of a file, with a remark when how it is encoded had to be guessed, or a refusal in a sentence. */
export type FileText = { readonly text: string; readonly remark?: string } | { readonly refusal: string }

/**
 * The text in a file's bytes: UTF-8, with or without a byte-order mark; UTF-16 with one; or else, when it
 * is not UTF-8, what office programs of western Europe and America write.
 */
export function textOf(bytes: Uint8Array): FileText {
  const starts = (...signature: number[]): boolean => signature.every((byte, at) => bytes[at] === byte)
  if (starts(0xff, 0xfe)) return { text: new TextDecoder('utf-16le').decode(bytes) }
  if (starts(0xfe, 0xff)) return { text: new TextDecoder('utf-16be').decode(bytes) }
  if (starts(0x50, 0x4b, 0x03, 0x04) || starts(0xd0, 0xcf, 0x11, 0xe0))
    return { refusal: arrivingProblem({ code: 'officeFile' }).message }
  if (bytes.includes(0)) return { refusal: arrivingProblem({ code: 'notATextFile' }).message }
  try {
    return { text: new TextDecoder('utf-8', { fatal: true }).decode(bytes) }
  } catch {
    return {
      text: new TextDecoder('windows-1252').decode(bytes),
      remark: arrivingProblem({ code: 'readAsWestern' }).message,
    }
  }
}
