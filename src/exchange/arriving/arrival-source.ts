import type { Ingredient, Larder } from '../../dough/document/larder.js'
import { Arrival, type Arrived, type Way } from './arriving.js'
import { textOf } from './file-text.js'
import type { RememberedColumns } from './remembered-columns.js'

/** A file's bytes, or a text that was pasted. */
export type Source = { readonly bytes: Uint8Array } | { readonly text: string }

/** What a reader off the main thread is told: first what arrives, then how to read it otherwise. */
export type ToReader =
  | {
      readonly source: Source
      readonly larder: readonly Ingredient[]
      readonly remembered: RememberedColumns
      readonly way: Way
    }
  | { readonly way: Way }

/** What it answers: how far it is, then what it came to, with a remark on the file's encoding. */
export type FromReader =
  | { readonly done: number; readonly of: number }
  | { readonly arrived: Arrived; readonly remark?: string }

/** What arrives from a file or by pasting, or why it is no text, in a sentence. */
export function arrivalFrom(
  source: Source,
  larder: Larder,
  remembered: RememberedColumns,
): { readonly arrival: Arrival; readonly remark?: string } | { readonly refusal: string } {
  if ('text' in source) return { arrival: new Arrival(source.text, larder, remembered) }
  const decoded = textOf(source.bytes)
  if ('refusal' in decoded) return decoded
  const arrival = new Arrival(decoded.text, larder, remembered)
  return decoded.remark === undefined ? { arrival } : { arrival, remark: decoded.remark }
}
