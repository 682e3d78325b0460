import type { ColumnUse, RowRead, StageMarks } from '../../../src/exchange/tables/index.js'

export const useWords: Readonly<Record<ColumnUse, string>> = {
  ingredient: 'Ingredient',
  amount: 'Amount',
  unit: 'Unit of the amount',
  percent: 'Percent',
  grams: 'Grams',
  kilograms: 'Kilograms',
  ounces: 'Ounces',
  pounds: 'Pounds',
  'of a stage': 'Amounts of this stage',
  stage: 'Stage',
  formula: 'Formula',
  note: 'Note',
  'leave out': 'Leave out',
}

export const markWords: Readonly<Record<StageMarks, string>> = {
  column: 'In a column',
  headings: 'Rows that name them',
  blocks: 'Blank rows between them',
  columns: 'A column for each',
  none: 'One dough, no stages',
}

const nouns: Readonly<Record<RowRead['became'], readonly [one: string, several: string]>> = {
  line: ['line', 'lines'],
  setting: ['setting', 'settings'],
  stage: ['name of a stage', 'names of stages'],
  formula: ['name of a bread', 'names of breads'],
  total: ['total', 'totals'],
  note: ['note', 'notes'],
  headings: ['row of headings', 'rows of headings'],
  blank: ['blank', 'blank'],
  'not understood': ['not understood', 'not understood'],
}

/** `24 rows: 18 lines, 2 totals, 1 not understood`. */
export function countsInWords(counts: Readonly<Partial<Record<RowRead['became'], number>>>): string {
  const parts = Object.entries(nouns).flatMap(([became, [one, several]]) => {
    const count = counts[became as RowRead['became']] ?? 0
    return count === 0 ? [] : [`${count} ${count === 1 ? one : several}`]
  })
  const rows = Object.values(counts).reduce((sum, count) => sum + count, 0)
  return `${rows} ${rows === 1 ? 'row' : 'rows'}: ${parts.join(', ')}.`
}

/** What became of a row, in a word or two before what it says. */
export const becameWords: Readonly<Record<RowRead['became'], string>> = {
  line: 'Line',
  setting: 'Setting',
  stage: 'Stage',
  formula: 'Bread',
  total: 'Total, not a line',
  note: 'Note',
  headings: 'Headings',
  blank: 'Blank',
  'not understood': 'Not understood',
}
