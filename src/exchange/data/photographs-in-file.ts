import { type Photograph, photographIn } from '../../day/bench/photograph.js'

/** A photograph with its picture. */
export interface WithPicture {
  readonly photograph: Photograph
  readonly picture: Blob // JPEG
}

/** What is read of a workbook file that has photographs. */
export interface PhotographsInFile {
  readonly workbook: Blob // the file without them
  /** Each by itself, in slices of the file; what cannot be read is left out. */
  read(): AsyncGenerator<WithPicture>
}

const begins = ',\n "photographs": [\n' // within a JSON text a line can end so nowhere else
const ends = '\n ]\n}\n'
const slice = 1 << 20 // bytes
const longestLine = 4e6 // characters: a picture of 400 kB is some 540,000
const bytesAtOnce = 24_573 // of three, so that pieces in base 64 can be put together

const inBase64 = async (picture: Blob): Promise<string> => {
  const bytes = new Uint8Array(await picture.arrayBuffer())
  let text = ''
  for (let at = 0; at < bytes.length; at += bytesAtOnce)
    text += btoa(String.fromCharCode(...bytes.subarray(at, at + bytesAtOnce)))
  return text
}

/**
 * A workbook file with photographs, put together from parts so that no more than one of them is in memory at a time. `file` is the
 * text of the workbook file. Undefined where there is none to put in.
 */
export async function withPhotographs(
  file: string,
  photographs: AsyncIterable<WithPicture>,
): Promise<Blob | undefined> {
  const parts: Blob[] = []
  for await (const { photograph, picture } of photographs) {
    const line = JSON.stringify({ ...photograph, jpeg: await inBase64(picture) })
    parts.push(new Blob([parts.length ? `,\n${line}` : line])) // which a browser may keep on its disk
  }
  if (parts.length === 0) return undefined
  return new Blob([file.replace(/\n\}\n?$/, ''), begins, ...parts, ends], { type: 'application/json' })
}

/** The photographs of a workbook file; undefined where it has none. */
export async function photographsIn(file: Blob): Promise<PhotographsInFile | undefined> {
  const at = await placeOf(file, new TextEncoder().encode(begins))
  if (at === undefined) return undefined
  return {
    workbook: new Blob([file.slice(0, at), '\n}\n']),
    read: () => readFrom(file.slice(at + begins.length)),
  }
}

/** Where bytes first come in a file. */
async function placeOf(file: Blob, wanted: Uint8Array): Promise<number | undefined> {
  for (let from = 0; from < file.size; from += slice) {
    const bytes = new Uint8Array(await file.slice(from, from + slice + wanted.length - 1).arrayBuffer())
    for (let at = bytes.indexOf(wanted[0]!); at >= 0; at = bytes.indexOf(wanted[0]!, at + 1))
      if (wanted.every((byte, i) => bytes[at + i] === byte)) return from + at
  }
  return undefined
}

async function* readFrom(rest: Blob): AsyncGenerator<WithPicture> {
  const decoder = new TextDecoder()
  let open = ''
  for (let from = 0; from < rest.size; from += slice) {
    open += decoder.decode(await rest.slice(from, from + slice).arrayBuffer(), { stream: true })
    const lines = open.split('\n')
    open = lines.pop()!
    if (open.length > longestLine) return
    for (const line of lines) {
      if (line.trim() === ']') return
      const one = readLine(line)
      if (one) yield one
    }
  }
}

function readLine(line: string): WithPicture | undefined {
  try {
    const value = JSON.parse(line.trim().replace(/,$/, ''))
    const photograph = photographIn(value)
    if (!photograph || typeof value.jpeg !== 'string') return undefined
    const bytes = Uint8Array.from(atob(value.jpeg), letter => letter.charCodeAt(0))
    if (bytes[0] !== 0xff || bytes[1] !== 0xd8) return undefined
    return { photograph, picture: new Blob([bytes], { type: 'image/jpeg' }) }
  } catch {
    return undefined
  }
}
