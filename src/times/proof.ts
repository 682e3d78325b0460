import { type Arc, type Choice, type Constraints, type NamedArc, type Room, sameTime } from './constraints.js'
import { type Load, loadsOf, overload } from './overload.js'
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
  readonly decided: Set<number>
  early: Bounds
  late: Bounds
}

/**
 * Finds out whether some of the members can be together, costs apart. What the bounds leave of a choice is decided; then a choice that
 * neither side keeps is decided both ways. What made a decision fail is remembered, so that decisions without a part in it are not turned
 * over again.
 */
export class Proof {
  readonly #constraints: Constraints
  readonly #questions: readonly Question[]
  #steps = 0
  #loads: ReadonlyMap<Room, readonly Load[]> = new Map()
  times: Float64Array = new Float64Array() // of all moments, from the base on, where the members last asked about can be together

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
      decided: new Set<number>(),
      early: start(-horizon),
      late: start(horizon),
    }
    const asked = this.#questions.filter(({ member }) => members.has(member))
    const kept = rooms.filter(({ member }) => members.has(member))
    this.#loads = new Map(kept.map(room => [room, loadsOf(state.arcs, room)]))
    return this.#refute(state, asked)
  }

  /** Members and decisions that cannot be together. */
  #refute(state: State, asked: readonly Question[]): Set<number> | undefined {
    if (this.#steps-- <= 0) throw new TooLong()
    const followed: { decision: number; because: Set<number> }[] = []
    // A decision that had to be taken stands for what made it so.
    const traced = (found: Set<number>): Set<number> => {
      for (const { decision, because } of followed.toReversed())
        if (found.delete(decision)) for (const reason of because) found.add(reason)
      return found
    }
    const { arcs, decided } = state
    for (let before = -1; before !== followed.length; ) {
      before = followed.length
      const late = greatest(arcs, state.late)
      if ('cycle' in late) return traced(new Set(late.cycle.map(arc => arcs[arc]!.member)))
      const early = least(arcs, state.early)
      if ('cycle' in early) return traced(new Set(early.cycle.map(arc => arcs[arc]!.member)))
      state.late = late
      state.early = early
      const found = this.#overloaded(state)
      if (found) return traced(found)
      const follow = ({ decision, member, sides }: Question, side: 0 | 1, why: Iterable<number>) => {
        const because = new Set([member])
        for (const arc of why) because.add(arcs[arc]!.member)
        arcs.push({ ...sides[side], member: decision })
        decided.add(decision)
        followed.push({ decision, because })
      }
      for (const question of asked) {
        if (decided.has(question.decision)) continue
        const side = question.sides.findIndex(arc => excluded(arc, early, late))
        if (side !== -1)
          follow(question, side === 0 ? 1 : 0, whyNot(question.sides[side]!, arcs, early, late))
      }
      if (before === followed.length && decided.size === followed.length) followApart(state, asked, follow)
    }
    const question = this.#broken(asked, state)
    if (!question) {
      this.times = state.late.x
      return undefined
    }
    const { decision, member, sides } = question
    const over = sides.map(side => overstepped(side, state.late.x))
    const together = new Set([member])
    for (const side of over[0]! <= over[1]! ? sides : sides.toReversed()) {
      const below = {
        ...state,
        arcs: [...arcs, { ...side, member: decision }],
        decided: new Set([...decided, decision]),
      }
      const found = this.#refute(below, asked)
      if (!found) return undefined
      if (!found.has(decision)) return traced(found)
      for (const reason of found) if (reason !== decision) together.add(reason)
    }
    return traced(together)
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

  /** The choice kept on neither side that lies latest. */
  #broken(asked: readonly Question[], { decided, late: { x } }: State): Question | undefined {
    let latest = -Infinity
    let found: Question | undefined
    for (const question of asked) {
      const [first, second] = question.sides
      if (decided.has(question.decision)) continue
      if (overstepped(first, x) <= sameTime || overstepped(second, x) <= sameTime) continue
      const time = Math.min(x[first.to]!, x[second.to]!)
      if (time > latest) {
        latest = time
        found = question
      }
    }
    return found
  }
}

const overstepped = ({ from, to, limit }: Arc, x: Float64Array) => x[to]! - x[from]! - limit

/** That an arc cannot hold, by the bounds of its ends alone. */
const excluded = ({ from, to, limit }: Arc, early: Bounds, late: Bounds) =>
  early.x[to]! - late.x[from]! - limit > sameTime

function whyNot({ from, to, limit }: Arc, arcs: readonly NamedArc[], early: Bounds, late: Bounds): number[] {
  return limit === -Infinity ? [] : [...reasons(arcs, early, to), ...reasons(arcs, late, from)]
}

/** Decides what excludes a side by the way from one of its ends to the other, without the origin. */
function followApart(
  { arcs, decided, early }: State,
  asked: readonly Question[],
  follow: (question: Question, side: 0 | 1, why: Iterable<number>) => void,
): void {
  const given = [...arcs]
  const ways = new Map<number, Bounds>()
  const way = (from: number): Bounds => {
    const start = new Float64Array(early.x.length).fill(Infinity)
    start[from] = 0
    const found = ways.get(from) ?? greatest(given, boundsFrom(start))
    if ('cycle' in found) throw new Error('Bounds were found where there are none.')
    ways.set(from, found)
    return found
  }
  for (const question of asked) {
    if (decided.has(question.decision)) continue
    for (const side of [0, 1] as const) {
      const { from, to, limit } = question.sides[side]
      const back = way(to)
      if (back.x[from]! + limit >= -sameTime) continue
      follow(question, side === 0 ? 1 : 0, reasons(given, back, from))
      break
    }
  }
}

/** Longer than any ways through the arcs and choices. */
export function horizonOf({ arcs, choices }: Constraints): number {
  let sum = 1
  for (const { limit } of [...arcs, ...choices.flatMap(choice => choice.sides)])
    if (Number.isFinite(limit)) sum += 4 * Math.abs(limit)
  return sum
}
