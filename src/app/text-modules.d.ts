/** The build reads a `.csv` file in as its text. */
declare module '*.csv' {
  const text: string
  export default text
}
