import { nameKey } from '../dough/formula.js'

/** Names that tell each apart, in a file and for those who speak of one: `Water`, `Water (2)`. */
export function distinct(names: readonly string[]): string[] {
  const taken = new Set(names.map(nameKey))
  const used = new Set<string>()
  return names.map(name => {
    let free = name
    for (let n = 2; used.has(nameKey(free)); n++)
      if (!taken.has(nameKey(`${name} (${n})`)) || used.has(nameKey(`${name} (${n - 1})`)))
        free = `${name} (${n})`
    used.add(nameKey(free))
    return free
  })
}
