import '../../dough/weighed/weighed-batch.js'
import { isPerishable } from '../../dough/about/allergens.js'
import { type Line, type Stage, sameName } from '../../dough/document/formula.js'
import { weigh } from '../../dough/weighed/weighing.js'
import { stepsOf } from '../method/stage-steps.js'
import { stepName } from '../method/words.js'
import { mixingsOf } from '../mixing/day-mixings.js'
import type { DaySheet } from '../plan/open-day.js'
import type { Bake, BakeWeight } from './bake.js'
import type { Todo } from './todos.js'

/** A line of what is weighed at a step. Grams. */
export interface BenchLine {
  readonly line: string // id
  readonly ingredient: string
  readonly wanted: number | undefined // as the scale weighs it; undefined: not known
  readonly step: number // of the scale there
  readonly weighed: BakeWeight | undefined // undefined: not yet
  readonly bowl: number | undefined // what the scale says with it in the bowl
  readonly heldBack: HeldBack | undefined // of the same ingredient, to go in later
  readonly note: string
  readonly isFlour: boolean
  readonly isPerishable: boolean
  readonly water: PlannedWater | undefined // how warm the day's plan wants it; undefined: it does not say
}

/** How warm water is to be, °C, and how much of it is ice where the tap is too warm, grams. */
export interface PlannedWater {
  readonly celsius: number
  readonly ice: number | undefined
}

/** What of an ingredient goes in at a later step. */
export interface HeldBack {
  readonly grams: number | undefined
  readonly at: string // name of the step
}

/** What is to be weighed at a step: in the order it goes in, with what the bowl then weighs. */
export interface WeighingList {
  readonly lines: readonly BenchLine[]
  readonly held: readonly (HeldBack & { readonly ingredient: string })[] // of its stage, all that goes in later
  readonly total: number | undefined // in the bowl at the end, with the bowl itself where that is on the scale
  readonly isOnDough: boolean // the bowl holds already what earlier steps put in
  readonly tare: number | undefined // grams of the bowl that was not taken off the scale; undefined: it was
}

const nothing: WeighingList = { lines: [], held: [], total: 0, isOnDough: false, tare: undefined }

/** The weighing list of a step, with what is ticked off of it. */
export function weighingList(sheet: DaySheet, { event, act }: Todo, bakes: readonly Bake[]): WeighingList {
  if (act === 'out' || act === 'on') return nothing
  const { begins, breads } = event
  const list = sheet.weighList(begins)
  const figures = sheet.figures(breads[0]!)
  if (list.length === 0 || !figures) return nothing
  const weights = list.map(({ grams }) => grams ?? 0)
  const together = weigh(weights, figures.scale)
  const first = bakes.find(({ bread }) => bread === breads[0])
  const weighed = first?.weighed ?? []
  const stage = figures.formula.stages.find(({ id }) => id === event.stage)!
  const held = heldBack(sheet, event, stage.lines)
  const water = plannedWater(sheet, event)
  const bare = list.map(({ ingredient, grams, lines, note }, i) => {
    const line = lines[0]!
    const own = breads.length === 1 ? figures.weighed(line) : undefined
    const { grams: wanted, step } = own ?? together[i]!
    const { is } = figures.line(line)
    return {
      line,
      ingredient,
      wanted: grams === undefined ? undefined : wanted,
      step,
      weighed: weighed.find(one => one.moment === begins && one.line === line),
      heldBack: held.find(one => sameName(one.ingredient, ingredient)),
      note,
      isFlour: is === 'flour' || is === 'starter',
      isPerishable: isPerishable(figures.larder.find(ingredient)),
      water: is === 'water' && !water?.notOf.has(line) ? water : undefined,
    }
  })
  const order = weighed.filter(one => one.moment === begins)
  const put = (line: (typeof bare)[number]) => line.weighed?.grams ?? line.wanted
  const ticked = bare
    .filter(line => line.weighed)
    .sort((a, b) => order.indexOf(a.weighed!) - order.indexOf(b.weighed!))
  const running = new Map<string, number | undefined>()
  const tare = first?.bowls?.find(({ moment }) => moment === begins)?.grams
  let sum: number | undefined = tare ?? 0
  for (const line of [...ticked, ...bare.filter(line => !line.weighed)]) {
    const grams = put(line)
    sum = sum === undefined || grams === undefined ? undefined : sum + grams
    running.set(line.line, sum)
  }
  return {
    lines: bare.map(line => ({ ...line, bowl: running.get(line.line) })),
    held,
    total: sum,
    isOnDough: isOnDough(stage, event),
    tare,
  }
}

/** Whether something went in at an earlier step of the stage. */
function isOnDough(stage: Stage, { step }: Todo['event']): boolean {
  const steps = stepsOf(stage, 0)
  const at = steps.findIndex(plan => plan.step.id === step.id)
  return steps.slice(0, at).some(({ lines }) => lines.length > 0)
}

/** What the day says of the water that is weighed at a step, by the heat balance of its mixing. */
function plannedWater(sheet: DaySheet, { stage, step, breads }: Todo['event']) {
  const mixing = mixingsOf(sheet.day, id => sheet.figures(id)).find(
    one => one.stage === stage && one.breads.some(id => breads.includes(id)),
  )?.mixing
  if (mixing?.liquid !== 'water' || mixing.step !== step.id) return undefined
  const notOf = new Set(mixing.parts.map(part => part.line)) // boiling water is one of the things mixed
  return { celsius: mixing.celsius, ice: mixing.ice?.ice, notOf }
}

/** What goes in at later steps of a stage. */
function heldBack(
  sheet: DaySheet,
  { stage, step, breads }: Todo['event'],
  lines: readonly Line[],
): (HeldBack & { readonly ingredient: string })[] {
  const own = sheet.breads.find(({ id }) => id === breads[0])?.formula.stages.find(({ id }) => id === stage)
  const steps = own ? stepsOf(own, 0) : []
  const at = steps.findIndex(plan => plan.step.id === step.id)
  return steps.slice(at + 1).flatMap(plan => {
    if (plan.lines.length === 0) return []
    const event = sheet.written.network.events.find(e => e.step.id === plan.step.id && e.time === undefined)
    const list = event ? sheet.weighList(event.begins) : []
    const figures = sheet.figures(breads[0]!)
    return list
      .filter(({ lines: ids }) => lines.some(({ id }) => ids.includes(id)))
      .map(({ ingredient, grams, lines: ids }) => ({
        ingredient,
        grams: breads.length === 1 ? (figures?.weighed(ids[0]!)?.grams ?? grams) : grams,
        at: stepName(plan.step),
      }))
  })
}
