import { type Arc, type Constraints, type Spring, sameTime } from '../problem/constraints.js'

/**
 * The same problem with moments joined that are an exact time apart: bodies, each moved as a whole. Body 0 holds
 * the origin. A moment's time is its body's place + `offset`, from the origin on.
 */
export interface Network {
  readonly size: number // bodies
  readonly bodyOf: Int32Array // by moment, the origin last
  readonly offset: Float64Array // by moment
  readonly arcs: readonly Arc[]
  readonly springs: readonly Spring[]
  readonly choices: readonly (readonly [Arc, Arc])[] // of the constraints' choices, in their order
  readonly fixedCost: number // of springs that nothing can move
  readonly contradictory: boolean // exact times that do not fit together
}

export function networkOf({ origin, arcs, springs, choices }: Constraints): Network {
  const { bodyOf, offset, size } = bodies(origin, arcs)
  const moved = ({ from, to, limit }: Arc): Arc => ({
    from: bodyOf[from]!,
    to: bodyOf[to]!,
    limit: limit - offset[to]! + offset[from]!,
  })
  let fixedCost = 0
  let contradictory = false
  const tightest = new Map<number, Arc>()
  for (const arc of arcs.map(moved)) {
    if (arc.from === arc.to) {
      if (arc.limit < -sameTime) contradictory = true
      continue
    }
    const key = arc.from * size + arc.to
    const other = tightest.get(key)
    if (!other || arc.limit < other.limit) tightest.set(key, arc)
  }
  const free: Spring[] = []
  for (const { from, to, usual, weight } of springs) {
    const rest = usual - offset[to]! + offset[from]!
    if (bodyOf[from] === bodyOf[to]) fixedCost += weight * rest * rest
    else free.push({ from: bodyOf[from]!, to: bodyOf[to]!, usual: rest, weight })
  }
  return {
    size,
    bodyOf,
    offset,
    arcs: [...tightest.values()],
    springs: free,
    choices: choices.map(({ sides: [first, second] }) => [moved(first), moved(second)] as const),
    fixedCost,
    contradictory,
  }
}

/** Joins what two arcs of opposite direction and limit hold together. */
function bodies(origin: number, arcs: readonly Arc[]) {
  const count = origin + 1
  const rigid: { to: number; length: number }[][] = Array.from({ length: count }, () => [])
  const limits = new Map<number, number>()
  for (const { from, to, limit } of arcs) {
    const key = from * count + to
    limits.set(key, Math.min(limit, limits.get(key) ?? Infinity))
  }
  for (const [key, limit] of limits) {
    const from = Math.floor(key / count)
    const to = key % count
    if (limits.get(to * count + from) === 0 - limit) rigid[from]!.push({ to, length: limit })
  }
  const bodyOf = new Int32Array(count).fill(-1)
  const offset = new Float64Array(count)
  let size = 0
  for (const start of [origin, ...Array(origin).keys()]) {
    if (bodyOf[start] !== -1) continue
    bodyOf[start] = size
    const reached = [start]
    for (const at of reached) {
      for (const { to, length } of rigid[at]!) {
        if (bodyOf[to] !== -1) continue
        bodyOf[to] = size
        offset[to] = offset[at]! + length
        reached.push(to)
      }
    }
    size += 1
  }
  return { bodyOf, offset, size }
}
