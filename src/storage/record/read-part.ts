import { type Fields, isFields, type Tell } from '../../dough/data/fields.js'
import type { LeftOut } from '../../dough/data/left-out.js'
import { isPlain } from '../../dough/data/plain.js'
import { isCurrency, isLeeway, isScale } from '../../dough/document/checks.js'
import { optionsOf, type Unread } from '../../dough/document/workbook.js'

export const hasTexts = (value: unknown, ...names: readonly string[]): value is Fields =>
  isFields(value) && names.every(name => typeof value[name] === 'string')

/** Reads data of which nothing is known: what can be done without is left out and told. */
export type ReadData<T> = (value: unknown, tell: Tell) => T | undefined

/** What a stored part came to. */
export interface PartRead<T> {
  readonly item: T | undefined // undefined where nothing can be made of it
  readonly left: readonly LeftOut[] // what is not in it, since it could not be read
}

/** Reads a stored part, whatever it is. */
export function readPart<T>(part: unknown, read: ReadData<T>): PartRead<T> {
  const left: LeftOut[] = []
  const item = isPlain(part) ? read(part, what => left.push(what)) : undefined
  return { item, left }
}

/** What a workbook may have in a stored part, where it can be read; a scale that cannot is the usual one. */
export const optionsIn = ({
  scale,
  leeway,
  currency,
  later,
}: {
  readonly scale?: unknown
  readonly leeway?: unknown
  readonly currency?: unknown
  readonly later?: unknown
} = {}): ReturnType<typeof optionsOf> =>
  optionsOf({
    scale: isScale(scale) ? scale : undefined,
    leeway: typeof leeway === 'number' && isLeeway(leeway) ? leeway : undefined,
    currency: isCurrency(currency) ? currency : undefined,
    later: isFields(later) && isPlain(later) ? later : undefined,
  })

/** What was deleted or baked, as it is stored: what is in it is read when it is wanted. */
export const readUnread: ReadData<Unread> = value =>
  hasTexts(value, 'id', 'at') ? (value as unknown as Unread) : undefined

/** The name in a part that cannot be read, for the sentence that says so. */
export const nameIn = (part: unknown): { readonly name?: string } =>
  hasTexts(part, 'name') ? { name: String(part.name) } : {}
