import {
  type Field,
  type Fields,
  isFields,
  list,
  number,
  readFields,
  type Tell,
  text,
} from '../../dough/data/fields.js'
import { readFormulaData } from '../../dough/data/formula-data.js'
import { isZone } from '../../dough/document/day-checks.js'
import { newId } from '../../dough/document/formula.js'
import type { Unread } from '../../dough/document/workbook.js'
import { type Bake, figureNames, tasteNames } from './bake.js'

const must = (read: Field['read']): Field => ({ read, must: true })
const isInstant = (value: unknown): boolean =>
  typeof value === 'string' && /^\d{4}-\d\d-\d\dT[\d:.]+Z$/.test(value) && !Number.isNaN(Date.parse(value))
const instant: Field['read'] = value => (isInstant(value) ? value : undefined)
const ofNames =
  (names: readonly string[]): Field['read'] =>
  value =>
    typeof value === 'string' && names.includes(value) ? value : undefined
const grams: Field = { read: number(0) }
const measured: Field['read'] = value =>
  typeof value === 'number' && Math.abs(value) < 1e6 ? value : undefined

const tastes: Field['read'] = value =>
  isFields(value) &&
  Object.entries(value).every(
    ([name, at]) =>
      (tasteNames as readonly string[]).includes(name) && typeof at === 'number' && at >= 1 && at <= 5,
  )
    ? value
    : undefined

/**
 * The bake in data of which nothing is known, field by field; undefined where nothing can be made of it. What can be done
 * without, and is not understood, is left out and told; what is not known stays in it.
 */
export function readBakeData(value: unknown, tell: Tell): Bake | undefined {
  const each = (fields: Readonly<Record<string, Field>>, of: Parameters<typeof list>[1]): Field => ({
    read: list((item: unknown): Fields | undefined => readFields(item, fields, tell), of, tell),
    usual: () => [],
  })
  const bowl = (item: unknown) => readFields(item, { moment: must(text), grams: must(number(0)) }, tell)
  return readFields(
    value,
    {
      id: { read: at => (typeof at === 'string' && /^[\w-]{1,80}$/.test(at) ? at : undefined), usual: newId },
      at: must(instant),
      name: must(text),
      formula: must(formula => readFormulaData(formula, tell)),
      day: { read: text },
      bread: must(text),
      zone: {
        read: zone => (typeof zone === 'string' && isZone(zone) ? zone : undefined),
        usual: () => 'UTC',
      },
      moments: each(
        { moment: must(text), planned: { read: instant }, at: { read: instant }, later: { read: instant } },
        'moment',
      ),
      weighed: each({ moment: must(text), line: must(text), wanted: grams, grams }, 'weight'),
      figures: each(
        { moment: must(text), what: must(ofNames(figureNames)), value: must(measured) },
        'figure',
      ),
      timers: each({ id: must(text), name: must(text), begun: must(instant), ends: must(instant) }, 'timer'),
      bowls: { read: list(bowl, 'weight', tell) },
      finished: { read: instant },
      note: { read: text, usual: () => '' },
      verdict: { read: text, usual: () => '' },
      tastes: { read: tastes },
    },
    tell,
  ) as Bake | undefined
}

const read = new WeakMap<Unread, Bake | 'damaged'>()

/** A bake as the workbook has it; undefined where nothing can be made of it. */
export function bakeOf(kept: Unread): Bake | undefined {
  let bake = read.get(kept)
  if (!bake) {
    bake = readBakeData(kept, () => {}) ?? 'damaged'
    read.set(kept, bake)
  }
  return bake === 'damaged' ? undefined : bake
}

/** The bakes of a workbook that can be read, the earliest first. */
export const bakesIn = ({ bakes = [] }: { readonly bakes?: readonly Unread[] }): Bake[] =>
  bakes.flatMap(kept => bakeOf(kept) ?? []).sort((a, b) => a.at.localeCompare(b.at))
