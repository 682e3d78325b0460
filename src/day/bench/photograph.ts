/** A photograph of a bake, without its picture. */
export interface Photograph {
  readonly id: string
  readonly bake: string // id
  readonly taken: string // ISO 8601, UTC: when it was put in
  readonly described: string // for those who hear it; '' when nobody did
  readonly width: number // px
  readonly height: number
}

const isNumber = (value: unknown): value is number => typeof value === 'number' && value > 0
const isText = (value: unknown): value is string => typeof value === 'string'
const isId = (value: unknown): value is string => isText(value) && /^[\w-]{1,80}$/.test(value)

/** A photograph in data of which nothing is known; undefined where it cannot be read. */
export function photographIn(stored: unknown): Photograph | undefined {
  if (typeof stored !== 'object' || stored === null) return undefined
  const { id, bake, taken, described, width, height } = stored as Record<string, unknown>
  if (!isId(id) || !isId(bake) || !isText(taken) || !isNumber(width) || !isNumber(height)) return undefined
  return { id, bake, taken, described: isText(described) ? described : '', width, height }
}
