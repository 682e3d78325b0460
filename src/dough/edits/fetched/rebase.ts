import { takesAll } from '../../amounts/all-of-it.js'
import { type Line, type Stage, sameName } from '../../document/formula.js'
import { tidy } from '../../document/words.js'
import { applyChanges, type Change, emptyWorkbook, type Transaction } from '../../document/workbook.js'
import { cellOf } from '../../outline/names.js'
import type { FigureSheet } from '../../sheet/figures.js'
import { numberIn } from '../../sheet/worked-out.js'
import { type LineAt, putLine, type StageAt } from '../edit-places.js'
import { enterIngredient } from '../line-edits.js'
import { rebaseLabels, refuseRebase } from './rebase-words.js'

/** A weight or a total that is the same but for what double precision leaves over. */
const isSame = (a: number, b: number): boolean => Math.abs(a - b) <= 1e-9 * Math.max(1e-3, Math.abs(a))

const stagesOf = (sheet: FigureSheet, stage?: string): readonly Stage[] =>
  sheet.formula.stages.filter(s => stage === undefined || s.id === stage)

/** The weight of a line, or a Refusal that says it has none. */
function weightOf(sheet: FigureSheet, line: Line): number {
  const { weight, isStale } = sheet.line(line.id)
  if (weight === undefined || isStale) refuseRebase({ code: 'lineWithoutWeight', line: line.ingredient })
  return weight
}

const gives = (sheet: FigureSheet, line: Line) => sheet.line(line.id).gives
/** An amount in grams that comes to a weight: where the dough's own is held, all that is written is scaled. */
const gramsFor = (sheet: FigureSheet) => {
  const times = numberIn(sheet.workedOut, cellOf.scale) ?? 1
  return (weight: number) => `${tidy(weight / times)} g`
}
const inPercent = (weight: number, base: number) => `${tidy((weight / base) * 100)}%`

/** The lines whose amounts can be written anew: those that have one and do not give. */
const written = (sheet: FigureSheet, stage: Stage): Line[] =>
  stage.lines.filter(line => line.amount && !gives(sheet, line))

function amounts(sheet: FigureSheet, stage: Stage, amountOf: (line: Line) => string): Change[] {
  const at: StageAt = { formula: sheet.formula.id, stage: stage.id }
  return written(sheet, stage).flatMap((line): Change[] => {
    const amount = amountOf(line)
    return amount === line.amount ? [] : [putLine(at, { ...line, amount })]
  })
}

const what = (sheet: FigureSheet, stage?: string) =>
  stage === undefined ? sheet.formula.name : sheet.formula.stages.find(s => s.id === stage)!.name

/** The formula as it would be, worked out. */
function sheetAfter(sheet: FigureSheet, changes: readonly Change[]): FigureSheet {
  const workbook = { ...emptyWorkbook, formulas: [sheet.formula] }
  return sheet.other(applyChanges(workbook, changes).workbook.formulas[0]!)
}

/** The transaction, or a Refusal that names the line whose weight it would change. */
function sameWeights(sheet: FigureSheet, transaction: Transaction, but: readonly string[] = []): Transaction {
  if (transaction.changes.length === 0) return transaction
  const after = sheetAfter(sheet, transaction.changes)
  for (const line of sheet.formula.stages.flatMap(s => s.lines)) {
    const [was, now] = [sheet.line(line.id).weight, after.line(line.id)]
    if (but.includes(line.id) || was === undefined) continue
    if (now.weight !== undefined && !now.isStale && isSame(was, now.weight)) continue
    if (now.gives) refuseRebase({ code: 'holdWouldChange', line: line.ingredient, hold: now.gives })
    refuseRebase({ code: 'weightWouldChange', line: line.ingredient })
  }
  return transaction
}

/**
 * Writes a formula, or one stage, in grams; no weight changes. Lines that give go on giving. Throws Refusal.
 * Without changes when all is in grams already.
 */
export function writeInGrams(sheet: FigureSheet, stage?: string): Transaction {
  const changes = stagesOf(sheet, stage).flatMap(s => {
    if (written(sheet, s).length && sheet.stage(s.id).weight === 0)
      refuseRebase({ code: 'nothingTaken', stage: s.name })
    return amounts(sheet, s, line => gramsFor(sheet)(weightOf(sheet, line)))
  })
  return sameWeights(sheet, { label: rebaseLabels.inGrams(what(sheet, stage)), changes })
}

/**
 * Writes a formula, or one stage, in percentages of each stage's base; no weight changes. The final dough's
 * flour weight becomes what its flours weigh. An earlier stage of which something is left over, or all is taken whatever
 * it makes, keeps its base lines in grams, since a stage in percentages makes just what is taken of it. Throws Refusal. Without changes
 * when all is in percentages already.
 */
