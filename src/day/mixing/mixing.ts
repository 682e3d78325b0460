import type { Day, DayMix } from '../../dough/document/day.js'
import type { LinePlan, StagePlan } from '../../dough/outline/outline.js'
import type { FigureSheet } from '../../dough/sheet/figures.js'
import { standingOf } from '../course/waits.js'
import { warmestStarter } from '../method/cautions.js'
import { stepsOf } from '../method/stage-steps.js'
import { readStep } from '../method/step-text.js'
import {
  doughTemperature,
  type HeatPart,
  iceFor,
  iceFrom,
  specificHeat,
  waterByFactors,
  waterTemperature,
} from '../temperature/water.js'
import { type GramsOf, heatOf, isBoiling, isKeptCold, isMilk } from './heats.js'
import { type MixingRemark, mixingRemark } from './words.js'

/** Something that is mixed, with how warm it is and whether that was said. */
export interface MixedPart extends HeatPart {
  readonly line: string // id
  readonly ingredient: string
  readonly is: 'flour' | 'preferment' | 'other'
  readonly said: boolean // its temperature was typed or measured
}

/** What a number of a mixing is worked out from by the bakery rule. */
export interface Factor {
  readonly of: 'room' | 'flour' | 'preferment'
  readonly celsius: number
}

/** How warm the water has to be for one mixing, both ways, with all that it is worked out from. °C and grams. */
export interface Mixing {
  readonly parts: readonly MixedPart[] // all but the water
  readonly step: string | undefined // id of the step at which it is mixed
  readonly liquid: 'water' | 'milk' // what is brought to a temperature: milk where there is no water
  readonly water: number // grams of it
  readonly waterHeat: number // its specific heat, kJ/(kg·K)
  readonly wanted: number // of the dough
  readonly wantedSaid: boolean
  readonly rise: number // that mixing makes
  readonly riseSaid: boolean
  readonly room: number
  readonly roomSaid: boolean // otherwise the day's kitchen
  readonly tap: number
  readonly tapSaid: boolean // of the day
  readonly freezer: number | undefined // of the day; undefined: ice is taken to be at 0 °C
  readonly celsius: number // the water, by heat balance
  readonly byFactors: number
  readonly factors: readonly Factor[]
  readonly friction: number // the number of factors and the water × the rise
  readonly ice: { readonly ice: number; readonly water: number } | undefined // where the tap is too warm
  readonly measured: number | undefined // the water, as it was measured
  readonly dough: number | undefined // with the water that was measured
}

export const usualDough = 24 // °C, until a step or the baker says otherwise
export const usualRise = 1 // °C that mixing by hand makes, until bakes say otherwise
export const usualTap = 18

/** What goes into a mixing: all lines up to the step at which its water is in. */
export interface Mixed {
  readonly lines: readonly LinePlan[]
  readonly liquid: readonly LinePlan[] // of them, what is brought to a temperature
  readonly step: string | undefined // id of the step at which that goes in; undefined without a method
}

/**
 * What is mixed when a stage's water goes in; undefined where nothing is: no water and no milk, or neither flour nor a levain,
 * as in a soaker. Water poured on boiling is one of the things mixed.
 */
export function mixedIn(plan: StagePlan): Mixed | undefined {
  const isWater = (l: LinePlan) => l.countsAs?.kind === 'water' && !isBoiling(l)
  const all = plan.lines.filter(l => l.line.ingredient)
  if (!all.some(l => l.countsAs?.kind === 'flour' || isPreferment(l))) return undefined
  const isLiquid = all.some(isWater) ? isWater : isMilk
  const steps = stepsOf(plan.stage, 0)
  const last = steps.findIndex(({ lines }) => all.some(l => lines.includes(l.line) && isLiquid(l)))
  const there = new Set(steps.slice(0, last + 1).flatMap(step => step.lines))
  const lines = steps.length ? all.filter(l => there.has(l.line)) : all
  const liquid = lines.filter(isLiquid)
  return liquid.length ? { lines, liquid, step: steps[last]?.step.id } : undefined
}

/**
 * The water of one stage of a bread on a day; undefined where the stage has none or a weight is not known. `sheet` is
 * the bread's formula with the day's batch; `times` how much of that is made in one go. Temperatures follow from the day:
 * the room is the kitchen, flour and all else has that of the room, milk, eggs and butter that of the fridge, an earlier
 * stage that of its own last wait; a flour that was not measured has that of those that were. Each can be said in the
 * day's `mixes`.
 */
