import { type MovedSaid, movedAllSentence, movedSentence } from './moved-words.js'
import type { PlannedDay, PlannedEvent } from './planned.js'

/** Waits of a bread that are all shorter than usual, or all longer. */
export interface MovedWaits extends MovedSaid {
  readonly breads: readonly string[] // ids
}

const isOther = 0.5 // minutes off the usual from which a wait is called shorter or longer
const isPart = 0.005 // of its leeway, likewise: less is said as 0 %

/** How far a wait is from its usual, as a part of its leeway; undefined where it has none or is at it. */
export function partMoved({ kind, length, from, until }: PlannedEvent): number | undefined {
  if (kind !== 'wait' || !length) return undefined
  const [off, leeway] = [until - from - length.usual, length.most - length.least]
  const moved = leeway >= isOther && Math.abs(off) >= isOther && Math.abs(off) >= isPart * leeway
  return moved ? off / leeway : undefined
}

/** The waits of a day that are not at their usual, bread by bread, the shorter ones first. */
export function movedWaits({ events }: PlannedDay): MovedWaits[] {
  const parts = new Map<
    string,
    { readonly breads: readonly string[]; readonly of: number[]; minutes: number }
  >()
  for (const event of events) {
    const part = partMoved(event)
    if (part === undefined) continue
    const key = `${part > 0} ${event.breads.join(' ')}`
    const { of, minutes } = parts.get(key) ?? { of: [], minutes: 0 }
    const off = Math.abs(part) * (event.length!.most - event.length!.least)
    parts.set(key, { breads: event.breads, of: [...of, part], minutes: Math.max(minutes, off) })
  }
  return [...parts.values()]
    .map(({ breads, of, minutes }) => {
      const sizes = of.map(Math.abs)
      return {
        breads,
        count: of.length,
        least: Math.min(...sizes),
        most: Math.max(...sizes),
        minutes,
        shorter: of[0]! < 0,
      }
    })
    .sort((a, b) => Number(b.shorter) - Number(a.shorter))
}

const mostSaid = 2 // sentences; more are one of all breads together

/** What moved on a day and why, a sentence each; none where every wait is at its usual. `nameOf` gives a bread's name, '' where it need not be said. */
export function movedSentences(plan: PlannedDay, nameOf: (bread: string) => string): string[] {
  const moved = movedWaits(plan)
  const [shorter, longer] = [true, false].map(way => together(moved.filter(m => m.shorter === way)))
  if (moved.length > mostSaid && shorter && longer) return [movedAllSentence(shorter, longer, plan)]
  const said = moved.length > mostSaid ? [(shorter ?? longer)!] : moved
  return said.map((one, i) =>
    movedSentence(one, one.breads.map(nameOf).filter(Boolean), i === 0 ? plan : undefined),
  )
}

function together(moved: readonly MovedWaits[]): MovedWaits | undefined {
  const [first] = moved
  if (!first) return undefined
  return {
    breads: [],
    count: moved.reduce((sum, { count }) => sum + count, 0),
    least: Math.min(...moved.map(m => m.least)),
    most: Math.max(...moved.map(m => m.most)),
    minutes: Math.max(...moved.map(m => m.minutes)),
    shorter: first.shorter,
  }
}
