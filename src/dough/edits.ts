import { amountAsKept, plainPercent } from './amounts.js'
import { type Batch, batchProblem, type KeepBack } from './batch.js'
import type { AmountColumn, ReadingName } from './figures.js'
import {
  type Formula,
  finalDoughOf,
  type Hold,
  type Line,
  nameKey,
  newId,
  type Stage,
  sameName,
  usualFlourWeight,
} from './formula.js'
import type { Ingredient, Larder } from './larder.js'
import { type LinePlan, outlineOf } from './outline.js'
import { renameInAmounts } from './renaming.js'
import { batchWords, grams, holdWords, per100 } from './words.js'
import type { Change, Transaction, Workbook } from './workbook.js'

/** Thrown for an edit that cannot be: the message is a sentence for the baker; nothing has changed. */
export class Refusal extends Error {}

/** A line by ids. */
export interface LineAt {
  readonly formula: string
  readonly stage: string
  readonly line: string
}

/** A stage by ids. */
export interface StageAt {
  readonly formula: string
  readonly stage: string
}

/** Several edits as one, undone together. */
export const together = (label: string, parts: readonly Transaction[]): Transaction => ({
  label,
  changes: parts.flatMap(part => part.changes),
})

export function formulaIn(workbook: Workbook, id: string): Formula {
  const formula = workbook.formulas.find(f => f.id === id)
  if (!formula) throw new Refusal('That formula is no longer on the shelf.')
  return formula
}

function stageIn(workbook: Workbook, at: StageAt): Stage {
  const stage = formulaIn(workbook, at.formula).stages.find(s => s.id === at.stage)
  if (!stage) throw new Refusal('That stage is no longer in the formula.')
  return stage
}

function lineIn(workbook: Workbook, at: LineAt): Line {
  const line = stageIn(workbook, at).lines.find(l => l.id === at.line)
  if (!line) throw new Refusal('That line is no longer in the formula.')
  return line
}

const putLine = (at: StageAt, line: Line, index?: number): Change => ({
  of: 'line',
  formula: at.formula,
  stage: at.stage,
  id: line.id,
  value: line,
  ...(index === undefined ? {} : { index }),
})
const takeLine = (at: LineAt): Change => ({ of: 'line', formula: at.formula, stage: at.stage, id: at.line })
const named = (line: Line): string => line.ingredient || 'a line'

export const newLine = (fields: Partial<Omit<Line, 'id'>> = {}): Line => ({
  id: newId(),
  ingredient: '',
  amount: '',
  note: '',
  ...fields,
})

export const newStage = (name: string, lines: readonly Line[] = []): Stage => ({ id: newId(), name, lines })

/** A formula to begin with by percentages: flour, water, salt, one levain. */
export function blankFormula(name = 'New formula'): Formula {
  const levain = newStage('Levain', [
    newLine({ ingredient: 'Ripe starter', amount: '20%' }),
    newLine({ ingredient: 'Bread flour', amount: '100%' }),
    newLine({ ingredient: 'Water', amount: '100%' }),
  ])
  const dough = newStage('Final dough', [
    newLine({ ingredient: 'Bread flour', amount: '100%' }),
    newLine({ ingredient: 'Water', amount: '70%' }),
    newLine({ ingredient: 'Salt', amount: '2%' }),
    newLine({ ingredient: 'Levain', amount: '20%' }),
  ])
  return {
    id: newId(),
    name,
    note: '',
    flourWeight: usualFlourWeight,
    stages: [levain, dough],
    meanings: [],
    keptSettings: [],
  }
}

/** Types an amount: a bare number is a percentage or grams by its column. What is not understood is kept as typed. */
export function enterAmount(
  workbook: Workbook,
  at: LineAt,
  column: AmountColumn,
  typed: string,
  decimal: '.' | ',' = '.',
): Transaction {
  const line = lineIn(workbook, at)
  if (column === 'wholeDough') return enterWholeDough(workbook, at, typed, decimal)
  const amount = amountAsKept(typed, column, decimal)
  const done = amount ? `Set ${named(line)} to ${amount}` : `Clear ${named(line)}`
  const release = releaseHold(workbook, at.formula, h => h.line === at.line)
  const label = release ? `${done}; ${release.label.toLowerCase()}` : done
  return { label, changes: [putLine(at, { ...line, amount }), ...(release?.changes ?? [])] }
}

