/*
 * A strict reader of calendar files, written from the grammar of RFC 5545 and from nothing else; what it does not know of (time
 * zones, recurrence, parameters with values) it refuses. The numbers are those of its sections.
 */

export interface Component {
  readonly name: string
  readonly properties: ReadonlyMap<string, string> // as written, escapes and all
  readonly inside: readonly Component[]
}

type Check = (value: string) => boolean

const octets = (text: string): number => new TextEncoder().encode(text).length

/** 3.3.11: TSAFE-CHAR, ":", DQUOTE and the five escapes; no other control but a tab. */
const isText: Check = value =>
  // biome-ignore lint/suspicious/noControlCharactersInRegex: the grammar's own
  /^(?:[\t\x20-\x2B\x2D-\x3A\x3C-\x5B\x5D-\x7E]|[^\x00-\x7F]|\\[\\;,Nn])*$/u.test(value)

/** 3.3.5, form 2: a date with UTC time. Seconds up to 60 by the grammar; a day that the calendar has. */
const isUtc: Check = value => {
  const [, year, month, day, hour, minute, second] =
    /^(\d{4})(\d\d)(\d\d)T(\d\d)(\d\d)(\d\d)Z$/.exec(value)?.map(Number) ?? []
  if (year === undefined) return false
  const leap = (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0
  const days = [31, leap ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31][month! - 1] ?? 0
  return day! >= 1 && day! <= days && hour! <= 23 && minute! <= 59 && second! <= 60
}

/** 3.3.8 */
const isInteger: Check = value => /^[+-]?\d+$/.test(value) && Math.abs(Number(value)) <= 2147483647

/** 3.3.6: dur-value = (["+"] / "-") "P" (dur-date / dur-time / dur-week) */
const isDuration: Check = value => {
  const time = String.raw`T(?:\d+H(?:\d+M(?:\d+S)?)?|\d+M(?:\d+S)?|\d+S)`
  return new RegExp(String.raw`^[+-]?P(?:\d+D(?:${time})?|${time}|\d+W)$`).test(value)
}

interface Rule {
  readonly is: Check
  readonly need: boolean // exactly once; otherwise at most once
}
const must = (is: Check): Rule => ({ is, need: true })
const may = (is: Check): Rule => ({ is, need: false })

/** 3.4, 3.6.1, 3.6.6: what each component has, and what may be in it. */
const components: Readonly<
  Record<string, { readonly properties: Readonly<Record<string, Rule>>; readonly inside: readonly string[] }>
> = {
  VCALENDAR: {
    properties: {
      VERSION: must(value => value === '2.0'),
      PRODID: must(isText),
      CALSCALE: may(value => value === 'GREGORIAN'),
      METHOD: may(value => /^[A-Za-z0-9-]+$/.test(value)),
    },
    inside: ['VEVENT'],
  },
  VEVENT: {
    properties: {
      UID: must(isText),
      DTSTAMP: must(isUtc),
      DTSTART: must(isUtc),
      DTEND: may(isUtc),
      SEQUENCE: may(value => isInteger(value) && Number(value) >= 0),
      SUMMARY: may(isText),
      DESCRIPTION: may(isText),
      LOCATION: may(isText),
    },
    inside: ['VALARM'],
  },
  VALARM: {
    // audio and e-mail alarms are others
    properties: {
      ACTION: must(value => value === 'DISPLAY'),
      DESCRIPTION: must(isText),
      TRIGGER: must(isDuration),
    },
    inside: [],
  },
}

const isExtension = (name: string): boolean => /^X-(?:[A-Za-z0-9]{3,}-)?[A-Za-z0-9-]+$/.test(name)

/** 3.1: lines end with CRLF and nothing else does, none is longer than 75 octets; what begins with white space goes on. */
function unfold(stream: string): string[] {
  if (!stream.endsWith('\r\n')) throw new Error('The last line does not end with CRLF.')
  const lines = stream.slice(0, -2).split('\r\n')
  const whole: string[] = []
  for (const line of lines) {
    if (/[\r\n]/.test(line)) throw new Error(`A bare line end in ${JSON.stringify(line)}.`)
    if (octets(line) > 75) throw new Error(`${octets(line)} octets: ${line}`)
    if (/[\uD800-\uDFFF]/u.test(line)) throw new Error(`A character is cut in two: ${JSON.stringify(line)}`)
    if (/^[ \t]/.test(line)) {
      if (whole.length === 0) throw new Error('The first line goes on.')
      whole[whole.length - 1] += line.slice(1)
    } else if (line === '') throw new Error('An empty line.')
    else whole.push(line)
  }
  return whole
}

/** Reads a stream that holds one calendar. Throws an Error for what the grammar does not have. */
export function readCalendar(stream: string): Component {
  interface Open {
    readonly name: string
    readonly properties: Map<string, string>
    readonly inside: Component[]
  }
  const open: Open[] = []
  let calendar: Component | undefined
  for (const line of unfold(stream)) {
    const [, name, value] = /^([A-Za-z0-9-]+):(.*)$/s.exec(line) ?? []
    if (name === undefined || value === undefined) throw new Error(`No content line: ${line}`)
    const at = open.at(-1)
    if (name === 'BEGIN') {
      const allowed = at ? components[at.name]!.inside : ['VCALENDAR']
      if (calendar || !allowed.includes(value)) throw new Error(`${value} is not at its place.`)
      open.push({ name: value, properties: new Map(), inside: [] })
    } else if (!at) throw new Error(`Outside of all: ${line}`)
    else if (name === 'END') {
      if (value !== at.name) throw new Error(`${at.name} ends as ${value}.`)
      const { properties } = components[value]!
      for (const [needed, { need }] of Object.entries(properties))
        if (need && !at.properties.has(needed)) throw new Error(`${value} has no ${needed}.`)
      if (value === 'VCALENDAR' && at.inside.length === 0)
        throw new Error('A calendar has at least one component.')
      open.pop()
      const closed: Component = at
      const outer = open.at(-1)
      if (outer) outer.inside.push(closed)
      else calendar = closed
    } else {
      if (at.properties.has(name)) throw new Error(`${name} stands twice in ${at.name}.`)
      // 3.6: properties come before the components within
      if (at.inside.length) throw new Error(`${name} stands after a component.`)
      const rule = components[at.name]!.properties[name]
      if (!rule && !isExtension(name)) throw new Error(`${at.name} has no ${name}.`)
      if (!(rule?.is ?? isText)(value)) throw new Error(`${name} cannot be ${value}.`)
      at.properties.set(name, value)
    }
  }
  if (!calendar || open.length) throw new Error('The calendar does not end.')
  for (const { properties } of calendar.inside) {
    // 3.8.2.2: later than DTSTART
    const end = properties.get('DTEND')
    if (end !== undefined && end <= properties.get('DTSTART')!)
      throw new Error('An event ends before it begins.')
  }
  const names = calendar.inside.map(e => e.properties.get('UID'))
  if (new Set(names).size < names.length) throw new Error('A UID stands twice.')
  return calendar
}

/** 3.3.11: the text that was meant. */
export const unescaped = (text: string): string =>
  text.replace(/\\([\\;,Nn])/g, (_, sign: string) => (sign === 'n' || sign === 'N' ? '\n' : sign))
