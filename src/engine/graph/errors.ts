import type { CellError } from '../expression/problem.js'

const SPELLED = 12 // names of a cycle spelled out before it is cut short

export function missing(name: string): CellError {
  return { kind: 'undefined', message: `Nothing here is called "${name}".`, origin: name }
}

export function pending(name: string): CellError {
  return { kind: 'undefined', message: `"${name}" is worked out when this edit is done.`, origin: name }
}

export function domain(name: string): CellError {
  return {
    kind: 'domain',
    message: 'This has no result: something in it is divided by zero, or is too large to work with.',
    origin: name,
  }
}

/** `path`: cell names, each taking from the next, the first repeated at the end. */
export function cycle(path: readonly string[]): CellError {
  const [origin] = path as [string]
  const last = path.length - 1
  const left = last > SPELLED ? SPELLED - 2 : last
  let message = `${origin} takes from ${path[1]}`
  for (let i = 2; i <= left; i++) message += `, which takes from ${path[i]}`
  if (left < last)
    message += `, and so on through ${last - 1 - left} more, the last of which takes from ${origin}`
  return { kind: 'cycle', message: `${message}.`, origin, path }
}

/** Whether two errors tell a reader the same. */
export function sameError(a: CellError, b: CellError): boolean {
  return (
    a === b ||
    (a.kind === b.kind &&
      a.origin === b.origin &&
      a.message === b.message &&
      a.path?.length === b.path?.length &&
      (a.path ?? []).every((name, i) => name === b.path?.[i]))
  )
}
