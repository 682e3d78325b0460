import { madeAlike } from '../../dough/about/made-alike.js'
import type { Day } from '../../dough/document/day.js'
import { type Formula, nameKey, type Stage, sameName } from '../../dough/document/formula.js'
import type { AloneGroup, TimeHold, TimeProblem } from '../../times/index.js'
import { stagePlans } from '../method/stage-steps.js'
import { dateAfter, instantOf, readClock, readLocal } from './clock.js'
import {
  type Bread,
  type Build,
  buildKey,
  Course,
  ovenOf,
  piecesOf,
  type Taker,
  takingMoments,
} from './course.js'
import { DayNetwork } from './day-network.js'

/** What a hold of the problem is there for. */
export type HoldReason =
  | { readonly of: 'ready' | 'begin'; readonly bread: string }
  | { readonly of: 'held'; readonly moment: string }

/** A day as a problem of times, with what each part of it is there for. Minutes since 1970, UTC. */
export interface DayProblem {
  readonly problem: TimeProblem
  readonly network: DayNetwork
  readonly holds: readonly HoldReason[] // of the problem's holds, in their order
  readonly breads: readonly Bread[]
  readonly builds: readonly Build[]
  readonly dropped: readonly string[] // moments held that are not of this day
  readonly missing: readonly string[] // ids of breads whose formulas are not there
}

/** How a day is planned. */
export interface PlanOptions {
  readonly leeway: number // how far a wait of one time moves, a fraction of 1
  /** Every bread is done at the very minute it is to be ready; otherwise before it where it has to be, and never after it. */
  readonly strict: boolean
}

// What it costs that a bread, or a load of it, is done before its time, or begun after the day's: minutes² ÷ this.
const earlyLeeway = 4 * 60
const lateLeeway = 7 * earlyLeeway
const oneDay = 24 * 60

/** The key under which stages of one name are made together. */
export const sharedKey = (stageName: string): string => nameKey(stageName)

function breadsOf(day: Day, formulas: ReadonlyMap<string, Formula>, leeway: number): Bread[] {
  return day.breads.flatMap(bread => {
    const formula = formulas.get(bread.formula)
    if (!formula) return []
    const oven = ovenOf(day, bread)
    return [{ id: bread.id, formula, stages: stagePlans(formula, leeway), pieces: piecesOf(bread), oven }]
  })
}

/** Each stage that is made, once for all that share it. */
function buildsOf(day: Day, breads: readonly Bread[]) {
  const builds: Build[] = []
  const of = new Map<string, Build>() // by bread and stage
  for (const bread of breads) {
    for (const plan of bread.stages) {
      const key = buildKey(bread.id, plan.stage)
      const isShared = !plan.isFinal && day.together.includes(sharedKey(plan.stage.name))
      const together = isShared && builds.find(build => isForAll(build, bread, plan.stage))
      if (together) {
        const more = { ...together, breads: [...together.breads, bread.id] }
        builds[builds.indexOf(together)] = more
        for (const [name, build] of of) if (build === together) of.set(name, more)
        of.set(key, more)
        continue
      }
      const build = { key, bread, plan, breads: [bread.id] }
      builds.push(build)
      of.set(key, build)
    }
  }
  return { builds, of }
}

/** Each stage that is made on a day, once for all breads that share it; those of formulas that are not there are left out. */
export const buildsIn = (day: Day, formulas: readonly Formula[], leeway: number): readonly Build[] =>
  buildsOf(day, breadsOf(day, new Map(formulas.map(f => [f.id, f])), leeway)).builds

/** Whether a build is one that another bread's stage can be made with. */
const isForAll = ({ plan, breads, bread: first }: Build, bread: Bread, stage: Stage): boolean =>
  !plan.isFinal &&
  !breads.includes(bread.id) &&
  sameName(plan.stage.name, stage.name) &&
  madeAlike(first.formula, plan.stage.id, bread.formula, stage.id)

/** The nights of a day's zone that touch a stretch of time, as instants. */
export function nightsOf(
  { asleep, zone, date }: Day,
  from: number,
  until: number,
): (readonly [number, number])[] {
  const nights: (readonly [number, number])[] = []
  const first = Math.floor((from - instantOf({ date, minutes: 0 }, zone)) / oneDay) - 1
  const last = Math.ceil((until - instantOf({ date, minutes: 0 }, zone)) / oneDay) + 1
  for (let n = first; n <= last; n++) {
    for (const { from: begins, until: ends } of asleep) {
      const [a, b] = [readClock(begins), readClock(ends)]
      if (a === undefined || b === undefined || a === b) continue
      const on = dateAfter(date, n)
      const night = [
        instantOf({ date: on, minutes: a }, zone),
        instantOf({ date: b > a ? on : dateAfter(on, 1), minutes: b }, zone),
      ] as const
      if (night[1] > from && night[0] < until) nights.push(night)
    }
  }
  return nights.sort((a, b) => a[0] - b[0])
}

/** The instant of a clock time on the day's date. */
export function onTheDay(day: Day, clock: string | undefined): number | undefined {
  const minutes = clock === undefined ? undefined : readClock(clock)
  return minutes === undefined ? undefined : instantOf({ date: day.date, minutes }, day.zone)
}

