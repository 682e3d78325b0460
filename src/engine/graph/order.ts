import { type Cells, Kind } from './cells.js'
import { grown } from './slots.js'

const SETTLED = 0x7fffffff

/** A set of cells each of which takes from every other, directly or through others. */
export interface Cycle {
  readonly members: readonly number[]
  /** Ids, each taking from the next, the first repeated at the end. */
  readonly path: readonly number[]
}

/**
 * Puts cells in order again after their slots changed: gives levels to everything behind the cells it is
 * told to start from, and finds the cycles there. (Tarjan's strongly connected components along the users,
 * with stacks of its own in place of recursion, as chains may be 100,000 cells long.)
 */
export class Order {
  highest = 0 // the highest level given
  #visit = new Int32Array(0) // cell → its turn; 0: not come to; SETTLED: in `#found`
  #group = new Int32Array(0) // cell → the lowest turn it leads back to, then the number of its component
  readonly #found: number[] = [] // cells, component after component, what takes before what is taken from
  readonly #ends: number[] = [] // component → the end of it in `#found`

  /** `start` of a cycle: where its path should begin, given its members. */
  arrange(cells: Cells, roots: readonly number[], start: (members: readonly number[]) => number): Cycle[] {
    if (this.#visit.length < cells.length) {
      this.#visit = grown(this.#visit, cells.values.length)
      this.#group = grown(this.#group, cells.values.length)
    }
    this.highest = 0
    this.#explore(cells, roots)
    const cycles: Cycle[] = []
    for (let c = this.#ends.length - 1; c >= 0; c--) {
      if (!this.#level(cells, c)) continue
      const members = this.#found.slice(this.#ends[c - 1] ?? 0, this.#ends[c])
      cycles.push({ members, path: this.#path(cells, start(members), c) })
    }
    for (const id of this.#found) this.#visit[id] = 0
    this.#found.length = 0
    this.#ends.length = 0
    return cycles
  }

  #explore(cells: Cells, roots: readonly number[]): void {
    const { users } = cells
    const { owner, next } = cells.slots
    const visit = this.#visit
    const low = this.#group
    const open: number[] = [] // come to, component not known yet
    const trail: number[] = [] // from a root to the cell at hand
    const ahead: number[] = [] // for each on the trail, the next slot to follow
    let turn = 0
    const enter = (id: number) => {
      visit[id] = low[id] = ++turn
      open.push(id)
      trail.push(id)
      ahead.push(users[id]!)
    }
    for (const root of roots) {
      if (visit[root] !== 0) continue
      enter(root)
      while (trail.length > 0) {
        const id = trail.at(-1)!
        const slot = ahead.at(-1)!
        if (slot !== 0) {
          ahead[ahead.length - 1] = next[slot]!
          const user = owner[slot]!
          if (visit[user] === 0) enter(user)
          else if (visit[user]! < low[id]!) low[id] = visit[user]!
          continue
        }
        trail.pop()
        ahead.pop()
        if (trail.length > 0 && low[id]! < low[trail.at(-1)!]!) low[trail.at(-1)!] = low[id]!
        if (low[id] === visit[id]) this.#close(id, open)
      }
    }
  }

  #close(id: number, open: number[]): void {
    let member: number
    do {
      member = open.pop()!
      this.#visit[member] = SETTLED
      this.#group[member] = this.#ends.length
      this.#found.push(member)
    } while (member !== id)
    this.#ends.push(this.#found.length)
  }

  #isIn(id: number, component: number): boolean {
    return this.#visit[id] === SETTLED && this.#group[id] === component
  }

  /** Gives the members the lowest level above all that they take from outside; true when they take from each other. */
  #level(cells: Cells, component: number): boolean {
    const { levels, froms, counts } = cells
    const { takes } = cells.slots
    const found = this.#found
    const begin = this.#ends[component - 1] ?? 0
    const end = this.#ends[component]!
    let level = 0
    let cyclic = false
    for (let i = begin; i < end; i++) {
      const from = froms[found[i]!]!
      const until = from + counts[found[i]!]!
      for (let slot = from; slot < until; slot++) {
        const input = takes[slot]!
        if (this.#isIn(input, component)) cyclic = true
        else if (levels[input]! >= level) level = levels[input]! + 1
      }
    }
    for (let i = begin; i < end; i++) levels[found[i]!] = level
    if (level > this.highest) this.highest = level
    return cyclic
  }

  /** The shortest way from a member back to itself, breadth first. */
  #path(cells: Cells, start: number, component: number): number[] {
    const { froms, counts } = cells
    const { takes } = cells.slots
    const cameFrom = new Map<number, number>()
    const reached = [start]
    for (const id of reached) {
      const from = froms[id]!
      for (let slot = from; slot < from + counts[id]!; slot++) {
        const input = takes[slot]!
        if (input === start) {
          const path = [start]
          for (let step = id; step !== start; step = cameFrom.get(step)!) path.push(step)
          return [...path, start].reverse()
        }
        if (!this.#isIn(input, component) || cameFrom.has(input)) continue
        cameFrom.set(input, id)
        reached.push(input)
      }
    }
    return [start, start] // not reached: every member leads back to itself
  }
}

/** All cells that take from others, to arrange a whole graph anew. */
export function derivedCells(cells: Cells): number[] {
  const ids: number[] = []
  for (let id = 1; id < cells.length; id++) if (cells.kinds[id] === Kind.derived) ids.push(id)
  return ids
}
