import { isBlank } from '../csv/row.js'
import { type DraftStage, Sums, type Told } from './draft.js'
import { Place } from './place.js'
import type { LineMaker } from './row-amounts.js'
import { labelOf, type Names, noteOf, quantitiesOf, type Row, textOf } from './row-features.js'
import type { Mapping, RowRead } from './types.js'
import { titleName, totalOf } from './vocabulary.js'
import { inWords, type Reason, type RowReason } from './words.js'

type Kind = 'line' | 'stage' | 'formula' | 'note'

/** What speaks for a kind: how much, why, and whether it is so. */
type Evidence = readonly [kind: Kind, score: number, why: RowReason, holds: boolean | undefined]

/** The kind for which most speaks, with the strongest reason for it. */
function weighed(evidence: readonly Evidence[]): { readonly kind: Kind; readonly why: RowReason } {
  const scores = { line: 0, stage: 0, formula: 0, note: 0 }
  for (const [kind, score, , holds] of evidence) if (holds) scores[kind] += score
  const likeliest = (Object.keys(scores) as Kind[]).reduce((a, b) => (scores[b] > scores[a] ? b : a))
  const ofIt = evidence.filter(([kind, , , holds]) => kind === likeliest && holds)
  return { kind: likeliest, why: ofIt.reduce((a, b) => (b[1] > a[1] ? b : a))[2] }
}

interface Neighbours {
  readonly next: Int32Array // for each row the place of the next that says something
  readonly isSpaced: boolean // blank rows stand between nearly all lines and so part nothing
  readonly lastHead: number // the place of the last stage that a row heads
}

function neighbours(rows: readonly Row[]): Neighbours {
  const next = new Int32Array(rows.length)
  let after = rows.length
  let [blanks, pairs, parted, lastHead] = [0, 0, 0, -1] // pairs of lines, and those with something blank between
  for (let at = rows.length - 1; at >= 0; at--) {
    next[at] = after
    const { is, label } = rows[at]!
    if (is === 'blank') {
      blanks++
      continue
    }
    const leads = rows[after]?.is === 'line'
    if (is === 'line' && leads) {
      pairs++
      if (after > at + 1) parted++
    }
    if (is === 'name' && leads && label.isStage) lastHead = Math.max(at, lastHead)
    after = at
  }
  return { next, isSpaced: blanks > 2 && parted * 2 > pairs, lastHead }
}

/** Is this row, `Levain 220 g`, the heading of the lines below it with what they add to? */
export function headsWithTotal(rows: readonly Row[], at: number): boolean {
  const { is, label } = rows[at]!
  if (!label.isStage || rows[at + 1]?.is !== 'line') return false
  if (is !== 'line' && !(is === 'total' && label.isFinal)) return false
  if (label.hasColon) return true
  const sums = Sums.ofBlock(rows, at + 1)
  return quantitiesOf(rows[at]!).some(quantity => sums.agreeWith(quantity))
}

/** Rows, one after the other with a look at their neighbours, into formulas. */
export class RowReader {
  readonly reads: (RowRead | undefined)[] = [] // by the place of the row; lines are filled in later
  readonly #neighbours: Neighbours
  readonly #place: Place
  readonly #overColumn: DraftStage | undefined // named by the heading of the ingredients
  #above: 'start' | 'blank' | 'stage' | 'formula' | 'total' | 'line' | 'note' = 'start'
  #blankSince = true // a blank row, or the top, since the last line
  #isSummary = false // below a heading of totals

  constructor(
    readonly rows: readonly Row[],
    readonly mapping: Mapping,
    readonly names: Names,
    readonly lines: LineMaker,
    readonly told: Told,
    heading: string, // over the column of ingredients, where it may name the first stage
  ) {
    this.#place = new Place(mapping, told)
    this.#neighbours = neighbours(rows)
    const { isStage, name } = labelOf(heading)
    if (!isStage || mapping.stages === 'column' || mapping.columns.includes('formula')) return
    this.#overColumn = this.#place.inFormula().stage(name)
    this.#place.stage = this.#overColumn
    this.#above = 'stage'
  }

  get formulas() {
    return this.#place.formulas
  }

  finish(): void {
    this.#place.finish(this.#overColumn)
  }