/** Writes a day down as a problem of times. Formulas by id; those of breads that are not there are left out. */
export function dayProblem(
  day: Day,
  formulas: ReadonlyMap<string, Formula>,
  { leeway, strict }: PlanOptions,
): DayProblem {
  const network = new DayNetwork()
  const course = new Course(day, network, leeway)
  const breads = breadsOf(day, formulas, leeway)
  const { builds, of } = buildsOf(day, breads)
  const takers = takersIn(breads, builds, of)
  const holds: TimeHold[] = []
  const reasons: HoldReason[] = []
  const hold = (reason: HoldReason, moment: string, at: number) => {
    holds.push({ moment: network.moment(moment), at })
    reasons.push(reason)
  }
  for (const build of builds) {
    if (!build.plan.isFinal) {
      course.earlier(build, takers(build))
      continue
    }
    const done = course.final(build)
    const { id } = build.bread
    const ready = onTheDay(day, day.breads.find(b => b.id === id)?.ready ?? day.ready)
    if (ready === undefined || done.length === 0) continue
    const by = `${id} ready`
    hold({ of: 'ready', bread: id }, by, ready)
    for (const [i, moment] of done.entries()) {
      const isLast = i === done.length - 1
      const most = strict && isLast ? 0 : Number.POSITIVE_INFINITY
      network.span(moment, by, { least: 0, usual: 0, most, leeway: earlyLeeway }, { of: 'ready', bread: id })
    }
  }
  const begin = onTheDay(day, day.begin)
  if (begin !== undefined) beginAt(begin, builds, network, hold)
  const dropped: string[] = []
  for (const { moment, at } of day.holds) {
    const local = readLocal(at)
    if (!local || !network.moments.includes(moment)) dropped.push(moment)
    else hold({ of: 'held', moment }, moment, instantOf(local, day.zone))
  }
  const held = holds.flatMap(({ at }) => at ?? [])
  const inTurn = strict && begin === undefined ? 1 : breads.length // one wholly after the other, each a night apart
  const reach = inTurn * (longestOf(breads, network) + oneDay)
  const nights = held.length ? nightsOf(day, Math.min(...held) - reach, Math.max(...held) + reach) : []
  const alone = groupsOf(day, network, breads, nights)
  const { moments, spans } = network
  const missing = day.breads.filter(({ formula }) => !formulas.has(formula)).map(({ id }) => id)
  return {
    problem: { moments, spans, holds, alone },
    network,
    holds: reasons,
    breads,
    builds,
    dropped,
    missing,
  }
}

/** Who takes each build, and when. */
function takersIn(breads: readonly Bread[], builds: readonly Build[], of: ReadonlyMap<string, Build>) {
  const open = new Set<Build>() // a stage made of itself is taken by nobody
  const takersOf = (build: Build): readonly Taker[] => {
    if (open.has(build)) return []
    open.add(build)
    const all = breads.flatMap(bread =>
      bread.stages.flatMap(plan =>
        plan.takes
          .filter(({ from }) => of.get(`${bread.id} ${from}`) === build)
          .flatMap(({ step }) => {
            const by = of.get(buildKey(bread.id, plan.stage))!
            const isOwn = by.bread === bread
            return isOwn || builds.includes(by) ? takingMoments(by, step, takersOf) : []
          }),
      ),
    )
    open.delete(build)
    return all.filter((taker, i) => all.findIndex(t => t.moment === taker.moment) === i)
  }
  return takersOf
}

/** The first of all begins then; the others not before, and as near to it as may be. */
function beginAt(
  begin: number,
  builds: readonly Build[],
  network: DayNetwork,
  hold: (reason: HoldReason, moment: string, at: number) => void,
): void {
  const firsts = builds.filter(b => b.plan.steps.length && b.plan.takes.length === 0)
  for (const [i, build] of firsts.entries()) {
    const bread = build.bread.id
    const moment = Course.momentOf(build, 0)
    if (i === 0) {
      hold({ of: 'begin', bread }, moment, begin)
      continue
    }
    const from = network.moment(`${build.key} begin`)
    hold({ of: 'begin', bread }, from, begin)
    network.span(
      from,
      moment,
      { least: 0, usual: 0, most: Number.POSITIVE_INFINITY, leeway: lateLeeway },
      { of: 'begin', bread },
    )
  }
}

/** Hands, waking hours and ovens: what only one can use at a time. `closed` are the nights. */
function groupsOf(
  { bakers: count, ovens }: Day,
  { hands, awake, oven }: DayNetwork,
  breads: readonly Bread[],
  closed: readonly (readonly [number, number])[],
): AloneGroup[] {
  const groups: AloneGroup[] = []
  const bakers = Math.max(1, Math.floor(count))
  for (let baker = 0; baker < bakers; baker++) {
    const uses = hands.filter(h => breads.findIndex(b => b.id === h.bread) % bakers === baker).map(h => h.use)
    if (uses.length) groups.push({ name: bakers === 1 ? 'hands' : `hands ${baker + 1}`, closed, uses })
  }
  if (awake.length && closed.length) groups.push({ name: 'awake', closed, uses: awake })
  for (const { id, between, change } of ovens) {
    const uses = oven.filter(o => o.oven === id).map(o => o.use)
    if (uses.length) groups.push({ name: `oven ${id}`, between, change, uses })
  }
  return groups
}

/** Minutes that the longest of the breads can take from its first step to being ready. */
function longestOf(breads: readonly Bread[], { spans, reasons }: DayNetwork): number {
  const long = new Map<string, number>()
  for (const [i, { least, most }] of spans.entries()) {
    const reason = reasons[i]!
    const of = 'event' in reason ? reason.event.breads : [reason.bread]
    for (const id of of) long.set(id, (long.get(id) ?? 0) + (Number.isFinite(most) ? most : least))
  }
  return Math.max(0, ...breads.map(b => long.get(b.id) ?? 0))
}
