import type { Day } from '../../dough/document/day.js'
import type { Formula } from '../../dough/document/formula.js'
import {
  type NearestTime,
  nearestTimes,
  Search,
  type SearchProgress,
  type Shortfall,
  shortfallOf,
  solveTimes,
  type TimeConflict,
  type TimePlan,
} from '../../times/index.js'
import { type DayProblem, dayProblem } from '../course/day-problem.js'

/** Why there are no times, with what would do. */
export interface ConflictFound extends TimeConflict {
  readonly nearest: readonly NearestTime[]
  readonly shortfall: Shortfall | undefined
}

/** What was found of a day, as plain data: it may come from a worker. */
export interface Found {
  readonly strict: boolean // every bread at its minute; otherwise near it
  readonly answer: TimePlan | ConflictFound | undefined // undefined: nothing to do, or stopped before there was any
}

/** What a day is planned from. */
export interface PlanningOf {
  readonly day: Day
  readonly formulas: readonly Formula[]
  readonly leeway: number // how far a wait of one time moves, a fraction of 1
  readonly earlier?: TimePlan | undefined // of nearly the same day, where the search begins
}

/** What a worker that plans days is asked, and what it answers; `ask` tells one day from the next. */
export type ToPlanner = ({ readonly ask: number } & PlanningOf) | { readonly stop: number }
export type FromPlanner = { readonly ask: number } & (
  | { readonly progress: SearchProgress }
  | { readonly found: Found }
)

/** The day written down as the answer was found. */
export const writtenFor = ({ strict }: Found, { day, formulas, leeway }: PlanningOf): DayProblem =>
  dayProblem(day, new Map(formulas.map(f => [f.id, f])), { leeway, strict })

/**
 * A day being planned, a slice at a time: every bread ready at its minute, or, where they have to take turns, near it. `step`
 * until it says that it is done, or stop when you like; `found` is the best so far.
 */
export class Planning {
  readonly #of: PlanningOf
  readonly #strict: DayProblem
  #near: DayProblem | undefined // looked through in its turn
  #search: Search | undefined // undefined: there is nothing to do

  constructor(of: PlanningOf) {
    this.#of = of
    this.#strict = this.#written(true)
    if (this.#strict.network.events.length) this.#search = this.#searchIn(this.#strict)
  }

  #written(strict: boolean): DayProblem {
    return writtenFor({ strict, answer: undefined }, this.#of)
  }

  #searchIn({ problem }: DayProblem): Search {
    const { earlier } = this.#of
    return new Search(problem, earlier ? { earlier } : {})
  }

  get progress(): SearchProgress {
    return this.#search?.progress ?? { relaxed: 0, cost: Number.POSITIVE_INFINITY, gap: 0 }
  }

  get hasPlan(): boolean {
    return this.progress.cost < Number.POSITIVE_INFINITY
  }

  /** Goes on by so many relaxed problems, and gives whether all is looked through. */
  step(problems?: number): boolean {
    if (!this.#search) return true
    if (!this.#search.step(problems)) return false
    if (this.hasPlan || this.#near || !this.#mayTakeTurns()) return true
    this.#near = this.#written(false)
    this.#search = this.#searchIn(this.#near)
    return false
  }

  /** Whether only what one can use at a time is at fault, and breads or loads could go one after the other. */
  #mayTakeTurns(): boolean {
    const { breads, network, problem } = this.#strict
    const takesTurns = breads.length > 1 || network.events.some(e => e.load && e.load.of > 1)
    return takesTurns && solveTimes({ ...problem, alone: [] }).kind === 'plan'
  }

  /** The best plan so far, or once all is looked through why there is none; finding that out may take longer than a step. */
  found(): Found {
    const search = this.#search
    if (!search) return { strict: true, answer: undefined }
    if (this.hasPlan) {
      const answer = search.answer()
      if (answer.kind === 'plan') return { strict: !this.#near, answer }
    }
    if (!search.done) return { strict: true, answer: undefined }
    if (this.#near) {
      const nearly = search.answer() // looks further than the search did
      if (nearly.kind === 'plan') return { strict: false, answer: nearly }
    }
    const { problem } = this.#strict
    const answer = this.#near ? new Search(problem).answer() : search.answer()
    if (answer.kind === 'plan') return { strict: true, answer }
    const nearest = nearestTimes(problem, answer).map(toTheMinute(problem))
    return { strict: true, answer: { ...answer, nearest, shortfall: shortfallOf(problem, answer) } }
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
