import { LeastSquares } from '../least-squares/least-squares.js'
import { arcOf, type Shape, sideOf } from '../least-squares/shape.js'
import { Joined } from '../network/joined.js'
import { sameTime } from '../problem/constraints.js'
import { Heap } from '../problem/heap.js'
import { windows } from './windows.js'

/** Costs that differ by no more are equal. */
export const sameCost = 1e-9

/** A way to decide every choice, with what that costs. */
export interface Decided {
  readonly cost: number
  readonly sides: Uint8Array // 0 or 1 by choice
  readonly links: Int32Array // the arcs at their limit that hold the others up
}

interface Node {
  readonly bound: number // nothing below costs less
  readonly depth: number
  readonly enabled: Int32Array
  readonly links: Int32Array
}

const nodesToImprove = 50 // without a better one, before the best is improved by parts
const problemsToImprove = 60 // for each part
const candidates = 4 // choices that are tried on both sides before one of them is branched on

/**
 * Branch and bound over the open choices: each node is a least-squares problem with some sides in force; a choice
 * of which neither side is kept is branched on. The node of least cost comes first; from there the search goes
 * straight down on the cheaper side (the first one, where both cost the same) as long as that is not much dearer
 * than the best of those put by.
 */
export class Branching {
  best: Decided | undefined
  readonly #shape: Shape
  readonly #choices: number
  readonly #nodes = new Heap<Node>((a, b) => a.bound < b.bound || (a.bound === b.bound && a.depth > b.depth))
  #at: LeastSquares
  #trials: [LeastSquares, LeastSquares]
  #kept: [LeastSquares, LeastSquares]
  readonly #given: number[] = [] // sides without which nothing is better than the best
  #idle = 0 // nodes since the best was found
  #bound = Infinity // of the node at hand

  constructor(shape: Shape) {
    const fresh = () => new LeastSquares(shape)
    this.#shape = shape
    this.#choices = (shape.stays - shape.always) / 2
    this.#at = fresh()
    this.#trials = [fresh(), fresh()]
    this.#kept = [fresh(), fresh()]
  }