export function mixingOf(
  day: Day,
  bread: string,
  stageId: string,
  sheet: FigureSheet,
  times = 1,
): Mixing | undefined {
  const plan = sheet.workedOut.outline.stages.find(s => s.stage.id === stageId)
  const mixed = plan && mixedIn(plan)
  if (!mixed) return undefined
  const gramsOf: GramsOf = line => {
    const grams = sheet.line(line).batch
    return grams === undefined ? undefined : grams * times
  }
  if (mixed.lines.some(l => gramsOf(l.line.id) === undefined)) return undefined
  const total = (of: (l: LinePlan) => number) =>
    mixed.liquid.reduce((sum, l) => sum + gramsOf(l.line.id)! * of(l), 0)
  const water = total(() => 1)
  if (!(water > 0)) return undefined
  const said = day.mixes?.find(m => m.bread === bread && m.stage === stageId)
  const liquid = mixed.liquid.every(isMilk) ? 'milk' : 'water'
  const waterHeat = liquid === 'milk' ? total(l => heatOf(l, gramsOf)) / water : specificHeat.water
  const room = said?.room ?? day.kitchen
  const parts = partsOf(mixed, gramsOf, room, day, said)
  const wanted = said?.wanted ?? wantedOf(plan.stage.method) ?? usualDough
  const rise = said?.rise ?? usualRise
  const worth = (water * waterHeat) / specificHeat.water // grams of water that hold as much heat
  const celsius = waterTemperature(parts, worth, wanted, rise)
  const factors = factorsOf(parts, room)
  const friction = (factors.length + 1) * rise
  const tap = day.tap ?? usualTap
  return {
    parts,
    step: mixed.step,
    liquid,
    water,
    waterHeat,
    wanted,
    wantedSaid: said?.wanted !== undefined,
    rise,
    riseSaid: said?.rise !== undefined,
    room,
    roomSaid: said?.room !== undefined,
    tap,
    tapSaid: day.tap !== undefined,
    freezer: day.freezer,
    celsius,
    byFactors: waterByFactors(
      wanted,
      factors.map(f => f.celsius),
      friction,
    ),
    factors,
    friction,
    ice: liquid === 'water' && celsius < tap ? iceOf(day.freezer, water, tap, celsius) : undefined,
    measured: said?.water,
    dough: said?.water === undefined ? undefined : doughTemperature(parts, worth, said.water, rise),
  }
}

const iceOf = (freezer: number | undefined, water: number, tap: number, wanted: number) =>
  freezer === undefined ? iceFor(water, tap, wanted) : iceFrom(freezer, water, tap, wanted)

const isPreferment = (line: LinePlan): boolean =>
  line.source?.ferments === true || line.countsAs?.kind === 'starter'

const isFlour = (line: LinePlan): boolean => line.countsAs?.kind === 'flour'

/** What is mixed besides the liquid, each as warm as was said or as follows. */
function partsOf(
  { lines, liquid }: Mixed,
  gramsOf: GramsOf,
  room: number,
  day: Day,
  said: DayMix | undefined,
): MixedPart[] {
  const grams = (l: LinePlan) => gramsOf(l.line.id)!
  const saidOf = (l: LinePlan) => said?.lines?.find(({ line }) => line === l.line.id)?.celsius
  const measured = lines.flatMap(l => {
    const celsius = isFlour(l) ? saidOf(l) : undefined
    return celsius === undefined ? [] : [{ grams: grams(l), celsius }]
  })
  const flour = warmth(measured) ?? room
  return lines
    .filter(l => !liquid.includes(l))
    .map(l => {
      const celsius = saidOf(l)
      return {
        line: l.line.id,
        ingredient: l.line.ingredient,
        is: isFlour(l) ? 'flour' : isPreferment(l) ? 'preferment' : 'other',
        grams: grams(l),
        heat: heatOf(l, gramsOf),
        celsius: celsius ?? (isFlour(l) ? flour : usualTemperature(l, room, day)),
        said: celsius !== undefined,
      }
    })
}

function factorsOf(parts: readonly MixedPart[], room: number): Factor[] {
  const of = (is: MixedPart['is']) => warmth(parts.filter(p => p.is === is))
  const preferment = of('preferment')
  return [
    { of: 'room', celsius: room },
    { of: 'flour', celsius: of('flour') ?? room },
    ...(preferment === undefined ? [] : [{ of: 'preferment', celsius: preferment } as const]),
  ]
}

/** The temperature of several parts together, by weight; undefined where they weigh nothing. */
function warmth(parts: readonly Pick<HeatPart, 'grams' | 'celsius'>[]): number | undefined {
  const grams = parts.reduce((sum, p) => sum + p.grams, 0)
  return grams > 0 ? parts.reduce((sum, p) => sum + p.grams * p.celsius, 0) / grams : undefined
}

const boilingPoint = 100

/** What a line has when nobody said or measured it. */
function usualTemperature(line: LinePlan, room: number, day: Day): number {
  if (isBoiling(line)) return boilingPoint
  if (isKeptCold(line)) return day.fridge
  const last = line.source?.stage.method?.findLast(step => step.kind === 'wait')
  if (!last) return room
  const standing = standingOf(readStep(last.text), day)
  return standing === 'kitchen' ? room : (day[standing] ?? room)
}

/** The dough's temperature that a method names: that of its first wait which stands warm. */
function wantedOf(method: StagePlan['stage']['method']): number | undefined {
  for (const { kind, text } of method ?? []) {
    const { celsius } = readStep(text)
    if (kind === 'wait' && celsius !== undefined && celsius > 12) return celsius
  }
  return undefined
}

/** Water that meets a levain should not be warmer, °C. */
const warmestForLevain = 45

/** What is to be said of a mixing: water that harms the levain or cannot be had, a levain that is too warm. */
export function mixingRemarks(mixing: Mixing, fridge: number): MixingRemark[] {
  const { celsius, parts, liquid, ice } = mixing
  const remarks: MixingRemark[] = []
  const levains = parts.filter(p => p.is === 'preferment')
  if (celsius > boilingPoint) remarks.push(mixingRemark({ code: 'waterAboveBoiling', celsius }))
  else if (celsius > warmestForLevain && levains.length)
    remarks.push(mixingRemark({ code: 'waterTooWarmForLevain', celsius }))
  if (ice && ice.water <= 0) remarks.push(mixingRemark({ code: 'iceIsNotEnough', celsius }))
  if (liquid === 'milk' && celsius < fridge)
    remarks.push(mixingRemark({ code: 'milkColderThanFridge', celsius, fridge }))
  for (const { ingredient, celsius: warm } of levains)
    if (warm > warmestStarter)
      remarks.push(mixingRemark({ code: 'levainTooWarm', ingredient, celsius: warm }))
  return remarks
}
