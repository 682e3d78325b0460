import { Joined } from '../network/joined.js'
import { sameTime } from '../problem/constraints.js'
import { Compliance } from './compliance.js'
import { Forest } from './forest.js'
import { rest } from './rest.js'
import type { Shape } from './shape.js'

/** How a solution came out: of least cost, above the cost that was allowed, or not at all. */
export type Outcome = 'best' | 'above' | 'impossible'

const tightness = sameTime / 10 // how far an arc may be overstepped
const noForce = 1e-10

/**
 * Bodies between springs, some of them linked because an arc between them is at its limit. A dual active-set method
 * (Goldfarb and Idnani 1983), specialised: links are a forest, so their forces follow by adding up along the trees,
 * and the reduced inverse is kept as a compliance matrix that each step changes by one or two squares. It is always
 * at rest, of least cost for some of the arcs; a step takes in the arc that is overstepped most and lets go of
 * links that would have to pull. What no spring holds is tied to body 0 by a stay, which bears no force and gives
 * way to the first arc that pushes.
 */
export class LeastSquares {
  readonly shape: Shape
  readonly x: Float64Array // the place of each body
  cost = 0
  #count = 0
  #enabledCount = 0
  readonly #compliance: Compliance
  readonly #links: Int32Array // arcs
  readonly #force: Float64Array // by link, at least 0
  readonly #change: Float64Array // of each link's force, while one arc is taken in
  readonly #enabled: Int32Array // sides of choices that are to hold
  readonly #forest: Forest
  readonly #load: Float64Array
  readonly #way: Float64Array // where bodies go while one arc is taken in

  constructor(shape: Shape) {
    const { size } = shape
    this.shape = shape
    this.x = new Float64Array(size)
    this.#compliance = new Compliance(size)
    this.#way = new Float64Array(size)
    this.#links = new Int32Array(size)
    this.#force = new Float64Array(size)
    this.#change = new Float64Array(size)
    this.#enabled = new Int32Array(Math.max(0, shape.stays - shape.always))
    this.#forest = new Forest(size)
    this.#load = new Float64Array(size)
  }

  /** The arcs at their limit that hold the others up, to begin from another time. */
  get links(): Int32Array {
    return this.#links.slice(0, this.#count)
  }

  /** The sides of choices that have been put in force. */
  get enabled(): Int32Array {
    return this.#enabled.slice(0, this.#enabledCount)
  }

  copy(other: LeastSquares): void {
    this.x.set(other.x)
    this.cost = other.cost
    this.#compliance.copy(other.#compliance)
    this.#count = other.#count
    this.#links.set(other.#links)
    this.#force.set(other.#force)
    this.#enabledCount = other.#enabledCount
    this.#enabled.set(other.#enabled)
    this.#grow()
  }

  /** Begins anew, with those sides of choices in force and those links; without links from rest. */
  begin(enabled: Iterable<number>, links: Iterable<number> = this.#stays()): void {
    this.#enabledCount = 0
    for (const arc of enabled) this.enable(arc)
    this.#count = 0
    for (const arc of links) this.#links[this.#count++] = arc
    this.settle()
  }

  /** Puts a side of a choice in force; `solve` sees to it. */
  enable(arc: number): void {
    this.#enabled[this.#enabledCount++] = arc
  }

