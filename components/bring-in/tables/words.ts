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

export const columnsWords = {
  howRead: 'How the columns are read',
  asRemembered: 'The columns are read as you said for a table with these headings before.',
  guessAnew: 'Guess them anew',
  firstRows: 'The first rows of the table',
  moreRows: (count: number): string =>
    `And ${count} more ${count === 1 ? 'row' : 'rows'}: what became of each stands below, in the lines as read.`,
  column: (number: number): string => `Column ${number}`, // without a heading
  asYouSaid: 'As you said.',
  pleaseLook: 'Please look.',
} as const

export const rowWords = {
  withoutAmount: 'without an amount',
  inStage: (stage: string): string => `in ${stage}`,
  /** What became of a row that is no line, and what it says. */
  became: (became: RowRead['became'], says: string): string => `${becameWords[became]}: ${says}`,
} as const

/** What is read of the table as a whole. */
export const settingWords = {
  decimal: 'Decimal sign',
  point: 'Point, as in 2.5',
  comma: 'Comma, as in 2,5',
  stages: 'Stages are told by',
  headings: 'Rows above the first line',
  breadName: 'Name of the bread',
  noName: 'Untitled formula',
} as const
