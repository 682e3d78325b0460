import type { Day } from '../../dough/document/day.js'
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

/** What the parts of a formula that a day speaks of are called in another of the same make: id by id. */
export function idsFor(from: Formula, to: Formula): ReadonlyMap<string, string> {
  const ids = new Map([[from.id, to.id]])
  for (const [at, stage] of from.stages.entries()) {
    const other = to.stages[at]
    if (!other) continue
    ids.set(stage.id, other.id)
    for (const [n, line] of stage.lines.entries()) ids.set(line.id, other.lines[n]?.id ?? line.id)
    for (const [n, step] of (stage.method ?? []).entries()) ids.set(step.id, other.method?.[n]?.id ?? step.id)
  }
  return ids
}

/** A day that speaks of formulas and their parts by these ids; the ids of its own parts stay. */
export function withTheseIds(day: Day, ids: ReadonlyMap<string, string>): Day {
  const here = (id: string) => ids.get(id) ?? id
  const { mixes } = day
  return {
    ...day,
    breads: day.breads.map(bread => ({ ...bread, formula: here(bread.formula) })),
    // The name of a moment begins with the bread's id; stage and step follow.
    holds: day.holds.map(hold => ({
      ...hold,
      moment: hold.moment
        .split(' ')
        .map((id, at) => (at === 0 ? id : here(id)))
        .join(' '),
    })),
    ...(mixes && {
      mixes: mixes.map(mix => ({
        ...mix,
        stage: here(mix.stage),
        ...(mix.lines && { lines: mix.lines.map(line => ({ ...line, line: here(line.line) })) }),
      })),
    }),
  }
}
