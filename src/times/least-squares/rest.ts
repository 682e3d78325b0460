import { Joined } from '../network/joined.js'
import type { Spring } from '../problem/constraints.js'
import type { Compliance } from './compliance.js'
import type { Shape } from './shape.js'

/** Trees that springs join, all their bodies, and the springs that hold them. */
interface Part {
  readonly trees: number[]
  readonly bodies: number[]
  readonly springs: Spring[]
}

/**
 * Moves all trees but that of body 0 to where their springs are at rest, and enters in the compliance, which is
 * empty, how they give way. `tree` says for each body which one its tree grows from; within the trees the places
 * are right already.
 */
export function rest(
  { size, springs }: Shape,
  tree: Int32Array,
  x: Float64Array,
  compliance: Compliance,
): void {
  const number = new Int32Array(size).fill(-1) // by the body that a tree grows from; that of body 0 has none
  for (const part of partsOf(springs, tree)) balance(part, tree, number, x, compliance)
}

/**
 * The trees that springs join to each other, without the one that stands still: each part can be balanced by
 * itself.
 */
function partsOf(springs: readonly Spring[], tree: Int32Array): Iterable<Part> {
  const joined = new Joined(tree.length)
  for (const { from, to } of springs)
    if (tree[from] !== 0 && tree[to] !== 0) joined.join(tree[from]!, tree[to]!)
  const parts = new Map<number, Part>()
  for (const [body, of] of tree.entries()) {
    if (of === 0) continue
    const first = joined.of(of)
    const part = parts.get(first) ?? { trees: [], bodies: [], springs: [] }
    parts.set(first, part)
    part.bodies.push(body)
    if (of === body) part.trees.push(body)
  }
  for (const spring of springs) {
    const a = tree[spring.from]!
    const b = tree[spring.to]!
    if (a !== b) parts.get(joined.of(a === 0 ? b : a))!.springs.push(spring)
  }
  return parts.values()
}

/** Moves those trees to where their springs are at rest, and enters how they give way. */
function balance(
  { trees, bodies, springs }: Part,
  tree: Int32Array,
  number: Int32Array,
  x: Float64Array,
  compliance: Compliance,
): void {
  const count = trees.length
  for (const [k, body] of trees.entries()) number[body] = k
  const stiff = new Float64Array(count * count)
  for (const { from, to, weight } of springs) {
    const a = number[tree[from]!]!
    const b = number[tree[to]!]!
    if (a !== -1) stiff[a * count + a]! += 2 * weight
    if (b !== -1) stiff[b * count + b]! += 2 * weight
    if (a !== -1 && b !== -1) {
      stiff[a * count + b]! -= 2 * weight
      stiff[b * count + a]! -= 2 * weight
    }
  }
  invert(stiff, count)
  // The second time takes away what the first left over by rounding.
  for (let time = 0; time < 2; time++) {
    const push = new Float64Array(count)
    for (const { from, to, usual, weight } of springs) {
      const force = 2 * weight * (usual - x[to]! + x[from]!)
      const a = number[tree[from]!]!
      const b = number[tree[to]!]!
      if (a !== -1) push[a]! -= force
      if (b !== -1) push[b]! += force
    }
    for (const body of bodies) {
      const row = number[tree[body]!]! * count
      for (let k = 0; k < count; k++) x[body]! += stiff[row + k]! * push[k]!
    }
  }
  for (const i of bodies) {
    const row = number[tree[i]!]! * count
    for (const j of bodies) compliance.set(i, j, stiff[row + number[tree[j]!]!]!)
  }
}

/**
 * Inverts a symmetric positive definite matrix by Cholesky's factors, in place. The caller answers for its being
 * definite.
 */
function invert(matrix: Float64Array, size: number): void {
  for (let j = 0; j < size; j++) {
    for (let i = j; i < size; i++) {
      let sum = matrix[i * size + j]!
      for (let k = 0; k < j; k++) {
        const factor = matrix[i * size + k]!
        if (factor !== 0) sum -= factor * matrix[j * size + k]!
      }
      matrix[i * size + j] = i === j ? Math.sqrt(sum) : sum / matrix[j * size + j]!
    }
  }
  // The inverse of the lower factor, row by row from the last column on, then its square.
  for (let j = 0; j < size; j++) {
    matrix[j * size + j] = 1 / matrix[j * size + j]!
    for (let i = j + 1; i < size; i++) {
      let sum = 0
      for (let k = j; k < i; k++) {
        const factor = matrix[i * size + k]!
        if (factor !== 0) sum -= factor * matrix[k * size + j]!
      }
      matrix[i * size + j] = sum / matrix[i * size + i]!
    }
  }
  for (let i = 0; i < size; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = 0
      for (let k = i; k < size; k++) {
        const factor = matrix[k * size + i]!
        if (factor !== 0) sum += factor * matrix[k * size + j]!
      }
      matrix[i * size + j] = sum
      if (i !== j) matrix[j * size + i] = sum
    }
  }
}
