import { nameFor, parse } from '../../../engine/index.js'
import { type Formula, type Line, nameKey, type Stage } from '../../document/formula.js'
import type { AmountColumn } from '../../document/reading-names.js'
import {
  applyChanges,
  type Change,
  type LineChange,
  type Transaction,
  type Workbook,
} from '../../document/workbook.js'
import { unitWords } from '../../lexicon/unit-words.js'
import { formulaIn, type LineAt, putLine } from '../edit-places.js'
import { enterAmount, enterIngredient, enterNote, pathBack } from '../line-edits.js'
import { Refusal, refuse } from '../words.js'
import { refuseFetched } from './fetched-words.js'

const mostLookedThrough = 250_000 // lines, each time one is renamed: a second or so

/** A text typed into a cell. `kept`: what is kept of it as an amount in per cent or grams (`amountAsKept`). */
export type CellTyped =
  | { readonly column: 'ingredient' | 'note'; readonly text: string }
  | { readonly column: AmountColumn; readonly text: string; readonly kept: string }

/** What is typed into the cells of a line; of a new one, `begun` is the line it begins as. */
export interface LineTyped {
  readonly stage: string // id
  readonly line: string // id
  readonly begun?: Line
  readonly cells: readonly CellTyped[]
}

/**
 * Types into many cells as if one after the other, as one step: what a cell refuses is told to `refused` and left as it was,
 * or, without it, thrown.
 * Takes a time in step with what is typed and what there is. Undefined where nothing is typed.
 */
export function enterCells(
  workbook: Workbook,
  formula: string,
  lines: readonly LineTyped[],
  decimal: '.' | ',',
  label: string,
  refused?: (sentence: string) => void,
): Transaction | undefined {
  const told = <T>(enter: () => T): T | undefined => {
    try {
      return enter()
    } catch (error) {
      if (!(error instanceof Refusal && refused)) throw error
      return void refused(error.message)
    }
  }
  const [first, second] = lines
  const [cell, another] = first?.cells ?? []
  if (first && cell && !second && !another && !first.begun)
    return told(() => enterCell(workbook, { formula, ...first }, cell, decimal))
  const entering = new Entering(workbook, formula)
  for (const { stage, line, begun, cells } of lines) {
    if (begun) entering.put(stage, begun)
    for (const one of cells) told(() => entering.enter({ formula, stage, line }, one, decimal))
    if (entering.isTooMuch) refuseFetched({ code: 'tooManyRenamed' })
  }
  const changes = entering.changes()
  return changes.length ? { label, changes } : undefined
}

function enterCell(
  workbook: Workbook,
  at: LineAt,
  { column, text }: CellTyped,
  decimal: '.' | ',',
): Transaction {
  if (column === 'ingredient') return enterIngredient(workbook, at, text)
  if (column === 'note') return enterNote(workbook, at, text)
  return enterAmount(workbook, at, column, text, decimal)
}

/** A formula while many of its cells are typed into. What moves nothing but its own line is put there without looking at the others. */
class Entering {
  readonly #id: string
  #workbook: Workbook
  readonly #made: Change[] = [] // as the workbook has them
  readonly #open = new Map<string, LineChange>() // by line, made but not yet in the workbook
  #formula: Formula
  #lines: Map<string, Line> | undefined // as the workbook has them, by id
  #stages: ReadonlyMap<string, Stage>
  #giving: ReadonlySet<string> // lines
  readonly #stageNames: ReadonlySet<string>
  #spoken: Set<string> | undefined // names that are or were in amounts and jottings; from when they are first asked for
  #renamed = 0 // lines that others may speak of
  readonly #paths = new Map<string, readonly string[] | undefined>() // back to a stage, by it and by what is named

  constructor(workbook: Workbook, formula: string) {
    this.#id = formula
    this.#workbook = workbook
    this.#formula = formulaIn(workbook, formula)
    this.#stages = new Map(this.#formula.stages.map(stage => [stage.id, stage]))
    this.#giving = new Set(this.#formula.holds?.map(hold => hold.line))
    this.#stageNames = new Set(this.#formula.stages.map(stage => nameKey(stage.name)))
  }

