import type { Happened } from '../../src/day/course/around-now.js'
import { type DaySheet, openFound } from '../../src/day/plan/open-day.js'
import {
  type Found,
  type FromPlanner,
  Planning,
  type PlanningOf,
  type ToPlanner,
} from '../../src/day/plan/planning.js'
import { Weights } from '../../src/day/plan/weigh-list.js'
import { type Day, usualLeeway } from '../../src/dough/document/day.js'
import type { Formula } from '../../src/dough/document/formula.js'
import type { Larder } from '../../src/dough/document/larder.js'
import type { Workbook } from '../../src/dough/document/workbook.js'
import type { SearchProgress, TimePlan } from '../../src/times/index.js'
import { newWorker } from '../base/workers.js'

/** How a day stands. */
export interface DayState {
  readonly opened: DaySheet | undefined // with its times, or why there are none; undefined while they are looked for
  readonly lastGood: DaySheet | undefined // the last one that had times; at first, where it has none: without what is held
  readonly isBare: boolean // that is without what is held
  readonly progress: SearchProgress | undefined // while they are looked for
  readonly stopped: boolean // by the baker, before all was looked through
}

/** What a day is planned of: a workbook has it. */
export type PlannedOf = Pick<Workbook, 'formulas' | 'leeway' | 'scale'>

const nothing: DayState = {
  opened: undefined,
  lastGood: undefined,
  isBare: false,
  progress: undefined,
  stopped: false,
}
const atOnce = 12 // milliseconds that the page may look for times itself
const slice = 8 // the same at a time, where there is no worker
const sliceProblems = 4

const sameItems = <T>(a: readonly T[], b: readonly T[]): boolean =>
  a.length === b.length && a.every((item, i) => item === b[i])

/** Keeps the times of one day at a time: small ones at once, others in a worker, where it can be stopped. */
export class DayPlanner {
  state = nothing
  readonly #changed: () => void
  #of: (PlanningOf & { readonly larder: Larder }) | undefined
  #weights: Weights | undefined // of the formulas and the larder there are
  #answer: TimePlan | undefined // the last
  #worker: Worker | undefined
  #asks = 0
  #weighedFor: unknown // what the last good plan has the amounts of
  #here: Planning | undefined // where there is no worker

  /** `changed` is called when the state is another one without having been asked for. */
  constructor(changed: () => void) {
    this.#changed = changed
  }

