import {
  type Arc,
  type Choice,
  type Constraints,
  type NamedArc,
  type Room,
  sameTime,
} from '../problem/constraints.js'
import { type Load, loadsOf, overload } from '../problem/overload.js'
import { type Bounds, boundsFrom, greatest, least, reasons } from './potentials.js'

/** Thrown when a proof takes more steps than it may. */
export class TooLong extends Error {}

/** A choice among those asked about, with the number of its decision, which counts on after the members. */
interface Question extends Choice {
  readonly decision: number
}

/** What a step of a proof has come to. */
interface State {
  readonly arcs: NamedArc[] // those that hold, then those decided
  open: readonly Question[] // that neither a decision nor the bounds have answered
  early: Bounds
  late: Bounds
}

/** A decision that had to be taken. */
interface Followed {
  readonly decision: number
  readonly because: ReadonlySet<number> // members and decisions before it
}

/**
 * Finds out whether some of the members can be together, costs apart. What the bounds leave of a choice is decided;
 * then a choice that neither side keeps is decided both ways. What made a decision fail is remembered, so that
 * decisions without a part in it are not turned over again.
 */
export class Proof {
  readonly #constraints: Constraints
  readonly #questions: readonly Question[]
  #steps = 0
  #loads: ReadonlyMap<Room, readonly Load[]> = new Map()
  /** Of all moments, from the base on, where the members last asked about can be together. */
  times: Float64Array = new Float64Array()

  constructor(constraints: Constraints) {
    this.#constraints = constraints
    this.#questions = constraints.choices.map((choice, place) => ({
      ...choice,
      decision: constraints.members + place,
    }))
  }

  /**
   * Members that already cannot be together, or undefined where all can.
   * @throws TooLong after so many `steps`
   */
  against(members: ReadonlySet<number>, steps: number): Set<number> | undefined {
    this.#steps = steps
    const { origin, arcs, rooms } = this.#constraints
    const horizon = horizonOf(this.#constraints)
    const start = (time: number) => boundsFrom(new Float64Array(origin + 1).fill(time).fill(0, origin))
    const state = {
      arcs: arcs.filter(arc => members.has(arc.member)),
      open: this.#questions.filter(({ member }) => members.has(member)),
      early: start(-horizon),
      late: start(horizon),
    }
    const kept = rooms.filter(({ member }) => members.has(member))
    this.#loads = new Map(kept.map(room => [room, loadsOf(state.arcs, room)]))
    return this.#refute(state, true)
  }

  /** Members and decisions that cannot be together. */
  #refute(state: State, first: boolean): Set<number> | undefined {
    if (this.#steps-- <= 0) throw new TooLong()
    const followed: Followed[] = []
    const found = this.#follow(state, followed, first) ?? this.#branch(state)
    // A decision that had to be taken stands for what made it so.
    for (const { decision, because } of followed.toReversed())
      if (found?.delete(decision)) for (const reason of because) found.add(reason)
    return found
  }

  /** Decides what has to be, until nothing more has to; gives what cannot be together, where that shows. */
  #follow(state: State, followed: Followed[], first: boolean): Set<number> | undefined {
    const { arcs } = state
    for (;;) {
      const late = greatest(arcs, state.late)
      if ('cycle' in late) return new Set(late.cycle.map(arc => arcs[arc]!.member))
      const early = least(arcs, state.early)
      if ('cycle' in early) return new Set(early.cycle.map(arc => arcs[arc]!.member))
      state.late = late
      state.early = early
      const found = this.#overloaded(state)
      if (found) return found
      const before = followed.length
      followBounds(state, followed)
      if (before === followed.length && first) followWays(state, followed)
      if (before === followed.length) return undefined
    }
  }

  /** Decides a choice that neither side keeps both ways; without one, all can be together. */
  #branch({ arcs, open, early, late }: State): Set<number> | undefined {
    const question = broken(open, late.x)
    if (!question) {
      this.times = late.x
      return undefined
    }
    const { decision, member, sides } = question
    const over = sides.map(side => overstepped(side, late.x))
    const rest = open.filter(other => other !== question)
    const together = new Set([member])
    for (const side of over[0]! <= over[1]! ? sides : sides.toReversed()) {
      const found = this.#refute(
        { arcs: [...arcs, { ...side, member: decision }], open: rest, early, late },
        false,
      )
      if (!found?.has(decision)) return found
      for (const reason of found) if (reason !== decision) together.add(reason)
    }
    return together
  }

  /** The members of an overload, with what leads to the bounds of its loads. */
  #overloaded({ arcs, early, late }: State): Set<number> | undefined {
    for (const [room, loads] of this.#loads) {
      const found = overload(room, loads, early.x, late.x)
      if (!found) continue
      const members = new Set([room.member])
      for (const { from, to, because } of found) {
        if (because !== -1) members.add(because)
        for (const arc of reasons(arcs, early, from)) members.add(arcs[arc]!.member)
        for (const arc of reasons(arcs, late, to)) members.add(arcs[arc]!.member)
      }
      return members
    }
    return undefined
  }
}

