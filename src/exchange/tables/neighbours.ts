import type { Sorted } from './sort.js'

export interface Neighbours {
  readonly next: Int32Array // for each row the place of the next that says something
  readonly isSpaced: boolean // blank rows stand between nearly all lines and so part nothing
}

export function neighbours(sorted: readonly Sorted[]): Neighbours {
  const next = new Int32Array(sorted.length)
  let after = sorted.length
  let blanks = 0
  let pairs = 0 // lines that follow each other
  let parted = 0 // with something blank between
  for (let at = sorted.length - 1; at >= 0; at--) {
    next[at] = after
    const { is } = sorted[at]!
    if (is === 'blank') {
      blanks++
      continue
    }
    if (is === 'line' && sorted[after]?.is === 'line') {
      pairs++
      if (after > at + 1) parted++
    }
    after = at
  }
  return { next, isSpaced: blanks > 2 && parted * 2 > pairs }
}
