export { readFormulas } from './csv/read-formulas.js'
export type { FormulasRead } from './csv/row-reader.js'
export { sheetFigures } from './csv/sheet-figures.js'
export { type WriteOptions, type WrittenFigures, writeFormulas } from './csv/write-formulas.js'
export { formulaFromLink, isFormulaLink, linkOf } from './data/link.js'
export {
  type Incoming,
  mergeWorkbooks,
  type OnDifference,
  type RestoreChoice,
  type RestorePlan,
  restorePlan,
} from './data/restore.js'
export { readWorkbookFile, type WorkbookRead, writeWorkbookFile } from './data/workbook-file.js'
export { type RecipeMarkup, recipeMarkup, recipeScript } from './markup/recipe-markup.js'
export {
  type RecipeLine,
  type RecipeRead,
  type RecipeStep,
  type RestOfRecipe,
  readRecipe,
} from './recipe/index.js'
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
} from './tables/index.js'
export { writeHtml } from './text/html-table.js'
export { writeMarkdown } from './text/markdown.js'
export { writePlainText } from './text/plain-text.js'
export { readHtml } from './text/read-html.js'
export { readMarkdown } from './text/read-markdown.js'
export { isPlainText, readPlainText } from './text/read-plain-text.js'
