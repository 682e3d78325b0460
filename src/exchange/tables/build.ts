import { nameKey } from '../../dough/document/formula.js'
import { unnamed } from '../csv/columns.js'
import { isBlank } from '../csv/row.js'
import { headingName, isFinalDough, titleName } from '../values/labels.js'
import { DraftFormula, type DraftStage, isSumOf, type LineMaker, type Told } from './draft.js'
import { quantitiesOf, type Row, textOf } from './row-features.js'
import type { RowKind } from './row-kinds.js'
import type { Mapping, RowRead } from './types.js'
import { type Reason, tableReason } from './words.js'

/** Rows, of which it is known what they are, into formulas. */
export class Builder {
  readonly formulas: DraftFormula[] = []
  readonly reads: (RowRead | undefined)[] = [] // of each row in turn; those of lines follow when all are read
  readonly #overColumn: DraftStage | undefined
  readonly #byName = new Map<string, DraftFormula>()
  readonly #namesakes = new Map<string, number>()
  #formula: DraftFormula | undefined
  #stage: DraftStage | undefined

  constructor(
    readonly mapping: Mapping,
    readonly lines: LineMaker,
    readonly told: Told,
    over: string | undefined, // the first stage, where the heading over the ingredients names it
  ) {
    if (over === undefined) return
    this.#overColumn = this.#inFormula().stage(over)
    this.#stage = this.#overColumn
  }

  add(row: Row, { kind, why, isApart }: RowKind): void {
    const because = why ? [tableReason({ code: why })] : []
    if (kind === 'not understood') this.#lost(row, row.why!)
    else if (kind === 'line') this.#line(row, isApart)
    else if (kind === 'stage') this.#heading(row, because)
    else if (kind === 'note') this.#note(row, because)
    else if (kind === 'formula') this.#title(row, because)
    else if (kind === 'place') this.#place(row)
    else if (kind === 'nameless') this.#nameless(row)
    else if (kind === 'summed') this.#total(row, this.#stage, `Total ${row.name}`)
    else if (kind === 'total') this.#total(row, this.#stageOf(row), row.name)
    else if (kind === 'joined') this.#tell(row, 'note', [tableReason({ code: 'amountBelow' })], row.name)
    else this.#tell(row, kind, [], kind === 'blank' ? undefined : textOf(row))
  }

  /** Tells of all lines together, and forgets the stage over the column where it has none. */
  finish(): void {
    this.lines.finish()
    const stages = this.formulas[0]?.stages ?? []
    if (this.#overColumn?.lines.length === 0) stages.splice(stages.indexOf(this.#overColumn), 1)
  }

  #tell({ row }: Row, became: RowRead['became'], why: RowRead['why'] = [], text?: string): void {
    const formula = ['formula', 'stage', 'total'].includes(became) ? this.#inFormula().name : undefined
    const stage = became === 'stage' ? this.#stage?.name : undefined
    this.reads.push({ row, became, formula, stage, text, why })
  }

