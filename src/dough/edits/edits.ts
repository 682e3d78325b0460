/**
 * The edits of a workbook, each as one transaction. Those of kept states, of jottings and of writing anew are not among
 * them: only what is fetched when it is first wanted makes them, and they come with it.
 */

export { formulaIn, type LineAt, type StageAt, together } from './edit-places.js'
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
  addFormulas,
  blankFormula,
  copyOf,
  defineIngredient,
  duplicateFormula,
  finalDoughAt,
  forgetIngredient,
  freeName,
  removeFormula,
  renameFormula,
  renameWorkbook,
  replaceFormula,
  setBatch,
  setFlourWeight,
  setFormulaNote,
  setScale,
} from './shelf-edits.js'
export {
  addStage,
  moveStage,
  newStage,
  removeStage,
  renameStage,
  setFerments,
  setKeepBack,
  setStageLoss,
} from './stage-edits.js'
export { Refusal } from './words.js'
