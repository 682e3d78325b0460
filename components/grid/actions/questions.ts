import type { CellName } from '../../../src/dough/workings/working.js'
import { type Column, isNumber, type Row } from '../table/table.js'

/** A number one can ask about, as its cell shows it. */
export interface Question {
  readonly cell: CellName
  readonly figure: string // with its unit: `735 g`
}

/** What can be asked of a cell; of one without a number, of the row's weight. Undefined where there is no number. */
export function questionAt(row: Row, column: Column, batch: boolean): Question | undefined {
  const of = isNumber(column) ? column : batch ? 'batch' : 'weight'
  switch (row.kind) {
    case 'line': {
      if (of === 'wholeDough' && row.wholeDough.text === '') return undefined
      if (of === 'batch') return { cell: `line ${row.key} batch`, figure: `${row.batch?.text ?? ''} g` }
      const { text } = row[of]
      return { cell: `line ${row.key} ${of}`, figure: of === 'weight' ? `${text} g` : `${text} %` }
    }
    case 'stage': {
      const figure = row.stage.name
      return { cell: `stage ${row.stage.id} ${batch ? 'build' : 'weight'}`, figure }
    }
    case 'sum':
      if (of === 'wholeDough') return undefined
      if (of === 'percent') return { cell: `stage ${row.stage} base`, figure: `${row.percent} %` }
      if (of === 'batch') return { cell: `stage ${row.stage} build`, figure: `${row.batch?.text ?? ''} g` }
      return { cell: `stage ${row.stage} weight`, figure: `${row.weight} g` }
    case 'add':
      return undefined
  }
}
