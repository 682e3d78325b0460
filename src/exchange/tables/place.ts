import { nameKey } from '../../dough/document/formula.js'
import { unnamed } from '../csv/columns.js'
import { isBlank, quoted } from '../csv/row.js'
import type { Sorted } from './sort.js'
import { ForeignFormula, type ForeignStage, rowOrRows, type Told } from './table-draft.js'
import type { Mapping } from './types.js'
import { headingName, isFinalDough, isStageName } from './words.js'

/** The formula and the stage that rows are being read into. */
export class Place {
  readonly formulas: ForeignFormula[] = []
  formula: ForeignFormula | undefined
  stage: ForeignStage | undefined
  readonly #byName = new Map<string, ForeignFormula>()
  readonly #namesakes = new Map<string, number>()
  readonly #overColumn: ForeignStage | undefined
  readonly #carried = { formula: [] as number[], stage: [] as number[] }

  constructor(
    readonly mapping: Mapping,
    readonly told: Told,
    heading: string, // over the ingredients: it may name the first stage
  ) {
    if (mapping.stages === 'column' || mapping.columns.includes('formula') || !isStageName(heading)) return
    this.#overColumn = this.inFormula().stage(headingName(heading).name)
    this.stage = this.#overColumn
  }

  inFormula(): ForeignFormula {
    return this.formula ?? this.begin(this.mapping.formulaName || unnamed.formula, false)
  }

  begin(name: string, isNamed: boolean): ForeignFormula {
    this.formula = new ForeignFormula(name, isNamed)
    this.formulas.push(this.formula)
    const key = nameKey(name)
    if (!this.#byName.has(key)) this.#byName.set(key, this.formula)
    this.stage = undefined
    return this.formula
  }

  /** The formula that a row of the formula column belongs to. */
  turnTo(name: string): ForeignFormula {
    const key = nameKey(name)
    if (this.formula && nameKey(this.formula.name) === key) return this.formula
    const known = this.#byName.get(key)
    if (!known) return this.begin(name, true)
    this.stage = undefined
    this.formula = known
    return known
  }

  /** Follows the columns of formula and stage, each empty cell being as the one above. */
  follow({ row, formula, stage }: Sorted): void {
    const { columns } = this.mapping
    if (!isBlank(formula)) this.turnTo(formula)
    else if (columns.includes('formula') && this.formula) this.#carried.formula.push(row)
    if (!isBlank(stage)) this.stage = this.inFormula().stage(headingName(stage).name)
    else if (columns.includes('stage') && this.stage) this.#carried.stage.push(row)
  }

  /** A stage that comes a second time after the final dough begins another formula. */
  again(row: number, name: string): void {
    const formula = this.inFormula()
    const isDone = formula.stages.some(stage => isFinalDough(stage.name) && stage.lines.length > 0)
    if (!isDone) {
      this.told.say(
        'warning',
        row,
        `Row ${row} heads ${quoted(name)} a second time: taken as more of the same stage.`,
      )
      return
    }
    const base = formula.name.replace(/ \(\d+\)$/, '')
    const namesakes = (this.#namesakes.get(base) ?? 1) + 1
    this.#namesakes.set(base, namesakes)
    const another = this.begin(`${base} (${namesakes})`, false)
    this.told.say(
      'warning',
      row,
      `Row ${row} heads ${quoted(name)} again after the final dough: taken as the start of another formula, ${quoted(another.name)}.`,
    )
  }

  finish(): void {
    const [first] = this.formulas
    if (this.#overColumn?.lines.length === 0) first!.stages.splice(first!.stages.indexOf(this.#overColumn), 1)
    for (const column of ['formula', 'stage'] as const) {
      const rows = this.#carried[column]
      if (rows.length > 0)
        this.told.say(
          'remark',
          rows[0],
          `${rowOrRows(rows)} ${rows.length === 1 ? 'names' : 'name'} no ${column}: taken as part of the ${column} above.`,
        )
    }
  }
}
