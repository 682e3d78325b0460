import type { Worded } from '../../engine/index.js'
import { type DataDiagnostic, dataProblem, type LeftOut, type Listed } from './words.js'

/** The fields of an object from a file, of which nothing is known yet. */
export type Fields = Readonly<Record<string, unknown>>

/** Told what was left out. */
export type Tell = (what: LeftOut) => void

/** How one field is read. */
export interface Field {
  readonly read: (value: unknown) => unknown // the value to use; undefined where it is not what it should be
  readonly must?: true // without it there is nothing to keep of the whole
  readonly usual?: () => unknown // what it is where it is missing or cannot be used
}

export const isFields = (value: unknown): value is Fields =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

/**
 * The object with its known fields read; unknown ones stay where they are and as they are, so that a later
 * version finds them again. The same object where nothing had to be changed; undefined where a field is
 * missing that has to be there.
 */
export function readFields(
  value: unknown,
  known: Readonly<Record<string, Field>>,
  tell: Tell,
): Fields | undefined {
  if (!isFields(value)) return undefined
  let changed = false
  const entries = Object.entries(value).flatMap(([name, at]): [string, unknown][] => {
    const field = Object.hasOwn(known, name) ? known[name] : undefined
    if (!field) return [[name, at]]
    const read = field.read(at)
    if (read !== at) changed = true
    if (read !== undefined) return [[name, read]]
    if (!field.must) tell({ code: 'fieldNotUnderstood', field: name })
    return []
  })
  const there = new Set(entries.map(([name]) => name))
  for (const [name, { must, usual }] of Object.entries(known)) {
    if (there.has(name)) continue
    if (must) return undefined
    if (usual === undefined) continue
    entries.push([name, usual()])
    changed = true
  }
  return changed ? Object.fromEntries(entries) : value
}

/** Reads a list; what cannot be read of it is left out and told. The same list where all could. */
export const list =
  <T>(readOne: (value: unknown) => T | undefined, listed: Listed, tell: Tell): Field['read'] =>
  value => {
    if (!Array.isArray(value)) return undefined
    const read = value.map(readOne)
    const lost = read.filter(item => item === undefined).length
    if (lost > 0) tell({ code: 'itemsUnreadable', listed, count: lost })
    return lost === 0 && read.every((item, at) => item === value[at])
      ? value
      : read.filter(item => item !== undefined)
  }

export const text: Field['read'] = value => (typeof value === 'string' ? value : undefined)

export const texts: Field['read'] = value =>
  Array.isArray(value) && value.every(item => typeof item === 'string') ? value : undefined

export const truth: Field['read'] = value => (typeof value === 'boolean' ? value : undefined)

/** A finite number from `least` on, or above it. */
export const number =
  (least: number, options: { readonly above?: true; readonly below?: number } = {}): Field['read'] =>
  value =>
    typeof value === 'number' &&
    (options.above ? value > least : value >= least) &&
    value < (options.below ?? Infinity)
      ? value
      : undefined

/** A value that has to be such, whatever its fields. */
export const that =
  (is: (value: Fields) => boolean): Field['read'] =>
  value =>
    isFields(value) && is(value) ? value : undefined

const deepest = 64
const forbidden = '__proto__' // as a field it changes what other code makes of the object

/**
 * Looks through a parsed JSON value without recursion and takes out fields that are named like the prototype of
 * an object. Says why it is not to be used; undefined when it is.
 */
export function whyHostile(value: unknown): Worded<DataDiagnostic> | undefined {
  let level: unknown[] = [value]
  for (let depth = 0; level.length > 0; depth++) {
    if (depth > deepest) return dataProblem({ code: 'fileTooDeep', most: deepest })
    const next: unknown[] = []
    for (const item of level) {
      if (typeof item !== 'object' || item === null) continue
      if (Object.hasOwn(item, forbidden)) Reflect.deleteProperty(item, forbidden)
      for (const inner of Array.isArray(item) ? item : Object.values(item))
        if (typeof inner === 'object' && inner !== null) next.push(inner)
    }
    level = next
  }
  return undefined
}
