/**
 * The edits of a workbook, each as one transaction. Those of the menus of rows, of kept states, jottings, batches, the shelf, the larder and of writing anew are not among
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
export { holdReading, releaseHold } from './hold-edits.js'
export {
  addLine,
  enterAmount,
  enterIngredient,
  enterNote,
  moveLine,
  newLine,
} from './line-edits.js'
export {
  addStage,
  moveStage,
  newStage,
  renameStage,
} from './stage-edits.js'
export { Refusal } from './words.js'
