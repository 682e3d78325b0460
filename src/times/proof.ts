import { type Arc, type Choice, type Constraints, type NamedArc, sameTime } from './constraints.js'
import { overload } from './overload.js'
import { greatest, least } from './potentials.js'

/** Thrown when a proof takes more steps than it may. */
export class TooLong extends Error {}

/**
 * Finds out whether some of the members can be together, costs apart. A choice that neither side keeps is decided both ways; what
 * made a decision fail is remembered, so that decisions that had no part in it are not turned over again.
 */
export class Proof {
  readonly #constraints: Constraints
  readonly #start: { readonly late: Float64Array; readonly early: Float64Array }
  #steps = 0
  times: Float64Array = new Float64Array() // of all moments, from the base on, where the members last asked about can be together

  constructor(constraints: Constraints) {
    this.#constraints = constraints
    const horizon = horizonOf(constraints)
    const starts = (time: number) =>
      new Float64Array(constraints.origin + 1).fill(time).fill(0, constraints.origin)
    this.#start = { late: starts(horizon), early: starts(-horizon) }
  }

  /**
   * Members that already cannot be together, or undefined where all can.
   * @throws TooLong after so many `steps`
   */
  against(members: ReadonlySet<number>, steps: number): Set<number> | undefined {
    this.#steps = steps
    const arcs = this.#constraints.arcs.filter(arc => members.has(arc.member))
    const choices = this.#constraints.choices.filter(choice => members.has(choice.member))
    const reasons = this.#refute(arcs, choices, members)
    return reasons && new Set([...reasons].filter(reason => reason < this.#constraints.members))
  }

  /** Members and, from `members` on, decisions that cannot be together. */
  #refute(
    arcs: readonly NamedArc[],
    choices: readonly Choice[],
    members: ReadonlySet<number>,
  ): Set<number> | undefined {
    if (this.#steps-- <= 0) throw new TooLong()
    const late = greatest(arcs, this.#start.late)
    if ('cycle' in late) return new Set(late.cycle.map(arc => arcs[arc]!.member))
    const early = least(arcs, this.#start.early)
    if ('cycle' in early) return new Set(early.cycle.map(arc => arcs[arc]!.member))
    const rooms = this.#constraints.rooms.filter(room => members.has(room.member))
    const reasons = overload(arcs, rooms, early, late)
    if (reasons) return reasons
    const choice = this.#broken(choices, late.x)
    if (!choice) {
      this.times = late.x
      return undefined
    }
    // Both decisions of a choice have its number; one is in force at a time.
    const decision = this.#constraints.members + this.#constraints.choices.indexOf(choice)
    const over = choice.sides.map(side => overstepped(side, late.x))
    const sides = over[0]! <= over[1]! ? choice.sides : [choice.sides[1], choice.sides[0]]
    const together = new Set([choice.member])
    for (const side of sides) {
      const found = this.#refute([...arcs, { ...side, member: decision }], choices, members)
      if (!found?.has(decision)) return found
      for (const reason of found) if (reason !== decision) together.add(reason)
    }
    return together
  }

  /** The choice kept on neither side that lies latest. */
  #broken(choices: readonly Choice[], x: Float64Array): Choice | undefined {
    let latest = -Infinity
    let found: Choice | undefined
    for (const choice of choices) {
      const [first, second] = choice.sides
      if (overstepped(first, x) <= sameTime || overstepped(second, x) <= sameTime) continue
      const time = Math.min(x[first.to]!, x[second.to]!)
      if (time > latest) {
        latest = time
        found = choice
      }
    }
    return found
  }
}

const overstepped = ({ from, to, limit }: Arc, x: Float64Array) => x[to]! - x[from]! - limit

/** That even before any choice is decided too much is asked, of a room or of the bounds. */
export function overloaded(constraints: Constraints): boolean {
  try {
    return new Proof(constraints).against(new Set(Array(constraints.members).keys()), 1) !== undefined
  } catch (error) {
    if (error instanceof TooLong) return false
    throw error
  }
}

/** Longer than any ways through the arcs and choices. */
export function horizonOf({ arcs, choices }: Constraints): number {
  let sum = 1
  for (const { limit } of [...arcs, ...choices.flatMap(choice => choice.sides)])
    if (Number.isFinite(limit)) sum += 4 * Math.abs(limit)
  return sum
}
