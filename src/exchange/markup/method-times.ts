import { type StagePlan, type StepPlan, stagePlans } from '../../day/method/stage-steps.js'
import { type Formula, finalDoughOf } from '../../dough/document/formula.js'
import { isoDuration, type RecipeTimes } from './stated-times.js'

const piecesIn = ({ batch }: Formula): number | undefined =>
  batch?.make === 'pieces' || batch?.make === 'baked pieces'
    ? batch.pieces.reduce((sum, { count }) => sum + count, 0)
    : undefined

/** The time that a step's text gives as one time, in minutes; undefined for a range, for none, and for that of a piece among unknown many. */
function oneTime({ read }: StepPlan, pieces: number | undefined): number | undefined {
  const { length, each } = read
  if (!length || length.least !== length.most || (each && pieces === undefined)) return undefined
  return length.usual * (each ? pieces! : 1)
}

/** All of the numbers together; undefined where one is not known, or there is none. */
const sumOf = (minutes: readonly (number | undefined)[]): number | undefined =>
  minutes.length > 0 && minutes.every(time => time !== undefined)
    ? minutes.reduce((sum, time) => sum + time, 0)
    : undefined

/** Hands of a step: its own time, or those of the times they come in a wait. */
function handsOf(plan: StepPlan, pieces: number | undefined): (number | undefined)[] {
  const { repeats } = plan.read
  const again = repeats ? [repeats.times * repeats.minutes] : []
  return plan.step.kind === 'hands' ? [oneTime(plan, pieces), ...again] : again
}

/**
 * From the first step of all to the last of the final dough with every step at its usual time, in minutes: each stage begins
 * so that it is ready when it is taken. Undefined where a stage that is taken has no method, or a step no time.
 */
function wholeTime(stages: readonly StagePlan[], pieces: number | undefined): number | undefined {
  const usual = ({ read }: StepPlan) =>
    read.length && (!read.each || pieces !== undefined)
      ? read.length.usual * (read.each ? pieces! : 1)
      : undefined
  const isTaken = (id: string) => stages.some(({ takes }) => takes.some(({ from }) => from === id))
  const made = stages.filter(({ stage, isFinal }) => isFinal || isTaken(stage.id))
  if (made.some(({ steps }) => sumOf(steps.map(usual)) === undefined)) return undefined
  const minutes = (steps: readonly StepPlan[]) => sumOf(steps.map(usual)) ?? 0
  const untilDone = new Map<string, number | undefined>() // from a stage's first step to the end of all
  const fromStage = (plan: StagePlan): number | undefined => {
    const { stage, steps, isFinal } = plan
    if (isFinal) return minutes(steps)
    if (untilDone.has(stage.id)) return untilDone.get(stage.id)
    untilDone.set(stage.id, undefined) // a stage made of itself is never done
    const takers = made.flatMap(taker =>
      taker.takes
        .filter(({ from }) => from === stage.id)
        .map(({ step }) => {
          const after = fromStage(taker)
          return after === undefined ? undefined : after - minutes(taker.steps.slice(0, step))
        }),
    )
    const after = takers.every(time => time !== undefined) ? Math.max(...takers) : undefined
    const whole = after === undefined ? undefined : minutes(steps) + after
    untilDone.set(stage.id, whole)
    return whole
  }
  const all = made.map(fromStage)
  return all.every(time => time !== undefined) ? Math.max(...all) : undefined
}

/** Whether all pieces are baked at once, as far as is said. */
const isOneLoad = ({ read }: StepPlan, pieces: number | undefined): boolean =>
  read.atOnce === undefined || (pieces !== undefined && pieces <= read.atOnce)

const longest = 366 * 24 * 60 // minutes; what takes longer is no bread

const isSaid = (minutes: number | undefined): minutes is number =>
  minutes !== undefined && minutes >= 1 / 60 && minutes <= longest

/** Times of a recipe that its method gives, and whether it has steps of which the others could be said. */
export interface MethodTimes extends RecipeTimes {
  readonly saysWork: boolean // notes are not asked for the time of hands
  readonly saysBaking: boolean // nor for that of baking
}

/**
 * The times of a recipe by its method. Work of hands and baking where each such step gives one time (a range has no words in
 * markup); all of it with every step at its usual time, the middle of a range, where all goes into the oven at once.
 */
export function methodTimes(formula: Formula): MethodTimes {
  const stages = stagePlans(formula, 0)
  const pieces = piecesIn(formula)
  const steps = stages.flatMap(plan => plan.steps)
  const hands = steps.flatMap(step => handsOf(step, pieces))
  const final = stages.find(({ stage }) => stage === finalDoughOf(formula))!
  const baking = final.steps.filter(({ step }) => step.kind === 'bake')
  const [prep, bake] = [sumOf(hands), sumOf(baking.map(step => oneTime(step, pieces)))]
  const whole = baking.every(step => isOneLoad(step, pieces)) ? wholeTime(stages, pieces) : undefined
  return {
    saysWork: hands.length > 0,
    saysBaking: baking.length > 0,
    ...(isSaid(prep) && { prepTime: isoDuration(prep) }),
    ...(isSaid(bake) && { cookTime: isoDuration(bake) }),
    ...(isSaid(whole) && whole >= (prep ?? 0) + (bake ?? 0) && { totalTime: isoDuration(whole) }),
  }
}

/** The one time of a step as a duration, where its text gives one: for the markup of that step. */
export function stepDuration(plan: StepPlan, formula: Formula): string | undefined {
  const minutes = oneTime(plan, piecesIn(formula))
  return isSaid(minutes) ? isoDuration(minutes) : undefined
}
