import type { Column, Row } from '../table/table.js'

const columnNames: Readonly<Record<Column, string>> = {
  ingredient: 'ingredient',
  percent: '% of flour',
  weight: 'grams',
  wholeDough: '% whole dough',
  batch: 'batch, grams',
  note: 'note',
  actions: 'actions',
}

/** The name of a row for those who listen. */
export function rowName(row: Row): string {
  switch (row.kind) {
    case 'stage':
      return row.stage.name
    case 'line':
      return row.line.ingredient || 'line without an ingredient'
    case 'add':
      return `new line of ${row.stageName}`
    case 'sum':
      return `sum of ${row.stageName}`
  }
}

/** The name of an editor. */
export const editorName = (row: Row, column: Column): string => `${rowName(row)}, ${columnNames[column]}`

export const listNames = { ingredient: 'Ingredients', names: 'Names' } as const

/** What is said beside a name that an editor offers. */
export const choiceMarks = { stage: 'stage', jotting: 'jotting', dough: 'of the dough' } as const

/** Labels of the edits that begin a line. */
export const addLabel = (ingredient: string): string => `Add ${ingredient}`
export const addLineLabel = 'Add a line'
