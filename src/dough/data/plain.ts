const deepest = 64
const most = 2_000_000 // values

/** Whether a value is data as JSON knows it, no deeper and no larger than any workbook: not a date, a map, a circle. */
export function isPlain(value: unknown): boolean {
  let left = most
  const plain = (at: unknown, depth: number): boolean => {
    if (typeof at !== 'object' || at === null) return typeof at !== 'bigint' && typeof at !== 'symbol'
    if (depth > deepest || --left < 0) return false
    if (Array.isArray(at)) return at.every(inner => plain(inner, depth + 1))
    if (Object.getPrototypeOf(at) !== Object.prototype) return false
    for (const name in at) if (!plain((at as Record<string, unknown>)[name], depth + 1)) return false
    return true
  }
  return plain(value, 0)
}
