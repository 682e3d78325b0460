import { type Formula, newId } from '../../dough/document/formula.js'

/** The formula with other ids throughout, and its holds still on the same lines. Kept states are left as they are. */
export function withIds(formula: Formula, idFor: () => string = newId): Formula {
  const ids = new Map(formula.stages.flatMap(s => s.lines.map(l => [l.id, idFor()] as const)))
  const { holds, jottings } = formula
  return {
    ...formula,
    id: idFor(),
    stages: formula.stages.map(s => ({
      ...s,
      id: idFor(),
      lines: s.lines.map(l => ({ ...l, id: ids.get(l.id)! })),
      ...(s.method && { method: s.method.map(step => ({ ...step, id: idFor() })) }),
    })),
    ...(holds && { holds: holds.map(h => ({ ...h, line: ids.get(h.line) ?? h.line })) }),
    ...(jottings && { jottings: jottings.map(j => ({ ...j, id: idFor() })) }),
  }
}

/** The formula with ids that only say where things stand: formulas that differ in their ids alone become equal. */
export function withoutIds(formula: Formula): Formula {
  let count = 0
  return withIds(formula, () => `n${count++}`)
}
