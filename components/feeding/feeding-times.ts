import { instantOf, localOf, readLocal } from '../../src/day/course/clock.js'
import { nearestDate } from '../../src/day/plan/open-day.js'

/*
 * When builds are fed and ripe. Times are minutes: on a day instants since 1970, without one minutes of any midnight; only
 * their differences count.
 */

const day = 24 * 60

/** How times are to the clock: in a zone where there is a day, by themselves where there is none. */
export class Clock {
  constructor(private readonly zone: string | undefined) {}

  /** Minutes since midnight. */
  of(time: number): number {
    return this.zone === undefined ? ((time % day) + day) % day : localOf(time, this.zone).minutes
  }

  /** The time nearest to another at which the clock reads so. */
  near(clock: number, time: number): number {
    if (this.zone !== undefined) return instantOf(readLocal(nearestDate(time, clock, this.zone))!, this.zone)
    return time + ((((clock - time) % day) + day + day / 2) % day) - day / 2
  }

  /** The first time after another at which the clock reads so. */
  after(clock: number, time: number): number {
    const first = this.near(clock, time + day / 2)
    return first - time >= 1 ? first : this.near(clock, first + day)
  }
}

/** The clock times that were typed, minutes since midnight, by the place of the time. */
export type TypedClocks = ReadonlyMap<number, number>

/**
 * The times of a chain, the first fed and the last ripe: those typed, nearest to those that follow where there are any. What
 * neither is typed nor follows is undefined.
 */
export function timesOf(
  follow: readonly (number | undefined)[],
  typed: TypedClocks,
  clock: Clock,
): (number | undefined)[] {
  const last = follow.length - 1
  const times: (number | undefined)[] = []
  for (const [i, following] of follow.entries()) {
    const said = typed.get(i)
    const before = times.findLast(time => time !== undefined)
    if (said === undefined) times.push(following)
    else if (before !== undefined) {
      const near = following === undefined ? undefined : clock.near(said, following)
      times.push(near !== undefined && near > before ? near : clock.after(said, before))
    } else {
      const end = typed.has(last) ? undefined : follow[last]
      const near = clock.near(said, following ?? (end === undefined ? 0 : end - day / 2))
      times.push(end !== undefined && near >= end ? clock.near(said, near - day) : near)
    }
  }
  return times
}
