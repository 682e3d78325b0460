/** The names programs and tests may use: formulas in, figures out, without a browser. */

export type { Batch, KeepBack, Pieces, Scale } from './dough/batch.js'
export type {
  AmountColumn,
  DoughParts,
  FormulaSheet,
  JottingFigures,
  LineFigures,
  ReadingName,
  StageFigures,
} from './dough/figures.js'
export { readingNames } from './dough/figures.js'
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
} from './dough/formula.js'
export { openFormula } from './dough/formula-sheet.js'
export { type Ingredient, type Larder, larderOf } from './dough/larder.js'
export { usualLarder } from './dough/usual-larder.js'
export type { Weighed } from './dough/weighing.js'
export { type CellName, type Source, type Working, workingText } from './dough/working.js'
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
