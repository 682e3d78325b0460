import type { AloneGroup, TimeHold, TimeProblem, TimeSpan } from './time-problem.js'

/**
 * The place of each moment among the problem's.
 * @throws RangeError that says in words what in the problem is wrong, and where
 */
export function checkedMoments(problem: TimeProblem): ReadonlyMap<string, number> {
  const places = new Map<string, number>()
  for (const [place, name] of problem.moments.entries()) {
    if (places.has(name)) fail(`the moment “${name}” is there twice`)
    places.set(name, place)
  }
  const known = (name: string, where: string) => {
    if (!places.has(name)) fail(`${where} names a moment “${name}”, which is not among the moments`)
  }
  for (const [place, span] of problem.spans.entries()) {
    const where = `span ${place} (“${span.from}” to “${span.to}”)`
    known(span.from, where)
    known(span.to, where)
    checkSpan(span, where)
  }
  for (const [place, hold] of problem.holds.entries()) {
    const where = `hold ${place} (“${hold.moment}”)`
    known(hold.moment, where)
    checkHold(hold, where)
  }
  const names = new Set<string>()
  for (const group of problem.alone ?? []) {
    const where = `group “${group.name}”`
    if (names.has(group.name)) fail(`${where} is there twice`)
    names.add(group.name)
    checkGroup(group, where)
    for (const [place, use] of group.uses.entries()) {
      known(use.from, `use ${place} of ${where}`)
      known(use.to, `use ${place} of ${where}`)
    }
  }
  return places
}

function checkSpan({ from, to, least, most, usual, leeway }: TimeSpan, where: string): void {
  if (from === to) fail(`${where} begins and ends at the same moment`)
  number(least, 'least', where)
  number(most, 'most', where)
  if (least > most) fail(`${where} is at least ${least} and at most ${most} long`)
  if (least === Infinity || most === -Infinity) fail(`${where} is infinitely long`)
  if (usual !== undefined && !Number.isFinite(usual)) fail(`the usual of ${where} is ${usual}`)
  if (leeway !== undefined && !(leeway > 0 && leeway < Infinity)) fail(`the leeway of ${where} is ${leeway}`)
}

function checkHold({ at, from, until }: TimeHold, where: string): void {
  if (at !== undefined) {
    if (!Number.isFinite(at)) fail(`the time of ${where} is ${at}`)
    if (from !== undefined || until !== undefined) fail(`${where} is at a time, and from or until another`)
    return
  }
  if (from === undefined && until === undefined) fail(`${where} says no time`)
  if (from !== undefined) number(from, 'from', where)
  if (until !== undefined) number(until, 'until', where)
  if (from === Infinity || until === -Infinity) fail(`${where} leaves no time at all`)
  if (from !== undefined && until !== undefined && from > until)
    fail(`${where} is from ${from} until ${until}, which is earlier`)
}

function checkGroup({ between = 0, change = 0, closed = [] }: AloneGroup, where: string): void {
  if (!(between >= 0 && between < Infinity)) fail(`between two uses of ${where} are ${between} minutes`)
  if (!(change >= 0 && change < Infinity)) fail(`a change in ${where} takes ${change} minutes`)
  for (const [place, [begins, ends]] of closed.entries()) {
    number(begins, 'beginning', `closed hours ${place} of ${where}`)
    number(ends, 'end', `closed hours ${place} of ${where}`)
    if (begins > ends)
      fail(`closed hours ${place} of ${where} begin at ${begins} and end at ${ends}, earlier`)
  }
}

function number(value: number, what: string, where: string): void {
  if (typeof value !== 'number' || Number.isNaN(value)) fail(`${what} of ${where} is ${value}, not a number`)
}

function fail(what: string): never {
  throw new RangeError(`The times cannot be worked out: ${what}.`)
}
