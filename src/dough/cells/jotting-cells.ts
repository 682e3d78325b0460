import type { JottingPlan } from '../amounts/jottings.js'
import { cellOf, meaningInJotting } from '../outline/names.js'
import { nearName } from '../outline/near-names.js'
import type { Outline } from '../outline/outline.js'
import type { CellWriter } from './cell-writer.js'
import { cellMeant } from './line-cells.js'
import { cellProblem } from './words.js'

/** The baker's own calculations as cells. */
export function writeJottings(out: CellWriter, outline: Outline): void {
  for (const plan of outline.jottings.values())
    out.belonging({ of: 'jotting', id: plan.jotting.id }, () => writeJotting(out, outline, plan))
}

function writeJotting(
  out: CellWriter,
  outline: Outline,
  { name, jotting, expression, problem }: JottingPlan,
): void {
  const cell = cellOf.jotting(name)
  const unknown = expression?.names.map(n => meaningInJotting(n, outline)).find(m => m.kind === 'unknown')
  const why = unknown?.kind === 'unknown' ? unknown.problem : problem
  if (outline.tooMuch) out.fail(cell, jotting.name, outline.tooMuch)
  else if (why || !expression) {
    const near = nearName(jotting.text, outline)
    out.fail(cell, jotting.name, near ?? why ?? cellProblem({ code: 'nothingJotted' }))
  } else
    out.expression(cell, jotting.name, expression, n =>
      cellMeant(out, meaningInJotting(n, outline), n, outline.final),
    )
}
