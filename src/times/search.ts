import { conflictOrTimes } from './conflicts/conflict.js'
import { LeastSquares } from './least-squares/least-squares.js'
import { shapeOf, sideOf } from './least-squares/shape.js'
import { type Network, networkOf } from './network/network.js'
import { alikeOrders } from './orders/alike.js'
import { Branching, type Decided } from './orders/branching.js'
import { decidedByBounds, overloaded } from './orders/open-choices.js'
import { placed } from './orders/placement.js'
import { settleTies } from './orders/ties.js'
import { type Constraints, constraintsOf } from './problem/constraints.js'
import type { TimeConflict, TimePlan, TimeProblem } from './problem/time-problem.js'

export interface SearchOptions {
  /** An answer to nearly the same problem: where its order of uses still fits, the search begins from there. */
  readonly earlier?: TimePlan
  /** How many relaxed problems are solved before the best found is given; 5,000 unless said otherwise. */
  readonly limit?: number
}

/** How far a search is. */
export interface SearchProgress {
  readonly relaxed: number // relaxed problems solved
  readonly cost: number // of the best plan found; Infinity before the first
  readonly gap: number // by how much at most a better plan would cost less
}

const usualLimit = 5_000
const problemsToFindAny = 500
const noCost = 1e-12 // less is what rounding leaves

/**
 * Looks for the times of least cost, a slice at a time: `step` until it says that it is done, or stop when you
 * like; `answer` is the best so far. Counts relaxed problems, not minutes, so that the same problem always has the
 * same answer.
 */
export class Search {
  readonly #problem: TimeProblem
  readonly #constraints: Constraints
  readonly #network: Network
  readonly #limit: number
  readonly #run: Generator<void, void>
  #relaxed = 0
  #done = false
  #root: LeastSquares | undefined // no choice decided that the bounds leave open
  #open: readonly number[] = [] // the choices that they leave open
  #branching: Branching | undefined
  #found: { best: Decided } | undefined
  #proven = false

  /** @throws RangeError that says in words what in the problem is wrong, and where */
  constructor(problem: TimeProblem, { earlier, limit = usualLimit }: SearchOptions = {}) {
    this.#problem = problem
    this.#constraints = constraintsOf(problem)
    this.#network = networkOf(this.#constraints)
    this.#limit = limit
    this.#run = this.#solve(earlier)
  }

  get done(): boolean {
    return this.#done
  }

