export { guessTable, headingsKey } from './guess.js'
export { readTable } from './read.js'
export {
  type ColumnUse,
  columnUses,
  type ForeignRow,
  type ForeignTable,
  type Guess,
  type Limits,
  type Mapping,
  type RowRead,
  type StageMarks,
  stageMarks,
  type TableRead,
  type TotalCheck,
  usualLimits,
  type Watch,
} from './types.js'
export { headingUse } from './vocabulary.js'
export { inWords } from './words.js'
