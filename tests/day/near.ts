import assert from 'node:assert/strict'

/** Within a part of what is expected. */
export function near(actual: number, expected: number, part = 1e-9): void {
  const apart = Math.abs(actual - expected)
  assert.ok(apart <= part * Math.max(Math.abs(expected), 1e-12), `${actual} is not ${expected}`)
}
