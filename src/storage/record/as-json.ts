/** Stored parts by their keys as JSON, whatever they are: what JSON does not know is written as a text, a circle where it closes. */
export function asJson(parts: ReadonlyMap<string, unknown>): string {
  const above: unknown[] = []
  function known(this: unknown, _name: string, value: unknown): unknown {
    if (typeof value === 'bigint' || value === undefined || Number.isNaN(value)) return String(value)
    if (typeof value !== 'object' || value === null) return value
    while (above.length > 0 && above.at(-1) !== this) above.pop()
    if (above.includes(value) || above.length > 200) return '…'
    const inner = value instanceof Map ? Object.fromEntries(value) : value instanceof Set ? [...value] : value
    above.push(inner)
    return inner
  }
  return `${JSON.stringify(Object.fromEntries(parts), known, 1)}\n`
}
