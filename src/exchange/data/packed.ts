import type { Worded } from '../../engine/index.js'
import { type DataDiagnostic, dataProblem } from './words.js'

/** Why bytes could not be packed or unpacked. */
export interface NotPacked {
  readonly problem: Worded<DataDiagnostic>
}

export const notPacked = (diagnostic: DataDiagnostic): NotPacked => ({ problem: dataProblem(diagnostic) })

const hasStreams = (): boolean =>
  typeof CompressionStream !== 'undefined' && typeof DecompressionStream !== 'undefined'

type Piped = {
  readonly readable: ReadableStream<Uint8Array>
  readonly writable: WritableStream<BufferSource>
}

/** All that comes out when `bytes` go in; undefined as soon as it is more than `most`. Rejects where they are not understood. */
async function through(
  stream: Piped,
  bytes: Uint8Array<ArrayBuffer>,
  most: number,
): Promise<Uint8Array<ArrayBuffer> | undefined> {
  const writer = stream.writable.getWriter()
  // What goes wrong with writing goes wrong with reading as well, where it is looked at.
  const ignore = () => undefined
  writer.write(bytes).catch(ignore)
  writer.close().catch(ignore)
  const reader = stream.readable.getReader()
  const chunks: Uint8Array[] = []
  let length = 0
  for (;;) {
    const { done, value } = await reader.read()
    if (done) break
    length += value.byteLength
    if (length > most) {
      await reader.cancel().catch(ignore)
      return undefined
    }
    chunks.push(value)
  }
  const all = new Uint8Array(length)
  let at = 0
  for (const chunk of chunks) {
    all.set(chunk, at)
    at += chunk.byteLength
  }
  return all
}

/** The text compressed (deflate, without a header); undefined where the browser cannot. */
export async function pack(text: string): Promise<Uint8Array<ArrayBuffer> | undefined> {
  if (!hasStreams()) return undefined
  return through(new CompressionStream('deflate-raw') as Piped, new TextEncoder().encode(text), Infinity)
}

/** The text in compressed bytes; stops as soon as it is more than `most` bytes, whatever it would come to. */
export async function unpack(
  bytes: Uint8Array<ArrayBuffer>,
  most: number,
): Promise<{ readonly text: string } | NotPacked> {
  if (!hasStreams()) return notPacked({ code: 'browserWithoutStreams' })
  try {
    const all = await through(new DecompressionStream('deflate-raw') as Piped, bytes, most)
    if (!all) return notPacked({ code: 'linkUnpacksTooLarge' })
    return { text: new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(all) }
  } catch {
    return notPacked({ code: 'linkDamaged' })
  }
}

/** Bytes in letters, digits, `-` and `_` (RFC 4648, section 5), without padding. */
export function toBase64Url(bytes: Uint8Array): string {
  let binary = ''
  for (let at = 0; at < bytes.length; at += 8192)
    binary += String.fromCharCode(...bytes.subarray(at, at + 8192))
  return btoa(binary).replaceAll('+', '-').replaceAll('/', '_').replace(/=+$/, '')
}

/** The bytes back; undefined for a text that is not of that kind. */
export function fromBase64Url(text: string): Uint8Array<ArrayBuffer> | undefined {
  if (!/^[\w-]*$/.test(text) || text.length % 4 === 1) return undefined
  return Uint8Array.from(atob(text.replaceAll('-', '+').replaceAll('_', '/')), c => c.charCodeAt(0))
}