  /**
   * Takes in all arcs in force. Where it stops above the cost allowed, or cannot, what is left is of no further
   * use.
   */
  solve(allowed = Infinity): Outcome {
    const many = 20 * this.shape.size + 200
    for (let step = 0; ; step++) {
      if (this.cost > allowed) return 'above'
      const arc = this.#overstepped(step > many)
      if (arc === -1) return 'best'
      if (step > 10 * many) throw new Error('The times do not settle.')
      if (!this.#takeIn(arc)) return 'impossible'
      this.cost = this.#costNow()
    }
  }

  /** Works out places, forces and compliance anew from the links alone, free of what rounding has gathered. */
  settle(): void {
    const { size, springs } = this.shape
    this.#grow()
    const { order, parent, parentLink } = this.#forest
    const inTree = new Float64Array(size) // from the body that the tree grows from
    for (const body of order) {
      const link = parentLink[body]!
      if (link === -1) continue
      const arc = this.#links[link]!
      const limit = this.shape.limit[arc]!
      inTree[body] = inTree[parent[body]!]! + (this.shape.to[arc] === body ? limit : -limit)
    }
    this.#compliance.clear()
    this.x.set(inTree)
    rest(this.shape, this.#forest.tree, this.x, this.#compliance)
    this.#load.fill(0)
    for (const { from, to, usual, weight } of springs) {
      const force = 2 * weight * (usual - this.x[to]! + this.x[from]!)
      this.#load[to]! += force
      this.#load[from]! -= force
    }
    this.#bear(this.#force)
    for (let link = 0; link < this.#count; link++) this.#force[link] = Math.max(0, this.#force[link]!)
    this.cost = this.#costNow()
  }

  #costNow(): number {
    let cost = this.shape.fixedCost
    for (const { from, to, usual, weight } of this.shape.springs) {
      const off = this.x[to]! - this.x[from]! - usual
      cost += weight * off * off
    }
    return cost
  }

  /** The arc overstepped most, or, so that no circle of steps is possible, the first one; -1 for none. */
  #overstepped(anyOne: boolean): number {
    let worst = -1
    let most = tightness
    const look = (arc: number) => {
      if (anyOne && worst !== -1) return
      const over = this.over(arc)
      if (over > most) {
        most = over
        worst = arc
      }
    }
    for (let arc = 0; arc < this.shape.always; arc++) look(arc)
    for (let k = 0; k < this.#enabledCount; k++) look(this.#enabled[k]!)
    return worst
  }

  /** By how much an arc is overstepped. */
  over(arc: number): number {
    const { from, to, limit } = this.shape
    return this.x[to[arc]!]! - this.x[from[arc]!]! - limit[arc]!
  }

  /** One arc comes to its limit; false where the links do not let it. */
  #takeIn(arc: number): boolean {
    const { size, from, to } = this.shape
    const a = from[arc]!
    const b = to[arc]!
    let force = 0
    for (;;) {
      const apart = this.#forest.tree[a] !== this.#forest.tree[b]
      const way = apart ? this.#way : undefined
      if (way) this.#compliance.pull(b, a, way)
      this.#respond(a, b, way)
      const full = way ? this.over(arc) / (way[a]! - way[b]!) : Infinity
      const { link, step } = this.#firstToLetGo(full)
      if (step === Infinity) return false
      if (way) for (let i = 0; i < size; i++) this.x[i]! += step * way[i]!
      for (let k = 0; k < this.#count; k++) this.#force[k]! += step * this.#change[k]!
      force += step
      if (link === -1) {
        this.#compliance.pull(a, b, this.#way)
        this.#compliance.tie(a, b, this.#way)
        this.#link(arc, force)
        return true
      }
      if (this.#letGo(link, arc)) {
        this.#link(arc, force)
        return true
      }
    }
  }

  /** How the forces of the links change while the arc pushes its ends together with a force of 1. */
  #respond(a: number, b: number, way: Float64Array | undefined): void {
    const load = this.#load.fill(0)
    load[a]! += 1
    load[b]! -= 1
    if (way) {
      for (const { from, to, weight } of this.shape.springs) {
        const force = 2 * weight * (way[from]! - way[to]!)
        load[to]! += force
        load[from]! -= force
      }
    }
    this.#bear(this.#change)
  }

  /** The force in each link that bears what `load` puts on the bodies. Uses up the load. */
  #bear(into: Float64Array): void {
    const { order, parent, parentLink } = this.#forest
    const load = this.#load
    for (let k = order.length - 1; k >= 0; k--) {
      const body = order[k]!
      const link = parentLink[body]!
      if (link === -1) continue
      into[link] = this.shape.to[this.#links[link]!] === body ? load[body]! : -load[body]!
      load[parent[body]!]! += load[body]!
    }
  }

  /** The link whose force is first at nothing, before the step is full; a stay lets go at any force. */
  #firstToLetGo(full: number): { link: number; step: number } {
    let found = -1
    let step = full
    for (let link = 0; link < this.#count; link++) {
      const change = this.#change[link]!
      const arc = this.#links[link]!
      if (arc >= this.shape.stays) {
        if (Math.abs(change) > noForce) return { link, step: 0 }
      } else if (change < -noForce) {
        const until = Math.max(0, this.#force[link]! / -change)
        if (until < step || (until === step && found !== -1 && arc < this.#links[found]!)) {
          step = until
          found = link
        }
      }
    }
    return { link: found, step }
  }

  /**
   * Takes a link away. Where nothing then holds what it held, that goes with the arc to its limit, and true is
   * given: the arc is to be linked in the other's place.
   */
  #letGo(link: number, arc: number): boolean {
    const { size, springs, from, to } = this.shape
    const released = this.#links[link]!
    this.#count -= 1
    this.#links[link] = this.#links[this.#count]!
    this.#force[link] = this.#force[this.#count]!
    this.#grow()
    const { tree } = this.#forest
    const afloat = this.#afloat(released)
    if (afloat) {
      const apart = afloat[to[arc]!]! - afloat[from[arc]!]!
      const step = this.over(arc) / -apart
      for (let i = 0; i < size; i++) this.x[i]! += step * afloat[i]!
      this.#compliance.pull(from[arc]!, to[arc]!, this.#way)
      this.#compliance.exchange(afloat, from[arc]!, to[arc]!, this.#way)
      return true
    }
    // The side that came free pushes against the springs; what it moves of the rest is what the compliance says.
    const free = tree[to[released]!] === 0 ? tree[from[released]!]! : tree[to[released]!]!
    const push = new Float64Array(size)
    let stiffness = 0
    for (const spring of springs) {
      const off = Number(tree[spring.to] === free) - Number(tree[spring.from] === free)
      if (off === 0) continue
      push[spring.to]! += 2 * spring.weight * off
      push[spring.from]! -= 2 * spring.weight * off
      stiffness += 2 * spring.weight
    }
    const way = this.#way
    this.#compliance.give(push, way)
    for (let i = 0; i < size; i++) {
      stiffness -= way[i]! * push[i]!
      way[i] = Number(tree[i] === free) - way[i]!
    }
    this.#compliance.loosen(way, stiffness)
    return false
  }

  /** The bodies (as ones) that neither links nor springs hold to body 0 any more; undefined where all are held. */
  #afloat(released: number): Float64Array | undefined {
    const { size, springs, from, to } = this.shape
    const { tree } = this.#forest
    const joined = new Joined(size)
    for (let body = 0; body < size; body++) joined.join(body, tree[body]!)
    for (const spring of springs) joined.join(spring.from, spring.to)
    const side = [from[released]!, to[released]!].find(body => joined.of(body) !== 0)
    if (side === undefined) return undefined
    const root = joined.of(side)
    return Float64Array.from({ length: size }, (_, body) => Number(joined.of(body) === root))
  }

  #link(arc: number, force: number): void {
    this.#links[this.#count] = arc
    this.#force[this.#count] = force
    this.#count += 1
    this.#grow()
  }

  #grow(): void {
    this.#forest.grow(this.#links, this.#count, this.shape.from, this.shape.to)
  }

  /** A stay for the first body of all that springs hold together, and nothing to body 0. */
  #stays(): number[] {
    const { size, springs, stays } = this.shape
    const joined = new Joined(size)
    for (const { from, to } of springs) joined.join(from, to)
    return [...Array(size).keys()]
      .filter(body => body !== 0 && joined.of(body) === body)
      .map(body => stays + body)
  }
}