  get progress(): SearchProgress {
    const cost = this.#best?.cost ?? Infinity
    return { relaxed: this.#relaxed, cost, gap: this.#gap }
  }

  /** Goes on by so many relaxed problems, and gives whether the search is done. */
  step(problems = 50): boolean {
    for (let k = 0; k < problems && !this.#done; k++) {
      if (this.#relaxed >= this.#limit || this.#run.next().done) this.#done = true
      else this.#relaxed += 1
    }
    return this.#done
  }

  /** The best plan so far, or else why there is none; looking for that may take longer than a step. */
  answer(): TimePlan | TimeConflict {
    const best = this.#best
    if (best) return this.#planOf(best)
    const found = conflictOrTimes(this.#problem, this.#constraints, hasPlan)
    if ('kind' in found) return found
    const decided = this.#orderOf(moment => found.times[moment]!)
    if (!decided) throw new Error('The times have neither a plan nor a conflict.')
    return this.#planOf(decided)
  }

  get #best(): Decided | undefined {
    return this.#found?.best ?? this.#branching?.best
  }

  get #gap(): number {
    const bound = this.#branching?.bound ?? this.#root?.cost ?? 0
    return this.#best ? Math.max(0, this.#best.cost - bound) : Infinity
  }

  *#solve(earlier: TimePlan | undefined): Generator<void, void> {
    if (this.#network.contradictory) return
    const decided = decidedByBounds(this.#network)
    if (!decided || overloaded(this.#constraints, this.#network, decided.distances)) return
    this.#open = decided.open
    const { choices } = this.#network
    const shape = shapeOf(
      this.#network,
      decided.arcs,
      decided.open.map(choice => choices[choice]!),
    )
    const root = new LeastSquares(shape)
    root.begin([])
    const outcome = root.solve()
    if (outcome === 'impossible') return
    this.#root = root
    yield
    const branching = new Branching(shape)
    if (earlier) {
      const times = this.#problem.moments.map(name => (earlier.at.get(name) ?? 0) - this.#constraints.base)
      branching.best = this.#orderOf(moment => times[moment] ?? 0)
      yield
    }
    this.#branching = branching
    const top = this.#ordered(root)
    if (!top) return
    yield* branching.search(top)
    if (!branching.best) return
    this.#found = { best: branching.best }
    yield* settleTies(root, this.#found)
    this.#proven = true
  }

  /** The same with parts that are alike in the order given; undefined where that cannot be, and so nothing can. */
  #ordered(root: LeastSquares): LeastSquares | undefined {
    const alike = new Set(alikeOrders(this.#problem))
    const state = new LeastSquares(root.shape)
    state.copy(root)
    for (const [place, choice] of this.#open.entries())
      if (alike.has(choice)) state.enable(sideOf(root.shape, place, 0))
    return state.solve() === 'best' ? state : undefined
  }

  /** What those times decide, with the least cost it has; undefined where it cannot be kept. */
  #orderOf(time: (moment: number) => number): Decided | undefined {
    const root = this.#root
    if (!root) return undefined
    const { origin, choices } = this.#constraints
    const timeOf = (moment: number) => (moment === origin ? 0 : time(moment))
    const sides = Uint8Array.from(this.#open, choice => {
      const [first, second] = choices[choice]!.sides.map(
        ({ from, to, limit }) => timeOf(to) - timeOf(from) - limit,
      )
      return Number(first! > second!)
    })
    const state = new LeastSquares(root.shape)
    state.begin(inForce(sides, root), root.links)
    return state.solve() === 'best' ? { sides, cost: state.cost, links: state.links } : undefined
  }

  #planOf({ sides, links }: Decided): TimePlan {
    const root = this.#root!
    const state = new LeastSquares(root.shape)
    state.begin(inForce(sides, root), links)
    state.solve()
    return {
      kind: 'plan',
      at: placed(this.#problem.moments, this.#constraints, this.#network, state),
      cost: state.cost < noCost ? 0 : state.cost,
      proven: this.#proven,
      gap: this.#proven ? 0 : this.#gap,
    }
  }
}

/** Whether a short search finds a plan, or that there is none. */
function hasPlan(problem: TimeProblem): boolean | undefined {
  const search = new Search(problem, { limit: problemsToFindAny })
  while (!search.step(1) && search.progress.cost === Infinity);
  if (search.progress.cost < Infinity) return true
  return search.progress.relaxed < problemsToFindAny ? false : undefined
}

const inForce = (sides: Uint8Array, { shape }: LeastSquares) =>
  Array.from(sides, (side, choice) => sideOf(shape, choice, side))

/**
 * The times of least cost, or a smallest set of spans, holds and groups that cannot be together.
 *
 * Keeps every span within its bounds, every hold and every group, and of all such times has the least sum of
 * (length − usual)² ÷ leeway over the spans with a usual length and least < most; the leeway is most − least, both
 * finite, unless the span says another. Ways to order uses that cost the same, to 1e-9, are settled by the order in which uses are given: the first goes before
 * the second where it can, then the first before the third, and so on, group by group; a use then comes after
 * closed hours rather than before them. What costs and bounds leave free is put as late as they let it; what may be
 * ever so late, then as early as they let it; of what is left the first moment in the order given is put at 0, and
 * so on with the rest.
 *
 * The search stops after 5,000 relaxed problems, or those that `limit` says: the best plan found is then given with
 * `proven` false and the `gap` that is left; a gap of 0 means that only orders of equal cost were left to settle. A
 * problem with no plan found until then is looked through for any plan, without regard to cost.
 * @throws RangeError that says in words what in the problem is wrong, and where
 */
export function solveTimes(problem: TimeProblem, options: SearchOptions = {}): TimePlan | TimeConflict {
  const search = new Search(problem, options)
  while (!search.step());
  return search.answer()
}