export function writeInPercentages(sheet: FigureSheet, stage?: string): Transaction {
  const changes = stagesOf(sheet, stage).flatMap(s => percentages(sheet, s))
  return sameWeights(sheet, { label: rebaseLabels.inPercentages(what(sheet, stage)), changes })
}

function percentages(sheet: FigureSheet, stage: Stage): Change[] {
  if (written(sheet, stage).length === 0) return []
  const { base, weight, taken, isFinal } = sheet.stage(stage.id)
  if (!base) refuseRebase({ code: 'stageWithoutBase', stage: stage.name })
  const { takenBy } = sheet.workedOut.outline.stages.find(s => s.stage.id === stage.id)!
  const isMadeToMeasure =
    !takenBy.some(l => takesAll(l.amount)) &&
    taken !== undefined &&
    weight !== undefined &&
    Math.abs(taken - weight) <= 1e-13 * weight
  const baseGives = stage.lines.some(l => sheet.line(l.id).isBase && gives(sheet, l))
  const keepsBase = isFinal ? baseGives : !isMadeToMeasure
  const changes = amounts(sheet, stage, line => {
    const grams = weightOf(sheet, line)
    return keepsBase && sheet.line(line.id).isBase ? gramsFor(sheet)(grams) : inPercent(grams, base)
  })
  const flourWeight = Number.parseFloat(gramsFor(sheet)(base))
  if (isFinal && !baseGives && flourWeight !== sheet.formula.flourWeight)
    changes.push({ of: 'fields', formula: sheet.formula.id, value: { flourWeight } })
  return changes
}

/**
 * Takes another starter in a line's place and as much more or less of the stage's water, so that the flour
 * and water of the stage stay what they are: 80 g at 60 % and 70 g of water are 100 g at 100 % and 50 g.
 * Amounts in percentages stay in percentages; water that gives follows by itself. Throws Refusal, in words,
 * where that cannot be.
 */
export function changeStarter(sheet: FigureSheet, at: LineAt, starter: string): Transaction {
  const { formula } = sheet
  const stage = formula.stages.find(s => s.id === at.stage)!
  const line = stage.lines.find(l => l.id === at.line)!
  const { starterHydration: from } = sheet.line(line.id)
  const meaning = formula.meanings.find(m => sameName(m.ingredient, starter))?.countsAs
  const to = meaning ?? sheet.larder.find(starter)?.countsAs
  if (from === undefined) refuseRebase({ code: 'notAStarter', ingredient: line.ingredient })
  if (to?.kind !== 'starter') refuseRebase({ code: 'starterUnknown', ingredient: starter })
  if (gives(sheet, line)) refuseRebase({ code: 'starterGives', ingredient: line.ingredient })
  const waters = stage.lines.filter(l => sheet.line(l.id).is === 'water')
  const water = waters
    .filter(l => !gives(sheet, l))
    .reduce<Line | undefined>(
      (most, l) => (most && weightOf(sheet, most) >= weightOf(sheet, l) ? most : l),
      undefined,
    )
  if (!waters.length) refuseRebase({ code: 'stageWithoutWater', stage: stage.name })
  const flour = weightOf(sheet, line) / (1 + from)
  const put = (changed: Line, weight: number) => {
    const { typedIn } = sheet.line(changed.id)
    const { base } = sheet.stage(stage.id)
    const amount = typedIn === 'percent' && base ? inPercent(weight, base) : gramsFor(sheet)(weight)
    return putLine(at, { ...changed, amount })
  }
  const named = enterIngredient({ ...emptyWorkbook, formulas: [formula] }, at, starter)
  const changes = [
    ...named.changes.slice(1),
    put({ ...line, ingredient: starter }, flour * (1 + to.hydration)),
  ]
  if (water) {
    const left = weightOf(sheet, water) - flour * (to.hydration - from)
    if (left < -1e-9)
      refuseRebase({ code: 'tooLittleWater', starter, stage: stage.name, water: water.ingredient })
    changes.push(put(water, Math.max(0, left)))
  }
  const label = rebaseLabels.changeStarter(line.ingredient, starter)
  const but = [line.id, ...waters.map(l => l.id)]
  return sameDough(sheet, stage, sameWeights(sheet, { label, changes }, but))
}

/** The transaction, or a Refusal where it would change the readings of the dough or the weight of the stage. */
function sameDough(sheet: FigureSheet, stage: Stage, transaction: Transaction): Transaction {
  const after = sheetAfter(sheet, transaction.changes)
  const figures = (s: FigureSheet) => [
    s.reading('totalFlour'),
    s.reading('totalWater'),
    s.reading('prefermentedFlour'),
    s.stage(stage.id).weight,
  ]
  const [was, now] = [figures(sheet), figures(after)]
  if (was.every((figure, i) => figure === now[i] || isSame(figure ?? Number.NaN, now[i] ?? Number.NaN)))
    return transaction
  refuseRebase({ code: 'doughWouldChange', stage: stage.name })
}
