import type { Oven } from '../../dough/document/day.js'
import { localOf } from '../course/clock.js'
import { ovenDays } from '../plan/loads.js'
import type { PlannedDay, PlannedEvent } from '../plan/planned.js'

/** Something that begins at a time: a step, or an oven to be heated up. Instants: minutes since 1970, UTC. */
export type ClockRow = { readonly from: number; readonly until: number } & (
  | { readonly event: PlannedEvent; readonly heats?: never }
  | { readonly heats: Oven; readonly event?: never }
)

/** What begins on one local date. */
export interface ClockDate {
  readonly date: string // `2026-12-05`
  readonly rows: readonly ClockRow[]
}

/** All that a day's plan holds, by the clock and by the dates of its zone. */
export function datesByClock(plan: PlannedDay): ClockDate[] {
  const heatings = ovenDays(plan).flatMap(({ oven, heatings }) =>
    heatings.map(({ from, until }): ClockRow => ({ from, until, heats: oven })),
  )
  const rows: ClockRow[] = [...heatings, ...plan.events.map(event => ({ ...pick(event), event }))]
  const dates = new Map<string, ClockRow[]>()
  for (const row of rows.sort((a, b) => a.from - b.from)) {
    const { date } = localOf(Math.round(row.from), plan.day.zone)
    dates.set(date, [...(dates.get(date) ?? []), row])
  }
  return [...dates].map(([date, of]) => ({ date, rows: of }))
}

const pick = ({ from, until }: PlannedEvent) => ({ from, until })
