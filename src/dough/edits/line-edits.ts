import { nameFor } from '../../engine/index.js'
import { amountAsKept, plainPercent } from '../amounts/amounts.js'
import { dimensionsOf, planJottings } from '../amounts/jottings.js'
import {
  type Formula,
  finalDoughOf,
  isInProportion,
  type Line,
  newId,
  type Stage,
  sameName,
} from '../document/formula.js'
import type { AmountColumn } from '../document/reading-names.js'
import { confirmedNote } from '../document/words.js'
import type { Change, Transaction, Workbook } from '../document/workbook.js'
import {
  formulaIn,
  type LineAt,
  lineIn,
  named,
  putLine,
  type StageAt,
  stageIn,
  takeLine,
} from './edit-places.js'
import { withSteps } from './following-steps.js'
import { holdReading, released, releaseHold } from './hold-edits.js'
import { jottingsWithNames, nameInStage, type Renamed, wholeName, withNames } from './renaming.js'
import { labels, refuse } from './words.js'

export const newLine = (fields: Partial<Omit<Line, 'id'>> = {}): Line => ({
  id: newId(),
  ingredient: '',
  amount: '',
  note: '',
  ...fields,
})

/** Types an amount, which confirms the line: a bare number is a percentage or grams by its column. What is not understood is kept as typed. */
export function enterAmount(
  workbook: Workbook,
  at: LineAt,
  column: AmountColumn,
  typed: string,
  decimal: '.' | ',' = '.',
): Transaction {
  const line = lineIn(workbook, at)
  if (column === 'wholeDough') return enterWholeDough(workbook, at, typed, decimal)
  const formula = formulaIn(workbook, at.formula)
  const jottings = dimensionsOf(planJottings(formula.jottings ?? []))
  const amount = amountAsKept(typed, column, decimal, jottings)
  // In a dough whose weight is held every line gives: one in units gives no more.
  const release = released(
    formula,
    h => h.line === at.line || (isInProportion(h) && /[\d)]\s*\p{L}/u.test(amount)),
  )
  return {
    label: labels.amount(named(line), amount, release?.words),
    changes: [putLine(at, { ...line, amount, note: confirmedNote(line.note) }), ...(release?.changes ?? [])],
  }
}

/** A share of the whole dough is a hold with that line giving; an empty text lets it go. */
function enterWholeDough(workbook: Workbook, at: LineAt, typed: string, decimal: '.' | ','): Transaction {
  const line = lineIn(workbook, at)
  const text = typed.trim()
  if (!text) {
    const release = releaseHold(workbook, at.formula, h => h.line === at.line && h.reading === 'wholeDough')
    return release ?? { label: labels.clearShare(named(line)), changes: [] }
  }
  const percent = plainPercent(text, decimal)
  if (percent === undefined) refuse({ code: 'notAShare', typed: text })
  return holdReading(workbook, at, 'wholeDough', percent / 100)
}

/**
 * Names what a line is of: a larder ingredient or a stage of the formula. Throws Refusal, spelling the
 * path, when the stage would be made of itself.
 */
export function enterIngredient(workbook: Workbook, at: LineAt, ingredient: string): Transaction {
  const formula = formulaIn(workbook, at.formula)
  const line = lineIn(workbook, at)
  const name = ingredient.trim()
  const path = pathBack(formula, stageIn(workbook, at), name)
  if (path) refuse({ code: 'stageOfItself', path })
  const stage = stageIn(workbook, at)
  const alone = stage.lines.filter(l => sameName(l.ingredient, line.ingredient)).length === 1
  const changes: Change[] = [putLine(at, { ...line, ingredient: name })]
  if (alone && line.ingredient && name) changes.push(...namesFollow(formula, stage, line, name))
  return withSteps(workbook, at.formula, {
    label: line.ingredient ? labels.ingredient(line.ingredient, name) : labels.add(name),
    changes,
  })
}

/** The amounts and jottings that speak of a line, with its new name. A jotting's own name goes before a line's. */
function namesFollow(formula: Formula, stage: Stage, line: Line, to: string): Change[] {
  const from = line.ingredient
  const isJotting = formula.jottings?.some(j => nameFor(j.name) === nameFor(from))
  const here: Renamed = isJotting ? name => name : wholeName(from, to)
  const there = nameInStage(stage.name, from, to)
  const changes = formula.stages.flatMap(s =>
    s.lines.flatMap((other): Change[] => {
      const amount = withNames(other.amount, name => there(s.id === stage.id ? here(name) : name))
      if (other.id === line.id || amount === other.amount) return []
      return [putLine({ formula: formula.id, stage: s.id }, { ...other, amount })]
    }),
  )
  const isFinal = stage === finalDoughOf(formula)
  const jottings = jottingsWithNames(formula.jottings, name => there(isFinal ? here(name) : name))
  return jottings ? [...changes, { of: 'fields', formula: formula.id, value: { jottings } }] : changes
}

/** The names Levain, Final dough, Levain, each taking the next, when a line named `name` in `stage` closes a circle. */
export function pathBack(formula: Formula, stage: Stage, name: string): string[] | undefined {
  const stageNamed = (n: string) => formula.stages.find(s => sameName(s.name, n))
  const first = stageNamed(name)
  if (!first) return undefined
  if (first.id === stage.id) return [stage.name, stage.name]
  const from = new Map<string, Stage>() // stage id → the stage through which it was reached
  const open = [first]
  while (open.length) {
    const at = open.pop()!
    for (const line of at.lines) {
      const next = stageNamed(line.ingredient)
      if (!next || from.has(next.id)) continue
      from.set(next.id, at)
      if (next.id !== stage.id) {
        open.push(next)
        continue
      }
      const steps = [stage.name]
      for (let s: Stage = at; s.id !== first.id; s = from.get(s.id)!) steps.unshift(s.name)
      return [stage.name, first.name, ...steps]
    }
  }
  return undefined
}

/** Says that a line that was guessed is right. */
export function confirmLine(workbook: Workbook, at: LineAt): Transaction {
  const line = lineIn(workbook, at)
  return {
    label: labels.confirm(named(line)),
    changes: [putLine(at, { ...line, note: confirmedNote(line.note) })],
  }
}

export function enterNote(workbook: Workbook, at: LineAt, note: string): Transaction {
  const line = lineIn(workbook, at)
  return { label: labels.note(named(line)), changes: [putLine(at, { ...line, note })] }
}

/** Adds a line to a stage, last or at `index`. */
export function addLine(at: StageAt, line: Line, index?: number): Transaction {
  return {
    label: labels.addLine(line.ingredient),
    changes: [putLine(at, line, index)],
  }
}

/** Moves a line one place up (-1) or down (1), into the neighbouring stage at an end. Undefined where there is no way. */
export function moveLine(workbook: Workbook, at: LineAt, by: -1 | 1): Transaction | undefined {
  const formula = formulaIn(workbook, at.formula)
  const stage = stageIn(workbook, at)
  const line = lineIn(workbook, at)
  const label = labels.moveLine(named(line), by)
  const to = stage.lines.indexOf(line) + by
  const moved = (...changes: readonly Change[]) => withSteps(workbook, at.formula, { label, changes })
  if (to >= 0 && to < stage.lines.length) return moved(putLine(at, line, to))
  const next = formula.stages[formula.stages.indexOf(stage) + by]
  if (!next) return undefined
  const path = pathBack(formula, next, line.ingredient)
  if (path) refuse({ code: 'stageOfItself', path })
  const there = { formula: at.formula, stage: next.id }
  return moved(takeLine(at), putLine(there, line, by < 0 ? next.lines.length : 0))
}
