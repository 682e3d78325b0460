import type { CellValue, Graph, Worded } from '../../engine/index.js'
import type { CellPlan } from '../cells/plan-cells.js'
import { cellOf } from '../outline/names.js'
import type { Outline } from '../outline/outline.js'
import type { Weighed } from '../weighed/weighing.js'
import type { Noticed } from './noticed.js'

/** A formula that is worked out: what figures, remarks and workings are read from. */
export interface WorkedOut {
  readonly outline: Outline
  readonly plan: CellPlan
  readonly graph: Graph
  lastUpdate(): { readonly planned: number; readonly defined: number } // numbers of cells
  explain(value: CellValue): Worded | undefined // why there is no number, with cells called by their words
  weighed(line: string): Weighed | undefined // by its id
  readonly noticed: Noticed
}

type Worked = Pick<WorkedOut, 'graph' | 'plan' | 'outline'>

/** A cell's value; of a weight as it is scaled, where the dough's weight is held in proportion. */
export function valueIn({ graph, plan, outline }: Worked, cell: string): CellValue {
  const scaled = cellOf.scaled(cell)
  return graph.value(outline.doughWeight !== undefined && plan.cells.has(scaled) ? scaled : cell)
}

/** A cell's number; undefined where it has none. */
export function numberIn(seen: Worked, cell: string): number | undefined {
  const value = valueIn(seen, cell)
  return typeof value === 'number' ? value : undefined
}
