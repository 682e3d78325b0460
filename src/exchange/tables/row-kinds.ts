import { isBlank } from '../csv/row.js'
import type { Label } from '../values/labels.js'
import { isSumOf } from './draft.js'
import { type Names, quantitiesOf, type Row } from './row-features.js'
import type { StageMarks } from './types.js'
import { isSize } from './vocabulary.js'
import type { RowReason } from './words.js'

/** What a row is, among its neighbours. */
export interface RowKind {
  readonly kind:
    | Exclude<Row['is'], 'name' | 'amounts' | 'fact' | 'notes'>
    | 'stage' // heads one
    | 'formula' // names the bread
    | 'note'
    | 'place' // only the columns of formula and stage say something
    | 'nameless' // amounts alone: a total of the lines above, or nothing that can be known
    | 'summed' // a total below a heading of totals
  readonly why?: RowReason
  readonly isApart?: boolean // of a line: it stands behind a blank row, or is the first
}

/** What speaks for a kind: how much, why, and whether it is so. */
type Evidence = readonly [kind: RowKind['kind'], score: number, why: RowReason, holds: boolean]

/** The kind for which most speaks, with the strongest reason for it. */
function weighed(evidence: readonly Evidence[]): RowKind {
  const holding = evidence.filter(([, , , holds]) => holds).sort((a, b) => b[1] - a[1])
  const scoreOf = (kind: string) => holding.reduce((sum, [of, score]) => (of === kind ? sum + score : sum), 0)
  const [kind, , why] = holding.reduce((a, b) => (scoreOf(b[0]) > scoreOf(a[0]) ? b : a))
  return { kind, why }
}

/** After these something else may begin. */
const ends: readonly RowKind['kind'][] = ['place', 'formula', 'total', 'summed', 'nameless']

/** What the rows of a table are, one after the other with a look at their neighbours. */
export class RowKinds {
  readonly #isSpaced: boolean // blank rows stand between nearly all lines and so part nothing
  readonly #lastHead: number // the place of the last name of a stage over lines
  readonly #stages = new Set<string>() // headed so far in this formula
  #stage = '' // headed last
  #above: 'start' | 'end' | 'stage' | 'line' | 'note' = 'start'
  #hasLines = false // of this formula
  #blankSince = true // a blank row, or the top, since the last line
  #isSummary = false // below a heading of totals

  constructor(
    readonly rows: readonly Row[],
    readonly marks: StageMarks,
    readonly names: Names,
    over: Label | undefined, // of the heading over the ingredients, where it names the first stage
  ) {
    const isLine = (at: number) => rows[at]?.is === 'line'
    const parted = rows.filter(({ is }, at) => is === 'blank' && isLine(at - 1) && isLine(at + 1)).length
    this.#isSpaced = parted > 2 && parted * 2 > rows.filter((_, at) => isLine(at)).length
    this.#lastHead = rows.findLastIndex(
      ({ is, label }, at) => is === 'name' && label.isStage && isLine(this.#next(at)),
    )
    if (over) this.#head(over.name)
  }

  #head(stage: string): void {
    if (this.#stages.has(stage) && stage !== this.#stage) this.#stages.clear()
    this.#stage = stage
    this.#stages.add(stage)
    this.#above = 'stage'
  }

