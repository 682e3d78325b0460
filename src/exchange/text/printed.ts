import { batchWords } from '../../dough/document/batch-words.js'
import type { Formula, Hold, Line, Stage, Step } from '../../dough/document/formula.js'
import { finalDoughOf, hasBatch, isInProportion, nameKey, sameName } from '../../dough/document/formula.js'
import { type ReadingName, readingNames } from '../../dough/document/reading-names.js'
import { holdWords, isWeightReading, per100, readingWords } from '../../dough/document/words.js'
import { type FigureSheet, isUnsaid } from '../../dough/sheet/figures.js'
import { hasSoaker } from '../../dough/sheet/ranges.js'
import { sumOf } from '../values/written-weights.js'

/** A line as it is printed: figures are fractions of 1 and grams, undefined where they are not known. */
export interface PrintedLine {
  readonly ingredient: string
  readonly typed: string // the amount as typed, with its unit
  readonly isPlain: boolean // and that is just the percentage or the grams beside it
  readonly percent: number | undefined
  readonly grams: number | undefined
  readonly batch: number | undefined // as weighed on the baker's scale
  readonly note: string
  readonly isStage: boolean
  readonly gives: Hold | undefined
}

export interface PrintedStage {
  readonly stage: Stage
  readonly name: string
  readonly isFinal: boolean
  readonly facts: readonly string[] // `ferments`, `220 g as written`, …
  readonly lines: readonly PrintedLine[]
  readonly method: readonly Step[]
}

export interface PrintedReading {
  readonly name: ReadingName
  readonly label: string
  readonly isWeight: boolean
  readonly value: number
  readonly weighed: number | undefined // in the batch as it is weighed
}

/** What of a formula goes on paper, in the order in which it is read. */
export interface Printed {
  readonly name: string
  readonly note: string
  readonly hasBatch: boolean
  readonly stages: readonly PrintedStage[]
  readonly readings: readonly PrintedReading[]
  readonly making: readonly string[] // the batch and its losses, a sentence each
  readonly holds: readonly string[] // a sentence each
  readonly jottings: readonly { readonly name: string; readonly text: string; readonly said: string }[]
}

/** Grams as a label says them: at most one decimal from 10 g on, two below. */
export const gramsSaid = (grams: number): string =>
  `${Number(grams.toFixed(Math.abs(grams) >= 9.995 ? 1 : 2))} g`

/** A fraction of 1 as a percentage: `70.47 %`. */
export const percentSaid = (fraction: number): string => `${Number((fraction * 100).toFixed(2))} %`

export const readingSaid = ({ isWeight }: PrintedReading, value: number): string =>
  isWeight ? gramsSaid(value) : percentSaid(value)

/** Figures of one column with as many decimals as the least of them needs, so that they stand on the decimal. */
export function inColumn(values: readonly (number | undefined)[], unit: 'g' | '%'): (string | undefined)[] {
  const known = values.filter(v => v !== undefined).map(v => (unit === '%' ? v * 100 : v))
  const least = Math.min(...known.filter(v => v !== 0).map(Math.abs), Infinity)
  const isWhole = known.every(v => Math.abs(v - Math.round(v)) < 0.005)
  const digits = isWhole && unit === 'g' ? 0 : least < 1 ? 2 : 1
  return values.map(value => {
    if (value === undefined) return undefined
    const shown = (unit === '%' ? value * 100 : value).toFixed(digits)
    return /^-0(?:\.0+)?$/.test(shown) ? shown.slice(1) : shown
  })
}

/** The figures of a stage's lines, a column each. */
export const figureColumns = (lines: readonly PrintedLine[]) => ({
  percent: inColumn(
    lines.map(line => line.percent),
    '%',
  ),
  grams: inColumn(
    lines.map(line => line.grams),
    'g',
  ),
  batch: inColumn(
    lines.map(line => line.batch),
    'g',
  ),
})

