/**
 * Visits what `start` names, directly or through others, and then `start`: each once, after what it names but where that
 * names it in turn. Without recursion, as each of thousands may name the next. `visit` makes done what it is given.
 */
export function namedFirst<T>(
  start: T,
  isDone: (one: T) => boolean,
  namedBy: (one: T) => readonly T[],
  visit: (one: T) => void,
): void {
  const open = new Set<T>()
  const due = [start]
  while (due.length) {
    const one = due.at(-1)!
    const isNew = !open.has(one) && !isDone(one)
    open.add(one)
    const ahead = isNew ? namedBy(one).filter(other => !open.has(other) && !isDone(other)) : []
    for (let i = ahead.length - 1; i >= 0; i--) due.push(ahead[i]!)
    if (ahead.length) continue
    due.pop()
    if (!isDone(one)) visit(one)
  }
}
