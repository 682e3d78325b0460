import type { Day } from '../../dough/document/day.js'
import { nameKey } from '../../dough/document/formula.js'
import type { FigureSheet } from '../../dough/sheet/figures.js'
import { sharedKey } from '../course/day-problem.js'
import { standingOf } from '../course/waits.js'
import { stagePlans } from '../method/stage-steps.js'
import { readStep } from '../method/step-text.js'
import type { PlannedDay } from '../plan/planned.js'
import { isFed, ripeningStep } from './fed-build.js'
import { partsOfBuild } from './feeding.js'

/** A moment of a day by its name, with its time: an instant. */
export interface NamedMoment {
  readonly moment: string
  readonly at: number
}

/** A build of a day that is fed from a seed. */
export interface DayFeeding {
  readonly bread: string // id; of the first, where it is made for several
  readonly breads: readonly string[]
  readonly stage: string // id
  readonly stageName: string
  readonly celsius: number // where it stands on this day
  readonly seed: number | undefined // grams that the day's batch takes, for all its breads; undefined: not known
  readonly seedLines: readonly string[] // their ids, in the first of the breads
  readonly fed: NamedMoment | undefined // when it is mixed and its wait begins; undefined without a plan
  readonly ripe: NamedMoment | undefined // when it is first taken
}

/** The builds of a day that are fed, with their times as planned. `sheetOf` gives a bread's formula with the day's batch. */
export function feedingsOn(
  day: Day,
  plan: PlannedDay | undefined,
  sheetOf: (bread: string) => FigureSheet | undefined,
): DayFeeding[] {
  const seen = new Map<string, DayFeeding & { breads: string[]; seed: number | undefined }>()
  const all: DayFeeding[] = []
  for (const { id: bread } of day.breads) {
    const sheet = sheetOf(bread)
    for (const build of sheet?.workedOut.outline.stages ?? []) {
      if (!isFed(build)) continue
      const { id: stage, name: stageName } = build.stage
      const key = sharedKey(stageName)
      const shared = day.together.includes(key) ? seen.get(key) : undefined
      const seedLines = partsOfBuild(build).seed.map(({ line }) => line.id)
      const grams = seedLines.map(line => sheet!.line(line).batch)
      const seed = sumOf(grams)
      if (shared) {
        shared.breads.push(bread)
        shared.seed = sumOf([shared.seed, seed])
        continue
      }
      const ripening = ripeningStep(build.stage)
      const wait = ripening && `${bread} ${stage} ${ripening.step.id}`
      const begins = wait === undefined ? undefined : plan?.at.get(wait)
      const place = day[standingOf(ripening?.read ?? readStep(''), day)] ?? day.kitchen
      const found = {
        bread,
        breads: [bread],
        stage,
        stageName,
        celsius: place,
        seed,
        seedLines,
        fed: begins === undefined ? undefined : { moment: wait!, at: begins },
        ripe: undefined,
      }
      seen.set(key, found)
      all.push(found)
    }
  }
  return all.map(feeding => ({ ...feeding, ripe: firstTaken(feeding, plan, sheetOf) }))
}

const sumOf = (grams: readonly (number | undefined)[]): number | undefined =>
  grams.some(one => one === undefined) ? undefined : grams.reduce<number>((sum, one) => sum + one!, 0)

/** When what was built is first taken. */
function firstTaken(
  { breads, stageName }: DayFeeding,
  plan: PlannedDay | undefined,
  sheetOf: (bread: string) => FigureSheet | undefined,
): NamedMoment | undefined {
  const taken = breads.flatMap(bread => {
    const formula = sheetOf(bread)?.formula
    const stages = formula ? stagePlans(formula, 0) : []
    const built = stages.find(({ stage }) => nameKey(stage.name) === nameKey(stageName))
    return stages.flatMap(({ stage, steps, takes }) =>
      takes.flatMap(({ from, step }): NamedMoment[] => {
        const moment = `${bread} ${stage.id} ${steps[step]?.step.id}`
        const at = from === built?.stage.id ? plan?.at.get(moment) : undefined
        return at === undefined ? [] : [{ moment, at }]
      }),
    )
  })
  return taken.toSorted((a, b) => a.at - b.at)[0]
}
