/** The build reads a `.csv` file in as its text. */
declare module '*.csv' {
  const text: string
  export default text
}

/** The build reads the example files and hands over their formulas. */
declare module 'examples:formulas' {
  const formulas: readonly import('../dough/document/formula.js').Formula[]
  export default formulas
}
