import type { LinePlan } from '../../dough/outline/outline.js'
import type { FigureSheet } from '../../dough/sheet/figures.js'
import type { Scaled } from '../course/waits.js'
import type { StandingOf, StepStanding } from '../method/cautions.js'
import type { Length } from '../method/step-time.js'
import type { PlannedDay, PlannedEvent } from './planned.js'
import { type Look, lookWords } from './wait-words.js'

/** A wait of a day in which something ferments, or that was scaled: from when to when it may be done, and by what to tell. */
export interface WaitLook {
  readonly event: PlannedEvent
  readonly scaled: Scaled
  readonly length: Length // minutes, on this day
  readonly lookFor: string // the baker's own words, where the step has them; '' where nothing ferments
}

// End of bulk: the target rise falls as the dough is warmer (trade figures): °C, part of its volume.
const rises: readonly (readonly [celsius: number, rise: number])[] = [
  [18, 1],
  [21, 0.75],
  [27, 0.3],
]

/** By how much a dough has grown at the end of its bulk at a temperature in °C, a fraction of its volume. */
export function riseAt(celsius: number): number {
  const above = rises.findIndex(([at]) => at >= celsius)
  if (above <= 0) return above === 0 ? rises[0]![1] : rises.at(-1)![1]
  const [[cold, high], [warm, low]] = [rises[above - 1]!, rises[above]!]
  return high + ((celsius - cold) * (low - high)) / (warm - cold)
}

const longBulk = 60 // minutes from which a wait of the dough is more than a rest

const raises = (line: LinePlan): boolean =>
  line.source?.ferments === true || line.countsAs?.kind === 'starter' || line.ingredient?.kind === 'yeast'

/** What to look for at the end of a wait; undefined where nothing ferments in it. */
function lookAt(sheet: FigureSheet, { stage, step, length }: PlannedEvent, scaled: Scaled): Look | undefined {
  const plan = sheet.workedOut.outline.stages.find(s => s.stage.id === stage)
  if (!plan) return undefined
  if (!plan.isFinal) return plan.ferments ? { of: 'levain' } : undefined
  const method = plan.stage.method ?? []
  const at = method.indexOf(step)
  const bake = method.findIndex(({ kind }) => kind === 'bake')
  if ((bake >= 0 && at > bake) || !plan.lines.some(raises)) return undefined
  if (scaled.standing === 'fridge') return { of: 'retard' }
  const last = method.slice(0, bake < 0 ? undefined : bake).findLastIndex(({ kind }) => kind === 'wait')
  if (at === last) return { of: 'proof' }
  return (length?.usual ?? 0) >= longBulk ? { of: 'bulk', rise: riseAt(scaled.celsius) } : undefined
}

/** The waits of a planned day in which something ferments or that were scaled, by the clock. `sheetOf` gives the formula of a bread. */
export function waitLooks(
  { events }: PlannedDay,
  sheetOf: (bread: string) => FigureSheet | undefined,
): WaitLook[] {
  const seen = new Set<string>()
  return events.flatMap(event => {
    const { begins, kind, time, scaled, length, breads, step } = event
    if (kind !== 'wait' || time !== undefined || !scaled || !length || seen.has(begins)) return []
    seen.add(begins)
    const sheet = sheetOf(breads[0]!)
    const look = sheet && lookAt(sheet, event, scaled)
    if (!look && scaled.factor === 1 && !scaled.extrapolated) return []
    return [{ event, scaled, length, lookFor: step.note.trim() || (look ? lookWords(look) : '') }]
  })
}

const coldHolding = 5 // °C at or below which food is held cold

/** How long each step of a planned day takes and how warm it stands, for the cautions of its formulas; of several loads the longest. */
export function standingIn({ events }: PlannedDay): StandingOf {
  const of = new Map<string, StepStanding>()
  for (const { step, time, scaled, from, until } of events) {
    const minutes = until - from
    if (time !== undefined || minutes < (of.get(step.id)?.minutes ?? 0)) continue
    const isHeldCold = scaled?.standing === 'fridge' && scaled.celsius <= coldHolding
    of.set(step.id, { minutes, celsius: isHeldCold ? 0 : scaled?.celsius })
  }
  return step => of.get(step)
}
