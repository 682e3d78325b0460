import { LeastSquares } from '../least-squares/least-squares.js'
import { arcOf, sideOf } from '../least-squares/shape.js'
import { Branching, type Decided, sameCost } from './branching.js'
import { windows } from './windows.js'

/**
 * Of all ways to decide that cost the same as `best`, the one in which the first choice is on its first side where
 * that is possible, then the second choice, and so on. Yields after each relaxed problem; `best` is replaced on the
 * way. `root` is the least-squares problem with no choice decided.
 */
export function* settleTies(root: LeastSquares, found: { best: Decided }): Generator<void, void> {
  const { shape } = root
  const allowed = found.best.cost + sameCost
  const state = new LeastSquares(shape)
  state.copy(root)
  const trial = new LeastSquares(shape)
  const branching = new Branching(shape)
  let within = windows(state, allowed)
  let room = allowed - state.cost
  for (let choice = 0; choice < found.best.sides.length; choice++) {
    const first = sideOf(shape, choice, 0)
    if (found.best.sides[choice] === 1 && !within.excludes(arcOf(shape, first))) {
      trial.copy(state)
      trial.enable(first)
      const outcome = trial.solve(allowed)
      yield
      if (outcome === 'best') {
        branching.best = undefined
        yield* branching.search(trial, allowed, true)
        if (branching.best) found.best = branching.best
      }
    }
    const side = first + found.best.sides[choice]!
    const arc = arcOf(shape, side)
    if (within.implies(arc)) continue
    state.enable(side)
    within.add(arc)
    state.solve()
    if (allowed - state.cost < room / 2) {
      room = allowed - state.cost
      within = windows(state, allowed)
    }
  }
}
