import type { Day, DayBread, Oven } from '../../dough/document/day.js'
import type { Formula, Stage } from '../../dough/document/formula.js'
import type { StagePlan, StepPlan } from '../method/stage-steps.js'
import type { Length } from '../method/step-time.js'
import type { DayEvent, DayNetwork, Load } from './day-network.js'
import { type Scaled, scaledWait } from './waits.js'

/** A bread of the day, with its stages as they are done. */
export interface Bread {
  readonly id: string
  readonly formula: Formula
  readonly stages: readonly StagePlan[]
  readonly pieces: number | undefined // undefined: the batch is no number of pieces
  readonly oven: Oven
}

/** A stage that is made: for one bread, or once for several. */
export interface Build {
  readonly key: string // begins the names of its moments
  readonly bread: Bread // whose method is followed
  readonly plan: StagePlan
  readonly breads: readonly string[] // ids of all that take it
}

/** A moment at which a stage is taken, or the build it is taken by has no method and is itself taken then. */
export interface Taker {
  readonly moment: string
  readonly bread: string
}

const exactly = (minutes: number): Length => ({ least: minutes, usual: minutes, most: minutes })
const noTime = exactly(0)
const leastGap = { least: 0, most: Number.POSITIVE_INFINITY }

/** How many pieces are made of a bread; undefined where its batch is none of pieces. */
export const piecesOf = ({ batch }: DayBread): number | undefined =>
  batch.make === 'pieces' || batch.make === 'baked pieces'
    ? batch.pieces.reduce((sum, p) => sum + p.count, 0)
    : undefined

/** The oven that a bread is baked in. */
export const ovenOf = (day: Day, bread: DayBread | undefined): Oven =>
  day.ovens.find(o => o.id === bread?.oven) ?? day.ovens[0]!

/** Writes down what happens in the builds of a day. `leeway` is how far a wait of one time moves, a fraction of 1. */
export class Course {
  readonly #day: Day
  readonly #net: DayNetwork
  readonly #leeway: number

  constructor(day: Day, net: DayNetwork, leeway: number) {
    this.#day = day
    this.#net = net
    this.#leeway = leeway
  }

  /** The name of the moment at which a step of a build begins, of one of its loads where there are several. */
  static momentOf({ key, plan }: Build, step: number, load?: number): string {
    return `${key} ${plan.steps[step]!.step.id}${load === undefined ? '' : ` load ${load}`}`
  }

  /** How long a step takes on this day, in minutes, and how it was scaled. */
  #length(plan: StepPlan, { bread }: Build): { length: Length | undefined; scaled: Scaled | undefined } {
    const { step, read, length } = plan
    if (!length) return { length: undefined, scaled: undefined }
    if (step.kind === 'wait') {
      const scaled = scaledWait(read, length, this.#day)
      return { length: scaled.length, scaled }
    }
    const times = read.each ? (bread.pieces ?? 1) : 1
    const { least, usual, most } = length
    return { length: { least: least * times, usual: usual * times, most: most * times }, scaled: undefined }
  }

