import type { Decimal, Token } from './lexer.js'
import { joiningWords } from './lexer.js'
import { ExpressionError } from './problem.js'
import { refuse, refuseSymbol } from './refusal.js'
import { functionNames } from './tree.js'

/** How a text is to be read: see ParseOptions. */
export interface Reading {
  readonly decimal: Decimal
  readonly units: ReadonlyMap<string, string>
  readonly percentOf: string | null
}

/** A text with its names as n0, n1, …, its numbers as c0, c1, … and per cent as a postfix `'`. */
export interface Normalised {
  readonly key: string
  readonly names: readonly string[]
  readonly numbers: readonly number[]
  readonly written: readonly { readonly slot: number; readonly token: Token }[] // the names typed out
}

const deepest = 48
const mostArguments = 64
const operators = new Set(['+', '-', '*', '/', '^', '<', '<=', '>', '>=', '==', '!='])

interface Group {
  readonly open: Token | undefined
  readonly start: number // index of its first part
  readonly call: string
  arguments: number
  readonly tests: Token[] // `?` that still want their `:`
  chained: number // `?` in all, each a level deeper for the parser
}

/**
 * Checks that operands and operators alternate as they should and settles what the parser would read
 * otherwise or not at all: mixed numbers, units, per cent, names of any script. Throws ExpressionError.
 */
export function normalise(tokens: readonly Token[], reading: Reading): Normalised {
  return new Normaliser(tokens, reading).run()
}

class Normaliser {
  readonly #tokens: readonly Token[]
  readonly #reading: Reading
  readonly #parts: string[] = []
  readonly #names = new Map<string, number>()
  readonly #numbers: number[] = []
  readonly #written: { slot: number; token: Token }[] = []
  readonly #groups: Group[] = [group(undefined, 0, '')]
  #next = 0
  #start = 0 // index of the part with which the last operand starts
  #last: 'operator' | 'number' | 'name' | 'closed' | 'unit' | 'percent' = 'operator'

  constructor(tokens: readonly Token[], reading: Reading) {
    this.#tokens = tokens
    this.#reading = reading
  }

  run(): Normalised {
    if (this.#tokens.length === 0) throw new ExpressionError({ code: 'nothingWritten' }, 0, 0)
    while (this.#next < this.#tokens.length) {
      if (this.#last === 'operator') this.#operand(this.#tokens[this.#next]!)
      else this.#afterOperand(this.#tokens[this.#next]!)
    }
    const end = this.#tokens[this.#tokens.length - 1]!
    if (this.#last === 'operator') refuse({ code: 'missingAfter', token: end.text }, end)
    const { open } = this.#group
    if (open) refuse({ code: 'neverClosed' }, open)
    this.#needsNoColon()
    return {
      key: this.#parts.join(''),
      names: [...this.#names.keys()],
      numbers: this.#numbers,
      written: this.#written,
    }
  }

  get #group(): Group {
    return this.#groups[this.#groups.length - 1]!
  }

  #operand(token: Token): void {
    const following = this.#tokens[this.#next + 1]
    if (token.kind === 'number' || token.kind === 'fraction') {
      this.#number()
      return
    }
    this.#next++
    if (token.kind === 'word' && !joiningWords.has(token.text)) {
      if (following?.text === '(') this.#call(token, following)
      else this.#name(token)
    } else if (token.text === 'not') this.#parts.push(' not ')
    else if (token.text === '(') this.#open(group(token, this.#parts.length, ''), '(')
    else if (token.text === '-' || token.text === '+') this.#parts.push(token.text)
    else this.#missingBefore(token)
  }

  #name(token: Token): void {
    this.#start = this.#parts.length
    const slot = this.#slot(token.text, token)
    this.#written.push({ slot, token })
    this.#parts.push(`n${slot}`)
    this.#last = 'name'
  }

  #missingBefore(token: Token): never {
    if (token.text === '%') refuse({ code: 'percentWithoutNumber' }, token)
    const { call } = this.#group
    if (token.text === ')' && call && this.#tokens[this.#next - 2]?.text === '(') {
      refuse({ code: 'callOfNothing', call }, token)
    }
    const known = operators.has(token.text) || joiningWords.has(token.text) || '),;:?'.includes(token.text)
    if (!known) refuseSymbol(token)
    refuse({ code: 'missingBefore', token: token.text }, token)
  }

