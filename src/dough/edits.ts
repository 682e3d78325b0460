/** Every edit of a workbook, each as one transaction; but those of `rebase.js`, seldom wanted, which are fetched then. */

export { formulaIn, type LineAt, Refusal, type StageAt, together } from './edit-places.js'
export { holdReading, naturalGiver, releaseHold } from './hold-edits.js'
export { putJotting, removeJotting } from './jotting-edits.js'
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
export { bringBack, forgetState, keepState } from './state-edits.js'
