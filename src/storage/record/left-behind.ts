import { isFields } from '../../dough/data/fields.js'
import { sameData } from '../../dough/document/same-data.js'
import { headKey, type Stored, unsavedKey } from './record.js'
import { type TypedText, typedIn, typedKey } from './typed-texts.js'

/** What a page that goes away has not saved. */
export interface Left {
  readonly puts: ReadonlyMap<string, unknown> // by key, as they are put into the database too
  readonly stored: Stored
  readonly underWay: readonly Stored[] // saves that may yet be stored
  readonly typed: readonly TypedText[] // as it was last written
}

/**
 * As a text for the browser's small storage: WebKit drops what a page that is loaded anew asks of its database as it goes
 * (WebKitGTK 2.50: none of six such writes were kept), and keeps this. Chromium and Firefox keep both.
 */
export const leftText = ({ puts, stored, underWay, typed }: Left): string =>
  JSON.stringify({ marks: [stored, ...underWay].map(markOf), typed, puts: [...puts] })

/** `null` where nothing is stored. */
const markOf = ({ head }: Stored): string | null => head?.mark ?? null

/** What is stored, with what was left in such a text, if nothing was saved after that. */
export function withLeft(parts: ReadonlyMap<string, unknown>, text: string): ReadonlyMap<string, unknown> {
  const left = inJson(text)
  const head = parts.get(headKey)
  const mark = isFields(head) ? head.mark : null
  if (!isFields(left) || !Array.isArray(left.marks) || !left.marks.includes(mark)) return parts
  const now = new Map(parts)
  for (const put of Array.isArray(left.puts) ? left.puts : []) {
    if (!Array.isArray(put)) continue
    const [key, part] = put
    const isWanted =
      key === typedKey
        ? sameData(typedIn(parts.get(typedKey)), left.typed)
        : isUnsavedKey(key) && !now.has(key)
    if (isWanted) now.set(key, part)
  }
  return now
}

const isUnsavedKey = (key: unknown): boolean => typeof key === 'string' && key.startsWith(unsavedKey(''))

function inJson(text: string): unknown {
  try {
    return JSON.parse(text)
  } catch {
    return undefined
  }
}
