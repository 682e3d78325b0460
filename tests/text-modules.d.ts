/** Tests read a style sheet in as its text, by `with { type: 'text' }`. */
declare module '*.css' {
  const text: string
  export default text
}
