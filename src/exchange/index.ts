export { readFormulas } from './read-formulas.js'
export type { FormulasRead } from './reader.js'
export { sheetFigures } from './sheet-figures.js'
export { type WriteOptions, type WrittenFigures, writeFormulas } from './write-formulas.js'
