export { compile, type Evaluate } from './compile.js'
export { type CellError, type CellValue, ExpressionError } from './problem.js'
export type { Dimension, Expression, FunctionName, Operator, Tree } from './tree.js'