/** A share of the whole dough is a hold with that line giving; an empty text lets it go. */
function enterWholeDough(workbook: Workbook, at: LineAt, typed: string, decimal: '.' | ','): Transaction {
  const line = lineIn(workbook, at)
  const text = typed.trim()
  if (!text) {
    const release = releaseHold(workbook, at.formula, h => h.line === at.line && h.reading === 'wholeDough')
    return release ?? { label: `Clear the share of ${named(line)}`, changes: [] }
  }
  const percent = plainPercent(text, decimal)
  if (percent === undefined)
    throw new Refusal(
      `"${text}" is not a share of the whole dough: write a percentage of all flour, such as 78.`,
    )
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
  if (path) throw new Refusal(`${path} A stage cannot be made of itself.`)
  const stage = stageIn(workbook, at)
  const changes: Change[] = [putLine(at, { ...line, ingredient: name })]
  const alone = stage.lines.filter(l => sameName(l.ingredient, line.ingredient)).length === 1
  if (alone && line.ingredient && name) {
    for (const other of stage.lines) {
      const amount = renameInAmounts(other.amount, line.ingredient, name)
      if (other.id !== line.id && amount !== other.amount) changes.push(putLine(at, { ...other, amount }))
    }
  }
  return {
    label: line.ingredient ? `Change ${line.ingredient} to ${name || 'no ingredient'}` : `Add ${name}`,
    changes,
  }
}

/** The sentence `Levain takes Final dough, which takes Levain.` when a line named `name` in `stage` closes a circle. */
function pathBack(formula: Formula, stage: Stage, name: string): string | undefined {
  const stageNamed = (n: string) => formula.stages.find(s => sameName(s.name, n))
  const first = stageNamed(name)
  if (!first) return undefined
  if (first.id === stage.id) return `${stage.name} would take ${stage.name}.`
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
      return `${stage.name} would take ${[first.name, ...steps].join(', which takes ')}.`
    }
  }
  return undefined
}

/** Puts the formula's holds; none is no field at all. */
function putHolds(formula: Formula, holds: readonly Hold[]): Change[] {
  return [{ of: 'fields', formula: formula.id, value: { holds } }]
}

/**
 * Keeps a reading at `value` (fraction of 1, or grams) while a line of the final dough gives. Another hold
 * of the reading, or one for which the line gave, is let go. `wholeDough` holds the line's own share.
 */
export function holdReading(
  workbook: Workbook,
  at: LineAt,
  reading: Hold['reading'],
  value: number,
): Transaction {
  const formula = formulaIn(workbook, at.formula)
  const line = lineIn(workbook, at)
  if (at.stage !== finalDoughOf(formula).id) throw new Refusal('Only a line of the final dough can give.')
  if (!Number.isFinite(value) || value < 0)
    throw new Refusal('A reading is held at a number that is not below 0.')
  const hold: Hold = { reading, value, line: at.line }
  const others = (formula.holds ?? []).filter(
    h => h.line !== at.line && (reading === 'wholeDough' || h.reading !== reading),
  )
  return { label: `Hold ${holdWords(hold, named(line))}`, changes: putHolds(formula, [...others, hold]) }
}

/** Lets a hold go; the line that gave has again what was typed for it. */
export function releaseHold(
  workbook: Workbook,
  id: string,
  which: (hold: Hold) => boolean,
): Transaction | undefined {
  const formula = formulaIn(workbook, id)
  const released = formula.holds?.filter(which) ?? []
  if (!released.length) return undefined
  const words = released.map(h => holdWords(h, ingredientOf(formula, h.line))).join(', ')
  return {
    label: `Release ${words}`,
    changes: putHolds(
      formula,
      formula.holds!.filter(h => !which(h)),
    ),
  }
}

const ingredientOf = (formula: Formula, line: string): string =>
  formula.stages.flatMap(s => s.lines).find(l => l.id === line)?.ingredient || 'a line'

