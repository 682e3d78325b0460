import { cellOf, meaningInJotting } from '../outline/names.js'
import { nearName } from '../outline/near-names.js'
import type { Outline } from '../outline/outline.js'
import type { CellWriter } from './cell-writer.js'
import { cellMeant } from './line-cells.js'
import { cellProblem } from './words.js'

/** The baker's own calculations as cells. */
export function writeJottings(out: CellWriter, outline: Outline): void {
  for (const { name, jotting, expression, problem } of outline.jottings.values()) {
    const cell = cellOf.jotting(name)
    const unknown = expression?.names.map(n => meaningInJotting(n, outline)).find(m => m.kind === 'unknown')
    const not = problem ? cellProblem({ code: 'amountNotUnderstood', why: problem }) : undefined
    const why = unknown?.kind === 'unknown' ? unknown.problem : not
    if (why || !expression) {
      const near = nearName(jotting.text, outline)
      out.fail(cell, jotting.name, near ?? why ?? cellProblem({ code: 'nothingJotted' }))
    } else
      out.expression(cell, jotting.name, expression, n =>
        cellMeant(out, meaningInJotting(n, outline), n, outline.final),
      )
  }
}
