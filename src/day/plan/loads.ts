import type { Day, Oven } from '../../dough/document/day.js'
import { ovenOf, piecesOf } from '../course/course.js'
import { nightsOf } from '../course/day-problem.js'
import { readStep } from '../method/step-text.js'
import type { PlannedDay, PlannedEvent } from './planned.js'

/** What goes into an oven at once, and when. Instants: minutes since 1970, UTC. */
export interface OvenLoad {
  readonly moment: string // at which it goes in
  readonly bread: string // id
  readonly from: number
  readonly until: number
  readonly celsius: number | undefined // undefined: not said
  readonly number: number // of the bread's loads, from 1
  readonly of: number
  readonly pieces: number | undefined // undefined: the batch is no number of pieces
  readonly atOnce: number | undefined // pieces that a load holds; undefined: not said
}

/** When an oven is heated up. Instants. */
export interface Heating {
  readonly from: number
  readonly until: number
  readonly asleep: boolean // nobody is up when it has to be switched on
}

/** An oven's day: when it is heated up, and its loads by the clock. */
export interface OvenDay {
  readonly oven: Oven
  readonly heatings: readonly Heating[] // before the first load, and after a long pause anew
  readonly loads: readonly OvenLoad[]
}

/** The baking steps that follow each other without a gap, the first of each run with the last. */
function runsOf(events: readonly PlannedEvent[]): (readonly [PlannedEvent, PlannedEvent])[] {
  const baking = events.filter(e => e.kind === 'bake')
  const next = (event: PlannedEvent) => baking.find(e => e.begins === event.ends)
  const later = new Set(baking.map(next))
  return baking
    .filter(event => !later.has(event))
    .map(first => {
      let last = first
      for (let at = next(first); at; at = next(at)) last = at
      return [first, last] as const
    })
}

/** The loads of each oven that bakes on a day. */
export function ovenDays({ day, events }: PlannedDay): OvenDay[] {
  const runs = runsOf(events)
  return day.ovens.flatMap((oven): OvenDay[] => {
    const loads = runs.flatMap(([first, last]): OvenLoad[] => {
      const bread = day.breads.find(b => b.id === first.breads[0])
      if (!bread || ovenOf(day, bread) !== oven) return []
      const { celsius, atOnce } = readStep(first.step.text)
      const { number, of, pieces } = first.load ?? { number: 1, of: 1, pieces: piecesOf(bread) }
      return [
        {
          moment: first.begins,
          bread: bread.id,
          from: first.from,
          until: last.until,
          celsius,
          number,
          of,
          pieces,
          atOnce: atOnce ?? oven.atOnce,
        },
      ]
    })
    return loads.length ? [{ oven, heatings: heatingsOf(day, oven, loads), loads }] : []
  })
}

const mostKeptHot = 120 // minutes without a load; longer than that nobody leaves an oven on

function heatingsOf(day: Day, { heating }: Oven, loads: readonly OvenLoad[]): Heating[] {
  if (!(heating > 0)) return []
  return loads.flatMap(({ from: until }, i) => {
    const before = loads.slice(0, i).map(load => load.until)
    if (before.length && until - Math.max(...before) <= mostKeptHot) return []
    const from = until - heating
    return [{ from, until, asleep: nightsOf(day, from, from + 1).some(([begins]) => begins <= from) }]
  })
}
