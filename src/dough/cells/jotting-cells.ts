import type { JottingPlan } from '../amounts/jottings.js'
import type { Meant } from '../outline/meant.js'
import { cellOf, meaningInJotting } from '../outline/names.js'
import { nearName } from '../outline/near-names.js'
import type { Outline } from '../outline/outline.js'
import type { CellWriter } from './cell-writer.js'
import { cellMeant } from './line-cells.js'
import { cellProblem } from './words.js'

/** The baker's own calculations as cells. */
export function writeJottings(out: CellWriter, outline: Outline, called: Called = cell => cell): void {
  for (const plan of outline.jottings.values())
    out.belonging({ of: 'jotting', id: plan.jotting.id }, () => writeJotting(out, outline, plan, called))
}

/** The name of a jotting's cell, or of one that it takes from, for what kind of thing: as it is written, or scaled. */
export type Called = (cell: string, taken?: Meant['kind']) => string

function writeJotting(
  out: CellWriter,
  outline: Outline,
  { name, jotting, expression, problem }: JottingPlan,
  called: Called,
): void {
  const cell = called(cellOf.jotting(name))
  const unknown = expression?.names.map(n => meaningInJotting(n, outline)).find(m => m.kind === 'unknown')
  const why = unknown?.kind === 'unknown' ? unknown.problem : problem
  if (outline.tooMuch) out.fail(cell, jotting.name, outline.tooMuch)
  else if (why || !expression) {
    const near = nearName(jotting.text, outline)
    out.fail(cell, jotting.name, near ?? why ?? cellProblem({ code: 'nothingJotted' }))
  } else
    out.expression(cell, jotting.name, expression, n => {
      const meant = meaningInJotting(n, outline)
      return called(cellMeant(out, meant, n, outline.final), meant.kind)
    })
}
