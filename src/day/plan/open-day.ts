import { type Day, usualLeeway } from '../../dough/document/day.js'
import type { Formula } from '../../dough/document/formula.js'
import type { Larder } from '../../dough/document/larder.js'
import { solveTimes, type TimeConflict } from '../../times/index.js'
import { instantOf, localOf, localText, readClock } from './clock.js'
import { type DayConflict, dayConflict } from './day-conflict.js'
import { type DayProblem, dayProblem } from './day-problem.js'
import { type PlannedDay, type PlannedEvent, plannedDay } from './planned.js'
import { type TimeWorking, workingOf } from './time-working.js'
import { type ToWeigh, Weights } from './weigh-list.js'
import { conflictSentence, type DayRemark, remarksOn } from './words.js'

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
  readonly plan: PlannedDay | undefined // undefined: a conflict, or nothing to do
  readonly conflict: DayConflict | undefined
  readonly conflictSentence: string // '' where there is none
  readonly remarks: readonly DayRemark[]
  readonly moments: readonly DayMoment[] // by the clock
  /** How a time came about. Throws RangeError for a moment that is not of this day. */
  working(moment: string): TimeWorking
  /** Keeps a moment at a clock time of the date it is on now. Throws RangeError for what is no time or moment. */
  hold(moment: string, clock: string): void
  release(moment: string): void
  /** What goes in at a step, in the order of its stage; grams of the batch. Throws RangeError as `working`. */
  weighList(moment: string): readonly ToWeigh[]
}

/**
 * Plans a day: when each step of its formulas begins. All that belongs together is worked out here, without a page; a
 * long search is better run in slices, by `dayProblem` and `Search` of the times.
 */
export const openDay = (
  day: Day,
  formulas: readonly Formula[],
  larder?: Larder,
  leeway = usualLeeway,
): DaySheet => new WorkedDay(day, formulas, larder, leeway)

/** What is planned of a day, or why it cannot be: every bread ready at its minute, or else near it. */
export function planDay(
  day: Day,
  formulas: ReadonlyMap<string, Formula>,
  leeway: number,
): { written: DayProblem; plan: PlannedDay | undefined; conflict: TimeConflict | undefined } {
  const strict = dayProblem(day, formulas, { leeway, strict: true })
  if (strict.network.events.length === 0) return { written: strict, plan: undefined, conflict: undefined }
  const answer = solveTimes(strict.problem)
  if (answer.kind === 'plan')
    return { written: strict, plan: plannedDay(day, strict, answer), conflict: undefined }
  const takesTurns = strict.breads.length > 1 || strict.network.events.some(e => e.load && e.load.of > 1)
  if (takesTurns && answer.groups.length) {
    const near = dayProblem(day, formulas, { leeway, strict: false })
    const nearly = solveTimes(near.problem)
    if (nearly.kind === 'plan')
      return { written: near, plan: plannedDay(day, near, nearly), conflict: undefined }
  }
  return { written: strict, plan: undefined, conflict: answer }
}

class WorkedDay implements DaySheet {
  #day: Day
  readonly #formulas: ReadonlyMap<string, Formula>
  readonly #leeway: number
  readonly #weights: Weights
  #written!: DayProblem
  #plan: PlannedDay | undefined
  #conflict: DayConflict | undefined

  constructor(day: Day, formulas: readonly Formula[], larder: Larder | undefined, leeway: number) {
    this.#day = day
    this.#formulas = new Map(formulas.map(f => [f.id, f]))
    this.#leeway = leeway
    this.#weights = new Weights(formulas, larder)
    this.#replan()
  }

  #replan(): void {
    const { written, plan, conflict } = planDay(this.#day, this.#formulas, this.#leeway)
    this.#written = written
    this.#plan = plan
    this.#conflict = conflict && dayConflict(written, conflict)
  }

  get day(): Day {
    return this.#day
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
    return this.#weights.of(this.#day, this.#written, this.#event(moment))
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
