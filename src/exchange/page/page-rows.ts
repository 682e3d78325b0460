import { withSigns } from './entities.js'
import { type Piece, Tags } from './tags.js'

/** What a page says. */
export interface PageRead {
  readonly text: string // its words in rows: headings marked with `#`, items with `-` or their number, cells parted by tabs
  readonly data: readonly string[] // what it says of itself in JSON-LD, as it stands
}

// What is none of a page's words, or leads elsewhere.
const passedOver = new Set(
  'head nav footer svg math template iframe object noscript canvas audio video button select datalist dialog'.split(
    ' ',
  ),
)
const blocks = new Set(
  'address article aside blockquote body caption center dd details div dl dt fieldset figcaption figure form h1 h2 h3 h4 h5 h6 header hgroup hr html legend li main menu ol p pre search section summary table tbody tfoot thead tr ul'.split(
    ' ',
  ),
)
const heading = /^h[1-6]$/
const isHidden = (attributes: string): boolean => /\shidden(?=[\s=/]|$)/i.test(attributes)
const isData = (attributes: string): boolean => /\stype\s*=\s*["']?application\/ld\+json/i.test(attributes)

/** Writes the rows of a page, one after the other. */
class Rows {
  readonly rows: string[] = []
  #row = ''
  #mark = '' // what stands before the row's words
  #isStrong = true // all its words are

  add(text: string, isStrong: boolean): void {
    if (text.trim() !== '') this.#isStrong &&= isStrong
    this.#row += text
  }

  /** Ends a row, where words stand in it; else it is still to come, with its mark where that `stays`. */
  end(stays = false): void {
    const words = this.#row.replace(/[ \r\n\f\u00a0]+/g, ' ').replace(/^ +| +$| ?(\t) ?/g, '$1')
    if (words.trim() !== '') {
      const isHead = this.#isStrong && this.#mark === '' && !words.includes('\t')
      this.rows.push(isHead ? `**${words}**` : `${this.#mark}${words}`)
    } else if (stays) return
    this.#row = ''
    this.#mark = ''
    this.#isStrong = true
  }

  /** Begins a row with a mark, beneath an empty one where it is `apart`. */
  begin(mark: string, apart = false): void {
    this.end()
    if (apart && this.rows.length > 0 && this.rows.at(-1) !== '') this.rows.push('')
    this.#mark = mark
  }
}

/** A list that is open: the number of its last item; undefined where its items have none. */
interface List {
  number: number | undefined
}

class PageReader {
  readonly data: string[] = []
  readonly rows = new Rows()
  #passing: { readonly name: string; depth: number } | undefined
  readonly #lists: List[] = []
  #strong = 0
  #blocks = 0 // that are open
  #cells = 0
  #pre = 0

  constructor(readonly passes: boolean) {}

  take(piece: Piece): void {
    const { is, name, attributes, text } = piece
    if (is === 'raw') {
      if (name === 'script' && isData(attributes)) this.data.push(text)
      if (name === 'title' || !this.passes) return
    } else if (this.#passing) {
      if (name === this.#passing.name) this.#passing.depth += is === 'open' ? 1 : is === 'close' ? -1 : 0
      if (this.#passing.depth === 0) this.#passing = undefined
    } else if (is === 'text') this.#text(withSigns(text))
    else if (is === 'open') this.#open(name, attributes)
    else this.#close(name)
  }

  #text(text: string): void {
    const [first = '', ...others] =
      this.#blocks > 0 && this.#pre === 0 ? [text.replaceAll('\t', ' ')] : text.split(/\r\n?|\n/)
    this.rows.add(first, this.#strong > 0)
    for (const row of others) {
      this.rows.end()
      if (row.trim() === '' && this.rows.rows.at(-1)) this.rows.rows.push('')
      this.rows.add(row, this.#strong > 0)
    }
  }

  #open(name: string, attributes: string): void {
    if (
      this.passes &&
      !attributes.endsWith('/') &&
      (passedOver.has(name) || (blocks.has(name) && isHidden(attributes)))
    ) {
      this.rows.end()
      this.#passing = { name, depth: 1 }
    } else if (name === 'br') this.#break()
    else if (name === 'b' || name === 'strong') this.#strong++
    else if (name === 'td' || name === 'th') {
      if (this.#cells > 0) this.rows.add('\t', true)
      this.#cells++
    } else if (blocks.has(name)) {
      this.#blocks++
      if (name === 'pre') this.#pre++
      if (name === 'ol' || name === 'ul') this.#lists.push({ number: name === 'ol' ? 0 : undefined })
      if (name === 'tr') this.#cells = 0
      if (heading.test(name)) this.rows.begin(name === 'h1' ? '# ' : '## ', true)
      else if (name === 'li') this.rows.begin(this.#itemMark())
      else if (name === 'ol' || name === 'ul' || name === 'table') this.rows.begin('', this.#lists.length < 2)
      else this.#break(true)
    }
  }

  #itemMark(): string {
    const list = this.#lists.at(-1)
    return list?.number === undefined ? '- ' : `${++list.number}. `
  }

  #close(name: string): void {
    if (name === 'b' || name === 'strong') this.#strong = Math.max(0, this.#strong - 1)
    if (!blocks.has(name)) return
    this.#blocks = Math.max(0, this.#blocks - 1)
    if (name === 'tr') this.#cells = 0
    if (name === 'pre') this.#pre = Math.max(0, this.#pre - 1)
    if (name === 'ol' || name === 'ul') this.#lists.pop()
    this.#break()
  }

  /** A row is at its end, but within a cell of a table. */
  #break(stays = false): void {
    if (this.#cells > 0) this.rows.add(' ', true)
    else this.rows.end(stays)
  }
}

function read(html: string, passes: boolean): PageRead {
  const reader = new PageReader(passes)
  for (const piece of new Tags(html).pieces()) reader.take(piece)
  reader.rows.end()
  return { text: reader.rows.rows.join('\n'), data: reader.data }
}

/** Whether a text is of HTML, in whole or in part. */
export const isHtml = (text: string): boolean =>
  /<(?:(?:!doctype|html|body|article|section|main|div|p|ul|ol|li|h[1-6]|table|tr|td|dl|br|script)\b[^<>]{0,1000}|\/(?:b|strong|i|em|u|span|small|sup|sub|a))>/i.test(
    text,
  )

/**
 * The words of a page or of a part of one, in rows. What leads elsewhere (menus, the foot) is passed over, unless nothing
 * else is there. A page is what it says: nothing of it runs and nothing is fetched. Takes a time in step with its length.
 */
export function readPage(html: string): PageRead {
  const page = read(html, true)
  return page.text.trim() === '' && page.data.length === 0 ? read(html, false) : page
}