  /** Of the row at a place; to be asked in their order. */
  of(at: number): RowKind {
    const { label, amounts } = this.rows[at]!
    const found = this.#kind(at)
    const { kind } = found
    const isApart = kind === 'line' && this.#blankSince && !this.#isSpaced
    if (kind === 'blank' && !this.#isSpaced) {
      if (this.#above !== 'start') this.#above = 'end'
      this.#blankSince = true
    } else if (kind === 'note') this.#above = this.#above === 'line' ? 'line' : 'note'
    else if (kind === 'line') this.#above = 'line'
    else if (ends.includes(kind) && (kind !== 'nameless' || this.rows[at + 1]?.is !== 'line'))
      this.#above = 'end'
    if (kind === 'stage') this.#head(label.name)
    if (kind === 'formula') this.#stages.clear()
    if (kind === 'line' || kind === 'stage') this.#blankSince = false
    if (kind === 'line' || kind === 'formula') this.#hasLines = kind === 'line'
    // `Totals` over rows of totals, where the lines that they are of stand elsewhere
    if (kind !== 'summed')
      this.#isSummary =
        kind === 'total' &&
        amounts.length === 0 &&
        label.isOfTotals &&
        (this.#hasLines || at < this.#lastHead)
    return { ...found, isApart }
  }

  /** The place of the next row that says something, headings again passed over. */
  #next(at: number): number {
    let next = at + 1
    while (this.rows[next]?.is === 'blank' || this.rows[next]?.is === 'headings') next++
    return next
  }

  #kind(at: number): RowKind {
    const row = this.rows[at]!
    switch (row.is) {
      case 'name':
        return row.name === '' ? { kind: 'place' } : weighed(this.#evidence(row, this.rows[this.#next(at)]))
      case 'fact':
      case 'notes':
        return { kind: 'note' }
      case 'amounts':
        return { kind: this.#isOfSizes(row) ? 'headings' : 'nameless' }
      case 'total':
      case 'line':
        if (this.#headsWithTotal(at)) return { kind: 'stage', why: 'totalBeside' }
        return { kind: row.is === 'line' && this.#isSummary ? 'summed' : row.is }
      default:
        return { kind: row.is }
    }
  }

  /** Above all lines, `1 loaf | 6 loaves` under `g | g`: what the columns are for. */
  #isOfSizes({ amounts }: Row): boolean {
    const isOnTop = this.#above === 'start' && !this.#hasLines
    return isOnTop && amounts.every(({ cell, read }) => read.is === 'words' && isSize(cell))
  }

  /** Is it, as `Levain 220 g`, the heading of the lines below it with what they add to? Among lines only with a colon. */
  #headsWithTotal(at: number): boolean {
    if (this.marks !== 'headings' && this.marks !== 'blocks') return false
    const row = this.rows[at]!
    const { is, label } = row
    const isFree = this.#above === 'start' || this.#above === 'end'
    if (this.rows[at + 1]?.is !== 'line' || (!isFree && !label.hasColon) || !label.isStage) return false
    if (is === 'total' && !label.isFinal) return false
    if (isFree && label.hasColon) return true
    const after = this.rows.slice(at + 1, at + 500)
    const end = after.findIndex(line => line.is !== 'line')
    const below = (end < 0 ? after : after.slice(0, end)).map(quantitiesOf).map(quantities => ({
      weight: quantities.find(({ grams }) => grams !== undefined),
      percent: quantities.find(({ percent }) => percent !== undefined),
    }))
    return quantitiesOf(row).some(quantity => isSumOf(below, quantity))
  }

  /** What a row can be that names something and gives no amount. */
  #evidence({ name: said, label, stage }: Row, next: Row | undefined): Evidence[] {
    const byRows = this.marks !== 'column' && this.marks !== 'none'
    const above = this.#above
    const { isStage, name } = label
    const leads = next?.is === 'line' || next?.is === 'amounts'
    const isNamed = next?.is === 'name'
    const isKnown = this.names.isIngredient(name)
    // a few words right below a line are one more ingredient rather than a remark
    const isAmong = above === 'line' && !this.#blankSince && said.split(' ').length <= 4
    const isStart = above !== 'line' && above !== 'note'
    const isOther = !byRows || !isStage
    const isTaken = isStage && !label.isFinal && this.#stages.has(name) && this.#stage !== name
    const mayLead = isStart || this.marks === 'headings'
    const isBread = isNamed && !isStage && (isStart || next.label.isStage)
    const isColumn = this.marks === 'column'
    return [
      ['note', 20, 'sentence', label.isRemark],
      ['note', 1, 'nothingBelow', true],
      ['note', 4, 'belowAHeading', byRows && leads && above === 'stage'],
      ['line', 3, 'ingredient', isOther && isKnown],
      ['line', 3, 'amongLines', isOther && isAmong && !isColumn],
      ['line', 2, 'linesBelow', leads && (this.marks !== 'none' || this.#hasLines)],
      ['line', 3, 'stageBeside', isColumn && !isBlank(stage)],
      ['line', 10, 'stageTaken', byRows && leads && isTaken && above === 'line'],
      ['stage', 7, 'stageName', byRows && isStage && (leads || isNamed)],
      ['stage', 7, 'colon', byRows && leads && label.hasColon],
      ['stage', 6, 'linesBelow', byRows && leads && !isKnown && above !== 'stage' && mayLead],
      ['formula', 4, 'anotherNameBelow', byRows && !isKnown && isBread],
      ['formula', 4, 'firstOfLines', this.marks === 'none' && leads && above === 'start' && !isKnown],
    ]
  }
}
