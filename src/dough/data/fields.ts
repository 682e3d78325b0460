import type { LeftOut, Listed } from './left-out.js'

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
  let changed: Record<string, unknown> | undefined
  for (const [name, { read, must, usual }] of Object.entries(known)) {
    const at = Object.hasOwn(value, name) ? value[name] : undefined
    let now = at === undefined ? undefined : read(at)
    if (now === undefined) {
      if (must) return undefined
      if (at !== undefined) tell({ code: 'fieldNotUnderstood', field: name })
      now = usual?.()
    }
    if (now === at) continue
    changed ??= { ...value }
    if (now === undefined) delete changed[name]
    else changed[name] = now
  }
  return changed ?? value
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
