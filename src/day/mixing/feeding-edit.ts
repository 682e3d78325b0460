import type { Line } from '../../dough/document/formula.js'
import { type ReadingName, readingNames } from '../../dough/document/reading-names.js'
import { applyChanges, type Change, emptyWorkbook, type Transaction } from '../../dough/document/workbook.js'
import { type LineAt, putLine } from '../../dough/edits/edit-places.js'
import type { FigureSheet } from '../../dough/sheet/figures.js'
import { hasSoaker } from '../../dough/sheet/ranges.js'
import { ripeningHours } from '../temperature/growth.js'
import { ripeningStep, stageOf } from './fed-build.js'
import { type Feeding, partsOfBuild } from './feeding.js'
import { feedingLabel } from './feeding-words.js'
import { withLength } from './step-rewriting.js'

/** A build of a formula with how it is to be fed. */
export interface FedBuild {
  readonly stage: string // id
  readonly feeding: Feeding
}

const percentTyped = (part: number): string => `${Number((part * 100).toFixed(2))}%`
const tenths = (grams: number): number => Number(grams.toFixed(grams < 10 ? 2 : 1))

/** The amounts of the lines of a build that is fed anew: percentages stay percentages, all else becomes grams. */
function amountsOf(sheet: FigureSheet, stage: string, { weights }: Feeding): Map<string, string> {
  const { seed, flour, water } = partsOfBuild(stageOf(sheet, stage))
  const lines = [...seed, ...flour, ...water].map(({ line }) => line)
  const base = flour.reduce((sum, { line }) => sum + weights.get(line.id)!, 0)
  const isPercent = (line: Line) => sheet.line(line.id).typedIn === 'percent'
  const amounts = new Map<string, string>()
  for (const line of lines) {
    const isFlour = flour.some(f => f.line === line)
    // A flour in percentages is the same part of all flour as before.
    if (isPercent(line) && isFlour) continue
    const grams = weights.get(line.id)!
    amounts.set(line.id, isPercent(line) ? percentTyped(grams / base) : `${tenths(grams)} g`)
  }
  // What rounding leaves over goes into the water, so that the build weighs what it did.
  const last = water.at(-1)!.line
  if (lines.every(line => !isPercent(line))) {
    const whole = lines.reduce((sum, line) => sum + (sheet.line(line.id).weight ?? 0), 0)
    const others = lines
      .filter(line => line !== last)
      .reduce((sum, line) => sum + tenths(weights.get(line.id)!), 0)
    amounts.set(last.id, `${Number(Math.max(0, whole - others).toFixed(2))} g`)
  }
  return amounts
}

/** The step in which a build ripens, with its time for the new seed at the temperature that it is written for. */
function changeOfStep({ formula }: FigureSheet, id: string, { dilution, before, speed }: Feeding): Change[] {
  const stage = formula.stages.find(s => s.id === id)!
  const own = ripeningStep(stage)
  if (!own) return []
  // At any one temperature times are to each other as the logarithms of the dilutions have it.
  const ratio = ripeningHours(dilution, 22, speed) / ripeningHours(before.dilution, 22, speed)
  const { least, usual, most } = own.length
  const text = withLength(own.step.text, { least: least * ratio, usual: usual * ratio, most: most * ratio })
  if (text === own.step.text) return []
  const method = stage.method!.map(step => (step === own.step ? { ...step, text } : step))
  return [{ of: 'stage', formula: formula.id, id, value: { ...stage, method } }]
}

/**
 * Feeds builds of a formula: their seed, flour and water become what the feedings ask for, and the time of the step in which
 * each ripens what it takes with that seed; its temperature stays as written. One transaction; no changes where all is so.
 */
export function feedBuilds(sheet: FigureSheet, builds: readonly FedBuild[]): Transaction {
  const { formula } = sheet
  const changes = builds.flatMap(({ stage: id, feeding }): Change[] => {
    const stage = stageOf(sheet, id).stage
    const amounts = amountsOf(sheet, id, feeding)
    const at: Omit<LineAt, 'line'> = { formula: formula.id, stage: id }
    const lines = stage.lines.flatMap(line => {
      const amount = amounts.get(line.id)
      return amount === undefined || amount === line.amount ? [] : [putLine(at, { ...line, amount })]
    })
    return [...changeOfStep(sheet, id, feeding), ...lines]
  })
  const names = builds.map(({ stage }) => stageOf(sheet, stage).stage.name)
  const hours = builds.reduce((sum, { feeding }) => sum + feeding.hours, 0)
  return { label: feedingLabel(names, hours), changes }
}

/** The formula as it would be, worked out. */
export function sheetWith(sheet: FigureSheet, { changes }: Transaction): FigureSheet {
  const workbook = { ...emptyWorkbook, formulas: [sheet.formula] }
  return sheet.other(applyChanges(workbook, changes).workbook.formulas[0]!)
}

/** A reading before and after an edit. */
export interface ReadingChange {
  readonly reading: ReadingName
  readonly before: number | undefined
  readonly after: number | undefined
}

const alwaysTold: readonly ReadingName[] = ['trueHydration', 'prefermentedFlour']
const sameReading = 1e-5

/** Whether a reading is otherwise by more than a hundred-thousandth. */
const isChanged = ({ before, after }: ReadingChange): boolean =>
  before === undefined || after === undefined
    ? before !== after
    : Math.abs(before - after) > sameReading * Math.max(Math.abs(before), 1e-3)

/** What an edit does to the readings: to true hydration and prefermented flour, and to all others that change. */
export function readingsChanged(before: FigureSheet, after: FigureSheet): ReadingChange[] {
  return readingNames
    .filter(reading => reading !== 'hydrationWithoutSoakers' || hasSoaker(before))
    .map(reading => ({ reading, before: before.reading(reading), after: after.reading(reading) }))
    .filter(change => alwaysTold.includes(change.reading) || isChanged(change))
}
