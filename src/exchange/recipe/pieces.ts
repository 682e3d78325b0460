import type { Token } from '../../dough/amounts/text-tokens.js'
import type { Larder } from '../../dough/document/larder.js'
import type { Found } from './found.js'
import { isOneOf, noteStarts, stateWords } from './kitchen-words.js'
import { bare, isState, nameOf } from './name.js'
import type { RowQuantity } from './portions.js'
import type { LineReason } from './reasons.js'
import { type Row, textOf } from './row.js'
import { isAmount, type Piece, readSegment } from './segment.js'

const joins = new Set(['and', 'et', '+', '&', 'with', 'avec', 'plus', 'puis', 'then'])

interface Chunk {
  readonly from: number
  readonly to: number
  readonly quantities: RowQuantity[] // outside parentheses
  readonly all: RowQuantity[]
}

/** Between commas and semicolons, and between `and` and an amount. */
function chunksOf(row: Row, from: number, to: number): Chunk[] {
  const { tokens, depths, quantities, starting } = row
  const chunks: Chunk[] = []
  let at = from
  let next = quantities.findIndex(q => q.from >= from)
  if (next < 0) next = quantities.length
  const close = (end: number) => {
    const all: RowQuantity[] = []
    while (next < quantities.length && quantities[next]!.from < end) all.push(quantities[next++]!)
    if (end > at) chunks.push({ from: at, to: end, quantities: all.filter(q => depths[q.from] === 0), all })
  }
  let inside = 0 // the token after the amount that we are in
  for (let i = from; i < to; i++) {
    const token = tokens[i]!
    inside = starting.get(i)?.to ?? inside
    if (i < inside || depths[i]! > 0) continue
    const ofStuff = beforeStuff.has(token.key) && i > at && isDone(tokens[i - 1]!)
    const joinsAmounts = joins.has(token.key) && !ofStuff && i > at && starting.has(i + 1)
    // `salt 10 g / yeast 5 g`
    const slash =
      token.text === '/' &&
      token.gap &&
      i === inside &&
      tokens[i + 1]?.kind === 'word' &&
      !starting.has(i + 1)
    if (
      slash ||
      token.text === ',' ||
      token.text === ';' ||
      joinsAmounts ||
      (token.wide && token.text === '+')
    ) {
      close(i)
      at = i + 1
    }
  }
  close(to)
  return chunks
}

/** The stretches of a row that speak of one ingredient each. */
export function piecesOf(row: Row, larder: Larder, start = 0, end = row.tokens.length): Piece[] {
  const pieces: {
    from: number
    to: number
    quantities: RowQuantity[]
    complete: boolean
    amount: boolean
  }[] = []
  for (const chunk of chunksOf(row, start, end)) {
    const before = pieces.at(-1)
    const amounts = chunk.quantities.filter(q => isAmount(row, q, chunk.from, chunk.to))
    const amount = amounts.length > 0
    const name = namedBeside(row, chunk, amounts[0])
    const startsNew =
      before?.complete &&
      (amount
        ? name.length > 0 && !isState(name) && !isRemark(row, chunk)
        : isIngredient(name, larder, row, chunk))
    if (!before || startsNew) {
      pieces.push({
        from: chunk.from,
        to: chunk.to,
        quantities: [...chunk.all],
        complete: amount && name.length > 0,
        amount,
      })
      continue
    }
    before.to = chunk.to
    before.quantities.push(...chunk.all)
    before.amount ||= amount
    before.complete ||= before.amount
  }
  return pieces
}

/** The words beside an amount that could name something. */
function namedBeside(row: Row, chunk: Chunk, amount: RowQuantity | undefined) {
  const { tokens, depths } = row
  const from = amount && bare(tokens.slice(chunk.from, amount.from)).length === 0 ? amount.to : chunk.from
  const to = amount && from === chunk.from ? amount.from : chunk.to
  return bare(
    tokens.slice(from, Math.min(to, from + 60)).filter((t, i) => depths[from + i] === 0 && t.kind === 'word'),
  )
}

/** `soaked in 50 ml rum`, `trempés dans 5 cl de rhum`. */
const beforeStuff = new Set('in with into over dans avec de a'.split(' '))

/** Does a word say what is done to an ingredient? */
const isDone = (token: Token): boolean =>
  isOneOf(stateWords, token) || /\p{L}{3}(?:(?<!se)ed|ée?s?)$/u.test(token.low)

/** `plus 50 g for dusting`: more of the same. */
const isRemark = (row: Row, chunk: Chunk): boolean => {
  const first = chunk.quantities[0]!
  const after = row.tokens[first.to]
  const opens = row.tokens[chunk.from]
  const soakedIn =
    opens !== undefined && isDone(opens) && beforeStuff.has(row.tokens[chunk.from + 1]?.key ?? '')
  return (
    soakedIn ||
    (after !== undefined && noteStarts.has(after.key) && first.to < chunk.to) ||
    (opens !== undefined &&
      noteStarts.has(opens.key) &&
      opens.key !== 'plus' &&
      opens.key !== 'avec' &&
      opens.key !== 'with')
  )
}

const isIngredient = (name: ReturnType<typeof bare>, larder: Larder, row: Row, chunk: Chunk): boolean =>
  chunk.to - chunk.from <= 6 &&
  name.length > 0 &&
  !noteStarts.has(row.tokens[chunk.from]!.key) &&
  !isState(name) &&
  nameOf(name, larder).known

/** The ingredients of a row that is a list of them. */
export function foundIn(row: Row, larder: Larder, from = 0): Found[] {
  const found: Found[] = []
  let lost = ''
  for (const piece of piecesOf(row, larder, from)) {
    const line = readSegment(row, piece, larder)
    const before = found.at(-1)
    if (line)
      found.push(
        lost ? { ...line, guesses: [...line.guesses, { code: 'not understood', text: lost }] } : line,
      )
    else if (before) {
      const guesses: LineReason[] = [
        ...before.guesses,
        { code: 'not understood', text: textOf(row, piece.from, piece.to) },
      ]
      found[found.length - 1] = { ...before, guesses }
      continue
    }
    lost = line ? '' : textOf(row, piece.from, piece.to)
  }
  return found
}
