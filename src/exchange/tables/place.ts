import { nameKey } from '../../dough/document/formula.js'
import { unnamed } from '../csv/columns.js'
import { isBlank } from '../csv/row.js'
import { DraftFormula, type DraftStage, type Told } from './draft.js'
import type { Row } from './row-features.js'
import type { Mapping } from './types.js'
import { headingName, isFinalDough } from './vocabulary.js'

/** The formula and the stage that rows are being read into. */
export class Place {
  readonly formulas: DraftFormula[] = []
  formula: DraftFormula | undefined
  stage: DraftStage | undefined
  readonly #byName = new Map<string, DraftFormula>()
  readonly #namesakes = new Map<string, number>()
  readonly #carried = { formula: [] as number[], stage: [] as number[] }

  constructor(
    readonly mapping: Mapping,
    readonly told: Told,
  ) {}

  inFormula(): DraftFormula {
    return this.formula ?? this.begin(this.mapping.formulaName || unnamed.formula)
  }

  begin(name: string): DraftFormula {
    this.formula = new DraftFormula(name)
    this.formulas.push(this.formula)
    if (!this.#byName.has(nameKey(name))) this.#byName.set(nameKey(name), this.formula)
    this.stage = undefined
    return this.formula
  }

  /** The formula that a row of the formula column belongs to. */
  turnTo(name: string): void {
    if (this.formula && nameKey(this.formula.name) === nameKey(name)) return
    const known = this.#byName.get(nameKey(name))
    if (!known) this.begin(name)
    else {
      this.stage = undefined
      this.formula = known
    }
  }

  /** Follows the columns of formula and stage, each empty cell being as the one above. */
  follow({ row, formula, stage }: Row): void {
    const { columns } = this.mapping
    if (!isBlank(formula)) this.turnTo(formula)
    else if (columns.includes('formula') && this.formula) this.#carried.formula.push(row)
    if (!isBlank(stage)) this.stage = this.inFormula().stage(headingName(stage).name)
    else if (columns.includes('stage') && this.stage) this.#carried.stage.push(row)
  }

  /** Turns to the stage that a row heads. One that comes a second time after the final dough begins another formula. */
  head(row: number, name: string): void {
    const before = this.inFormula().find(name)
    if (before && before !== this.stage && before.lines.length > 0) this.#again(row, name)
    this.stage = this.inFormula().stage(name)
  }

  #again(row: number, name: string): void {
    const formula = this.inFormula()
    const isDone = formula.stages.some(stage => isFinalDough(stage.name) && stage.lines.length > 0)
    if (!isDone) {
      this.told.sayOf({ code: 'headed again', row, name })
      return
    }
    const base = formula.name.replace(/ \(\d+\)$/, '')
    const namesakes = (this.#namesakes.get(base) ?? 1) + 1
    this.#namesakes.set(base, namesakes)
    const another = this.begin(`${base} (${namesakes})`)
    this.told.sayOf({ code: 'another formula', row, name, formula: another.name })
  }

  /** Tells what was carried on from row to row, and forgets stages that were headed and have no lines. */
  finish(overColumn: DraftStage | undefined): void {
    const stages = this.formulas[0]?.stages ?? []
    if (overColumn?.lines.length === 0) stages.splice(stages.indexOf(overColumn), 1)
    for (const column of ['formula', 'stage'] as const) {
      const rows = this.#carried[column]
      if (rows.length > 0) this.told.say({ code: 'as above', rows, column }, rows[0])
    }
  }
}