  changes(): readonly Change[] {
    return [...this.#made, ...this.#open.values()]
  }

  put(stage: string, line: Line): void {
    this.#open.set(line.id, putLine({ formula: this.#id, stage }, line))
    if (line.amount) for (const name of namesOf(line.amount)) this.#spoken?.add(name)
  }

  enter(at: LineAt, cell: CellTyped, decimal: '.' | ','): void {
    const line = this.#line(at)
    const now = line && this.#plainly(at, line, cell)
    if (now) this.put(at.stage, now)
    else this.#edit(workbook => enterCell(workbook, at, cell, decimal))
  }

  /** The line with the text in it; undefined where that may move more than the line. */
  #plainly(at: LineAt, line: Line, cell: CellTyped): Line | undefined {
    switch (cell.column) {
      case 'note':
        return { ...line, note: cell.text }
      case 'ingredient': {
        const stage = this.#stages.get(at.stage)
        const name = cell.text.trim()
        const from = line.ingredient
        const isRenamed = stage && from !== '' && name !== ''
        if (
          !stage ||
          (isRenamed && this.#isKnownElsewhere(stage, from)) ||
          [from, name].some(one => isInSteps(stage, one))
        ) {
          this.#renamed += 1
          return undefined
        }
        const path = this.#path(stage, name)
        return path ? refuse({ code: 'stageOfItself', path }) : { ...line, ingredient: name }
      }
      case 'wholeDough':
        return undefined
      default:
        return this.#giving.has(line.id) ? undefined : { ...line, amount: cell.kept }
    }
  }

  #line({ stage, line }: LineAt): Line | undefined {
    this.#lines ??= new Map(this.#formula.stages.flatMap(s => s.lines.map(l => [l.id, l] as const)))
    return this.#stages.has(stage) ? (this.#open.get(line)?.value ?? this.#lines.get(line)) : undefined
  }

  /** Whatever is typed into a stage moves no way back to it: that begins with the stages it does not take. */
  #path(stage: Stage, name: string): readonly string[] | undefined {
    const key = `${stage.id} ${nameKey(name)}`
    if (!this.#paths.has(key)) this.#paths.set(key, pathBack(this.#formula, stage, name))
    return this.#paths.get(key)
  }

  /** Whether something may go by the name a line has had. */
  #isKnownElsewhere(stage: Stage, from: string): boolean {
    if (!this.#spoken) {
      const { stages, jottings = [] } = this.#formula
      const texts = [...stages.flatMap(s => s.lines.map(l => l.amount)), ...jottings.map(j => j.text)]
      const open = [...this.#open.values()].map(change => change.value!.amount)
      this.#spoken = new Set([...texts, ...open].flatMap(namesOf))
    }
    const name = nameFor(from)
    return (
      this.#stageNames.has(nameKey(from)) ||
      this.#spoken.has(name) ||
      this.#spoken.has(`${nameFor(stage.name)}.${name}`)
    )
  }

  /** Whether so many lines get another name that others speak of that each is looked for in all the others too often. */
  get isTooMuch(): boolean {
    return this.#renamed * (this.#lines?.size ?? 0) > mostLookedThrough
  }

  /** Makes an edit that may move anything of the formula. */
  #edit(edit: (workbook: Workbook) => Transaction): void {
    this.#make([...this.#open.values()])
    this.#open.clear()
    this.#make(edit(this.#workbook).changes)
  }

  #make(changes: readonly Change[]): void {
    if (changes.length === 0) return
    this.#workbook = applyChanges(this.#workbook, changes).workbook
    this.#formula = formulaIn(this.#workbook, this.#id)
    this.#giving = new Set(this.#formula.holds?.map(hold => hold.line))
    for (const change of changes) {
      this.#made.push(change)
      if (change.of === 'line' && change.value) {
        this.#lines?.set(change.id, change.value)
        for (const name of namesOf(change.value.amount)) this.#spoken?.add(name)
      } else if (change.of === 'stage') this.#stages = new Map(this.#formula.stages.map(s => [s.id, s]))
    }
  }
}

/** Whether the steps of a stage may speak of a line by a name. */
const isInSteps = ({ method = [] }: Stage, name: string): boolean =>
  name !== '' && method.some(({ text }) => nameKey(text).includes(nameKey(name)))

/** The names in an amount or a jotting; none where it is not understood. */
function namesOf(text: string): readonly string[] {
  if (!text) return []
  try {
    return parse(text, { units: unitWords }).names
  } catch {
    return []
  }
}
