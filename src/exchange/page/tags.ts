/** A piece of HTML: text between tags, a tag, or what stands in an element whose text is no HTML, a script. */
export interface Piece {
  readonly is: 'text' | 'open' | 'close' | 'raw'
  readonly name: string // of the element, in small letters; '' of text
  readonly attributes: string // as they are written
  readonly text: string // of text and raw
}

const rawElements = new Set(['script', 'style', 'textarea', 'title', 'xmp', 'noembed', 'noframes'])
const mostOpen = 20
const named = /(\/?)([a-z][a-z\d:-]*)/iy

/** Takes HTML apart from left to right, once; nothing of it runs, nothing is fetched. Never throws, whatever it is. */
export class Tags {
  readonly #ends = new Set<string>() // signs that do not come any more
  #open = 0 // tags whose quotation marks do not close

  constructor(readonly html: string) {}

  *pieces(): Generator<Piece> {
    const { html } = this
    const text = (from: number, to?: number): Piece => ({
      ...{ is: 'text', name: '', attributes: '' },
      text: html.slice(from, to),
    })
    let at = 0
    let open = html.indexOf('<')
    for (; open >= 0; open = html.indexOf('<', Math.max(at, open + 1))) {
      named.lastIndex = open + 1
      const [, slash, written] = named.exec(html) ?? []
      const from = named.lastIndex
      const end = written === undefined ? this.#remarkEnd(open) : this.#tagEnd(from)
      if (end === undefined) continue // a sign of less
      yield text(at, open)
      at = end
      if (written === undefined) continue
      const name = written.toLowerCase()
      const attributes = html.slice(from, end - 1)
      const closing = !slash && rawElements.has(name) ? this.#closing(name, end) : undefined
      if (slash) yield { is: 'close', name, attributes: '', text: '' }
      else if (closing === undefined) yield { is: 'open', name, attributes, text: '' }
      else {
        at = closing
        yield { is: 'raw', name, attributes, text: html.slice(end, at) }
      }
    }
    yield text(at)
  }

  /** Where an element is closed whose text is no HTML; undefined where it never is, so that nothing is lost in it. */
  #closing(name: string, from: number): number | undefined {
    if (this.#ends.has(name)) return undefined
    const closing = new RegExp(`</${name}`, 'gi')
    closing.lastIndex = from
    const at = closing.exec(this.html)?.index
    if (at === undefined) this.#ends.add(name)
    return at
  }

  /** Behind a remark, a declaration or an instruction; undefined where none begins. */
  #remarkEnd(open: number): number | undefined {
    if (this.html.startsWith('<!--', open)) return this.#after('-->', open + 4) ?? open + 4
    return /[!?/]/.test(this.html[open + 1] ?? '') ? this.#after('>', open) : undefined
  }

  /**
   * Behind the end of a tag, which is none within quotation marks. Where they never close, the first one is; a text in which
   * that happens often is looked through for none.
   */
  #tagEnd(from: number): number | undefined {
    const signs = /["'>]/g
    signs.lastIndex = from
    for (let sign = this.#open < mostOpen && signs.exec(this.html); sign; sign = signs.exec(this.html)) {
      if (sign[0] === '>') return signs.lastIndex
      signs.lastIndex = this.#after(sign[0], signs.lastIndex) ?? signs.lastIndex
    }
    this.#open++
    return this.#after('>', from)
  }

  #after(sign: string, from: number): number | undefined {
    if (this.#ends.has(sign)) return undefined
    const at = this.html.indexOf(sign, from)
    if (at >= 0) return at + sign.length
    this.#ends.add(sign)
    return undefined
  }
}
