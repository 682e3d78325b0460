/** The names programs and tests may use: formulas in, figures out, without a browser. */
import './dough/larder/usual-notes.js'

export { type DayMoment, type DaySheet, openDay } from './day/plan/open-day.js'
export type { TimeWorking } from './day/plan/time-working.js'
export type { ToWeigh } from './day/plan/weigh-list.js'
export { dilutionFor, growthRate, ripeningHours } from './day/temperature/growth.js'
export { type HeatPart, iceFor, waterByFactors, waterTemperature } from './day/temperature/water.js'
export type { Batch, KeepBack, Pieces, Scale } from './dough/document/batch.js'
export type { Day, DayBread, DayHold, DayMix, Oven } from './dough/document/day.js'
export type {
  CountsAs,
  Formula,
  Hold,
  Jotting,
  Line,
  Meaning,
  Place,
  Problem,
  Stage,
  Step,
} from './dough/document/formula.js'
export { type Ingredient, type Larder, larderOf } from './dough/document/larder.js'
export type { AmountColumn, ReadingName } from './dough/document/reading-names.js'
export { readingNames } from './dough/document/reading-names.js'
export type { FormulaSheet } from './dough/formula-sheet.js'
export { openFormula } from './dough/formula-sheet.js'
export { usualLarder } from './dough/larder/usual-larder.js'
export type { DoughParts, JottingFigures, LineFigures, StageFigures } from './dough/sheet/figures.js'
export type { Weighed } from './dough/weighed/weighing.js'
export { type CellName, type Source, type Working, workingText } from './dough/workings/working.js'
export { type Arrivals, type ArriveOptions, arrive } from './exchange/arriving/arrive.js'
export type { ArrivalKind, Arrived } from './exchange/arriving/arriving.js'
export type { ArrivedRow, ArrivedStep, Reason } from './exchange/arriving/rows.js'
export { readFormulas, writeFormulas } from './exchange/index.js'
export {
  type AloneGroup,
  solveTimes,
  type TimeConflict,
  type TimeHold,
  type TimePlan,
  type TimeProblem,
  type TimeSpan,
  type TimeUse,
} from './times/index.js'