  #event(build: Build, at: number, ends: string | undefined, load?: Load): DayEvent {
    const { bread, plan, breads } = build
    const step = plan.steps[at]!
    const { length, scaled } = this.#length(step, build)
    const begins = Course.momentOf(build, at, load?.number)
    const event = this.#net.add({
      begins,
      ends,
      kind: step.step.kind,
      breads,
      stage: plan.stage.id,
      stageName: plan.stage.name,
      step: step.step,
      time: undefined,
      load,
      length: length ?? noTime,
      scaled,
    })
    if (step.step.kind === 'hands' && ends !== undefined)
      this.#net.hands.push({ bread: bread.id, use: { from: begins, to: ends } })
    if (step.read.repeats) this.#repeat(event, step, bread)
    return event
  }

  /** The times that hands come within a step. */
  #repeat(event: DayEvent, { read, step }: StepPlan, bread: Bread): void {
    const { times, minutes, every } = read.repeats!
    const usual = every * (event.scaled?.factor ?? 1)
    const apart = { least: usual * (1 - this.#leeway), usual, most: usual * (1 + this.#leeway) }
    let before = event.begins
    for (let time = 1; time <= times; time++) {
      const begins = `${event.begins} time ${time}`
      const ends = `${begins} done`
      this.#net.span(before, begins, apart, { of: 'apart', event })
      this.#net.add({
        ...event,
        begins,
        ends,
        kind: 'hands',
        step,
        time,
        length: exactly(minutes),
        scaled: undefined,
      })
      this.#net.hands.push({ bread: bread.id, use: { from: begins, to: ends } })
      before = ends
    }
    if (event.ends !== undefined) this.#net.span(before, event.ends, leastGap, { of: 'apart', event })
  }

  /** A stage that later ones take: what comes last, where it is a wait, lasts for each of them within its bounds. */
  earlier(build: Build, takers: readonly Taker[]): void {
    const { steps } = build.plan
    const last = steps.length - 1
    const isOpen = steps[last]?.step.kind === 'wait'
    const ends = (i: number) => (i < last ? Course.momentOf(build, i + 1) : `${build.key} done`)
    for (const i of steps.keys()) {
      const event = this.#event(build, i, i === last && isOpen ? undefined : ends(i))
      if (i < last) continue
      for (const { moment, bread } of takers) {
        const reason = { of: 'ripe', event, taker: bread } as const
        if (!isOpen) this.#net.span(ends(i), moment, noTime, reason)
        else this.#net.span(event.begins, moment, event.length ?? noTime, reason)
      }
    }
    const bake = steps.findIndex(s => s.step.kind === 'bake')
    this.#bake(build, bake, undefined, ends)
  }

  /**
   * The final dough, with its loads. From its last wait before baking on, each load has times of its own. Gives the
   * moments at which the loads are done, in their order.
   */
  final(build: Build): string[] {
    const { bread, plan } = build
    const { steps } = plan
    const bake = steps.findIndex(s => s.step.kind === 'bake')
    const loads = this.#loadsOf(bread, steps[bake])
    const parts = loads.length > 1 ? steps.slice(0, bake).findLastIndex(s => s.step.kind === 'wait') : -1
    const apart = parts >= 0 ? parts : loads.length > 1 ? bake : steps.length // the first step that each load has to itself
    const ends = (i: number, load?: Load) =>
      i + 1 < steps.length
        ? Course.momentOf(
            build,
            i + 1,
            i + 1 > apart || (i + 1 === apart && parts < 0) ? load?.number : undefined,
          )
        : `${build.key} done${load ? ` load ${load.number}` : ''}`
    for (const [i] of steps.entries()) if (i < apart) this.#event(build, i, ends(i))
    if (loads.length <= 1) {
      this.#bake(build, bake, undefined, ends)
      return steps.length ? [ends(steps.length - 1)] : []
    }
    for (const load of loads) {
      if (parts < 0) {
        const begins = Course.momentOf(build, bake, load.number)
        this.#net.span(Course.momentOf(build, bake), begins, leastGap, { of: 'order', bread: bread.id })
      }
      for (let i = apart; i < steps.length; i++) {
        if (i === parts) this.#waitOf(build, i, ends(i, load), load)
        else this.#event(build, i, ends(i, load), load)
      }
      this.#bake(build, bake, load, ends)
      if (load.number > 1)
        this.#net.span(
          this.#bakeEnds(build, bake, loads[load.number - 2], ends),
          Course.momentOf(build, bake, load.number),
          { least: bread.oven.between, most: Number.POSITIVE_INFINITY },
          { of: 'order', bread: bread.id },
        )
    }
    return loads.map(load => ends(steps.length - 1, load))
  }

  /** The wait before baking: it begins for all loads at once, and ends for each by itself. */
  #waitOf(build: Build, at: number, ends: string, load: Load): void {
    const begins = Course.momentOf(build, at)
    const { length, scaled } = this.#length(build.plan.steps[at]!, build)
    const { plan, breads } = build
    const { step } = plan.steps[at]!
    this.#net.add({
      begins,
      ends,
      kind: 'wait',
      breads,
      stage: plan.stage.id,
      stageName: plan.stage.name,
      step,
      time: undefined,
      load,
      length: length ?? noTime,
      scaled,
    })
  }

  #bakeEnds(
    build: Build,
    bake: number,
    load: Load | undefined,
    ends: (i: number, load?: Load) => string,
  ): string {
    const { steps } = build.plan
    let last = bake
    while (steps[last + 1]?.step.kind === 'bake') last += 1
    return ends(last, load)
  }

  /** One run of baking steps is one use of the oven, and somebody is there when it begins and when it ends. */
  #bake(build: Build, bake: number, load: Load | undefined, ends: (i: number, load?: Load) => string): void {
    if (bake < 0) return
    const from = Course.momentOf(build, bake, load?.number)
    const to = this.#bakeEnds(build, bake, load, ends)
    const celsius = build.plan.steps[bake]!.read.celsius
    this.#net.oven.push({
      oven: build.bread.oven.id,
      use: { from, to, ...(celsius !== undefined && { setting: String(Math.round(celsius)) }) },
    })
    this.#net.attend(from)
    this.#net.attend(to)
  }

  #loadsOf({ pieces, oven }: Bread, bake: StepPlan | undefined): Load[] {
    const atOnce = bake?.read.atOnce ?? oven.atOnce
    if (!bake || pieces === undefined || !atOnce || pieces <= atOnce)
      return bake ? [{ number: 1, of: 1, pieces }] : []
    const of = Math.ceil(pieces / atOnce)
    return Array.from({ length: of }, (_, i) => ({
      number: i + 1,
      of,
      pieces: Math.min(atOnce, pieces - i * atOnce),
    }))
  }
}

/** The stages that a stage takes are taken when it begins their step; one without a method is taken when it is itself. */
export function takingMoments(
  build: Build,
  step: number,
  takersOf: (build: Build) => readonly Taker[],
): readonly Taker[] {
  if (build.plan.steps.length === 0) return takersOf(build)
  return [{ moment: Course.momentOf(build, step), bread: build.bread.id }]
}

/** The name of a stage's build for one bread. */
export const buildKey = (bread: string, stage: Stage): string => `${bread} ${stage.id}`
