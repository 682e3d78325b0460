import { type Day, usualLeeway } from '../../dough/document/day.js'
import { type Formula, newId } from '../../dough/document/formula.js'
import type { Workbook } from '../../dough/document/workbook.js'
import { newDay } from '../../dough/edits/fetched/day-edits.js'
import type { Happened } from '../course/around-now.js'
import { clockText, localOf } from '../course/clock.js'
import { type Bake, isoOf, minutesOf } from './bake.js'
import { bakesIn } from './bake-data.js'
import { benchWords } from './words.js'

/** A bench: the day that it follows, its formulas as they stood, and what has been kept of it. */
export interface Bench {
  readonly key: string // by which the address names it
  readonly name: string
  readonly day: Day // of one formula by itself: one that begins when the bench does
  readonly isDay: boolean // planned by the baker
  readonly formulas: readonly Formula[] // each as it stood when the bench began; of one that has not, as it is
  readonly bakes: readonly Bake[] // begun so far, in the order of the day's breads
  readonly leeway: number
}

/** A formula whose every stage has a step at which it is weighed, also where nobody has written any. */
export function withSteps(formula: Formula): Formula {
  const { states: _states, ...bare } = formula
  return {
    ...bare,
    stages: formula.stages.map(stage =>
      stage.method?.length || stage.lines.length === 0
        ? stage
        : {
            ...stage,
            method: [
              { id: `${stage.id}-weigh`, does: benchWords.weighAndMix, kind: 'hands', text: '', note: '' },
            ],
          },
    ),
  }
}

/** The bench of a day, of a bake, or of a formula by itself; undefined where there is none of that id. `now`: minutes since 1970, UTC. */
export function benchOf(workbook: Workbook, key: string, now: number, zone: string): Bench | undefined {
  const bakes = bakesIn(workbook)
  const leeway = workbook.leeway ?? usualLeeway
  const named = bakes.find(({ id }) => id === key)
  const ofDay = named?.day ?? key
  const day = workbook.days?.find(({ id }) => id === ofDay)
  if (day) {
    const own = day.breads.flatMap(
      bread => bakes.filter(b => b.day === day.id && b.bread === bread.id).at(-1) ?? [],
    )
    const stood = new Map(own.map(({ formula }) => [formula.id, formula]))
    const formulas = [...new Set(day.breads.map(({ formula }) => formula))].flatMap(
      id => stood.get(id) ?? workbook.formulas.find(f => f.id === id) ?? [],
    )
    const breads = day.breads.map(bread => {
      const batch = own.find(bake => bake.bread === bread.id)?.formula.batch
      return batch ? { ...bread, batch } : bread
    })
    return {
      key: day.id,
      name: day.name,
      day: { ...day, breads },
      isDay: true,
      formulas: formulas.map(withSteps),
      bakes: own,
      leeway,
    }
  }
  const shelved = workbook.formulas.find(({ id }) => id === key)
  const bake = named ?? bakes.filter(b => b.day === undefined && b.formula.id === key && !b.finished).at(-1)
  const formula = bake?.formula ?? shelved
  if (!formula) return undefined
  const began = bake ? minutesOf(bake.at) : now
  return {
    key,
    name: formula.name,
    day: dayOf(formula, bake?.bread ?? formula.id, began, bake?.zone ?? zone),
    isDay: false,
    formulas: [withSteps(formula)],
    bakes: bake ? [bake] : [],
    leeway,
  }
}

/** A day on which one formula alone is made, from now on. */
function dayOf(formula: Formula, bread: string, began: number, zone: string): Day {
  const { date, minutes } = localOf(began, zone)
  const { batch = { make: 'as written' } } = formula
  return {
    ...newDay({ name: formula.name, date, zone }),
    id: `${bread}-bench`,
    begin: clockText(Math.floor(minutes)),
    asleep: [],
    breads: [{ id: bread, formula: formula.id, batch }],
  }
}

/** What has happened at a bench so far. */
export function happenedAt({ bakes }: Bench, now: number): Happened {
  const at = new Map<string, number>()
  const later = new Map<string, number>()
  for (const { moments } of bakes)
    for (const moment of moments) {
      if (moment.at !== undefined) at.set(moment.moment, minutesOf(moment.at))
      if (moment.later !== undefined) later.set(moment.moment, minutesOf(moment.later))
    }
  const past = [...at.values()].filter(instant => instant <= now)
  return { now, at, later, lastDone: past.length ? Math.max(...past) : undefined }
}

/** The bakes of a bench that have not begun, to be kept from when something is done. `planned`: the moments as they are planned. */
export function bakesToBegin(
  workbook: Workbook,
  { day, isDay, bakes }: Bench,
  now: number,
  planned: ReadonlyMap<string, number>,
): Bake[] {
  return day.breads.flatMap((bread): Bake[] => {
    if (bakes.some(bake => bake.bread === bread.id)) return []
    const formula = workbook.formulas.find(({ id }) => id === bread.formula)
    if (!formula) return []
    const { states: _states, ...stood } = formula
    const moments = [...planned].filter(([moment]) => moment.startsWith(`${bread.id} `))
    return [
      {
        id: newId(),
        at: isoOf(now),
        name: formula.name,
        formula: { ...stood, batch: bread.batch },
        ...(isDay && { day: day.id }),
        bread: bread.id,
        zone: day.zone,
        moments: moments.map(([moment, at]) => ({ moment, planned: isoOf(at) })),
        weighed: [],
        figures: [],
        timers: [],
        note: '',
        verdict: '',
      },
    ]
  })
}
