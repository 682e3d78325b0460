/** How far each body gives way to a force on each other one: a symmetric matrix, changed in place. */
export type Compliance = Float64Array

/** Makes two bodies one: no force between them moves them any more. */
export function tie(compliance: Compliance, size: number, from: number, to: number): void {
  const response = pull(compliance, size, from, to)
  addSquare(compliance, response, -1 / (response[to]! - response[from]!))
}

/** Lets bodies move together along `way`, which springs of that stiffness resist. */
export function loosen(compliance: Compliance, way: Float64Array, stiffness: number): void {
  addSquare(compliance, way, 1 / stiffness)
}

/** Lets bodies move together along `way`, which nothing resists, and in the same breath makes two bodies one that it moves apart. */
export function exchange(compliance: Compliance, way: Float64Array, from: number, to: number): void {
  const size = way.length
  const response = pull(compliance, size, from, to)
  const apart = way[to]! - way[from]!
  const own = (response[to]! - response[from]!) / (apart * apart)
  for (let i = 0; i < size; i++) {
    for (let j = 0; j < size; j++) {
      compliance[i * size + j]! +=
        own * way[i]! * way[j]! - (response[i]! * way[j]! + way[i]! * response[j]!) / apart
    }
  }
}

/** Where each body goes when `to` is pushed forward and `from` back. */
export function pull(compliance: Compliance, size: number, from: number, to: number): Float64Array {
  const response = new Float64Array(size)
  const a = from * size
  const b = to * size
  for (let i = 0; i < size; i++) response[i] = compliance[b + i]! - compliance[a + i]!
  return response
}

function addSquare(compliance: Compliance, way: Float64Array, factor: number): void {
  const size = way.length
  for (let i = 0; i < size; i++) {
    const scaled = way[i]! * factor
    if (scaled === 0) continue
    const row = i * size
    for (let j = 0; j < size; j++) compliance[row + j]! += scaled * way[j]!
  }
}

/**
 * Inverts a symmetric positive definite matrix by Cholesky's factors, in place.
 * The caller answers for its being definite.
 */
export function invert(matrix: Float64Array, size: number): void {
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
