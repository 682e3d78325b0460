import type { Worded } from '../../engine/index.js'
import type { Batch, KeepBack } from './batch.js'
import type { ReadingName } from './reading-names.js'

/** What an ingredient brings to the counts bakers keep. `other` brings only its weight and its moisture. */
export type CountsAs =
  | { readonly kind: 'flour' | 'water' | 'salt' | 'other' }
  | { readonly kind: 'starter'; readonly hydration: number } // water over flour, fraction of 1

/** One ingredient in one stage. */
export interface Line {
  readonly id: string
  readonly ingredient: string // a larder ingredient's or an earlier stage's name, as the baker writes it
  readonly amount: string // as typed, decimal point, with its unit: `70%`, `20 g`, `2 tsp`, `2*salt`; '' when not yet given
  readonly note: string
  readonly base?: true // marked as (part of) what 100 % means in a stage without flour
  readonly source?: string // the words of a recipe it was read from
}

/** One thing of a stage's method: done by hand, waited for, or baked. */
export interface Step {
  readonly id: string
  readonly does: string // in the baker's own words: `Mix`, `Bulk`, `Bake`
  readonly kind: 'hands' | 'wait' | 'bake'
  readonly text: string // its time and what else matters, as typed: `3.5–4.5 h, at 25 °C`; '' when not yet said
  readonly note: string
}

/** One thing that is mixed. The last stage of a formula is its final dough. */
export interface Stage {
  readonly id: string
  readonly name: string
  readonly ferments?: boolean // left out: it does when it holds a starter, yeast or a fermenting stage and is not the final dough
  readonly lines: readonly Line[]
  readonly keepBack?: KeepBack // made beyond what later stages take
  readonly loss?: number // part of it that is lost on the way, fraction of 1
  readonly method?: readonly Step[] // in the order they are done
  readonly build?: string // the workbook's build that it is: what is changed in it is in every formula that has it
}

/** What an ingredient means in this formula where that differs from the baker's larder. */
export interface Meaning {
  readonly ingredient: string
  readonly countsAs: CountsAs
}

/**
 * A reading kept at a value while a line of the final dough gives. `wholeDough` holds the share of the
 * line's own ingredient through all stages over all flour.
 */
export interface Hold {
  readonly reading: ReadingName | 'wholeDough'
  readonly value: number // fraction of 1, or grams
  readonly line: string // id of the line that gives; '' of a dough weight for which all lines give in proportion
}

/** Whether it is the dough's weight that is kept, with every line giving in proportion. */
export const isInProportion = ({ reading, line }: Hold): boolean => reading === 'doughWeight' && line === ''

/** A setting read from a file that this version does not use; kept so that nothing is lost. */
export interface KeptSetting {
  readonly stage: string // '' for the formula's own
  readonly setting: string
  readonly amount: string
  readonly note: string
  readonly ingredient?: string // of the line it speaks of, where it does
}

/** A calculation of the baker's own, named, usable in amounts: `per_loaf = dough_weight/6`. */
export interface Jotting {
  readonly id: string
  readonly name: string // as the baker writes it
  readonly text: string // as typed, decimal point
}

/** A state of a formula that the baker kept under a name. */
export interface KeptState {
  readonly id: string
  readonly name: string
  readonly keptAt: string // ISO 8601, UTC
  readonly formula: Omit<Formula, 'states'>
}

/** One bread, as plain immutable data. */
export interface Formula {
  readonly id: string
  readonly name: string
  readonly note: string
  readonly flourWeight: number // grams; what 100 % weighs in the final dough while its flours are all percentages
  readonly stages: readonly Stage[] // in the order they are mixed; at least the final dough
  readonly meanings: readonly Meaning[]
  readonly keptSettings: readonly KeptSetting[]
  readonly holds?: readonly Hold[] // at most one a reading, at most one a line
  readonly batch?: Batch // left out: as written
  readonly jottings?: readonly Jotting[]
  readonly group?: string // on the shelf, by its name; left out: none
  readonly states?: readonly KeptState[] // earliest first
}

/** Where something is: names for people, ids for programs. */
export interface Place {
  readonly formula?: string // id
  readonly stage?: string // id
  readonly line?: string // id
  readonly row?: number // 1-based row of a file
}

/**
 * Something to tell the baker: what it is by its code, with its place, and a sentence that says what to do. The
 * figures of its code are beside it: the words of its room say which.
 */
export interface Problem extends Worded {
  readonly where: Place
  readonly severity: 'error' | 'warning' | 'remark'
}

/** 1000 g of flour until the baker sets another weight. */
export const usualFlourWeight = 1000

const drawn = new Uint32Array(256) // at random, many at a time: a table that arrives wants thousands of ids
let next = drawn.length

/** Sixteen bits at random, or twice as many, in hexadecimal. */
function draw(digits: 4 | 8): string {
  // Not `randomUUID`: browsers have that on secure pages only.
  if (next === drawn.length) {
    crypto.getRandomValues(drawn)
    next = 0
  }
  const number = drawn[next++]! >>> (32 - 4 * digits)
  return number.toString(16).padStart(digits, '0')
}

/** A new id: short, unique in a workbook. */
export const newId = (): string => `${draw(8)}-${draw(4)}`

export const finalDoughOf = (formula: Formula): Stage => formula.stages[formula.stages.length - 1]!

/** Whether more, less or other is made than the formula as it is written. */
export const hasBatch = ({ batch, stages }: Pick<Formula, 'batch' | 'stages'>): boolean =>
  (batch !== undefined && batch.make !== 'as written') || stages.some(s => s.keepBack || s.loss)

/** Names are compared without case, accents' encoding or stray spaces. */
export const sameName = (a: string, b: string): boolean => nameKey(a) === nameKey(b)

const keys = new Map<string, string>() // by name as written; every line is looked up at every edit

/** What a name is compared by. */
export function nameKey(name: string): string {
  let key = keys.get(name)
  if (key === undefined) {
    if (keys.size > 5000) keys.clear()
    key = name.normalize('NFC').trim().replace(/\s+/g, ' ').toLowerCase()
    if (name.length < 200) keys.set(name, key)
  }
  return key
}

/** A copy with ids of its own. */
export function copyOf(formula: Formula, name: string): Formula {
  const ids = new Map(formula.stages.flatMap(s => s.lines.map(l => [l.id, newId()] as const)))
  const stages = formula.stages.map(s => ({
    ...s,
    id: newId(),
    lines: s.lines.map(l => ({ ...l, id: ids.get(l.id)! })),
    ...(s.method && { method: s.method.map(step => ({ ...step, id: newId() })) }),
  }))
  const holds = formula.holds?.map(h => ({ ...h, line: ids.get(h.line) ?? h.line }))
  return { ...formula, id: newId(), name, stages, ...(holds && { holds }) }
}
