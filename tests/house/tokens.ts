/** A piece of TypeScript. */
export interface Token {
  readonly kind: 'word' | 'sign' | 'string' | 'pattern'
  readonly text: string // of a string what stands in it, each `${…}` of a template as `…`; otherwise as written
  readonly line: number // 1-based
}

const blank = /\s+|\/\/.*|\/\*[\s\S]*?\*\//y
const word = /[\p{L}\p{N}_$#][\p{L}\p{N}_$]*/uy
const quoted = /'(?:\\[\s\S]|[^'\\])*'|"(?:\\[\s\S]|[^"\\])*"/y
const pattern = /\/(?:\\.|\[(?:\\.|[^\]\\])*\]|[^/\\[\n])+\/[a-z]*/y
const sign = /===|!==|==|!=|=>|\?\.|\?\?|&&|\|\||\.\.\.|[\s\S]/uy
/** After these a slash begins a pattern; after any other word, a string or a closing bracket it divides. */
const beforePattern = new Set('return case typeof in of do else void throw new delete await yield'.split(' '))

/** The tokens of a TypeScript text without its comments; what stands within a template follows it, each in `${` and `}`. */
export function tokensOf(code: string): Token[] {
  const tokens: Token[] = []
  let at = 0
  let line = 1
  const take = (form: RegExp): string | undefined => {
    form.lastIndex = at
    const found = form.exec(code)?.[0]
    if (found === undefined) return undefined
    at += found.length
    line += found.split('\n').length - 1
    return found
  }
  const mayDivide = (last: Token | undefined): boolean =>
    last !== undefined &&
    (last.kind === 'word'
      ? !beforePattern.has(last.text)
      : last.kind !== 'sign' || /^[)\]}]$/.test(last.text))

  /** After the opening mark: to the closing one, with what stands between `${` and `}` as tokens. */
  const template = (): void => {
    const from = line
    const place = tokens.push({ kind: 'string', text: '', line }) - 1
    let text = ''
    while (at < code.length && code[at] !== '`') {
      if (code.startsWith('${', at)) {
        at += 2
        tokens.push({ kind: 'sign', text: '${', line })
        read('}')
        tokens.push({ kind: 'sign', text: '}', line })
        text += '…'
        continue
      }
      if (code[at] === '\\') text += code[at++]
      if (code[at] === '\n') line++
      text += code[at++]
    }
    at++
    tokens[place] = { kind: 'string', text, line: from }
  }

  /** To the end of the text, or past the bracket that closes what was open before. */
  const read = (until?: '}'): void => {
    let open = 0
    while (at < code.length) {
      if (take(blank) !== undefined) continue
      const from = line
      if (code[at] === '`') {
        at++
        template()
        continue
      }
      const text = take(quoted)
      if (text !== undefined) {
        tokens.push({ kind: 'string', text: text.slice(1, -1), line: from })
        continue
      }
      const name = take(word)
      if (name !== undefined) {
        tokens.push({ kind: 'word', text: name, line: from })
        continue
      }
      const searched = code[at] === '/' && !mayDivide(tokens.at(-1)) ? take(pattern) : undefined
      if (searched !== undefined) {
        tokens.push({ kind: 'pattern', text: searched, line: from })
        continue
      }
      const mark = take(sign)!
      if (mark === '{') open++
      if (mark === '}' && open-- === 0 && until) return
      tokens.push({ kind: 'sign', text: mark, line: from })
    }
  }
  read()
  return tokens
}
