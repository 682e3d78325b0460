import { stepName, stepWords } from '../../day/method/words.js'
import type { Step } from '../../dough/document/formula.js'
import { kindByName } from '../steps/actions.js'
import { cell, uncell } from './plain-cells.js'
import type { PrintedLine } from './printed.js'

/** How a language of pages writes a text, and what it reads back. */
export interface PageText {
  readonly write: (text: string) => string
  readonly read: (written: string) => string
}

const unseen = /[\p{Cc}\u2028\u2029]/gu
const spelled = (sign: string): string => `\\u${sign.charCodeAt(0).toString(16).padStart(4, '0')}`
/** A text between quotation marks, as in JSON: it comes back as it was, whatever it is. */
const quotedText = (text: string): string => JSON.stringify(text).replace(unseen, spelled)
const quoted = (text: string): string => {
  const held = cell(text)
  return held.startsWith('"') ? held.replace(unseen, spelled) : quotedText(text)
}

/** A text that is read back as it is: in words where it can be, else between quotation marks. Nothing stays nothing. */
export function pageCell(text: string, { write, read }: PageText): string {
  if (text === '') return ''
  const words = write(text)
  const isRead = !words.startsWith('"') && !/^(?:–|&quot;)/.test(words) && read(words) === text
  return isRead ? words : write(quoted(text))
}

/** A cell as plain text has it, on a page. */
export const heldCell = (held: string, { write }: PageText): string =>
  write(held.includes('"') ? held.replace(unseen, spelled) : held)

/** The text of such a cell, once the page's own signs are read. */
export const pageText = (read: string): string => uncell(read)

const kinds = new Set<string>(['hands', 'wait', 'bake'] satisfies Step['kind'][])
const withKind = /^(.*?) \[(hands|wait|bake)\](?:: (.*?))?(?: \((.*)\))?$/su
const bare = /^(.+?)(?:: (.*?))?(?: \((.*)\))?$/su
const inQuotes = /^("(?:[^"\\]|\\.)*") \[(\w+)\]: ("(?:[^"\\]|\\.)*") \(("(?:[^"\\]|\\.)*")\)$/su

/** A step without its id, as it stands in a text. */
export type Said = Omit<Step, 'id'>

/** The step of a line of a numbered list: `Bulk: 3.5–4.5 h, at 24 °C (grown by half)`, `Watch [wait]: 1 h`. */
export function stepOfWords(words: string): Said | undefined {
  const [, does, kind, text, note] = inQuotes.exec(words) ?? []
  if (does !== undefined && kinds.has(kind!))
    return { does: uncell(does), kind: kind as Step['kind'], text: uncell(text!), note: uncell(note!) }
  const said = withKind.exec(words)
  if (said) return { does: said[1]!, kind: said[2] as Step['kind'], text: said[3] ?? '', note: said[4] ?? '' }
  const [, name, time = '', remark = ''] = bare.exec(words) ?? []
  return name === undefined ? undefined : { does: name, kind: kindByName(name), text: time, note: remark }
}

export const isSameStep = (a: Said | undefined, b: Said): boolean =>
  a?.does === b.does && a.kind === b.kind && a.text === b.text && a.note === b.note

/** `"Watch" [wait]: "1 h" ("until domed")`: whatever its texts are, they come back as they were. */
export const stepInQuotes = ({ does, kind, text, note }: Said): string =>
  `${quoted(does)} [${kind}]: ${quoted(text)} (${quoted(note)})`

/** A step in a line of words that is read back as it is: plainly where it can be, with its kind, or all between quotation marks. */
export function stepOnPage(step: Said, { write, read }: PageText): string {
  const plain = stepWords(step)
  const name = stepName(step)
  const forms = [plain, `${name} [${step.kind}]${plain.slice(name.length)}`]
  return write(forms.find(words => isSameStep(stepOfWords(read(write(words))), step)) ?? stepInQuotes(step))
}

/** The cells of a stage's amounts as typed: nothing where the grams beside them say the same, `–` where there is none. */
export const typedCells = (
  lines: readonly PrintedLine[],
  grams: readonly (string | undefined)[],
  page: PageText,
): string[] =>
  lines.map(({ typed }, at) => {
    const shown = grams[at]
    if (typed === (shown === undefined ? '' : `${shown} g`)) return ''
    return typed === '' ? '–' : pageCell(typed, page)
  })
