import type { Worded } from '../../engine/index.js'
import { type DataDiagnostic, dataProblem } from './words.js'

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
