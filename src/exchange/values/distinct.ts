import { nameKey } from '../../dough/document/formula.js'

/** Names that tell each apart, in a file and for those who speak of one: `Water`, `Water (2)`. */
export function distinct(names: readonly string[]): string[] {
  const taken = new Set(names.map(nameKey))
  const used = new Set<string>()
  const next = new Map<string, number>() // by key of a name: every number below is used
  return names.map(name => {
    let free = name
    let n = next.get(nameKey(name)) ?? 2
    while (used.has(nameKey(`${name} (${n})`))) n++
    next.set(nameKey(name), n)
    for (; used.has(nameKey(free)); n++)
      if (!taken.has(nameKey(`${name} (${n})`)) || used.has(nameKey(`${name} (${n - 1})`)))
        free = `${name} (${n})`
    used.add(nameKey(free))
    return free
  })
}
