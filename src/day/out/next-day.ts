import type { Day } from '../../dough/document/day.js'

/** Today's date where the baker is. */
export const today = (): string => {
  const now = new Date()
  return new Date(now.getTime() - now.getTimezoneOffset() * 60_000).toISOString().slice(0, 10)
}

/** Days with the latest first. */
export const latestFirst = (days: readonly Day[]): Day[] =>
  [...days].sort((a, b) => b.date.localeCompare(a.date))

/** The next day to come, or else the last there was. */
export function nextDay(days: readonly Day[], from = today()): Day | undefined {
  const latest = latestFirst(days)
  return latest.findLast(({ date }) => date >= from) ?? latest[0]
}
