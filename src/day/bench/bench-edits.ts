import { newId } from '../../dough/document/formula.js'
import type { Change, Transaction, Unread, Workbook } from '../../dough/document/workbook.js'
import type { Bake, BakeFigure, BakeMoment, BakeTimer, BakeWeight, FigureName } from './bake.js'
import { isoOf } from './bake.js'
import { bakeOf } from './bake-data.js'
import { type Bench, bakesToBegin } from './bench-day.js'
import type { Todo } from './todos.js'
import type { BenchLine } from './weighing-list.js'
import { benchLabels } from './words.js'

/** At which bench something is done, and when; `planned` are the moments as they are planned, kept when its bakes begin. */
export interface AtBench {
  readonly bench: Bench
  readonly now: number // minutes since 1970, UTC
  readonly planned: ReadonlyMap<string, number>
}

const putBake = (bake: Bake): Change => ({ of: 'bake', id: bake.id, value: bake as unknown as Unread })

/** Changes the bakes of some breads of a bench, all of which begin with it; undefined: of all. */
function change(
  workbook: Workbook,
  { bench, now, planned }: AtBench,
  label: string,
  breads: readonly string[] | undefined,
  edit: (bake: Bake) => Bake,
): Transaction {
  const begun = bakesToBegin(workbook, bench, now, planned)
  const edited = (bake: Bake) => (!breads || breads.includes(bake.bread) ? edit(bake) : bake)
  return {
    label,
    changes: [
      ...begun.map(edited).map(putBake),
      ...bench.bakes.flatMap(bake => {
        const after = edited(bake)
        return after === bake ? [] : [putBake(after)]
      }),
    ],
  }
}

/** The moments with fields of one of them said otherwise; undefined takes one away. */
function withMoment(
  bake: Bake,
  moment: string,
  fields: { readonly at?: string | undefined; readonly later?: string | undefined },
): Bake {
  const before = bake.moments.find(one => one.moment === moment) ?? { moment }
  const { at, later, ...rest } = { ...before, ...fields }
  const after: BakeMoment = {
    ...rest,
    ...(at !== undefined && { at }),
    ...(later !== undefined && { later }),
  }
  const isThere = bake.moments.some(one => one.moment === moment)
  const moments = isThere
    ? bake.moments.map(one => (one.moment === moment ? after : one))
    : [...bake.moments, after]
  return { ...bake, moments }
}

/** Notes that a thing is done, `at` an instant; of work also when it began, where nobody has said so: `from`. */
export function noteDone(
  workbook: Workbook,
  where: AtBench,
  { event, records, begun }: Todo,
  { name, at, from }: { readonly name: string; readonly at: number; readonly from: number },
): Transaction {
  return change(workbook, where, benchLabels.done(name), event.breads, bake => {
    const done = withMoment(bake, records, { at: isoOf(at), later: undefined })
    return begun === undefined && records !== event.begins
      ? withMoment(done, event.begins, { at: isoOf(Math.min(from, at)), later: undefined })
      : done
  })
}

/** Notes that a thing is not done yet after all. */
export const noteNotDone = (
  workbook: Workbook,
  where: AtBench,
  { event, act, records }: Todo,
  name: string,
): Transaction =>
  change(workbook, where, benchLabels.notDone(name), event.breads, bake => {
    const back = withMoment(bake, records, { at: undefined })
    return act === 'do' ? withMoment(back, event.begins, { at: undefined }) : back
  })

/** Notes that work has begun. */
export const noteBegun = (workbook: Workbook, where: AtBench, { event }: Todo, name: string): Transaction =>
  change(workbook, where, benchLabels.begun(name), event.breads, bake =>
    withMoment(bake, event.begins, { at: isoOf(where.now), later: undefined }),
  )

/** Puts a thing off: it does not begin, or where it has begun is not done, before `until`. */
export const putOff = (
  workbook: Workbook,
  where: AtBench,
  { event, records, begun, act }: Todo,
  name: string,
  until: number,
): Transaction =>
  change(workbook, where, benchLabels.later(name), event.breads, bake =>
    withMoment(bake, begun === undefined && act === 'do' ? event.begins : records, { later: isoOf(until) }),
  )

/** Ticks off a line of the weighing list, with what really went in; `grams` left out: as it was to be. With the first, work has begun. */
export function tickOff(
  workbook: Workbook,
  where: AtBench,
  { event, act, begun }: Todo,
  { line, ingredient, wanted }: BenchLine,
  grams = wanted,
): Transaction {
  const weight: BakeWeight = {
    moment: event.begins,
    line,
    ...(wanted !== undefined && { wanted }),
    ...(grams !== undefined && { grams }),
  }
  return change(workbook, where, benchLabels.weighed(ingredient), event.breads, bake => {
    const isIt = (one: BakeWeight) => one.moment === weight.moment && one.line === line
    const weighed = bake.weighed.some(isIt)
      ? bake.weighed.map(one => (isIt(one) ? weight : one))
      : [...bake.weighed, weight]
    const ticked = { ...bake, weighed }
    return begun === undefined && act === 'do'
      ? withMoment(ticked, event.begins, { at: isoOf(where.now), later: undefined })
      : ticked
  })
}