/** The line that would naturally give for a reading: water for hydration, salt for salt, levain for what it ferments. */
export function naturalGiver(formula: Formula, larder: Larder, reading: ReadingName): LineAt | undefined {
  const { final } = outlineOf(formula, larder)
  const kinds: Partial<Record<ReadingName, (line: LinePlan) => boolean>> = {
    trueHydration: l => l.countsAs?.kind === 'water',
    listedHydration: l => l.countsAs?.kind === 'water',
    moistureHydration: l => l.countsAs?.kind === 'water',
    totalWater: l => l.countsAs?.kind === 'water',
    salt: l => l.countsAs?.kind === 'salt',
    prefermentedFlour: l => l.source?.ferments === true || l.countsAs?.kind === 'starter',
    levainOnFlour: l => l.source?.ferments === true || l.countsAs?.kind === 'starter',
    totalFlour: l => l.countsAs?.kind === 'flour',
    doughWeight: l => l.countsAs?.kind === 'flour',
    egg: l => l.ingredient?.kind === 'egg',
    milk: l => l.ingredient?.kind === 'dairy',
    sugar: l => l.ingredient?.kind === 'sugar',
    fat: l => l.ingredient?.kind === 'fat',
  }
  const fits = final.lines.filter(kinds[reading]!)
  const line = fits.find(l => !l.gives || l.gives.reading === reading) ?? fits[0]
  return line && { formula: formula.id, stage: final.stage.id, line: line.line.id }
}

export function enterNote(workbook: Workbook, at: LineAt, note: string): Transaction {
  const line = lineIn(workbook, at)
  return { label: `Note on ${named(line)}`, changes: [putLine(at, { ...line, note })] }
}

/** Adds a line to a stage, last or at `index`. */
export function addLine(at: StageAt, line: Line, index?: number): Transaction {
  return {
    label: line.ingredient ? `Add ${line.ingredient}` : 'Add a line',
    changes: [putLine(at, line, index)],
  }
}

export function removeLines(workbook: Workbook, lines: readonly LineAt[]): Transaction {
  const only = lines.length === 1 ? lineIn(workbook, lines[0]!) : undefined
  return {
    label: only ? `Remove ${named(only)}` : `Remove ${lines.length} lines`,
    changes: lines.map(takeLine),
  }
}

/** Moves a line one place up (-1) or down (1), into the neighbouring stage at an end. Undefined where there is no way. */
export function moveLine(workbook: Workbook, at: LineAt, by: -1 | 1): Transaction | undefined {
  const formula = formulaIn(workbook, at.formula)
  const stage = stageIn(workbook, at)
  const line = lineIn(workbook, at)
  const label = `Move ${named(line)} ${by < 0 ? 'up' : 'down'}`
  const to = stage.lines.indexOf(line) + by
  if (to >= 0 && to < stage.lines.length) return { label, changes: [putLine(at, line, to)] }
  const next = formula.stages[formula.stages.indexOf(stage) + by]
  if (!next) return undefined
  const path = pathBack(formula, next, line.ingredient)
  if (path) throw new Refusal(`${path} A stage cannot be made of itself.`)
  const there = { formula: at.formula, stage: next.id }
  return { label, changes: [takeLine(at), putLine(there, line, by < 0 ? next.lines.length : 0)] }
}

/** Marks a line as what 100 % means in a stage without flour, or takes the mark away. */
export function markBase(workbook: Workbook, at: LineAt, isBase: boolean): Transaction {
  const { base: _base, ...line } = lineIn(workbook, at)
  const label = isBase ? `Make ${named(line)} the base` : `Unmark ${named(line)} as base`
  return { label, changes: [putLine(at, isBase ? { ...line, base: true } : line)] }
}

/** Adds a stage before the final dough, or at `index`. */
export function addStage(workbook: Workbook, formula: string, stage: Stage, index?: number): Transaction {
  const last = formulaIn(workbook, formula).stages.length - 1
  return {
    label: `Add ${stage.name}`,
    changes: [{ of: 'stage', formula, id: stage.id, value: stage, index: index ?? last }],
  }
}

