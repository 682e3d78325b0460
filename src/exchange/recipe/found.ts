import type { Larder } from '../../dough/document/larder.js'
import { type AmountRead, amountOf, asWritten, compared, multiplied } from './amount.js'
import type { StageHeading } from './headings.js'
import { larderName } from './larder-names.js'
import type { RowQuantity } from './portions.js'
import type { LineReason } from './reasons.js'

/** One ingredient found in a row. */
export interface Found {
  readonly ingredient: string
  readonly known: boolean // the larder has it
  readonly amount: string
  readonly share?: number | 'rest' | undefined // of an earlier stage, where no amount is said
  readonly note: string
  readonly guesses: readonly LineReason[]
  readonly said: readonly LineReason[] // what needs no confirming
  readonly source: string // exact text in the row
}

/** Ingredients of a row, and the stage that the row says they are of. */
export interface Part {
  readonly found: readonly Found[]
  readonly stage?: StageHeading
}

/** An amount of a segment, as it is written there. */
export interface Taken {
  readonly quantity: RowQuantity
  readonly typed: string
  readonly ofEach: boolean // of each of those that are counted
  readonly before: boolean // it stands before the parenthesis that says what one weighs: `2 (400 g) tins`
}

/** What the amounts of one ingredient come to. */
export interface Settled {
  readonly amount: AmountRead | undefined
  readonly share: number | 'rest' | undefined
  readonly guesses: readonly LineReason[]
  readonly said: readonly LineReason[]
  readonly notes: readonly string[]
}

/** The amount of highest rank, with what there is to say about the others. */
export function settle(all: readonly Taken[], name: string, larder: Larder): Settled {
  const reads = all.map(taken => ({ ...taken, read: amountOf(taken.quantity, taken.typed, name, larder) }))
  const best = [...reads].sort((a, b) => b.read.rank - a.read.rank)[0]
  if (!best) return { amount: undefined, share: undefined, guesses: [], said: [], notes: [] }
  const guesses: LineReason[] = [...best.read.reasons]
  const said: LineReason[] = []
  const measures: string[] = []
  const notes = best.read.note ? [best.read.note] : []
  const { share } = best.quantity
  const count = reads.find(r => r !== best && r.read.rank <= 2 && !r.quantity.upTo)
  const pieces = count?.quantity.terms[0].number.value ?? 1
  const isBare = count !== undefined && count.quantity.terms[0].unit === undefined
  if (count && pieces !== 1 && (best.ofEach || (isBare && count.before))) {
    const amount = multiplied(best.read, pieces)
    guesses.push({ code: 'of each', count: count.typed, one: best.typed, read: amount.text })
    return { amount, share, guesses, said, notes: [...notes, count.typed] }
  }
  for (const other of reads) {
    if (other === best || (other === count && isBare && pieces === 1) || other.quantity.share === 1) continue
    const { unit } = other.read
    if (unit === '' || unit === '%') {
      notes.push(other.typed)
      if (unit === '' && pieces !== 1)
        guesses.push({ code: 'of all together', count: other.typed, one: best.typed })
      continue
    }
    measures.push(other.typed)
    const comparison = compared(best.read, other.read, other.typed, name, larder)
    const among = comparison.agrees ? said : guesses
    among.push(comparison)
  }
  if (measures.length > 0) notes.push(asWritten(measures.join(', ')))
  return { amount: best.read, share, guesses, said, notes }
}

const longestKind = 30 // characters of a remark that can be of the name

/** A remark may say which of the larder's it is: `flour, strong white`, `beurre, doux`, `all-purpose or bread flour`. */
export function nearer(
  { ingredient, known }: { ingredient: string; known: boolean },
  notes: readonly string[],
  larder: Larder,
): { ingredient: string; known: boolean; remarks: readonly string[] } {
  const remarks = notes.flatMap(note => note.split(', '))
  for (const remark of remarks) {
    if (remark.length > longestKind) continue
    const either = !known && /^(?:or|ou|oder) /i.test(remark)
    const name = either
      ? larderName(larder, `${ingredient} ${remark.split(' ').at(-1)}`)
      : (larderName(larder, `${remark} ${ingredient}`) ?? larderName(larder, `${ingredient} ${remark}`))
    if (name)
      return { ingredient: name, known: true, remarks: either ? remarks : remarks.filter(r => r !== remark) }
  }
  return { ingredient, known, remarks }
}
