import type { Day, DayBread, Oven } from '../../src/dough/document/day.js'
import type { Formula, Stage, Step } from '../../src/dough/document/formula.js'

let count = 0
const id = (what: string) => `${what}${++count}`

/** `hands Mix: 10 min, adds Salt` */
function step(text: string): Step {
  const [, kind, does, typed] = /^(hands|wait|bake) ([^:]*): ?(.*)$/.exec(text)!
  return { id: id('s'), kind: kind as Step['kind'], does: does!, text: typed!, note: '' }
}

/**
 * A formula in lines: a stage's name with a colon; ingredients `Bread flour 820 g`; steps `hands Mix: 10 min`, indented or not.
 */
export function bread(name: string, text: string): Formula {
  const stages: { stage: Stage; lines: Stage['lines'][number][]; method: Step[] }[] = []
  for (const row of text.split('\n').map(r => r.trim())) {
    if (!row) continue
    const [, title] = /^([^:]+):$/.exec(row) ?? []
    if (title) {
      const lines: Stage['lines'][number][] = []
      const method: Step[] = []
      stages.push({ stage: { id: id('st'), name: title, lines, method }, lines, method })
      continue
    }
    const at = stages.at(-1)!
    if (/^(hands|wait|bake) /.test(row)) at.method.push(step(row))
    else {
      const [, ingredient, amount] = /^(.*\D) (\d.*)$/.exec(row)!
      at.lines.push({ id: id('l'), ingredient: ingredient!, amount: amount!, note: '' })
    }
  }
  return {
    id: id('f'),
    name,
    note: '',
    flourWeight: 1000,
    stages: stages.map(s => s.stage),
    meanings: [],
    keptSettings: [],
  }
}

const oven: Oven = { id: 'oven', name: 'Oven', between: 10, change: 0, heating: 45 }

/** A day in UTC of the Saturday oven with breads in pieces of 900 g, ready or begun at a clock time. */
export function saturday(
  breads: readonly (readonly [formula: Formula, pieces: number])[],
  more: Partial<Day> = {},
): Day {
  return {
    id: 'day',
    name: 'Saturday oven',
    date: '2026-12-05',
    zone: 'UTC',
    breads: breads.map(
      ([formula, count], i): DayBread => ({
        id: `b${i + 1}`,
        formula: formula.id,
        batch: { make: 'pieces', pieces: [{ count, weight: 900 }] },
      }),
    ),
    ready: '9:00',
    asleep: [],
    bakers: 1,
    ovens: [oven],
    kitchen: 24,
    fridge: 4,
    together: [],
    holds: [],
    note: '',
    ...more,
  }
}

/** The moment of a step of a bread, by what is done in which stage. */
export function momentOf(
  day: Day,
  formulas: readonly Formula[],
  does: string,
  stage?: string,
  bread = 'b1',
): string {
  const { formula } = day.breads.find(b => b.id === bread)!
  for (const s of formulas.find(f => f.id === formula)!.stages) {
    const found = (stage === undefined || s.name === stage) && s.method?.find(m => m.does === does)
    if (found) return `${bread} ${s.id} ${found.id}`
  }
  throw new RangeError(`No step ${does}`)
}
