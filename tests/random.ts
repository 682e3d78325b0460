/** A small seeded source of random choices, so that a failing test can be run again (mulberry32, public domain). */
export function randomOf(seed: number) {
  let state = seed >>> 0
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0
    let t = Math.imul(state ^ (state >>> 15), state | 1)
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61)
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296
  }
  const below = (n: number): number => Math.floor(next() * n)
  return { next, below, pick: <T>(of: readonly T[]): T => of[below(of.length)]! }
}

/** How often a random test draws: `npm run bench fuzz` has time for all, the tests of a change for a third. */
export const rounds = (all: number): number => (globalThis.process?.env.ALL_ROUNDS ? all : Math.ceil(all / 3))
