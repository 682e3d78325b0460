/**
 * The edits of a workbook, each as one transaction. Those of kept states, jottings, batches, the shelf, the larder and of writing anew are not among
 * them: only what is fetched when it is first wanted makes them, and they come with it.
 */

export { formulaIn, type LineAt, type StageAt, together } from './edit-places.js'
export {
  finalDoughAt,
  renameFormula,
  renameWorkbook,
  setFlourWeight,
  setFormulaNote,
} from './formula-edits.js'
export { holdReading, naturalGiver, releaseHold } from './hold-edits.js'
export {
  addLine,
  enterAmount,
  enterIngredient,
  enterNote,
  markBase,
  moveLine,
  newLine,
  removeLines,
} from './line-edits.js'
export {
  addStage,
  moveStage,
  newStage,
  removeStage,
  renameStage,
  setFerments,
} from './stage-edits.js'
export { Refusal } from './words.js'