/** Renames a stage, and with it the lines and amounts that speak of it. Throws Refusal when the name is taken. */
export function renameStage(workbook: Workbook, at: StageAt, name: string): Transaction {
  const formula = formulaIn(workbook, at.formula)
  const stage = stageIn(workbook, at)
  const wanted = name.trim()
  if (!wanted) throw new Refusal('A stage needs a name, so that other stages can take it.')
  if (formula.stages.some(s => s.id !== stage.id && sameName(s.name, wanted)))
    throw new Refusal(`There is a stage called ${wanted} already.`)
  const changes: Change[] = formula.stages.flatMap(s => {
    const lines = s.lines.map(l => {
      const ingredient = sameName(l.ingredient, stage.name) ? wanted : l.ingredient
      const amount = renameInAmounts(l.amount, stage.name, wanted)
      return ingredient === l.ingredient && amount === l.amount ? l : { ...l, ingredient, amount }
    })
    const changed = s.id === stage.id || lines.some((l, i) => l !== s.lines[i])
    const value: Stage = { ...s, name: s.id === stage.id ? wanted : s.name, lines }
    return changed ? [{ of: 'stage', formula: at.formula, id: s.id, value }] : []
  })
  return { label: `Rename ${stage.name} to ${wanted}`, changes }
}

/** Removes a stage; lines that took it stay, and say that it is gone. The final dough cannot be removed. */
export function removeStage(workbook: Workbook, at: StageAt): Transaction {
  const formula = formulaIn(workbook, at.formula)
  const stage = stageIn(workbook, at)
  if (formula.stages.length === 1) throw new Refusal('A formula keeps at least its final dough.')
  return { label: `Remove ${stage.name}`, changes: [{ of: 'stage', formula: at.formula, id: stage.id }] }
}

export function moveStage(workbook: Workbook, at: StageAt, by: -1 | 1): Transaction | undefined {
  const formula = formulaIn(workbook, at.formula)
  const stage = stageIn(workbook, at)
  const to = formula.stages.indexOf(stage) + by
  if (to < 0 || to >= formula.stages.length) return undefined
  return {
    label: `Move ${stage.name} ${by < 0 ? 'earlier' : 'later'}`,
    changes: [{ of: 'stage', formula: at.formula, id: stage.id, value: stage, index: to }],
  }
}

/** Says whether a stage ferments; undefined leaves it to what the stage holds. */
export function setFerments(workbook: Workbook, at: StageAt, ferments: boolean | undefined): Transaction {
  const { ferments: _before, ...stage } = stageIn(workbook, at)
  const value: Stage = ferments === undefined ? stage : { ...stage, ferments }
  const label =
    ferments === undefined
      ? `Let ${stage.name} decide whether it ferments`
      : `${stage.name} ${ferments ? 'ferments' : 'does not ferment'}`
  return { label, changes: [{ of: 'stage', formula: at.formula, id: stage.id, value }] }
}

/** Says how much to make. Throws Refusal for an amount that cannot be. */
export function setBatch(workbook: Workbook, id: string, batch: Batch): Transaction {
  formulaIn(workbook, id)
  const problem = batchProblem(batch)
  if (problem) throw new Refusal(problem)
  return { label: `Make ${batchWords(batch)}`, changes: [{ of: 'fields', formula: id, value: { batch } }] }
}

/** Says how much of a stage to make beyond what is taken: grams, or as much as its seed; 0 is none. */
export function setKeepBack(workbook: Workbook, at: StageAt, keepBack: KeepBack): Transaction {
  const { keepBack: _before, ...stage } = stageIn(workbook, at)
  if (keepBack !== 'seed' && !(keepBack >= 0 && Number.isFinite(keepBack)))
    throw new Refusal('What is kept back is a number of grams, 0 or more.')
  const value: Stage = keepBack === 0 ? stage : { ...stage, keepBack }
  const words = keepBack === 'seed' ? 'as much as the seed' : grams(keepBack)
  return {
    label: `Keep back ${words} of ${stage.name}`,
    changes: [{ of: 'stage', formula: at.formula, id: stage.id, value }],
  }
}

/** Says what part of a stage is lost on the way, fraction of 1. */
export function setStageLoss(workbook: Workbook, at: StageAt, loss: number): Transaction {
  const { loss: _before, ...stage } = stageIn(workbook, at)
  if (!(loss >= 0 && loss < 1)) throw new Refusal('A loss is a percentage from 0 to below 100.')
  const value: Stage = loss === 0 ? stage : { ...stage, loss }
  return {
    label: `${stage.name}: ${per100(loss)} lost`,
    changes: [{ of: 'stage', formula: at.formula, id: stage.id, value }],
  }
}

