import type { AloneGroup, TimeHold, TimeProblem, TimeSpan } from '../../src/times/index'

/**
 * A problem in a few lines of text:
 *
 *   mix 10 mixed               a span of exactly 10
 *   mixed 30-60 salt           from 30 to 60, usual the middle; `30-60:40` with another usual, `[30-60]` with none,
 *                              `[30-]` without an end; `30-60:40/5` and `30-:40/5` with a leeway of their own
 *   salt at 100                a hold; `salt from 90 until 110`, `salt until 110`
 *   oven between 5 change 10 closed 90-120: mix..mixed hot, salt..bake
 */
export function timesOf(text: string): TimeProblem {
  const moments: string[] = []
  const spans: TimeSpan[] = []
  const holds: TimeHold[] = []
  const alone: AloneGroup[] = []
  const moment = (name: string) => {
    if (!moments.includes(name)) moments.push(name)
    return name
  }
  for (const line of text.split('\n').map(part => part.trim())) {
    if (line === '') continue
    const words = line.split(/\s+/)
    if (line.includes(':') && line.includes('..')) alone.push(groupOf(line))
    else if (['at', 'from', 'until'].includes(words[1]!)) {
      const hold: Record<string, string | number> = { moment: moment(words[0]!) }
      for (let k = 1; k < words.length; k += 2) hold[words[k]!] = Number(words[k + 1])
      holds.push(hold as unknown as TimeHold)
    } else {
      const [from, length, to] = words as [string, string, string]
      spans.push({ from: moment(from), to: moment(to), ...lengthOf(length) })
    }
  }
  return { moments, spans, holds, alone }
}

function lengthOf(text: string): Pick<TimeSpan, 'least' | 'most' | 'usual' | 'leeway'> {
  const found = /^\[?(-?[\d.]+)(?:-(-?[\d.]+)?)?(?::([\d.]+))?(?:\/([\d.]+))?(\])?$/.exec(text)!
  const least = Number(found[1])
  if (!text.slice(1).includes('-')) return { least, most: least }
  const most = found[2] === undefined ? Infinity : Number(found[2])
  if (found[5]) return { least, most }
  const usual = found[3] === undefined ? (least + most) / 2 : Number(found[3])
  return { least, most, usual, ...(found[4] !== undefined && { leeway: Number(found[4]) }) }
}

function groupOf(line: string): AloneGroup {
  const [head, tail] = line.split(': ') as [string, string]
  const [name, ...words] = head.split(' ') as [string, ...string[]]
  const closed: [number, number][] = []
  const minutes: { between?: number; change?: number } = {}
  for (let k = 0; k < words.length; k += 2) {
    const value = words[k + 1]!
    if (words[k] === 'closed') closed.push(value.split('-').map(Number) as [number, number])
    else minutes[words[k] as 'between' | 'change'] = Number(value)
  }
  const uses = tail.split(', ').map(text => {
    const [ends, setting] = text.split(' ')
    const [from, to] = ends!.split('..') as [string, string]
    return setting === undefined ? { from, to } : { from, to, setting }
  })
  return { name, ...minutes, closed, uses }
}
