import { batchFault } from '../document/checks.js'
import { type Formula, finalDoughOf, type KeptState, newId, usualFlourWeight } from '../document/formula.js'
import { readingNames } from '../document/reading-names.js'
import {
  type Field,
  type Fields,
  isFields,
  list,
  number,
  readFields,
  type Tell,
  text,
  that,
  truth,
} from './fields.js'

const mostShapes = 5000 // of pieces
const mostOfName = 200 // characters of a shape's

/** Ids are parts of the names of cells: these cannot be taken for anything else. */
const isId = (value: unknown): value is string =>
  typeof value === 'string' && /^[\w-]{1,80}$/.test(value) && !/^(?:reading|jotting|holds)$/.test(value)

/** An id, or a new one for what has none that can be used. */
const id: Field = { read: value => (isId(value) ? value : newId()), usual: newId }

const name: Field = { read: text, must: true }
const mostOfGroup = 200 // characters of its name
const note: Field = { read: text, usual: () => '' }

const isCountsAs = (value: Fields): boolean =>
  value.kind === 'starter'
    ? typeof value.hydration === 'number' && value.hydration >= 0 && Number.isFinite(value.hydration)
    : typeof value.kind === 'string' && ['flour', 'water', 'salt', 'other'].includes(value.kind)

/** What an ingredient counts as, in a file. */
export const countsAs: Field = { read: that(isCountsAs), must: true }

const part = number(0, { below: 1 })

const ofLine: Readonly<Record<string, Field>> = {
  id,
  ingredient: { read: text, must: true },
  amount: { read: text, must: true },
  note,
  base: { read: value => (value === true ? value : undefined) },
  source: { read: text },
}

const isStepKind = (value: unknown): boolean => value === 'hands' || value === 'wait' || value === 'bake'

const ofStep: Readonly<Record<string, Field>> = {
  id,
  does: { read: text, must: true },
  kind: { read: value => (isStepKind(value) ? value : undefined), must: true },
  text: { read: text, usual: () => '' },
  note,
}

const stage = (value: unknown, tell: Tell): Fields | undefined =>
  readFields(
    value,
    {
      id,
      name,
      ferments: { read: truth },
      lines: { read: list(item => readFields(item, ofLine, tell), 'line', tell), must: true },
      keepBack: { read: value => (value === 'seed' ? value : number(0)(value)) },
      loss: { read: part },
      method: { read: list(item => readFields(item, ofStep, tell), 'step', tell) },
      build: { read: groupName },
    },
    tell,
  )

const isPieces = (value: unknown): boolean =>
  isFields(value) &&
  typeof value.count === 'number' &&
  typeof value.weight === 'number' &&
  (value.name === undefined || (typeof value.name === 'string' && value.name.length <= mostOfName))

/** Whether the fields of a batch are of the kinds that what it makes needs; `batchFault` looks at their values. */
export function isBatch(value: Fields): boolean {
  if (
    (value.loss !== undefined && typeof value.loss !== 'number') ||
    (value.bakeLoss !== undefined && typeof value.bakeLoss !== 'number')
  )
    return false
  const needs: Readonly<Record<string, () => boolean>> = {
    'as written': () => true,
    pieces: () =>
      Array.isArray(value.pieces) && value.pieces.length <= mostShapes && value.pieces.every(isPieces),
    'baked pieces': () => needs.pieces!(),
    dough: () => typeof value.grams === 'number',
    flour: () => typeof value.grams === 'number',
    'all of': () => typeof value.grams === 'number' && typeof value.ingredient === 'string',
    factor: () => typeof value.factor === 'number',
  }
  const { make } = value
  return (
    typeof make === 'string' &&
    Object.hasOwn(needs, make) &&
    needs[make]!() &&
    batchFault(value as unknown as NonNullable<Formula['batch']>) === undefined
  )
}

const isHold = (value: Fields): boolean =>
  (value.reading === 'wholeDough' || (readingNames as readonly unknown[]).includes(value.reading)) &&
  Number.isFinite(value.value) &&
  typeof value.line === 'string'

