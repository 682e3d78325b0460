import type { FormulasRead } from '../csv/row-reader.js'
import { isOwnHtml, readHtml } from './read-html.js'
import { isOwnMarkdown, readMarkdown } from './read-markdown.js'
import { isPlainText, readPlainText } from './read-plain-text.js'

const readers = [
  [isPlainText, readPlainText],
  [isOwnMarkdown, readMarkdown],
  [isOwnHtml, readHtml],
] as const

/** The reader of a text that Tarebook wrote for people: plain text, Markdown or HTML; undefined where it is none. */
export const ownTextReader = (text: string): ((text: string) => FormulasRead) | undefined =>
  readers.find(([isOwn]) => isOwn(text))?.[1]
