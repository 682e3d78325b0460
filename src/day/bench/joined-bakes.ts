import type { Bake } from './bake.js'

interface Same {
  readonly [field: string]: unknown
}

/** Both lists as one: what is in `here` as it is there, and what is only in `there` behind it. */
function both<T extends object>(here: readonly T[], there: readonly T[], keys: readonly (keyof T)[]): T[] {
  const keyOf = (item: T) => keys.map(key => item[key]).join(' ')
  const known = new Set(here.map(keyOf))
  return [...here, ...there.filter(item => !known.has(keyOf(item)))]
}

/**
 * One bake as it was kept in two places, brought together: what was noted in one of them is in it; what both have said
 * otherwise is as it is here.
 */
export function joinedBakes(here: Bake, there: Bake): Bake {
  const theirs = new Map(there.moments.map(one => [one.moment, one]))
  const moments = here.moments.map(one => ({ ...theirs.get(one.moment), ...one }))
  const finished = here.finished ?? there.finished
  return {
    ...(there as unknown as Same),
    ...here,
    moments: both(moments, there.moments, ['moment']),
    weighed: both(here.weighed, there.weighed, ['moment', 'line']),
    figures: both(here.figures, there.figures, ['moment', 'what']),
    timers: finished ? [] : both(here.timers, there.timers, ['id']),
    ...((here.bowls ?? there.bowls) && { bowls: both(here.bowls ?? [], there.bowls ?? [], ['moment']) }),
    note: here.note || there.note,
    verdict: here.verdict || there.verdict,
    ...(finished && { finished }),
  }
}
