import type { Worded } from '../../engine/index.js'
import type { Scale } from '../document/batch.js'
import type { CountsAs, Formula, Hold, Line } from '../document/formula.js'
import type { Larder } from '../document/larder.js'
import type { AmountColumn, ReadingName } from '../document/reading-names.js'
import type { Weighed } from '../weighed/weighing.js'
import type { Touched } from './touched.js'
import type { WorkedOut } from './worked-out.js'

/** Why there is no figure. */
export interface FigureProblem extends Worded {
  readonly cause?: string // id of the line in which it arose; of holds without an answer the first line that gives
}

/** What the sheet shows of one line. A figure is undefined where it could not be worked out. */
export interface LineFigures {
  readonly weight: number | undefined // grams, as written
  readonly batch: number | undefined // grams in the batch, unrounded
  readonly percent: number | undefined // fraction of the stage's base
  readonly wholeDough: number | undefined // fraction of all flour; on the last line of its ingredient only
  readonly typedIn: AmountColumn | undefined // the column that holds what was typed; undefined: nothing, or it gives for a reading
  readonly typed: string // what was typed as its column shows it: `70` for `70%`, `20` for `20 g`, `2 tsp`
  readonly plain: boolean // typed is just a number of its column's own unit
  readonly is: CountsAs['kind'] | 'stage' | 'unknown'
  readonly starterHydration: number | undefined // fraction of 1, starters only
  readonly isBase: boolean // the line is (part of) what 100 % means in its stage
  readonly gives: Hold | undefined // the hold for which its weight is solved
  readonly isStale: boolean // the weight is the last good one: the holds as they are have no answer
  readonly problem: FigureProblem | undefined // why there is no figure, or none to trust
}

/** It weighs nothing, but only because nothing has been said: its figures are to be left open. */
export const isUnsaid = (line: Line, { weight, gives }: LineFigures): boolean =>
  line.amount === '' && !gives && !weight

/** What the sheet shows of one stage. Weights are grams as written. */
export interface StageFigures {
  readonly weight: number | undefined
  readonly build: number | undefined // made in the batch
  readonly needed: number | undefined // of that, what later stages take; undefined as written and for the final dough
  readonly base: number | undefined
  readonly percent: number | undefined // all lines over the base, fraction of 1
  readonly hydration: number | undefined // all its water over all its flour, fraction of 1; undefined without flour
  readonly ferments: boolean
  readonly isFinal: boolean
  readonly taken: number | undefined // what later stages take of it; undefined for the final dough
  readonly problem: FigureProblem | undefined
}

/** What the sheet shows of a jotting. */
export interface JottingFigures {
  readonly value: number | undefined // grams where it measures a weight; 1 for yes
  readonly measures: 'number' | 'weight' | 'truth'
  readonly said: string // with its unit, as a sentence says it; `–` without a value
  readonly problem: FigureProblem | undefined
}

/** The whole dough by weight, for the dough bar: grams. Carried is what starters and earlier stages brought. */
export interface DoughParts {
  readonly flour: number
  readonly flourCarried: number // part of flour
  readonly water: number
  readonly waterCarried: number // part of water
  readonly salt: number
  readonly other: number
}

/** A formula with its figures, kept up to date as it changes. */
export interface FigureSheet {
  readonly formula: Formula // the document as it stands
  readonly larder: Larder
  readonly scale: Scale // the baker's, in whose steps the batch is weighed
  reading(name: ReadingName): number | undefined
  /** Why a reading has no number. */
  readingProblem(name: ReadingName): FigureProblem | undefined
  line(id: string): LineFigures // throws RangeError for a line not in the formula
  stage(id: string): StageFigures
  jotting(id: string): JottingFigures
  /** The names an amount or a jotting may use: lines of the final dough, jottings, stages' own, totals, readings. */
  readonly usableNames: readonly string[]
  readonly parts: DoughParts | undefined
  /** What is weighed of a line of the batch on the baker's scale; undefined where the batch is not known. */
  weighed(line: string): Weighed | undefined
  /** The reading of the dough as it is weighed, steps of the scale and all. */
  weighedReading(name: ReadingName): number | undefined
  /** Another formula with the same larder and scale. */
  other(formula: Formula): FigureSheet
  /** Brings the sheet to another state of the formula or the larder; recomputes only what depends on what changed. */
  update(formula: Formula, larder?: Larder, scale?: Scale): Touched
  /** What remarks and workings are read from. */
  readonly workedOut: WorkedOut
}
