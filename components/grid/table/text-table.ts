import Papa from 'papaparse'

/** Rows of tab-separated text, quoted by the rule of CSV; lines end in `\n`, and leading empty cells stay. */
export const textRows = (text: string): string[][] =>
  Papa.parse<string[]>(text, { delimiter: '\t', newline: '\n' }).data
