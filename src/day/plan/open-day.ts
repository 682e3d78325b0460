import { type Day, usualLeeway } from '../../dough/document/day.js'
import type { Formula } from '../../dough/document/formula.js'
import type { Larder } from '../../dough/document/larder.js'
import type { FigureSheet } from '../../dough/sheet/figures.js'
import type { Happened } from '../course/around-now.js'
import { instantOf, localOf, localText, readClock } from '../course/clock.js'
import type { Bread } from '../course/course.js'
import type { DayEvent } from '../course/day-network.js'
import type { DayProblem } from '../course/day-problem.js'
import { conflictSentence } from './conflict-words.js'
import { type DayConflict, dayConflict, type NearestOf, nearestOf } from './day-conflict.js'
import { madeAs, type PlannedDay, type PlannedEvent, plannedDay } from './planned.js'
import { type Found, Planning, type PlanningOf, writtenFor } from './planning.js'
import { type TimeWorking, workingOf } from './time-working.js'
import { type ToWeigh, Weights } from './weigh-list.js'
import { type DayRemark, remarksOn } from './words.js'

/** A moment of the day: the beginning of a step, or of one of its loads or times. */
export interface DayMoment {
  readonly name: string
  readonly instant: number // minutes since 1970, UTC
  readonly local: string // `2026-12-05T06:30` in the day's zone
  readonly held: boolean
}

/** A day with its times, kept up to date as it changes. */
export interface DaySheet {
  readonly day: Day
  readonly written: DayProblem // as a problem of times
  readonly breads: readonly Bread[] // those whose formulas are there, in the order of the day
  readonly plan: PlannedDay | undefined // undefined: a conflict, or nothing to do
  readonly conflict: DayConflict | undefined
  readonly conflictSentence: string // '' where there is none
  readonly later: readonly NearestOf[] // where one bread alone is done before its time: a later one at which it could be
  readonly remarks: readonly DayRemark[]
  readonly moments: readonly DayMoment[] // by the clock
  /** What begins at a moment, whether or not its time is known. */
  stepAt(moment: string): DayEvent | undefined
  /** How a time came about. Throws RangeError for a moment that is not of this day. */
  working(moment: string): TimeWorking
  /** Keeps a moment at a clock time of the date it is on now. Throws RangeError for what is no time or moment. */
  hold(moment: string, clock: string): void
  release(moment: string): void
  /** What goes in at a step, in the order of its stage; grams of the batch. Throws RangeError as `working`. */
  weighList(moment: string): readonly ToWeigh[]
  /** The figures of a bread by its id: its formula with the day's batch. Undefined for one that is not there. */
  figures(bread: string): FigureSheet | undefined
  /** The same times with the amounts of the day as it is now, which do not hang on them; `weights` of its formulas. */
  weighedAs(now: Day, weights: Weights): DaySheet
}

/**
 * Plans a day: when each step of its formulas begins. All that belongs together is worked out here, without a page; a
 * long search is better run in slices, by `Planning`.
 */
export const openDay = (
  day: Day,
  formulas: readonly Formula[],
  larder?: Larder,
  leeway = usualLeeway,
): DaySheet => new WorkedDay({ day, formulas, leeway }, new Weights(formulas, larder))

/** The same of a day that was planned before, in slices or in a worker; `weights` of its formulas, which know those they have worked out. */
export const openFound = (of: PlanningOf, weights: Weights, found: Found): DaySheet =>
  new WorkedDay(of, weights, found)

/** Plans a day at once, however long it takes. */
function planDay(of: PlanningOf): Found {
  const planning = new Planning(of)
  while (!planning.step());
  return planning.found()
}

class WorkedDay implements DaySheet {
  #day: Day
  readonly #formulas: readonly Formula[]
  readonly #leeway: number
  readonly #happened: Happened | undefined
  readonly #weights: Weights
  #written!: DayProblem
  #plan: PlannedDay | undefined
  #conflict: DayConflict | undefined
  #later: readonly NearestOf[] = []
  #found!: Found
  readonly #now: Day | undefined // whose amounts are taken; undefined: its own

