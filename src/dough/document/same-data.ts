/** Whether two plain values hold the same, whatever the order of their fields. */
export function sameData(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true
  if (typeof a !== 'object' || typeof b !== 'object' || !a || !b) return false
  if (Array.isArray(a) !== Array.isArray(b)) return false
  const [left, right] = [Object.entries(a), new Map(Object.entries(b))]
  return (
    left.length === right.size && left.every(([key, at]) => right.has(key) && sameData(at, right.get(key)))
  )
}