function factsOf(sheet: FigureSheet, stage: Stage, isBatch: boolean): string[] {
  const { weight, ferments, hydration, ...exact } = sheet.stage(stage.id)
  const weighed = (lines: readonly Line[]) => sumOf(lines.map(({ id }) => sheet.weighed(id)?.grams))
  const takers = sheet.formula.stages.flatMap(s => s.lines).filter(l => sameName(l.ingredient, stage.name))
  const build = weighed(stage.lines) ?? exact.build
  const needed = exact.needed === undefined ? undefined : (weighed(takers) ?? exact.needed)
  const facts: string[] = []
  if (weight !== undefined) facts.push(`${gramsSaid(weight)} as written`)
  if (isBatch && build !== undefined) facts.push(`${gramsSaid(build)} in the batch`)
  if (isBatch && needed !== undefined && needed !== build) facts.push(`${gramsSaid(needed)} needed`)
  if (stage.keepBack)
    facts.push(
      stage.keepBack === 'seed' ? 'as much kept back as went in' : `${gramsSaid(stage.keepBack)} kept back`,
    )
  if (stage.loss) facts.push(`${percentSaid(stage.loss)} lost`)
  if (hydration !== undefined) facts.push(`${percentSaid(hydration)} hydration`)
  if (ferments) facts.push('ferments')
  return facts
}

function makingOf({ batch }: Formula): string[] {
  if (!batch) return []
  const making = batch.make === 'as written' ? [] : [`Make ${batchWords(batch)}`]
  if (batch.loss) making.push(`${per100(batch.loss)} of the dough lost on the way`)
  if (batch.bakeLoss) making.push(`${per100(batch.bakeLoss)} lost in the oven`)
  return making
}

function holdsOf(formula: Formula): string[] {
  const { lines } = finalDoughOf(formula)
  return (formula.holds ?? []).flatMap(hold => {
    if (isInProportion(hold)) return [`${holdWords(hold, '')}; every line gives, in proportion`]
    const line = lines.find(({ id }) => id === hold.line)
    if (!line) return []
    const words = holdWords(hold, line.ingredient)
    return hold.reading === 'wholeDough' ? [words] : [`${words}; ${line.ingredient} gives`]
  })
}

/** What of a formula goes on paper. */
export function printedOf(sheet: FigureSheet): Printed {
  const { formula } = sheet
  const isBatch = hasBatch(formula)
  const stageNames = new Set(formula.stages.map(({ name }) => nameKey(name)))
  return {
    name: formula.name,
    note: formula.note,
    hasBatch: isBatch,
    stages: formula.stages.map((stage, at) => ({
      stage,
      name: stage.name,
      isFinal: at === formula.stages.length - 1,
      facts: factsOf(sheet, stage, isBatch),
      lines: stage.lines.map(line => {
        const figures = sheet.line(line.id)
        const { weight, percent, batch, plain, gives } = figures
        const said = !isUnsaid(line, figures)
        return {
          ingredient: line.ingredient,
          typed: line.amount,
          isPlain: plain || line.amount === '',
          percent: said ? percent : undefined,
          grams: said ? weight : undefined,
          batch: said && isBatch ? (sheet.weighed(line.id)?.grams ?? batch) : undefined,
          note: line.note,
          isStage: stageNames.has(nameKey(line.ingredient)),
          gives,
        }
      }),
      method: stage.method ?? [],
    })),
    readings: readingNames.flatMap((name): PrintedReading[] => {
      const value = sheet.reading(name)
      if (value === undefined || (value < leastTold && !isUsual(name))) return []
      if (name === 'hydrationWithoutSoakers' && !hasSoaker(sheet)) return []
      const words = readingWords[name]
      return [
        {
          name,
          label: words.charAt(0).toUpperCase() + words.slice(1),
          isWeight: isWeightReading(name),
          value,
          weighed: isBatch ? sheet.weighedReading(name) : undefined,
        },
      ]
    }),
    making: makingOf(formula),
    holds: holdsOf(formula),
    jottings: (formula.jottings ?? []).map(({ id, name, text }) => ({
      name,
      text,
      said: sheet.jotting(id).said,
    })),
  }
}

const leastTold = 0.0005
/** Readings that are told even at 0; the others only where a formula has something of them. */
const isUsual = (name: ReadingName): boolean => !['fat', 'sugar', 'egg', 'milk'].includes(name)