  #call(name: Token, open: Token): void {
    if (!functionNames.has(name.text)) {
      refuse({ code: 'unknownFunction', name: name.text, known: [...functionNames.keys()] }, name)
    }
    this.#next++
    this.#open(group(open, this.#parts.length, name.text), `${name.text}(`)
  }

  #open(opened: Group, part: string): void {
    this.#groups.push(opened)
    this.#parts.push(part)
    this.#checkDepth(opened.open!)
  }

  #checkDepth(token: Token): void {
    const depth = this.#groups.reduce((sum, g) => sum + 1 + g.chained, -1)
    if (depth > deepest) refuse({ code: 'tooDeep', most: deepest }, token)
  }

  /** A number with what belongs to it: 2, 2 1/2, 2½, and 1/2 before a unit or per cent. */
  #number(): void {
    const [tokens, next] = [this.#tokens, this.#next]
    const first = tokens[next]!
    const second = tokens[next + 1]
    const third = tokens[next + 2]
    const fourth = tokens[next + 3]
    let { value } = first
    let used = 1
    if (first.whole && second?.kind === 'fraction') {
      value += second.value
      used = 2
    } else if (first.whole && second?.whole && third?.text === '/' && fourth?.whole) {
      value += share(second, fourth)
      used = 4
    } else if (first.whole && second?.text === '/' && third?.whole && this.#measureAt(this.#next + 3)) {
      value = share(first, third)
      used = 3
    }
    this.#next += used
    this.#start = this.#parts.length
    this.#parts.push(`c${this.#numbers.push(value) - 1}`)
    this.#last = 'number'
  }

  #measureAt(at: number): boolean {
    return this.#tokens[at]?.text === '%' || this.#unitAt(at) !== undefined
  }

  /** The unit that starts here, of two words or one, and how many tokens write it. */
  #unitAt(at: number): { unit: string; used: number } | undefined {
    const tokens = this.#tokens
    const first = tokens[at]
    if (first?.kind !== 'word') return undefined
    const dot = tokens[at + 1]?.text === '.' ? 1 : 0
    const second = tokens[at + 1 + dot]
    const last = tokens[at + 2 + dot]?.text === '.' ? 1 : 0
    const both = second?.kind === 'word' && this.#reading.units.get(`${first.text} ${second.text}`)
    if (both) return { unit: both, used: 2 + dot + last }
    const one = this.#reading.units.get(first.text) ?? this.#reading.units.get(first.text.replace('.', ' '))
    return one === undefined ? undefined : { unit: one, used: 1 + dot }
  }

  #afterOperand(token: Token): void {
    const group = this.#group
    if (token.text === 'and' || token.text === 'or') this.#operator(` ${token.text} `)
    else if (token.kind === 'word') {
      const unit = this.#last === 'number' || this.#last === 'closed' ? this.#unitAt(this.#next) : undefined
      if (!unit) this.#twoInARow(token)
      this.#wrap(`*n${this.#slot(`unit:${unit.unit}`, token)})`)
      this.#next += unit.used
      this.#last = 'unit'
    } else if (token.kind !== 'symbol' || token.text === '(') this.#twoInARow(token)
    else if (operators.has(token.text)) this.#operator(token.text)
    else if (token.text === '%') {
      if (this.#last === 'percent') refuse({ code: 'percentTwice' }, token)
      const { percentOf } = this.#reading
      if (percentOf === null) this.#parts.push("'")
      else this.#wrap(`'*n${this.#slot(percentOf, token)})`)
      this.#next++
      this.#last = 'percent'
    } else if (token.text === ')') {
      if (!group.open) refuse({ code: 'closesNothing' }, token)
      this.#needsNoColon()
      this.#checkArguments(token)
      this.#groups.pop()
      this.#parts.push(')')
      this.#start = group.start
      this.#next++
      this.#last = 'closed'
    } else if (token.text === '?') {
      group.tests.push(token)
      group.chained++
      this.#checkDepth(token)
      this.#operator('?(') // in parentheses, or the parser takes a second `:` for a range
    } else if (token.text === ':') {
      if (!group.tests.pop()) refuse({ code: 'colonWithoutTest' }, token)
      this.#operator('):')
    } else if (token.text === ',' || token.text === ';') this.#separator(token)
    else refuseSymbol(token)
  }

  #separator(token: Token): void {
    const group = this.#group
    const before = this.#tokens[this.#next - 1]
    const after = this.#tokens[this.#next + 1]
    if (!group.call) {
      const decimals = before?.whole && after?.kind === 'number' && token.at + 1 === after.at
      if (token.text === ',' && decimals) {
        refuse({ code: 'pointWanted', number: `${before.text}.${after.text}` }, token)
      }
      refuse({ code: 'separatesInCalls', separator: token.text }, token)
    }
    if (token.text === ',' && this.#reading.decimal === ',') {
      refuse({ code: 'commaIsDecimal' }, token)
    }
    this.#needsNoColon()
    group.arguments++
    this.#checkArguments(token)
    this.#operator(',')
  }

  #checkArguments(token: Token): void {
    const { call } = this.#group
    const most = Math.min(functionNames.get(call) ?? 1, mostArguments)
    if (this.#group.arguments > most) {
      refuse({ code: 'tooManyArguments', call, most }, token)
    }
  }

  #operator(part: string): void {
    this.#parts.push(part)
    this.#next++
    this.#last = 'operator'
  }

  #needsNoColon(): void {
    const test = this.#group.tests[0]
    if (test) refuse({ code: 'testWithoutColon' }, test)
  }

  #twoInARow(token: Token): never {
    const before = this.#tokens[this.#next - 1]!
    const name = token.kind === 'word'
    if (this.#last === 'percent') {
      const product = name && `${(this.#numbers.at(-1) ?? 0) / 100}*${token.text}`
      refuse({ code: 'percentNotRemainder', ...(product ? { product } : {}) }, token)
    }
    if (this.#last === 'number' && name) {
      const units = [...new Set(this.#reading.units.values())]
      refuse({ code: 'notAUnit', number: before.text, word: token.text, units }, token)
    }
    if (this.#last === 'number' && token.kind === 'number' && /^\d{3}$/.test(token.text)) {
      refuse({ code: 'spaceInNumber', first: before.text, second: token.text }, token)
    }
    refuse({ code: 'operatorMissing', first: before.text, second: token.text }, token)
  }

  #wrap(end: string): void {
    this.#parts[this.#start] = `(${this.#parts[this.#start]}`
    this.#parts.push(end)
  }

  #slot(name: string, token: Token): number {
    if (name.split('.').length > 2) refuse({ code: 'twoPoints', name }, token)
    const known = this.#names.get(name)
    if (known !== undefined) return known
    this.#names.set(name, this.#names.size)
    return this.#names.size - 1
  }
}

const group = (open: Token | undefined, start: number, call: string): Group => ({
  open,
  start,
  call,
  arguments: 1,
  tests: [],
  chained: 0,
})

function share(over: Token, under: Token): number {
  if (under.value === 0) refuse({ code: 'dividesByZero', over: over.text, under: under.text }, under)
  return over.value / under.value
}
