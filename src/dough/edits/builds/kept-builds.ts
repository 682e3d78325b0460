import { type Formula, type Line, nameKey, type Stage, sameName } from '../../document/formula.js'

/** A stage of a formula. */
export interface StageOf {
  readonly formula: Formula
  readonly stage: Stage
}

/** The stages of a workbook that are builds of its own, by what the build's name is compared by. */
export function buildsOf(formulas: readonly Formula[]): ReadonlyMap<string, readonly StageOf[]> {
  const all = new Map<string, StageOf[]>()
  for (const formula of formulas)
    for (const stage of formula.stages) {
      if (!stage.build) continue
      const key = nameKey(stage.build)
      const known = all.get(key)
      if (known) known.push({ formula, stage })
      else all.set(key, [{ formula, stage }])
    }
  return all
}

/** The stage that a line of `stage` takes. */
export const takenBy = ({ formula, stage }: StageOf, { ingredient }: Line): Stage | undefined =>
  formula.stages.find(other => other !== stage && sameName(other.name, ingredient))

/** A stage and all that it takes, each once and before what takes it. */
export function chainOf(of: StageOf): readonly StageOf[] {
  const chain: StageOf[] = []
  const seen = new Set<Stage>()
  const add = (one: StageOf): void => {
    if (seen.has(one.stage)) return
    seen.add(one.stage)
    for (const line of one.stage.lines) {
      const taken = takenBy(one, line)
      if (taken) add({ formula: one.formula, stage: taken })
    }
    chain.push(one)
  }
  add(of)
  return chain
}

/** What a build is, in words: how its lines are called elsewhere does not matter where they take a build themselves. */
function told(of: StageOf): string {
  const { ferments, loss, lines, method = [] } = of.stage
  const named = (line: Line) => {
    const build = takenBy(of, line)?.build
    return build ? ['build', nameKey(build)] : ['', nameKey(line.ingredient)]
  }
  return JSON.stringify([
    ferments ?? '',
    loss ?? '',
    lines.map(line => [...named(line), line.amount, line.note, line.base ?? false]),
    method.map(({ kind, does, text, note }) => [kind, does, text, note]),
  ])
}

/** Whether two stages are one build, whatever they are called, kept back or taken for. */
export const isSameBuild = (a: StageOf, b: StageOf): boolean => told(a) === told(b)
