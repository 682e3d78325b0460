import type { CellValue, Graph, Worded } from '../../engine/index.js'
import type { CellPlan } from '../cells/plan-cells.js'
import type { Outline } from '../outline/outline.js'
import type { Noticed } from './noticed.js'
import type { Weighed } from './weighing.js'

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

/** A cell's number; undefined where it has none. */
export function numberIn({ graph }: Pick<WorkedOut, 'graph'>, cell: string): number | undefined {
  const value = graph.value(cell)
  return typeof value === 'number' ? value : undefined
}
