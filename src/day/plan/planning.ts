import type { Day } from '../../dough/document/day.js'
import type { Formula } from '../../dough/document/formula.js'
import {
  type NearestTime,
  nearestTimes,
  Search,
  type SearchProgress,
  type Shortfall,
  shortfallOf,
  type TimeConflict,
  type TimePlan,
} from '../../times/index.js'
import { aroundNow, type Happened, type LateWay } from '../course/around-now.js'
import { type DayProblem, dayProblem } from '../course/day-problem.js'
import { plannedDay } from './planned.js'

/** Why there are no times, with what would do. */
export interface ConflictFound extends TimeConflict {
  readonly nearest: readonly NearestTime[]
  readonly shortfall: Shortfall | undefined
}

/** What was found of a day, as plain data: it may come from a worker. */
export interface Found {
  readonly strict: boolean // every bread at its minute; otherwise some before it
  readonly way?: LateWay // of a day under way that does not fit
  readonly answer: TimePlan | ConflictFound | undefined // undefined: nothing to do, or stopped before there was any
  readonly later?: readonly NearestTime[] // where one bread is done before its time: the time at which it could be, where that is nearer
}

/** What a day is planned from. */
export interface PlanningOf {
  readonly day: Day
  readonly formulas: readonly Formula[]
  readonly leeway: number // how far a wait of one time moves, a fraction of 1
  readonly earlier?: TimePlan | undefined // of nearly the same day, where the search begins
  readonly happened?: Happened | undefined // of a day under way; left out: none of it
}

/** What a worker that plans days is asked, and what it answers; `ask` tells one day from the next. */
export type ToPlanner = ({ readonly ask: number } & PlanningOf) | { readonly stop: number }
export type FromPlanner = { readonly ask: number } & (
  | { readonly progress: SearchProgress }
  | { readonly found: Found }
)

/** The day written down as the answer was found. */
export function writtenFor(
  { strict, way }: Pick<Found, 'strict' | 'way'>,
  { day, formulas, leeway, happened }: PlanningOf,
): DayProblem {
  const of = way === 'sleepless' ? { ...day, asleep: [] } : day
  const written = dayProblem(of, new Map(formulas.map(f => [f.id, f])), { leeway, strict })
  return happened ? aroundNow(written, happened, way) : written
}

type Way = Pick<Found, 'strict' | 'way'>

/**
 * A day being planned, a slice at a time: every bread ready at its minute, or, where that cannot be, before it; of a day
 * under way, where that cannot be either, after it. `step` until it says that it is done, or stop when you like; `found` is
 * the best so far.
 */
export class Planning {
  readonly #of: PlanningOf
  readonly #strict: DayProblem
  #way: Way = { strict: true } // in which it is looked for
  #now: DayProblem // as it is written for that
  #search: Search | undefined // undefined: there is nothing to do

  constructor(of: PlanningOf) {
    this.#of = of
    this.#strict = writtenFor(this.#way, of)
    this.#now = this.#strict
    if (this.#strict.network.events.length) this.#search = this.#searchIn(this.#strict)
  }

  #searchIn({ problem }: DayProblem): Search {
    const { earlier } = this.#of
    return new Search(problem, earlier ? { earlier } : {})
  }

  /** The ways that are still to be tried. */
  get #others(): readonly Way[] {
    const isToBeReady = this.#strict.holds.some(({ of }) => of === 'ready')
    const all: readonly Way[] = [
      { strict: true },
      ...(isToBeReady ? [{ strict: false }] : []),
      ...(this.#of.happened
        ? ([
            { strict: false, way: 'late' },
            { strict: false, way: 'sleepless' },
            { strict: false, way: 'loose' },
          ] as const)
        : []),
    ]
    const { strict, way } = this.#way
    return all.slice(1 + all.findIndex(other => other.strict === strict && other.way === way))
  }

  get progress(): SearchProgress {
    return this.#search?.progress ?? { relaxed: 0, cost: Number.POSITIVE_INFINITY, gap: 0 }
  }

  get hasPlan(): boolean {
    return this.progress.cost < Number.POSITIVE_INFINITY
  }

  /** Whether every bread is looked for at its minute. */
  get isStrict(): boolean {
    return this.#way.strict
  }

  /** Goes on by so many relaxed problems, and gives whether all is looked through. */
  step(problems?: number): boolean {
    if (!this.#search) return true
    if (!this.#search.step(problems)) return false
    const [other] = this.#others
    if (this.hasPlan || !other) return true
    this.#way = other
    this.#now = writtenFor(other, this.#of)
    this.#search = this.#searchIn(this.#now)
    return false
  }

  /** The best plan so far, or once all is looked through why there is none; finding that out may take longer than a step. */
  found(): Found {
    const search = this.#search
    const way = this.#way
    if (!search || !(this.hasPlan || search.done)) return { ...way, answer: undefined }
    const answer = search.answer() // where there is none yet it looks further than the search did
    const written = this.#now
    if (answer.kind === 'plan')
      return way.strict || way.way
        ? { ...way, answer }
        : { ...way, answer, later: this.#laterTimes(written, answer) }
    const { problem } = written
    const nearest = nearestTimes(problem, answer).map(toTheMinute(problem))
    return { ...way, answer: { ...answer, nearest, shortfall: shortfallOf(problem, answer) } }
  }

  /** Where one bread alone is done before its time: the later time at which it could be, if that is nearer than it is early. */
  #laterTimes(written: DayProblem, plan: TimePlan): NearestTime[] {
    const [early, ...more] = plannedDay(this.#of.day, written, plan).early
    if (!early || more.length || this.#of.happened) return []
    const { problem, holds } = this.#strict
    const hold = holds.findIndex(h => h.of === 'ready' && h.bread === early.bread)
    const wanted = problem.holds[hold]!.at!
    return nearestTimes(problem, { holds: [hold] })
      .map(toTheMinute(problem))
      .filter(({ time }) => time > wanted && time - wanted < early.minutes)
  }
}

/** A nearest time as a clock can show it: on the whole minute that is farther from the time wanted. */
const toTheMinute =
  ({ holds }: DayProblem['problem']) =>
  (nearest: NearestTime): NearestTime => {
    const wanted = holds[nearest.hold]![nearest.bound]!
    const time = nearest.time > wanted ? Math.ceil(nearest.time - 1e-4) : Math.floor(nearest.time + 1e-4)
    return { ...nearest, time }
  }