  /** Plans a day as it stands; does nothing where it is as it was. */
  plan(
    day: Day,
    { formulas: all, leeway = usualLeeway, scale }: PlannedOf,
    larder: Larder,
    happened?: Happened,
  ): void {
    const ids = new Set(day.breads.map(bread => bread.formula))
    const formulas = all.filter(formula => ids.has(formula.id)).map(withoutStates)
    const before = this.#of
    const isSame = before?.day.id === day.id
    if (
      isSame &&
      before.day === day &&
      before.leeway === leeway &&
      before.larder === larder &&
      before.happened === happened &&
      sameItems(before.formulas, formulas)
    )
      return
    if (!isSame) this.#answer = undefined
    if (!this.#weights || before?.larder !== larder || !sameItems(before.formulas, formulas))
      this.#weights = new Weights(formulas, larder, scale)
    this.#of = { day, formulas, leeway, larder, earlier: this.#answer, happened }
    const { lastGood, isBare } = this.state
    this.state = isSame ? { ...nothing, lastGood, isBare } : nothing
    this.#asks += 1
    this.#here = undefined
    this.#plan()
  }

  #plan(): void {
    const planning = new Planning(this.#of!)
    const end = performance.now() + atOnce
    let done = false
    while (!done && performance.now() < end) done = planning.step(sliceProblems)
    // Why not all is at its minute is quickly found for one bread; for several it may take long.
    const isQuick =
      (planning.hasPlan && planning.isStrict) || this.#of!.day.breads.length < 2 || this.#of!.happened
    if (done && isQuick) return this.#take(planning.found())
    this.#weighAnew()
    this.state = { ...this.state, progress: planning.progress }
    this.#worker ??= this.#start()
    if (this.#worker) this.#send({ ask: this.#asks, ...this.#of! })
    else this.#goOn(planning, this.#asks)
  }

  #start(): Worker | undefined {
    const worker = newWorker('day-worker')
    if (!worker) return undefined
    worker.onmessage = ({ data }: MessageEvent<FromPlanner>) => {
      if (data.ask !== this.#asks) return
      if ('found' in data) this.#take(data.found)
      else this.state = { ...this.state, progress: data.progress }
      this.#changed()
    }
    worker.onerror = () => {
      // It could not be fetched, say: the page looks for the times itself.
      worker.terminate()
      this.#worker = undefined
      if (this.#of && this.state.progress) this.#goOn(new Planning(this.#of), this.#asks)
    }
    return worker
  }

  #send(message: ToPlanner & { readonly larder?: Larder }): void {
    const { larder: _larder, ...sent } = message // the page's own
    this.#worker!.postMessage(sent)
  }

  #goOn(planning: Planning, ask: number): void {
    if (ask !== this.#asks) return
    this.#here = planning
    const end = performance.now() + slice
    let done = false
    while (!done && performance.now() < end) done = planning.step(sliceProblems)
    if (done) this.#take(planning.found())
    else {
      this.state = { ...this.state, progress: planning.progress }
      setTimeout(() => this.#goOn(planning, ask), slice)
    }
    this.#changed()
  }

  /** Gives the last good plan the amounts of the day as it is now. */
  #weighAnew(): void {
    const { lastGood } = this.state
    if (lastGood && this.#weighedFor !== this.#of)
      this.state = { ...this.state, lastGood: lastGood.weighedAs(this.#of!.day, this.#weights!) }
    this.#weighedFor = this.#of
  }

  #take(found: Found): void {
    const opened = openFound(this.#of!, this.#weights!, found)
    if (!opened.plan) this.#weighAnew()
    const { answer } = found
    if (answer?.kind === 'plan') this.#answer = answer
    this.#here = undefined
    const { lastGood, isBare, stopped } = this.state
    const bare = opened.conflict && !lastGood ? this.#withoutHolds() : undefined
    this.state = {
      opened,
      lastGood: opened.plan ? opened : (lastGood ?? bare),
      isBare: !opened.plan && (isBare || bare !== undefined),
      progress: undefined,
      stopped,
    }
  }

  /** The day as it would be with nothing held, where that is quickly found. */
  #withoutHolds(): DaySheet | undefined {
    const { day } = this.#of!
    if (day.holds.length === 0 || this.#of!.happened) return undefined
    const of = { ...this.#of!, day: { ...day, holds: [] }, earlier: undefined }
    const planning = new Planning(of)
    const end = performance.now() + atOnce
    let done = false
    while (!done && performance.now() < end) done = planning.step(sliceProblems)
    if (!planning.hasPlan) return undefined
    const sheet = openFound(of, this.#weights!, planning.found())
    return sheet.plan ? sheet : undefined
  }

  /** Looks no further: the best found is taken; where there is none yet, the last good plan stays. */
  stop(): void {
    const { progress } = this.state
    if (!progress) return
    this.state = { ...this.state, stopped: true }
    if (this.#here?.hasPlan) {
      this.#asks += 1
      this.#take(this.#here.found())
    } else if (this.#here) this.#giveUp()
    else if (progress.cost < Number.POSITIVE_INFINITY) this.#send({ stop: this.#asks })
    else this.#giveUp()
    this.#changed()
  }

  /** Looks once more, from the beginning. */
  again(): void {
    if (!this.#of) return
    const { lastGood, isBare } = this.state
    this.state = { ...nothing, lastGood, isBare }
    this.#asks += 1
    this.#plan()
    this.#changed()
  }

  #giveUp(): void {
    this.close()
    this.#asks += 1
    this.state = { ...this.state, opened: undefined, progress: undefined }
  }

  close(): void {
    this.#worker?.terminate()
    this.#worker = undefined
    this.#here = undefined
  }
}

const known = new WeakMap<Formula, Formula>()

/** A formula as a day needs it: what was kept of it earlier does not go to the worker. */
function withoutStates(formula: Formula): Formula {
  if (!formula.states) return formula
  let bare = known.get(formula)
  if (!bare) {
    const { states: _states, ...rest } = formula
    bare = rest
    known.set(formula, bare)
  }
  return bare
}
