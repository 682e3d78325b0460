import '../../dough/weighed/weighed-batch.js'
import { type Day, usualLeeway } from '../../dough/document/day.js'
import type { Formula } from '../../dough/document/formula.js'
import { rounded } from '../../dough/weighed/weighing.js'
import { buildsIn } from '../course/day-problem.js'
import type { Weights } from '../plan/weigh-list.js'

/** A line of a build, as the scale weighs it. Grams. */
export interface MadeLine {
  readonly key: string // its own within the build
  readonly ingredient: string
  readonly isStage: boolean // an earlier build, which is made and not bought
  readonly isStarter: boolean
  readonly grams: number | undefined // undefined: not known
  readonly step: number // of the scale there
  readonly note: string
}

/** One thing that is mixed on a day: a stage of a bread, or of several breads at once. */
export interface MadeBuild {
  readonly key: string // its own on the day
  readonly name: string // of its stage
  readonly breads: readonly string[] // ids of those it is made for
  readonly parts: readonly number[] // what of it is made for each of them, fractions of 1
  readonly isFinal: boolean
  readonly lines: readonly MadeLine[]
  readonly total: number | undefined // of what is weighed; undefined: not known of all of it
}

/** What is made on a day. */
export interface DayMade {
  readonly day: Day
  readonly formulas: readonly Formula[] // that are baked on it
  readonly builds: readonly MadeBuild[] // earlier stages first, then the doughs, in the order of the breads
  readonly missing: number // breads whose formulas are no longer there
}

/** What is made on a day, weighed as on the bench: on the scale of the weights. It needs no plan, and no method. */
export function dayMade(day: Day, all: readonly Formula[], weights: Weights): DayMade {
  const formulas = all.filter(({ id }) => day.breads.some(({ formula }) => formula === id))
  const builds = buildsIn(day, formulas, usualLeeway)
    .filter(({ plan }) => plan.stage.lines.some(({ ingredient, amount }) => `${ingredient}${amount}`.trim()))
    .map(({ key, plan, breads, bread }): MadeBuild => {
      const figures = weights.sheet(day, bread.id)!
      const shares = weights.shares(day, plan.stage, breads)
      const all = shares.reduce<number>((sum, share) => sum + (share ?? 0), 0)
      const lines = weights
        .build(day, plan.stage, breads)
        .flatMap(({ ingredient, grams, note }, at): MadeLine[] => {
          const { id, amount } = plan.stage.lines[at]!
          if (`${ingredient}${amount}`.trim() === '') return []
          const own = breads.length === 1 ? figures.weighed(id) : undefined
          const weighed = own ?? (grams === undefined ? undefined : rounded(grams, figures.scale))
          const { is } = figures.line(id)
          return [
            {
              key: id,
              ingredient,
              isStage: is === 'stage',
              isStarter: is === 'starter',
              grams: grams === undefined ? undefined : weighed?.grams,
              step: weighed?.step ?? figures.scale.step,
              note,
            },
          ]
        })
      return {
        key,
        name: plan.stage.name,
        breads,
        parts: shares.map(share =>
          breads.length === 1 ? 1 : all > 0 ? (share ?? 0) / all : 1 / breads.length,
        ),
        isFinal: plan.isFinal,
        lines,
        total: lines.reduce<number | undefined>(
          (sum, { grams }) => (sum === undefined || grams === undefined ? undefined : sum + grams),
          0,
        ),
      }
    })
  return {
    day,
    formulas,
    builds: [...builds.filter(({ isFinal }) => !isFinal), ...builds.filter(({ isFinal }) => isFinal)],
    missing: day.breads.filter(({ formula }) => !formulas.some(({ id }) => id === formula)).length,
  }
}

/** The builds in the order in which they are mixed: `begins` gives the instant at which the first step of a build begins, where it is known. */
export function inMixingOrder(
  builds: readonly MadeBuild[],
  begins: (key: string) => number | undefined,
): readonly MadeBuild[] {
  const at = builds.map((build, place) => ({ build, place, from: begins(build.key) }))
  if (at.some(({ from }) => from === undefined)) return builds
  return at.sort((a, b) => a.from! - b.from! || a.place - b.place).map(({ build }) => build)
}