/** Holds: at most one a reading, and one a line. */
const holds = (tell: Tell): Field['read'] => {
  const readings = new Set<unknown>()
  const lines = new Set<unknown>()
  return list(
    value => {
      const hold = that(isHold)(value) as Fields | undefined
      if (!hold || lines.has(hold.line) || readings.has(hold.reading)) return undefined
      lines.add(hold.line)
      if (hold.reading !== 'wholeDough') readings.add(hold.reading)
      return hold
    },
    'hold',
    tell,
  )
}

/** The name of a group or a build; undefined where there is nothing to read in it. */
const groupName = (value: unknown): string | undefined =>
  typeof value === 'string' && value.trim() && value.length <= mostOfGroup ? value : undefined

const allText = (...names: string[]): Readonly<Record<string, Field>> =>
  Object.fromEntries(names.map(name => [name, { read: text, must: true }]))

/** A kept state in data of which nothing is known. */
export function readStateData(value: unknown, tell: Tell): KeptState | undefined {
  const formula = (inner: unknown) => readFormulaData(inner, tell, 'a state')
  return readFields(
    value,
    { id, ...allText('name', 'keptAt'), formula: { read: formula, must: true } },
    tell,
  ) as KeptState | undefined
}

/**
 * The formula in data of which nothing is known, field by field; undefined where nothing can be made of it. What
 * can be done without, and is not understood, is left out and told; what is not known stays in it.
 */
export function readFormulaData(
  value: unknown,
  tell: Tell,
  as: 'a formula' | 'a state' = 'a formula',
): Formula | undefined {
  const kept = ['stage', 'setting', 'amount', 'note']
  const fields = readFields(
    value,
    {
      id,
      name,
      note,
      flourWeight: { read: number(0, { above: true }), usual: () => usualFlourWeight },
      stages: { read: list(item => stage(item, tell), 'stage', tell), must: true },
      meanings: {
        read: list(item => readFields(item, { ...allText('ingredient'), countsAs }, tell), 'meaning', tell),
        usual: () => [],
      },
      keptSettings: {
        read: list(
          item => readFields(item, { ...allText(...kept), ingredient: { read: text } }, tell),
          'setting',
          tell,
        ),
        usual: () => [],
      },
      holds: { read: holds(tell) },
      batch: { read: that(isBatch) },
      jottings: {
        read: list(item => readFields(item, { id, ...allText('name', 'text') }, tell), 'jotting', tell),
      },
      group: { read: value => groupName(value) },
      states: {
        read:
          as === 'a state' ? () => undefined : list(item => readStateData(item, tell), 'kept state', tell),
      },
    },
    tell,
  )
  const formula = fields as unknown as Formula | undefined
  if (!formula || formula.stages.length === 0) return undefined
  return withOwnIds(formula, tell)
}

/** The formula with a new id for whatever bears that of another of its parts. */
function withOwnIds(formula: Formula, tell: Tell): Formula {
  const all = [
    ...formula.stages,
    ...formula.stages.flatMap(s => [...s.lines, ...(s.method ?? [])]),
    ...(formula.jottings ?? []),
  ]
  if (new Set(all.map(({ id }) => id)).size === all.length) return formula
  tell({ code: 'idsRepeated' })
  // The lines of the final dough come first: a hold means one of them.
  const seen = new Set<string>()
  const own = <T extends { readonly id: string }>(thing: T): T => {
    const unlike = seen.has(thing.id) ? { ...thing, id: newId() } : thing
    seen.add(unlike.id)
    return unlike
  }
  const final = finalDoughOf(formula).lines.map(own)
  const lines = [...formula.stages.slice(0, -1).map(s => s.lines.map(own)), final]
  return {
    ...formula,
    stages: formula.stages.map((s, at) =>
      own({ ...s, lines: lines[at]!, ...(s.method && { method: s.method.map(own) }) }),
    ),
    ...(formula.jottings && { jottings: formula.jottings.map(own) }),
  }
}