/** Takes the tick off a line again. */
export const tickAgain = (
  workbook: Workbook,
  where: AtBench,
  { event }: Todo,
  { line, ingredient }: BenchLine,
): Transaction =>
  change(workbook, where, benchLabels.notWeighed(ingredient), event.breads, bake => ({
    ...bake,
    weighed: bake.weighed.filter(one => one.moment !== event.begins || one.line !== line),
  }))

/** Keeps what was measured at a step; undefined: it was not after all. */
export const noteFigure = (
  workbook: Workbook,
  where: AtBench,
  { event }: Pick<Todo, 'event'>,
  {
    what,
    name,
    value,
  }: { readonly what: FigureName; readonly name: string; readonly value: number | undefined },
): Transaction =>
  change(workbook, where, benchLabels.figure(name), event.breads, bake => {
    const others = bake.figures.filter(one => one.moment !== event.begins || one.what !== what)
    const figure: BakeFigure[] = value === undefined ? [] : [{ moment: event.begins, what, value }]
    return { ...bake, figures: [...others, ...figure] }
  })

/** Says what the bowl of a step weighs that stands on the scale; undefined: the scale was tared. */
export const noteBowl = (
  workbook: Workbook,
  where: AtBench,
  { event }: Pick<Todo, 'event'>,
  grams: number | undefined,
): Transaction =>
  change(workbook, where, benchLabels.bowl, event.breads, ({ bowls = [], ...bake }) => {
    const others = bowls.filter(({ moment }) => moment !== event.begins)
    const all = grams === undefined ? others : [...others, { moment: event.begins, grams }]
    return all.length ? { ...bake, bowls: all } : bake
  })

/** Sets a timer of the baker's own; `minutes` from now. */
export function setTimer(workbook: Workbook, where: AtBench, name: string, minutes: number): Transaction {
  const timer: BakeTimer = {
    id: newId(),
    name,
    begun: isoOf(where.now),
    ends: isoOf(where.now + minutes),
  }
  const [first] = where.bench.day.breads
  return change(workbook, where, benchLabels.timer(name), first ? [first.id] : [], bake => ({
    ...bake,
    timers: [...bake.timers, timer],
  }))
}

export const stopTimer = (workbook: Workbook, where: AtBench, { id, name }: BakeTimer): Transaction =>
  change(workbook, where, benchLabels.timerGone(name), undefined, bake =>
    bake.timers.some(timer => timer.id === id)
      ? { ...bake, timers: bake.timers.filter(timer => timer.id !== id) }
      : bake,
  )

/** Ends a bench: its bakes are done. */
export const finishBench = (workbook: Workbook, where: AtBench): Transaction =>
  change(workbook, where, benchLabels.finished(where.bench.name), undefined, bake => ({
    ...bake,
    finished: isoOf(where.now),
    timers: [],
  }))

/** Says fields of a bake otherwise; undefined when it is gone or as it was. */
export function changeBake(
  workbook: Workbook,
  id: string,
  fields: Partial<Pick<Bake, 'note' | 'verdict' | 'tastes' | 'figures' | 'at' | 'name'>>,
): Transaction | undefined {
  const kept = workbook.bakes?.find(bake => bake.id === id)
  const bake = kept && bakeOf(kept)
  if (!bake) return undefined
  return { label: benchLabels.said(bake.name), changes: [putBake({ ...bake, ...fields })] }
}

/** Writes down a bake afterwards: the formula as it is now, and nothing of it noted yet. `at`: minutes since 1970, UTC. */
export function writeDown(
  workbook: Workbook,
  formula: string,
  at: number,
  zone: string,
): Transaction | undefined {
  const of = workbook.formulas.find(({ id }) => id === formula)
  if (!of) return undefined
  const { states: _states, ...stood } = of
  const bake: Bake = {
    id: newId(),
    at: isoOf(at),
    name: of.name,
    formula: stood,
    bread: of.id,
    zone,
    moments: [],
    weighed: [],
    figures: [],
    timers: [],
    finished: isoOf(at),
    note: '',
    verdict: '',
  }
  return { label: benchLabels.wrote(of.name), changes: [putBake(bake)] }
}

/** Deletes a bake, for good: with the next save nothing of it is left in the storage, and no undo brings it back. */
export function removeBake(workbook: Workbook, id: string): Transaction | undefined {
  const kept = workbook.bakes?.find(bake => bake.id === id)
  if (!kept) return undefined
  return {
    label: benchLabels.removed(bakeOf(kept)?.name ?? ''),
    changes: [{ of: 'bake', id }],
    forgets: steps => {
      const others = (changes: readonly Change[]) => changes.filter(of => of.of !== 'bake' || of.id !== id)
      return steps.flatMap(step => {
        const [changes, inverse] = [others(step.changes), others(step.inverse)]
        return changes.length ? [{ ...step, changes, inverse }] : [] // a step that was nothing else
      })
    },
  }
}
