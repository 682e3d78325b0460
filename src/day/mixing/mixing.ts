import type { Day, DayMix } from '../../dough/document/day.js'
import type { LinePlan } from '../../dough/outline/outline.js'
import type { FigureSheet } from '../../dough/sheet/figures.js'
import { stepsOf } from '../method/stage-steps.js'
import { readStep } from '../method/step-text.js'
import { standingOf } from '../plan/waits.js'
import {
  doughTemperature,
  type HeatPart,
  iceFor,
  iceFrom,
  waterByFactors,
  waterTemperature,
} from '../temperature/water.js'
import { heatOf, isKeptCold } from './heats.js'

/** Something that is mixed, with how warm it is and whether that was said. */
export interface MixedPart extends HeatPart {
  readonly line: string // id
  readonly ingredient: string
  readonly said: boolean // its temperature was typed or measured
}

/** How warm the water has to be for one mixing, both ways, with all that it is worked out from. °C and grams. */
export interface Mixing {
  readonly parts: readonly MixedPart[] // all but the water
  readonly water: number
  readonly wanted: number // of the dough
  readonly wantedSaid: boolean
  readonly rise: number // that mixing makes
  readonly riseSaid: boolean
  readonly celsius: number // the water, by heat balance
  readonly byFactors: number
  readonly factors: readonly { readonly of: 'room' | 'flour' | 'preferment'; readonly celsius: number }[]
  readonly friction: number
  readonly ice: { readonly ice: number; readonly water: number } | undefined // where the tap is too warm
  readonly measured: number | undefined // the water, as it was measured
  readonly dough: number | undefined // with the water that was measured
  readonly tooWarm: boolean // above what a levain stands
}

export const usualDough = 24 // °C, until a step or the baker says otherwise
export const usualRise = 1 // °C that mixing by hand makes, until bakes say otherwise
export const usualTap = 18
/** Water that meets a levain should not be warmer, °C. */
export const warmestForLevain = 45

/**
 * The water of one stage of a bread on a day; undefined where the stage has no water or a weight is not known. `sheet` is
 * the bread's formula with the day's batch. Temperatures follow from the day: flour and all else the kitchen's, milk, eggs
 * and butter the fridge's, an earlier stage that of its own last wait; each can be said in the day's `mixes`.
 */
export function mixingOf(day: Day, bread: string, stageId: string, sheet: FigureSheet): Mixing | undefined {
  const plan = sheet.workedOut.outline.stages.find(s => s.stage.id === stageId)
  const gramsOf = (line: string) => sheet.line(line).batch
  const steps = plan && stepsOf(plan.stage, 0)
  const atFirst = steps?.[0] ? new Set(steps[0].lines) : undefined
  const lines = plan?.lines.filter(l => l.line.ingredient && (!atFirst || atFirst.has(l.line))) ?? []
  if (lines.some(l => gramsOf(l.line.id) === undefined)) return undefined
  const said = day.mixes?.find(m => m.bread === bread && m.stage === stageId)
  const isWater = (l: LinePlan) => l.countsAs?.kind === 'water'
  const water = lines.filter(isWater).reduce((sum, l) => sum + gramsOf(l.line.id)!, 0)
  if (!(water > 0)) return undefined
  const parts = lines
    .filter(l => !isWater(l))
    .map((line): MixedPart => {
      const celsius = said?.lines?.find(t => t.line === line.line.id)?.celsius
      return {
        line: line.line.id,
        ingredient: line.line.ingredient,
        grams: gramsOf(line.line.id)!,
        heat: heatOf(line, gramsOf),
        celsius: celsius ?? usualTemperature(line, day),
        said: celsius !== undefined,
      }
    })
  return { ...balanced(day, said, lines, parts, water, wantedOf(plan!.stage.method)), parts, water }
}

function balanced(
  day: Day,
  said: DayMix | undefined,
  lines: readonly LinePlan[],
  parts: readonly MixedPart[],
  water: number,
  usual: number | undefined,
): Omit<Mixing, 'parts' | 'water'> {
  const wanted = said?.wanted ?? usual ?? usualDough
  const rise = said?.rise ?? usualRise
  const celsius = waterTemperature(parts, water, wanted, rise)
  const flour = warmth(
    parts.filter(p => lines.some(l => l.line.id === p.line && l.countsAs?.kind === 'flour')),
  )
  const preferment = warmth(parts.filter(p => lines.some(l => l.line.id === p.line && isPreferment(l))))
  const factors = [
    { of: 'room', celsius: day.kitchen } as const,
    { of: 'flour', celsius: flour ?? day.kitchen } as const,
    ...(preferment === undefined ? [] : [{ of: 'preferment', celsius: preferment } as const]),
  ]
  const friction = (factors.length + 1) * rise
  const tap = day.tap ?? usualTap
  const ice =
    celsius >= tap
      ? undefined
      : day.freezer === undefined
        ? iceFor(water, tap, celsius)
        : iceFrom(day.freezer, water, tap, celsius)
  return {
    wanted,
    wantedSaid: said?.wanted !== undefined,
    rise,
    riseSaid: said?.rise !== undefined,
    celsius,
    byFactors: waterByFactors(
      wanted,
      factors.map(f => f.celsius),
      friction,
    ),
    factors,
    friction,
    ice,
    measured: said?.water,
    dough: said?.water === undefined ? undefined : doughTemperature(parts, water, said.water, rise),
    tooWarm: celsius > warmestForLevain && preferment !== undefined,
  }
}

const isPreferment = (line: LinePlan): boolean =>
  line.source?.ferments === true || line.countsAs?.kind === 'starter'

/** The temperature of several parts together, by weight. */
function warmth(parts: readonly MixedPart[]): number | undefined {
  const grams = parts.reduce((sum, p) => sum + p.grams, 0)
  return grams > 0 ? parts.reduce((sum, p) => sum + p.grams * p.celsius, 0) / grams : undefined
}

/** What a line has when nobody said or measured it. */
function usualTemperature(line: LinePlan, day: Day): number {
  if (isKeptCold(line)) return day.fridge
  const last = line.source?.stage.method?.findLast(step => step.kind === 'wait')
  if (!last) return day.kitchen
  return day[standingOf(readStep(last.text), day)] ?? day.kitchen
}

/** The dough's temperature that a method names: that of its first wait which stands warm. */
function wantedOf(method: LinePlan['stage']['stage']['method']): number | undefined {
  for (const { kind, text } of method ?? []) {
    const { celsius } = readStep(text)
    if (kind === 'wait' && celsius !== undefined && celsius > 12) return celsius
  }
  return undefined
}