  constructor({ day, formulas, leeway, happened }: PlanningOf, weights: Weights, found?: Found, now?: Day) {
    this.#day = day
    this.#now = now
    this.#formulas = formulas
    this.#leeway = leeway
    this.#happened = happened
    this.#weights = weights
    this.#take(found ?? planDay(this.#of))
  }

  get #of(): PlanningOf {
    return { day: this.#day, formulas: this.#formulas, leeway: this.#leeway, happened: this.#happened }
  }

  #take(found: Found): void {
    const of = this.#of
    const written = writtenFor(found, of)
    const { answer } = found
    this.#found = found
    this.#written = written
    const plan = answer?.kind === 'plan' ? plannedDay(of.day, written, answer) : undefined
    this.#plan = plan && this.#now ? madeAs(plan, this.#now) : plan
    this.#conflict = answer?.kind === 'conflict' ? dayConflict(written, answer) : undefined
    this.#later = (found.later ?? []).map(nearestOf(written.holds))
  }

  #replan(): void {
    this.#take(planDay(this.#of))
  }

  get day(): Day {
    return this.#day
  }
  get written(): DayProblem {
    return this.#written
  }
  get breads(): readonly Bread[] {
    return this.#written.breads
  }
  get plan(): PlannedDay | undefined {
    return this.#plan
  }
  get conflict(): DayConflict | undefined {
    return this.#conflict
  }
  get conflictSentence(): string {
    return this.#conflict ? conflictSentence(this.#day, this.#written, this.#conflict) : ''
  }
  get later(): readonly NearestOf[] {
    return this.#later
  }
  get remarks(): readonly DayRemark[] {
    return remarksOn(this.#written, this.#plan)
  }

  get moments(): readonly DayMoment[] {
    const { zone } = this.#day
    const seen = new Set<string>()
    return (this.#plan?.events ?? []).flatMap(({ begins, from, held }) => {
      if (seen.has(begins)) return []
      seen.add(begins)
      return [{ name: begins, instant: from, local: localText(localOf(from, zone)), held }]
    })
  }

  stepAt = (moment: string): DayEvent | undefined =>
    this.#written.network.events.find(e => e.begins === moment)

  #event(moment: string): PlannedEvent {
    const event = this.#plan?.events.find(e => e.begins === moment)
    if (!event) throw new RangeError(`There is no moment ${moment} in ${this.#day.name}.`)
    return event
  }

  working(moment: string): TimeWorking {
    return workingOf(this.#plan!, this.#written, this.#event(moment))
  }

  hold(moment: string, clock: string): void {
    const event = this.#event(moment)
    const minutes = readClock(clock)
    if (minutes === undefined) throw new RangeError(`“${clock}” is no clock time; write 6:30.`)
    const at = nearestDate(event.from, minutes, this.#day.zone)
    const holds = this.#day.holds.filter(h => h.moment !== moment)
    this.#day = { ...this.#day, holds: [...holds, { moment, at }] }
    this.#replan()
  }

  release(moment: string): void {
    this.#day = { ...this.#day, holds: this.#day.holds.filter(h => h.moment !== moment) }
    this.#replan()
  }

  weighList(moment: string): readonly ToWeigh[] {
    const event = this.stepAt(moment)
    if (!event) throw new RangeError(`There is no moment ${moment} in ${this.#day.name}.`)
    return this.#weights.of(this.#now ?? this.#day, event)
  }

  figures(bread: string): FigureSheet | undefined {
    return this.#weights.sheet(this.#now ?? this.#day, bread)
  }

  weighedAs(now: Day, weights: Weights): DaySheet {
    return new WorkedDay(this.#of, weights, this.#found, now)
  }
}

/** The clock time on the date that brings it nearest to an instant, as a hold keeps it. */
export function nearestDate(instant: number, minutes: number, zone: string): string {
  const { date } = localOf(instant, zone)
  const near = [-1, 0, 1]
    .map(days => ({
      date: new Date(Date.parse(`${date}T00:00Z`) + days * 86_400_000).toISOString().slice(0, 10),
      minutes,
    }))
    .sort((a, b) => Math.abs(instantOf(a, zone) - instant) - Math.abs(instantOf(b, zone) - instant))
  return localText(near[0]!)
}