  #inFormula(): DraftFormula {
    return this.#formula ?? this.#begin(this.mapping.formulaName || unnamed.formula)
  }

  #begin(name: string): DraftFormula {
    this.#formula = new DraftFormula(name)
    this.formulas.push(this.#formula)
    if (!this.#byName.has(nameKey(name))) this.#byName.set(nameKey(name), this.#formula)
    this.#stage = undefined
    return this.#formula
  }

  /** Turns to the formula that the formula column names. */
  #turnTo(name: string): void {
    if (this.#formula && nameKey(this.#formula.name) === nameKey(name)) return
    this.#stage = undefined
    this.#formula = this.#byName.get(nameKey(name)) ?? this.#begin(name)
  }

  /** Follows the columns of formula and stage, each empty cell being as the one above. */
  #follow({ formula, stage }: Row): void {
    if (!isBlank(formula)) this.#turnTo(formula)
    if (!isBlank(stage)) this.#stage = this.#inFormula().stage(headingName(stage).name)
  }

  #lost(row: Row, why: Reason): void {
    this.#tell(row, 'not understood', [tableReason(why)], textOf(row))
    this.told.say({ ...why, row: row.row })
  }

  #note(row: Row, why: RowRead['why']): void {
    const said = row.is === 'fact' ? row.amounts.map(({ cell }) => cell) : []
    const note = [row.name, ...said, row.note].filter(Boolean).join(' ')
    if (note !== '') this.#inFormula().notes.push(note)
    this.#tell(row, 'note', why, note || textOf(row))
  }

  #place(row: Row): void {
    this.#follow(row)
    this.#tell(row, isBlank(row.stage) ? 'formula' : 'stage')
  }

  #title(row: Row, why: RowRead['why']): void {
    this.#begin(titleName(row.name)).notes.push(...[row.label.remark, row.note].filter(Boolean))
    this.#tell(row, 'formula', why)
  }

  /** The heading of a stage, perhaps with its total beside it: `Levain 220 g` over the lines of the levain. */
  #heading(heading: Row, why: RowRead['why']): void {
    const { row, label, note } = heading
    const { name, remark } = label
    const before = this.#inFormula().find(name)
    if (before && before !== this.#stage && before.lines.length > 0) this.#again(row, name)
    const formula = this.#inFormula()
    this.#stage = formula.stage(name)
    for (const text of [remark, note]) if (text !== '') formula.notes.push(`${name}: ${text}`)
    this.#tell(heading, 'stage', why)
    this.#keepTotal(heading, this.#stage, name, true)
  }

  /** A stage that comes a second time after the final dough begins another formula. */
  #again(row: number, name: string): void {
    const formula = this.#inFormula()
    if (!formula.stages.some(stage => isFinalDough(stage.name) && stage.lines.length > 0))
      return this.told.say({ code: 'headedAgain', row, name })
    const base = formula.name.replace(/ \(\d+\)$/, '')
    const namesakes = (this.#namesakes.get(base) ?? 1) + 1
    this.#namesakes.set(base, namesakes)
    const another = this.#begin(`${base} (${namesakes})`)
    this.told.say({ code: 'anotherFormula', row, name, formula: another.name })
  }

  #line(row: Row, isApart = false): void {
    this.#follow(row)
    const stage = this.#stage
    if (!stage || (isApart && stage.lines.length > 0 && this.#isAnother(row, stage)))
      this.#stage = this.#inFormula().begin('', false)
    const formula = this.#inFormula()
    formula.count += 1
    if (!formula.isTooLong) this.#stage!.add(this.lines.line(row))
    this.reads.push(undefined)
  }

  /** Does a line after a blank row begin a stage without a name? */
  #isAnother({ row, name }: Row, stage: DraftStage): boolean {
    const { stages } = this.mapping
    if (stages === 'none' || stages === 'column' || stages === 'blocks') return stages === 'blocks'
    const isAnother = stage.hasTotal || !stage.isNamed || stage.has(name)
    if (isAnother) this.told.say({ code: 'anotherStage', row, name })
    else this.told.say({ code: 'partOfTheStage', row, name, stage: stage.name })
    return isAnother
  }

  #nameless(row: Row): void {
    const { lines = [] } = this.#stage ?? {}
    const agrees = quantitiesOf(row).some(quantity => isSumOf(lines, quantity))
    if (lines.length > 1 && agrees) this.#total(row, this.#stage, '')
    else this.#lost(row, { code: 'namesNothing', row: row.row, text: textOf(row) })
  }

  /** The stage that a total is of, by its columns. */
  #stageOf({ name, formula, stage }: Row): DraftStage | undefined {
    if (!isBlank(formula) && name !== formula) this.#turnTo(formula)
    const isSaid = !isBlank(stage) && name !== stage
    return (isSaid ? this.#inFormula().find(headingName(stage).name) : undefined) ?? this.#stage
  }

  /** Keeps a total below its lines, to be compared when all is read. */
  #total(row: Row, stage: DraftStage | undefined, label: string): void {
    const isKept = this.#keepTotal(row, stage, label, false)
    const why = isKept ? [] : [tableReason({ code: 'totalWithoutAFigure', row: row.row })]
    this.#tell(row, 'total', why, textOf(row))
    if (stage) stage.hasTotal = true
  }

  #keepTotal({ row, amounts }: Row, stage: DraftStage | undefined, label: string, heads: boolean): boolean {
    const quantities = quantitiesOf({ amounts }).filter(
      ({ grams, percent }) => (grams ?? percent) !== undefined,
    )
    const { totals } = this.#inFormula()
    if (quantities.length > 0) totals.push({ row, label, stage, heads, quantities })
    return quantities.length > 0
  }
}
