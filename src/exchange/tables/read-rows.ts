import type { Larder } from '../../dough/document/larder.js'
import { isBlank, quoted } from '../csv/row.js'
import type { LineMaker } from './lines.js'
import { neighbours } from './neighbours.js'
import { Place } from './place.js'
import { noteOf, type Sorted, textOf } from './sort.js'
import { headsWithTotal, quantitiesOf, sumAgrees } from './sums.js'
import {
  type ForeignFormula,
  type ForeignLine,
  type ForeignStage,
  isIngredient,
  type Told,
} from './table-draft.js'
import type { Mapping, RowRead } from './types.js'
import { headingName, isFinalDough, isRemark, isStageName, titleName, totalOf } from './words.js'

/** Rows, one after the other with a look at their neighbours, into formulas. */
export class RowReader {
  readonly reads: (RowRead | undefined)[] = [] // by the place of the row; lines are filled in later
  readonly #next: Int32Array // the place of the next row that says something
  readonly #isSpaced: boolean
  readonly #place: Place
  #above: 'start' | 'blank' | 'stage' | 'formula' | 'total' | 'line' | 'note' = 'start'
  #blankSince = true // a blank row, or the top, since the last line

  constructor(
    readonly sorted: readonly Sorted[],
    readonly mapping: Mapping,
    readonly larder: Larder,
    readonly lines: LineMaker,
    readonly told: Told,
    heading: string, // over the column of ingredients, where it may name the first stage
  ) {
    this.#place = new Place(mapping, told, heading)
    if (this.#place.stage) this.#above = 'stage'
    const { next, isSpaced } = neighbours(sorted)
    this.#next = next
    this.#isSpaced = isSpaced
  }

  get formulas(): readonly ForeignFormula[] {
    return this.#place.formulas
  }

  finish(): void {
    this.#place.finish()
  }

  row(at: number): void {
    const row = this.sorted[at]!
    switch (row.is) {
      case 'not understood':
        this.#lost(at, row.why ?? '')
        return
      case 'blank':
        this.reads[at] = { row: row.row, became: 'blank' }
        if (!this.#isSpaced) {
          if (this.#above !== 'start') this.#above = 'blank'
          this.#blankSince = true
        }
        return
      case 'headings':
        this.reads[at] = { row: row.row, became: 'headings', text: textOf(row) }
        return
      case 'total':
        if (!this.#headsWithTotal(at)) this.#total(at)
        return
      case 'reading':
        this.#note(at, noteOf({ ...row, name: [row.name, ...row.amounts.map(({ cell }) => cell)].join(' ') }))
        return
      case 'notes':
        this.#note(at, row.note)
        return
      case 'amounts':
        this.#nameless(at)
        return
      case 'name':
        this.#name(at)
        return
      case 'line':
        if (!this.#headsWithTotal(at)) this.#line(at)
    }
  }

  #lost(at: number, why: string): void {
    const { row, cells } = this.sorted[at]!
    this.reads[at] = { row, became: 'not understood', text: textOf({ cells }), why }
    this.told.say('error', row, why)
  }

  #note(at: number, note: string, why?: string): void {
    const { row, cells } = this.sorted[at]!
    if (note !== '') this.#place.inFormula().notes.push(note)
    this.reads[at] = { row, became: 'note', text: note || textOf({ cells }), ...(why ? { why } : {}) }
    if (this.#above !== 'line') this.#above = 'note'
  }

  #lineIn(at: number, stage: ForeignStage): ForeignLine {
    const line = this.lines.line(this.sorted[at]!)
    stage.add(line)
    this.#above = 'line'
    this.#blankSince = false
    return line
  }

  #line(at: number): void {
    const row = this.sorted[at]!
    this.#place.follow(row)
    this.#lineIn(at, this.#stageFor(at))
  }

  /** The stage a line belongs to: that of its heading, or a new one after a blank row. */
  #stageFor(at: number): ForeignStage {
    const formula = this.#place.inFormula()
    const stage = this.#place.stage
    const { stages } = this.mapping
    if (!stage) {
      this.#place.stage = formula.begin('', false)
      return this.#place.stage
    }
    const isNewBlock = this.#blankSince && stage.lines.length > 0
    if (!isNewBlock || stages === 'none' || stages === 'column' || this.#isSpaced) return stage
    if (stages === 'blocks') {
      this.#place.stage = formula.begin('', false)
      return this.#place.stage
    }
    const { row, name } = this.sorted[at]!
    const isAnother = stage.hasTotal || this.#blockRepeats(at, stage) || !stage.isNamed
    if (isAnother) this.#place.stage = formula.begin('', false)
    this.told.say(
      isAnother ? 'warning' : 'remark',
      row,
      `Row ${row}, ${name}, follows a blank row without a heading: ${isAnother ? 'taken as the start of another stage' : `taken as part of ${stage.name}`}.`,
    )
    return this.#place.stage!
  }

  /** Does the block of lines from here name an ingredient that the stage has already? */
  #blockRepeats(at: number, stage: ForeignStage): boolean {
    for (let i = at; this.sorted[i]?.is === 'line'; i++) if (stage.has(this.sorted[i]!.name)) return true
    return false
  }