  /** Nothing that has not been found costs less. */
  get bound(): number {
    return Math.min(this.#bound, this.#nodes.first?.bound ?? Infinity, this.best?.cost ?? Infinity)
  }

  /**
   * Finds the least cost below `root` that is not above `allowed`, or else any (`firstOnly`); it is in `best`
   * afterwards, and so is one that was there before and is no dearer by `sameCost`. Yields after each relaxed
   * problem; what is in `best` then is a plan already.
   */
  *search(root: LeastSquares, allowed = Infinity, firstOnly = false): Generator<void, void> {
    const within = () => Math.min(allowed, (this.best?.cost ?? Infinity) - sameCost)
    this.#put(root, 0)
    if (this.best && !this.#tighten(root)) this.#forget()
    for (let node = this.#nodes.pop(); node; node = this.#nodes.pop()) {
      if (node.bound > within()) break
      this.#bound = node.bound
      this.#at.begin(new Set([...this.#given, ...node.enabled]), node.links)
      let alive = this.#at.solve(within()) === 'best'
      yield
      for (let depth = node.depth; alive; depth++) {
        this.#bound = this.#at.cost
        const open = this.#open()
        if (open.length === 0) {
          this.best = this.decided(this.#at)
          if (firstOnly) return this.#forget()
          if (!this.#tighten(root)) return this.#forget()
          this.#idle = 0
          break
        }
        alive = yield* this.#branch(open, within, depth)
      }
      this.#bound = Infinity
      if (firstOnly || !this.best || ++this.#idle !== nodesToImprove) continue
      const { cost } = this.best
      yield* this.#improve(root)
      if (this.best.cost < cost && !this.#tighten(root)) break
    }
    this.#forget()
  }

  /** What a solution in which every choice is kept decides. */
  decided(state: LeastSquares): Decided {
    const sides = Uint8Array.from({ length: this.#choices }, (_, choice) =>
      Number(state.over(sideOf(this.#shape, choice, 0)) > sameTime),
    )
    return { cost: state.cost, sides, links: state.links }
  }

  /** Goes down one step; false where nothing below is of use, or it is put by. */
  *#branch(open: number[], within: () => number, depth: number): Generator<void, boolean> {
    let promise = -1
    for (const choice of open) {
      const cost = this.#at.cost
      const possible = [false, false]
      for (const side of [0, 1]) {
        const trial = this.#trials[side]!
        trial.copy(this.#at)
        trial.enable(sideOf(this.#shape, choice, side))
        possible[side] = trial.solve(within()) === 'best'
        yield
      }
      if (!possible[0] && !possible[1]) return false
      if (!possible[0] || !possible[1]) {
        this.#at.copy(this.#trials[possible[0] ? 0 : 1])
        return true
      }
      const [first, second] = this.#trials
      const product = Math.max(first.cost - cost, 1e-6) * Math.max(second.cost - cost, 1e-6)
      if (product > promise) {
        promise = product
        const spare = this.#kept
        this.#kept = this.#trials
        this.#trials = spare
      }
    }
    const side = this.#kept[0].cost <= this.#kept[1].cost + sameCost ? 0 : 1
    this.#put(this.#kept[1 - side]!, depth + 1)
    const next = this.#kept[side]!
    const least = this.#nodes.first!.bound
    const best = this.best?.cost ?? Infinity
    if (next.cost > least + (best - least) / 4) {
      this.#put(next, depth + 1)
      return false
    }
    this.#at.copy(next)
    return true
  }

  /**
   * Plans one block of bodies after the other anew, the order of all others being as in the best, as long as that
   * is cheaper.
   */
  *#improve(root: LeastSquares): Generator<void, void> {
    const shape = this.#shape
    const blocks = blocksOf(shape)
    const touches = (choice: number, block: ReadonlySet<number>) => {
      const arc = sideOf(shape, choice, 0)
      return [arc, arc + 1].some(side => block.has(shape.from[side]!) || block.has(shape.to[side]!))
    }
    const state = this.#trials[0]
    const below = new Branching(shape)
    for (let since = 0; since < blocks.length; ) {
      for (const block of blocks) {
        if (since++ >= blocks.length) return
        const { sides, cost } = this.best!
        state.copy(root)
        for (const [choice, side] of sides.entries())
          if (!touches(choice, block)) state.enable(sideOf(shape, choice, side))
        if (state.solve(cost - sameCost) !== 'best') continue
        below.best = undefined
        const search = below.search(state, cost - sameCost, true)
        for (let k = 0; k < problemsToImprove && !search.next().done; k++) yield
        below.#forget()
        if (!below.best) continue
        this.best = below.best
        since = 0
      }
    }
  }

  /** Decides what the cost of the best already decides; false where nothing is better. */
  #tighten(root: LeastSquares): boolean {
    const state = this.#trials[0]
    const allowed = this.best!.cost - sameCost
    for (;;) {
      state.begin(new Set([...root.enabled, ...this.#given]), root.links)
      if (state.solve(allowed) !== 'best') return false
      const within = windows(state, allowed)
      if (!within.possible) return false
      const before = this.#given.length
      for (let choice = 0; choice < this.#choices; choice++) {
        const first = sideOf(this.#shape, choice, 0)
        const excluded = [first, first + 1].map(side => within.excludes(arcOf(this.#shape, side)))
        if (excluded[0] && excluded[1]) return false
        for (const side of [0, 1]) {
          const other = first + 1 - side
          if (excluded[side] && !within.implies(arcOf(this.#shape, other))) this.#given.push(other)
        }
      }
      if (this.#given.length === before) return true
    }
  }

  /** The choices of which neither side is kept, those first where the better side is overstepped most. */
  #open(): number[] {
    const found: { choice: number; over: number }[] = []
    for (let choice = 0; choice < this.#choices; choice++) {
      const arc = sideOf(this.#shape, choice, 0)
      const over = Math.min(this.#at.over(arc), this.#at.over(arc + 1))
      if (over > sameTime) found.push({ choice, over })
    }
    found.sort((a, b) => b.over - a.over || a.choice - b.choice)
    return found.slice(0, candidates).map(({ choice }) => choice)
  }

  #put(state: LeastSquares, depth: number): void {
    this.#nodes.push({ bound: state.cost, depth, enabled: state.enabled, links: state.links })
  }

  #forget(): void {
    this.#bound = Infinity
    while (this.#nodes.pop());
  }
}

/** Bodies that belong together: by what is said of how far apart they are, and by springs alone. */
function blocksOf(shape: Shape): ReadonlySet<number>[] {
  const own = Array.from({ length: shape.own }, (_, arc) => arcOf(shape, arc))
  const blocks = new Map<string, Set<number>>()
  for (const ties of [own, shape.springs]) {
    const joined = new Joined(shape.size)
    for (const { from, to } of ties) if (from !== 0 && to !== 0) joined.join(from, to)
    const sets = new Map<number, Set<number>>()
    for (let body = 1; body < shape.size; body++) {
      const first = joined.of(body)
      sets.set(first, (sets.get(first) ?? new Set()).add(body))
    }
    for (const set of sets.values()) blocks.set([...set].join(), set)
  }
  return [...blocks.values()]
}
