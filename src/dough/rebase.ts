import { type LineAt, putLine, Refusal, type StageAt } from './edit-places.js'
import type { FormulaSheet } from './figures.js'
import { finalDoughOf, type Line, type Stage } from './formula.js'
import { tidy } from './words.js'
import type { Change, Transaction } from './workbook.js'

const stagesOf = (sheet: FormulaSheet, stage?: string): readonly Stage[] =>
  sheet.formula.stages.filter(s => stage === undefined || s.id === stage)

/** The weight of a line, or a Refusal that says it has none. */
function weightOf(sheet: FormulaSheet, line: Line): number {
  const { weight, isStale } = sheet.line(line.id)
  if (weight === undefined || isStale)
    throw new Refusal(`${line.ingredient || 'A line'} has no weight, so nothing can be written for it.`)
  return weight
}

const amounts = (
  sheet: FormulaSheet,
  stage: Stage,
  amountOf: (line: Line) => string | undefined,
): Change[] => {
  const at: StageAt = { formula: sheet.formula.id, stage: stage.id }
  return stage.lines.flatMap((line): Change[] => {
    if (sheet.line(line.id).gives || !line.amount) return []
    const amount = amountOf(line)
    return amount === undefined || amount === line.amount ? [] : [putLine(at, { ...line, amount })]
  })
}

const what = (sheet: FormulaSheet, stage?: string) =>
  stage === undefined ? sheet.formula.name : sheet.formula.stages.find(s => s.id === stage)!.name

/** Writes a formula, or one stage, in grams; no weight changes. Lines that give go on giving. Throws Refusal. */
export function writeInGrams(sheet: FormulaSheet, stage?: string): Transaction {
  const changes = stagesOf(sheet, stage).flatMap(s =>
    amounts(sheet, s, line => `${tidy(weightOf(sheet, line))} g`),
  )
  return { label: `Write ${what(sheet, stage)} in grams`, changes }
}

/**
 * Writes a formula, or one stage, in percentages of each stage's base; no weight changes. The final dough's
 * flour weight becomes what its flours weigh. An earlier stage of which something is left over keeps its base
 * lines in grams, since a stage in percentages makes just what is taken of it. Throws Refusal.
 */
export function writeInPercentages(sheet: FormulaSheet, stage?: string): Transaction {
  const final = finalDoughOf(sheet.formula)
  const changes = stagesOf(sheet, stage).flatMap(s => {
    const { base, weight, taken, isFinal } = sheet.stage(s.id)
    if (!base) throw new Refusal(`${s.name} has nothing that percentages could be of.`)
    const isMadeToMeasure =
      !isFinal && taken !== undefined && weight !== undefined && Math.abs(taken - weight) <= 1e-9 * weight
    const baseGives = s.lines.some(l => sheet.line(l.id).isBase && sheet.line(l.id).gives)
    const keepsBase = isFinal ? baseGives : !isMadeToMeasure
    return amounts(sheet, s, line => {
      const grams = weightOf(sheet, line)
      return keepsBase && sheet.line(line.id).isBase ? `${tidy(grams)} g` : `${tidy((grams / base) * 100)}%`
    })
  })
  const base = sheet.stage(final.id).base
  const setsFlour =
    (stage === undefined || stage === final.id) &&
    base &&
    !final.lines.some(l => sheet.line(l.id).isBase && sheet.line(l.id).gives)
  const flour: Change[] = setsFlour
    ? [{ of: 'fields', formula: sheet.formula.id, value: { flourWeight: tidy(base) } }]
    : []
  return { label: `Write ${what(sheet, stage)} in percentages`, changes: [...changes, ...flour] }
}

/**
 * Takes another starter in a line's place and as much more or less of the stage's water, so that the flour
 * and water of the stage stay what they are: 80 g at 60 % and 70 g of water are 100 g at 100 % and 50 g.
 * Throws Refusal, in words, where that cannot be.
 */
export function changeStarter(sheet: FormulaSheet, at: LineAt, starter: string): Transaction {
  const stage = sheet.formula.stages.find(s => s.id === at.stage)!
  const line = stage.lines.find(l => l.id === at.line)!
  const from = sheet.line(line.id).starterHydration
  const meaning = sheet.formula.meanings.find(
    m => m.ingredient.toLowerCase() === starter.toLowerCase(),
  )?.countsAs
  const to = meaning ?? sheet.larder.find(starter)?.countsAs
  if (from === undefined) throw new Refusal(`${line.ingredient} is not a starter.`)
  if (to?.kind !== 'starter') throw new Refusal(`${starter} is not a starter in the larder.`)
  if (sheet.line(line.id).gives) throw new Refusal(`${line.ingredient} gives for a hold; release it first.`)
  const water = stage.lines.find(l => sheet.line(l.id).is === 'water' && !sheet.line(l.id).gives)
  if (!water) throw new Refusal(`${stage.name} has no water line that could take up the difference.`)
  const weight = weightOf(sheet, line)
  const flour = weight / (1 + from)
  const now = flour * (1 + to.hydration)
  const left = weightOf(sheet, water) - flour * (to.hydration - from)
  if (left < -1e-9)
    throw new Refusal(
      `${starter} brings more water than ${stage.name} has: ${water.ingredient} would weigh less than nothing.`,
    )
  const grams = (g: number) => `${tidy(Math.max(0, g))} g`
  return {
    label: `Change ${line.ingredient} to ${starter}, the dough staying the same`,
    changes: [
      putLine(at, { ...line, ingredient: starter, amount: grams(now) }),
      putLine(at, { ...water, amount: grams(left) }),
    ],
  }
}
