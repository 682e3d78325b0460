import { minutesOf } from './bake.js'
import type { Bench } from './bench-day.js'
import type { BenchNow } from './todos.js'

/** A moment at which it rings: a thing to do is due, or a timer of the baker's own is over. */
export interface Alarm {
  readonly key: string // with its moment: one that is put off rings again
  readonly at: number // minutes since 1970, UTC
  readonly todo?: string // key
  readonly timer?: string // name
}

/** All moments at which a bench rings, the earliest first. What has begun does not ring for its beginning. */
export function alarmsOf({ bakes }: Pick<Bench, 'bakes'>, { todos }: BenchNow): Alarm[] {
  const own = bakes.flatMap(({ timers }) =>
    timers.map(({ id, name, ends }) => ({ key: `${id} ${ends}`, at: minutesOf(ends), timer: name })),
  )
  const due = todos.flatMap(({ key, due: at, done, begun }) =>
    done !== undefined || begun !== undefined ? [] : [{ key: `${key} ${Math.round(at)}`, at, todo: key }],
  )
  return [...own, ...due].sort((a, b) => a.at - b.at)
}

/** Those that are due now and were not when it was last looked at. */
export const ringing = (alarms: readonly Alarm[], since: number, now: number): Alarm[] =>
  alarms.filter(({ at }) => at > since && at <= now)