  row(at: number): void {
    const row = this.rows[at]!
    switch (row.is) {
      case 'not understood':
        return this.#lost(at, row.why!)
      case 'blank':
        return this.#blank(at)
      case 'headings':
        this.reads[at] = { row: row.row, became: 'headings', text: textOf(row) }
        return
      case 'fact':
        return this.#note(
          at,
          [row.name, ...row.amounts.map(({ cell }) => cell), row.note].filter(Boolean).join(' '),
        )
      case 'notes':
        return this.#note(at, row.note)
      case 'amounts':
        return this.#nameless(at)
      case 'name':
        return this.#name(at)
      case 'total':
        return this.#headsWithTotal(at) ? this.#heading(at) : this.#total(at)
      case 'line':
        return this.#headsWithTotal(at)
          ? this.#heading(at)
          : this.#isSummary
            ? this.#summed(at)
            : this.#line(at)
    }
  }

  #blank(at: number): void {
    this.reads[at] = { row: this.rows[at]!.row, became: 'blank' }
    if (this.#neighbours.isSpaced) return
    if (this.#above !== 'start') this.#above = 'blank'
    this.#blankSince = true
    this.#isSummary = false
  }

  #lost(at: number, why: Reason): void {
    const { row, cells } = this.rows[at]!
    this.reads[at] = { row, became: 'not understood', text: textOf({ cells }), why: inWords(why) }
    this.told.say(why, row)
  }

  #note(at: number, note: string, why?: Reason): void {
    const { row, cells } = this.rows[at]!
    if (note !== '') this.#place.inFormula().notes.push(note)
    this.reads[at] = {
      row,
      became: 'note',
      text: note || textOf({ cells }),
      ...(why ? { why: inWords(why) } : {}),
    }
    if (this.#above !== 'line') this.#above = 'note'
  }

  #line(at: number): void {
    const row = this.rows[at]!
    this.#place.follow(row)
    const stage = this.#stageFor(row, at)
    this.#place.stage = stage
    stage.add(this.lines.line(row))
    this.#above = 'line'
    this.#blankSince = false
  }

  /** The stage a line belongs to: that of its heading, or a new one after a blank row. */
  #stageFor({ row, name }: Row, at: number): DraftStage {
    const formula = this.#place.inFormula()
    const { stage } = this.#place
    const { stages } = this.mapping
    if (!stage) return formula.begin('', false)
    const isNewBlock = this.#blankSince && stage.lines.length > 0 && !this.#neighbours.isSpaced
    if (!isNewBlock || stages === 'none' || stages === 'column') return stage
    if (stages === 'blocks') return formula.begin('', false)
    const isAnother = stage.hasTotal || this.#blockRepeats(at, stage) || !stage.isNamed
    if (isAnother) this.told.sayOf({ code: 'another stage', row, name })
    else this.told.sayOf({ code: 'part of the stage', row, name, stage: stage.name })
    return isAnother ? formula.begin('', false) : stage
  }

  /** Does the block of lines from here name an ingredient that the stage has already? */
  #blockRepeats(at: number, stage: DraftStage): boolean {
    for (let i = at; this.rows[i]?.is === 'line'; i++) if (stage.has(this.rows[i]!.name)) return true
    return false
  }

  /** A row that names something and gives no amount. */
  #name(at: number): void {
    const row = this.rows[at]!
    if (row.name === '') return this.#namesPlace(at)
    const { kind, why } = weighed(this.#evidence(row, this.rows[this.#neighbours.next[at]!]))
    this.#isSummary = false
    if (kind === 'line') this.#line(at)
    else if (kind === 'note') this.#note(at, noteOf(row), { code: why })
    else if (kind === 'stage') this.#heading(at, why)
    else this.#title(at, why)
  }

  /** Only the columns of formula and stage say something. */
  #namesPlace(at: number): void {
    const row = this.rows[at]!
    this.#place.follow(row)
    const became = isBlank(row.stage) ? 'formula' : 'stage'
    const formula = this.#place.inFormula().name
    const stage = became === 'stage' ? { stage: this.#place.stage!.name } : {}
    this.reads[at] = { row: row.row, became, formula, ...stage }
    this.#above = became
  }

  #evidence({ name: said, label, stage }: Row, next: Row | undefined): Evidence[] {
    const { stages } = this.mapping
    const { formula } = this.#place
    const { isStage, isFinal, name } = label
    const above = this.#above
    const byRows = stages !== 'column' && stages !== 'none'
    const leads = next?.is === 'line' || next?.is === 'amounts'
    const isNamed = next?.is === 'name'
    const isKnown = this.names.isIngredient(name)
    // a few words right below a line are one more ingredient rather than a remark
    const isAmong = above === 'line' && !this.#blankSince && said.split(' ').length <= 4
    const isStart = above !== 'line' && above !== 'note'
    const isOther = !byRows || !isStage
    const before = formula?.find(name)
    const isTaken = isStage && !isFinal && before && before !== this.#place.stage && above === 'line'
    return [
      ['note', 20, 'sentence', label.isRemark],
      ['note', 1, 'nothing below', true],
      ['note', 4, 'below a heading', byRows && leads && above === 'stage'],
      ['line', 3, 'ingredient', isOther && isKnown],
      ['line', 3, 'among lines', isOther && isAmong && stages !== 'column'],
      ['line', 2, 'lines below', leads && (stages !== 'none' || (formula?.stages.length ?? 0) > 0)],
      ['line', 3, 'stage beside', stages === 'column' && !isBlank(stage)],
      ['line', 10, 'stage taken', byRows && leads && isTaken],
      ['stage', 7, 'stage name', byRows && isStage && (leads || isNamed)],
      ['stage', 7, 'colon', byRows && leads && label.hasColon],
      [
        'stage',
        6,
        'lines below',
        byRows && leads && !isKnown && above !== 'stage' && (isStart || stages === 'headings'),
      ],
      [
        'formula',
        4,
        'another name below',
        byRows && isNamed && !isKnown && !isStage && (isStart || next.label.isStage),
      ],
      ['formula', 4, 'first of lines', stages === 'none' && leads && !formula && !isKnown],
    ]
  }

  #title(at: number, why: RowReason): void {
    const { row, name: said, label, note } = this.rows[at]!
    const formula = this.#place.begin(titleName(said))
    formula.notes.push(...[label.remark, note].filter(Boolean))
    this.reads[at] = { row, became: 'formula', formula: formula.name, why: inWords({ code: why }) }
    this.#above = 'formula'
  }

  /** The heading of a stage, perhaps with its total beside it: `Levain 220 g` over the lines of the levain. */
  #heading(at: number, why: RowReason = 'total beside'): void {
    const row = this.rows[at]!
    const { name, remark } = row.label
    this.#place.head(row.row, name)
    const formula = this.#place.inFormula()
    for (const text of [remark, row.note]) if (text !== '') formula.notes.push(`${name}: ${text}`)
    this.reads[at] = {
      row: row.row,
      became: 'stage',
      formula: formula.name,
      stage: name,
      why: inWords({ code: why }),
    }
    this.#above = 'stage'
    this.#blankSince = false
    this.#isSummary = false
    this.#keepTotal(row, name, true)
  }

  #headsWithTotal(at: number): boolean {
    const { stages } = this.mapping
    if (stages !== 'headings' && stages !== 'blocks') return false
    if (this.#above === 'line' || this.#above === 'note' || this.#above === 'stage') return false
    return headsWithTotal(this.rows, at)
  }

  #total(at: number): void {
    const { name, formula: formulaCell, stage: stageCell, amounts } = this.rows[at]!
    if (!isBlank(formulaCell) && name !== formulaCell) this.#place.turnTo(formulaCell)
    const inCell = isBlank(stageCell) || name === stageCell ? undefined : labelOf(stageCell).name
    const stage = inCell === undefined ? undefined : this.#place.inFormula().find(inCell)
    this.#printed(at, stage ?? this.#place.stage, name)
    // a heading over totals, where the lines that they are of stand elsewhere
    const isElsewhere = (this.#place.stage?.lines.length ?? 0) > 0 || at < this.#neighbours.lastHead
    this.#isSummary = amounts.length === 0 && this.rows[at + 1]?.is === 'line' && isElsewhere
  }

  /** A row under a heading of totals: what all lines of its name add to. */
  #summed(at: number): void {
    this.#printed(at, this.#place.stage, `Total ${this.rows[at]!.name}`)
  }

  /** Amounts without a name: the total of the lines above, or nothing that can be known. */
  #nameless(at: number): void {
    const row = this.rows[at]!
    const { stage } = this.#place
    const isLast = this.rows[at + 1]?.is !== 'line'
    const agrees = quantitiesOf(row).some(quantity => stage?.sums.agreeWith(quantity))
    if (isLast && stage && stage.lines.length > 1 && agrees) this.#printed(at, stage, '')
    else this.#lost(at, { code: 'names nothing', row: row.row, text: textOf(row) })
  }

  /** Keeps a total below its lines, to be compared when all is read. */
  #printed(at: number, stage: DraftStage | undefined, label: string): void {
    const row = this.rows[at]!
    const formula = this.#place.inFormula().name
    const isRead = this.#keepTotal(row, label, false, stage)
    const why = isRead ? {} : { why: inWords({ code: 'total without a figure', row: row.row }) }
    this.reads[at] = { row: row.row, became: 'total', formula, text: textOf(row), ...why }
    if (stage) stage.hasTotal = true
    this.#above = 'total'
  }

  #keepTotal(row: Row, label: string, heads: boolean, stage = this.#place.stage): boolean {
    const quantities = quantitiesOf(row)
    if (quantities.length === 0) return false
    const of = (heads ? undefined : totalOf(label)) ?? { named: '' }
    this.#place.inFormula().totals.push({ row: row.row, label, of, stage, heads, quantities })
    return true
  }
}
