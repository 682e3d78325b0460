import type { AloneGroup, TimeProblem, TimeUse } from '../problem/time-problem.js'

/** A span as one of its moments sees it. */
interface End {
  readonly other: string // the moment at its other end
  readonly sign: string // which end this is, and its bounds
}

/** Parts of a problem that are alike: each could stand in the place of another. */
interface Alike {
  readonly group: number
  readonly uses: number[] // one of each part, in the order given: by it the parts are ordered
  readonly parts: ReadonlySet<string>[] // their moments
}

/**
 * Orders of two uses that may be fixed before anything is looked for, as their places among the choices: parts of the problem that
 * are alike in all their spans, holds and uses (the loads of one bread) can change places at no cost, so that there
 * is an answer of least cost in which they go in the order given.
 */
export function alikeOrders(problem: TimeProblem): number[] {
  const mirror = new Mirror(problem)
  const found: Alike[] = []
  const taken = new Set<string>()
  const fixed: number[] = []
  let place = 0
  for (const [group, { uses }] of (problem.alone ?? []).entries()) {
    for (const i of uses.keys()) {
      for (let j = i + 1; j < uses.length; j++, place++) {
        const mine = found.find(a => a.group === group && a.uses.includes(i))
        if (mine?.uses.includes(j)) {
          fixed.push(place)
          continue
        }
        const swap = mirror.swap(uses[i]!, uses[j]!)
        if (!swap) continue
        const [here, there] = swap
        const isFree = (part: ReadonlySet<string>) => [...part].every(moment => !taken.has(moment))
        if (!isFree(there)) continue
        if (!mine && isFree(here)) found.push({ group, uses: [i, j], parts: [here, there] })
        else if (mine && sameItems(mine.parts[mine.uses.indexOf(i)]!, here)) {
          mine.uses.push(j)
          mine.parts.push(there)
        } else continue
        for (const moment of [...here, ...there]) taken.add(moment)
        fixed.push(place)
      }
    }
  }
  return fixed
}

const sameItems = (a: ReadonlySet<string>, b: ReadonlySet<string>): boolean =>
  a.size === b.size && [...a].every(item => b.has(item))

/** Finds what has to change places with what, so that a problem is the same again. */
class Mirror {
  readonly #ends = new Map<string, End[]>() // by moment
  readonly #held = new Map<string, string>() // within which times, by moment
  readonly #used = new Map<string, string[]>() // by which groups, by moment
  readonly #uses = new Set<string>()
  readonly #seen = new Map<string, string>() // how each moment looks
  readonly #alone: readonly AloneGroup[]

  constructor({ spans, holds, alone = [] }: TimeProblem) {
    this.#alone = alone
    for (const { from, to, least, most, usual, leeway } of spans) {
      const bounds = `${least} ${most} ${usual} ${leeway}`
      this.#add(this.#ends, from, { other: to, sign: `from ${bounds}` })
      this.#add(this.#ends, to, { other: from, sign: `to ${bounds}` })
    }
    const within = new Map<string, [number, number]>()
    for (const { moment, at, from = at ?? -Infinity, until = at ?? Infinity } of holds) {
      const [low, high] = within.get(moment) ?? [-Infinity, Infinity]
      within.set(moment, [Math.max(low, from), Math.min(high, until)])
    }
    for (const [moment, bounds] of within) this.#held.set(moment, bounds.join(' '))
    for (const [group, { uses }] of alone.entries()) {
      for (const use of uses) {
        this.#uses.add(useKey(group, use, use.from, use.to))
        this.#add(this.#used, use.from, `${group} from ${use.setting}`)
        this.#add(this.#used, use.to, `${group} to ${use.setting}`)
      }
    }
  }

  #add<T>(map: Map<string, T[]>, key: string, item: T): void {
    const list = map.get(key)
    if (list) list.push(item)
    else map.set(key, [item])
  }

  /** The moments on both sides that change places when two uses do, all else staying; undefined where that is another problem. */
  swap(a: TimeUse, b: TimeUse): [ReadonlySet<string>, ReadonlySet<string>] | undefined {
    if (!this.#looksLike(a.from, b.from) || !this.#looksLike(a.to, b.to) || a.setting !== b.setting)
      return undefined
    const to = new Map<string, string>() // both ways
    const here = new Set<string>()
    const there = new Set<string>()
    const waiting: [string, string][] = []
    const pair = (one: string, other: string): boolean => {
      if (to.has(one) || to.has(other)) return to.get(one) === other && to.get(other) === one
      if (!this.#looksLike(one, other)) return false
      to.set(one, other)
      to.set(other, one)
      if (one === other) return true
      here.add(one)
      there.add(other)
      waiting.push([one, other])
      return true
    }
    if (!pair(a.from, b.from) || !pair(a.to, b.to)) return undefined
    for (let next = waiting.pop(); next; next = waiting.pop()) {
      const [one, other] = next
      const left = [...(this.#ends.get(other) ?? [])]
      for (const { other: neighbour, sign } of this.#ends.get(one) ?? []) {
        const like = left.filter(end => end.sign === sign)
        const wanted = to.get(neighbour)
        const end =
          like.find(e => e.other === (wanted ?? neighbour)) ??
          (wanted === undefined ? like.find(e => !to.has(e.other)) : undefined)
        if (!end || !pair(neighbour, end.other)) return undefined
        left.splice(left.indexOf(end), 1)
      }
      if (left.length) return undefined
    }
    if (here.size === 0 || !this.#usesStay(to)) return undefined
    return [here, there]
  }

  /** Whether two moments are held alike, used alike, and have like spans. */
  #looksLike(one: string, other: string): boolean {
    return one === other || this.#looks(one) === this.#looks(other)
  }

  #looks(moment: string): string {
    let known = this.#seen.get(moment)
    if (known === undefined) {
      const signs = this.#ends.get(moment)?.map(({ sign }) => sign) ?? []
      const used = this.#used.get(moment) ?? []
      known = [this.#held.get(moment), ...used.sort(), ...signs.sort()].join(';')
      this.#seen.set(moment, known)
    }
    return known
  }

  /** Whether each use is one again when its moments have changed places. */
  #usesStay(to: ReadonlyMap<string, string>): boolean {
    const swapped = (moment: string) => to.get(moment) ?? moment
    return this.#alone.every(({ uses }, group) =>
      uses.every(
        use =>
          (!to.has(use.from) && !to.has(use.to)) ||
          this.#uses.has(useKey(group, use, swapped(use.from), swapped(use.to))),
      ),
    )
  }
}

const useKey = (group: number, { setting }: TimeUse, from: string, to: string): string =>
  `${group} ${JSON.stringify([from, to, setting])}`