const overstepped = ({ from, to, limit }: Arc, x: Float64Array) => x[to]! - x[from]! - limit

/** The choice kept on neither side that lies latest. */
function broken(open: readonly Question[], x: Float64Array): Question | undefined {
  let latest = -Infinity
  let found: Question | undefined
  for (const question of open) {
    const [first, second] = question.sides
    if (overstepped(first, x) <= sameTime || overstepped(second, x) <= sameTime) continue
    const time = Math.min(x[first.to]!, x[second.to]!)
    if (time > latest) {
      latest = time
      found = question
    }
  }
  return found
}

/**
 * Takes the other side of all choices of which the bounds exclude one, and puts aside those that they keep anyhow.
 */
function followBounds(state: State, followed: Followed[]): void {
  const { arcs, early, late } = state
  const excludes = ({ from, to, limit }: Arc) => early.x[to]! - late.x[from]! - limit > sameTime
  const implies = ({ from, to, limit }: Arc) => late.x[to]! - early.x[from]! <= limit
  const why = ({ from, to, limit }: Arc) =>
    limit === -Infinity ? [] : [...reasons(arcs, early, to), ...reasons(arcs, late, from)]
  state.open = state.open.filter(question => {
    const [first, second] = question.sides
    if (implies(first) || implies(second)) return false
    if (excludes(first)) followed.push(follow(arcs, question, second, why(first)))
    else if (excludes(second)) followed.push(follow(arcs, question, first, why(second)))
    else return true
    return false
  })
}

/** The same by the ways that lead from one of a side's ends to the other without the origin. */
function followWays(state: State, followed: Followed[]): void {
  const arcs = [...state.arcs]
  const ways = new Map<number, Bounds>()
  const wayFrom = (from: number): Bounds => {
    const start = new Float64Array(state.early.x.length).fill(Infinity)
    start[from] = 0
    const found = ways.get(from) ?? greatest(arcs, boundsFrom(start))
    if ('cycle' in found) throw new Error('Bounds were found where there are none.')
    ways.set(from, found)
    return found
  }
  const excludes = ({ from, to, limit }: Arc) => wayFrom(to).x[from]! + limit < -sameTime
  const why = ({ from, to }: Arc) => reasons(arcs, wayFrom(to), from)
  state.open = state.open.filter(question => {
    const [first, second] = question.sides
    if (excludes(first)) followed.push(follow(state.arcs, question, second, why(first)))
    else if (excludes(second)) followed.push(follow(state.arcs, question, first, why(second)))
    else return true
    return false
  })
}

/** Adds a side as an arc; `why` are the arcs that exclude the other. */
function follow(
  arcs: NamedArc[],
  { decision, member }: Question,
  side: Arc,
  why: Iterable<number>,
): Followed {
  const because = new Set([member])
  for (const arc of why) because.add(arcs[arc]!.member)
  arcs.push({ ...side, member: decision })
  return { decision, because }
}

/** Longer than any ways through the arcs and choices. */
export function horizonOf({ arcs, choices }: Constraints): number {
  let sum = 1
  for (const { limit } of [...arcs, ...choices.flatMap(choice => choice.sides)])
    if (Number.isFinite(limit)) sum += 4 * Math.abs(limit)
  return sum
}