export function renameFormula(workbook: Workbook, id: string, name: string): Transaction {
  const wanted = name.trim()
  if (!wanted) throw new Refusal('A formula needs a name.')
  return {
    label: `Rename ${formulaIn(workbook, id).name} to ${wanted}`,
    changes: [{ of: 'fields', formula: id, value: { name: wanted } }],
  }
}

export function setFormulaNote(workbook: Workbook, id: string, note: string): Transaction {
  return {
    label: `Note on ${formulaIn(workbook, id).name}`,
    changes: [{ of: 'fields', formula: id, value: { note } }],
  }
}

/** Sets what 100 % weighs in the final dough, grams. */
export function setFlourWeight(workbook: Workbook, id: string, grams: number): Transaction {
  formulaIn(workbook, id)
  if (!(grams > 0 && Number.isFinite(grams)))
    throw new Refusal('The flour weight is a number of grams above 0.')
  return {
    label: `Flour weight ${grams} g`,
    changes: [{ of: 'fields', formula: id, value: { flourWeight: grams } }],
  }
}

/** `name`, or `name 2`, `name 3`, … where that is taken on the shelf. */
export function freeName(workbook: Workbook, name: string): string {
  const taken = new Set(workbook.formulas.map(f => nameKey(f.name)))
  for (let n = 1; ; n++) {
    const tried = n === 1 ? name : `${name} ${n}`
    if (!taken.has(nameKey(tried))) return tried
  }
}

/** Puts formulas on the shelf, last; each under a name that is free. */
export function addFormulas(workbook: Workbook, formulas: readonly Formula[]): Transaction {
  const changes: Change[] = []
  let shelf = workbook
  for (const formula of formulas) {
    const value = { ...formula, name: freeName(shelf, formula.name) }
    shelf = { ...shelf, formulas: [...shelf.formulas, value] }
    changes.push({ of: 'formula', id: value.id, value })
  }
  const label = formulas.length === 1 ? `Add ${formulas[0]!.name}` : `Add ${formulas.length} formulas`
  return { label, changes }
}

/** Puts `formula` in the place of the one called the same; its id stays. */
export function replaceFormula(workbook: Workbook, id: string, formula: Formula): Transaction {
  const before = formulaIn(workbook, id)
  return { label: `Replace ${before.name}`, changes: [{ of: 'formula', id, value: { ...formula, id } }] }
}

/** A copy with ids of its own. */
export function copyOf(formula: Formula, name: string): Formula {
  const stages = formula.stages.map(s => ({
    ...s,
    id: newId(),
    lines: s.lines.map(l => ({ ...l, id: newId() })),
  }))
  return { ...formula, id: newId(), name, stages }
}

export function duplicateFormula(workbook: Workbook, id: string): Transaction {
  const before = formulaIn(workbook, id)
  const value = copyOf(before, freeName(workbook, before.name))
  const index = workbook.formulas.indexOf(before) + 1
  return { label: `Duplicate ${before.name}`, changes: [{ of: 'formula', id: value.id, value, index }] }
}

export function removeFormula(workbook: Workbook, id: string): Transaction {
  return { label: `Delete ${formulaIn(workbook, id).name}`, changes: [{ of: 'formula', id }] }
}

/** Puts an ingredient of the baker's own in the larder, or in the place of the one with its id. */
export function defineIngredient(ingredient: Ingredient): Transaction {
  return {
    label: `Larder: ${ingredient.name}`,
    changes: [{ of: 'ingredient', id: ingredient.id, value: ingredient }],
  }
}

/** Takes the baker's own ingredient, or change to a usual one, out of the larder. */
export function forgetIngredient(workbook: Workbook, id: string): Transaction {
  const name = workbook.larder.find(i => i.id === id)?.name ?? 'ingredient'
  return { label: `Larder: remove ${name}`, changes: [{ of: 'ingredient', id }] }
}

export function renameWorkbook(name: string): Transaction {
  return { label: 'Rename the workbook', changes: [{ of: 'workbook', value: { name: name.trim() } }] }
}

/** The formula's final dough by ids. */
export const finalDoughAt = (formula: Formula): StageAt => ({
  formula: formula.id,
  stage: finalDoughOf(formula).id,
})
