export {
  type ColumnUse,
  columnUses,
  type ForeignTable,
  type Guess,
  guessTable,
  headingsKey,
  type Mapping,
  type RowRead,
  readTable,
  type StageMarks,
  type TableRead,
  type TotalCheck,
  type Watch,
} from './foreign/index.js'
export { writeHtml } from './html-table.js'
export { formulaFromLink, isFormulaLink, linkOf } from './link.js'
export { writeMarkdown } from './markdown.js'
export { writePlainText } from './plain-text.js'
export { readFormulas } from './read-formulas.js'
export { isPlainText, readPlainText } from './read-plain-text.js'
export type { FormulasRead } from './reader.js'
export { type RecipeLine, type RecipeRead, type RestOfRecipe, readRecipe } from './recipe/index.js'
export { type RecipeMarkup, recipeMarkup, recipeScript } from './recipe-markup.js'
export {
  type Incoming,
  mergeWorkbooks,
  type OnDifference,
  type RestoreChoice,
  type RestorePlan,
  restorePlan,
} from './restore.js'
export { sheetFigures } from './sheet-figures.js'
export { readWorkbookFile, type WorkbookRead, writeWorkbookFile } from './workbook-file.js'
export { type WriteOptions, type WrittenFigures, writeFormulas } from './write-formulas.js'