  /** A row that names something and gives no amount. */
  #name(at: number): void {
    const row = this.sorted[at]!
    if (row.name === '') {
      this.#place.follow(row)
      const became = isBlank(row.stage) ? 'formula' : 'stage'
      this.reads[at] = {
        row: row.row,
        became,
        formula: this.#place.inFormula().name,
        ...(became === 'stage' ? { stage: this.#place.stage!.name } : {}),
      }
      this.#above = became
      return
    }
    const { stages } = this.mapping
    const next = this.sorted[this.#next[at]!]
    const said = headingName(row.name)
    const leads = next?.is === 'line' || next?.is === 'amounts'
    const known = isIngredient(said.name, this.larder)
    if (isRemark(row.name)) this.#note(at, noteOf(row))
    else if (stages === 'column')
      if (leads || known || !isBlank(row.stage)) this.#line(at)
      else this.#note(at, noteOf(row))
    else if (stages === 'none') this.#plainName(at, leads, known)
    else if (leads) this.#headingOrLine(at, said, known)
    else if (
      next?.is === 'name' &&
      (isStageName(said.name) || (!known && (this.#isBlockStart() || isStageName(next.name))))
    )
      if (isStageName(said.name)) this.#heading(at, said)
      else this.#title(at, said)
    else if ((known || this.#isAmongLines(row)) && !isStageName(said.name)) this.#line(at)
    else this.#note(at, noteOf(row))
  }

  #isBlockStart(): boolean {
    return this.#above !== 'line' && this.#above !== 'note'
  }

  /** A few words right below a line are one more ingredient rather than a remark. */
  #isAmongLines({ name }: Sorted): boolean {
    return this.#above === 'line' && !this.#blankSince && name.split(' ').length <= 4
  }

  #plainName(at: number, leads: boolean, known: boolean): void {
    const row = this.sorted[at]!
    const formula = this.#place.formula
    if (known || (leads && formula?.stages.length) || this.#isAmongLines(row)) this.#line(at)
    else if (leads && !formula) this.#title(at, headingName(row.name))
    else this.#note(at, noteOf(row))
  }

  #headingOrLine(at: number, said: { name: string; remark: string }, known: boolean): void {
    const row = this.sorted[at]!
    const isStage = isStageName(said.name)
    const earlier = this.#place.formula?.find(said.name)
    if (
      isStage &&
      !isFinalDough(said.name) &&
      earlier &&
      earlier !== this.#place.stage &&
      this.#above === 'line'
    )
      this.#line(at) // it takes the stage that came before
    else if (isStage || /:\s*$/.test(row.name)) this.#heading(at, said)
    else if (this.#above === 'stage') this.#note(at, noteOf(row))
    else if (!known && (this.#isBlockStart() || this.mapping.stages === 'headings')) this.#heading(at, said)
    else this.#line(at)
  }

  #title(at: number, { remark }: { name: string; remark: string }): void {
    const { row, name: said, note } = this.sorted[at]!
    const name = titleName(said)
    const formula = this.#place.begin(name, true)
    formula.notes.push(...[remark, note].filter(Boolean))
    this.reads[at] = { row, became: 'formula', formula: name }
    this.#above = 'formula'
  }

  #heading(at: number, { name, remark }: { name: string; remark: string }): void {
    const { row, note } = this.sorted[at]!
    const before = this.#place.inFormula().find(name)
    if (before && before !== this.#place.stage && before.lines.length > 0) this.#place.again(row, name)
    const formula = this.#place.inFormula()
    this.#place.stage = formula.stage(name)
    for (const text of [remark, note]) if (text !== '') formula.notes.push(`${name}: ${text}`)
    this.reads[at] = { row, became: 'stage', formula: formula.name, stage: name }
    this.#above = 'stage'
    this.#blankSince = false
  }

  /** `Levain 220 g` over the lines of the levain is its heading, with its total beside it. */
  #headsWithTotal(at: number): boolean {
    const row = this.sorted[at]!
    const { stages } = this.mapping
    if (stages !== 'headings' && stages !== 'blocks') return false
    if (this.#above === 'line' || this.#above === 'note' || this.#above === 'stage') return false
    if (!headsWithTotal(this.sorted, at)) return false
    const said = headingName(row.name)
    const quantities = quantitiesOf(row)
    this.#heading(at, said)
    const stage = this.#place.stage
    this.#place.inFormula().totals.push({
      row: row.row,
      label: said.name,
      of: { named: '' },
      stage,
      heads: true,
      quantities,
    })
    return true
  }

  #total(at: number): void {
    const row = this.sorted[at]!
    const { formula: formulaCell, stage: stageCell } = row
    if (!isBlank(formulaCell) && row.name !== formulaCell) this.#place.turnTo(formulaCell)
    const formula = this.#place.inFormula()
    let stage = this.#place.stage
    if (!isBlank(stageCell) && row.name !== stageCell)
      stage = formula.find(headingName(stageCell).name) ?? stage
    this.#printed(at, formula, stage, row.name)
  }

  /** Amounts without a name: the total of the lines above, or nothing that can be known. */
  #nameless(at: number): void {
    const row = this.sorted[at]!
    const stage = this.#place.stage
    const quantities = quantitiesOf(row)
    const last = this.sorted[at + 1]?.is !== 'line'
    if (
      !last ||
      !stage ||
      stage.lines.length < 2 ||
      !quantities.some(quantity => sumAgrees(quantity, stage.sums))
    ) {
      this.#lost(
        at,
        `Row ${row.row} gives ${quoted(textOf(row))} and names no ingredient. Give it one, or empty the row.`,
      )
      return
    }
    this.#printed(at, this.#place.inFormula(), stage, '')
  }

  /** Keeps a total below its lines, to be compared when all is read. */
  #printed(at: number, formula: ForeignFormula, stage: ForeignStage | undefined, label: string): void {
    const row = this.sorted[at]!
    const quantities = quantitiesOf(row)
    const why =
      quantities.length > 0
        ? {}
        : { why: `Row ${row.row} names a total and gives no figure that can be read.` }
    this.reads[at] = { row: row.row, became: 'total', formula: formula.name, text: textOf(row), ...why }
    const of = totalOf(label) ?? { named: '' }
    if (quantities.length > 0)
      formula.totals.push({ row: row.row, label, of, stage, heads: false, quantities })
    if (stage) stage.hasTotal = true
    this.#above = 'total'
  }
}
