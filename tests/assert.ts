/** Assertions for tests in the browser, where node:assert is not; they work in Node as well. */

import { patience } from './browsers/patience.mjs'

const show = (value: unknown): string =>
  typeof value === 'string' || typeof value === 'object' ? JSON.stringify(value) : String(value)

function fail(what: string, hint: string | undefined): never {
  throw new Error(hint ? `${hint}: ${what}` : what)
}

export function ok(value: unknown, hint?: string): asserts value {
  if (!value) fail(`${show(value)} is not what was hoped for`, hint)
}

export function equal<T>(actual: T, expected: T, hint?: string): void {
  if (!Object.is(actual, expected)) fail(`expected ${show(expected)}, got ${show(actual)}`, hint)
}

export function match(actual: string, pattern: RegExp, hint?: string): void {
  if (!pattern.test(actual)) fail(`expected a match of ${pattern}, got ${show(actual)}`, hint)
}

/** Equal plain data: arrays, plain objects and primitives, all the way down. */
export function deepEqual<T>(actual: T, expected: T, hint?: string): void {
  const place = difference(actual, expected, '')
  if (place !== undefined) {
    const where = place === '' ? '' : ` at ${place}`
    fail(`expected ${show(expected)}, got ${show(actual)}; they differ${where}`, hint)
  }
}

/** Within a relative tolerance, 1e-9 unless another is given; a missing number is a failure. */
export function near(actual: number | undefined, expected: number, tolerance = 1e-9, hint?: string): void {
  const off = actual === undefined ? Number.NaN : Math.abs(actual - expected)
  if (!(off <= tolerance * Math.max(Math.abs(expected), Number.MIN_VALUE))) {
    fail(`expected ${expected} within ${tolerance} of itself, got ${actual}`, hint)
  }
}

export function throws(work: () => unknown, pattern: RegExp, hint?: string): void {
  let message: string
  try {
    work()
  } catch (error) {
    message = error instanceof Error ? error.message : String(error)
    match(message, pattern, hint)
    return
  }
  fail(`expected an error that matches ${pattern}, and nothing was thrown`, hint)
}

/**
 * Resolves with the first value of `condition` that holds, looked at once a frame or so.
 * The sentence says what was waited for: "the grid shows six rows".
 */
export async function waitUntil<T>(
  condition: () => T | Promise<T>,
  sentence: string,
): Promise<NonNullable<T>> {
  const end = Date.now() + patience
  let waited = 0
  for (;;) {
    const value = await condition()
    if (value) return value
    if (Date.now() > end) throw new Error(`waited ${patience} ms in vain until ${sentence}`)
    await new Promise(resolve => setTimeout(resolve, Math.min(60, 15 + waited++ * 3)))
  }
}

/** The place where two values part, '' for the whole; undefined when they are equal. */
function difference(a: unknown, b: unknown, place: string): string | undefined {
  if (Object.is(a, b)) return undefined
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return place
  if (Object.getPrototypeOf(a) !== Object.getPrototypeOf(b)) return place
  const left = a as Record<string, unknown>
  const right = b as Record<string, unknown>
  for (const key of new Set([...Object.keys(left), ...Object.keys(right)])) {
    const inside = place === '' ? key : `${place}.${key}`
    if (!(key in left) || !(key in right)) return inside
    const found = difference(left[key], right[key], inside)
    if (found !== undefined) return found
  }
  return undefined
}
