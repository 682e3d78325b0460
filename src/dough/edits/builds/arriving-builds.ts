import { type Formula, nameKey } from '../../document/formula.js'
import { buildsOf, isSameBuild, type StageOf, takenBy } from './kept-builds.js'

/** Formulas as they can stand beside those that are here. */
export interface ArrivingBuilds {
  readonly formulas: readonly Formula[]
  /** By the id of a formula: its builds that are not as those of that name here. Their stages are its own now. */
  readonly apart: ReadonlyMap<string, readonly string[]>
}

const withoutBuild = (formula: Formula, id: string): Formula => ({
  ...formula,
  stages: formula.stages.map(stage => {
    if (stage.id !== id) return stage
    const { build: _, ...own } = stage
    return own
  }),
})

/** A stage that cannot go on as a build: it differs from the one here, or takes one that does. */
function differing(formula: Formula, known: (build: string) => StageOf | undefined): StageOf | undefined {
  const all = formula.stages.map(stage => ({ formula, stage }))
  return all.find(of => {
    if (!of.stage.build) return false
    if (of.stage.lines.some(line => takenBy(of, line)?.build === undefined && takenBy(of, line))) return true
    const here = known(of.stage.build)
    return here !== undefined && !isSameBuild(here, of)
  })
}

/** Has builds of formulas that arrive be those of the same name here, or, where they differ, their own. */
export function arrivingBuilds(here: readonly Formula[], arriving: readonly Formula[]): ArrivingBuilds {
  const known = new Map([...buildsOf(here)].map(([key, [first]]) => [key, first!]))
  const apart = new Map<string, string[]>()
  const formulas = arriving.map(formula => {
    let now = formula
    for (
      let of = differing(now, b => known.get(nameKey(b)));
      of;
      of = differing(now, b => known.get(nameKey(b)))
    ) {
      apart.set(formula.id, [...(apart.get(formula.id) ?? []), of.stage.build!])
      now = withoutBuild(now, of.stage.id)
    }
    for (const [key, [first]] of buildsOf([now])) if (!known.has(key)) known.set(key, first!)
    return now
  })
  return { formulas, apart }
}
