import assert from 'node:assert/strict'
import { test } from 'node:test'
import { eventsOfHands, writeCalendar } from '../../src/day/out/calendar.js'
import { writeDayText } from '../../src/day/out/day-text.js'
import { dayProblem } from '../../src/day/plan/day-problem.js'
import { openDay } from '../../src/day/plan/open-day.js'
import type { Day } from '../../src/dough/document/day.js'
import type { Formula } from '../../src/dough/document/formula.js'
import { bread, saturday } from './notation.js'

const quick = (name = 'Mill wheat') =>
  bread(
    name,
    `Final dough:
       Flour 1000 g
       hands Mix: 10 min
       wait Bulk: =3 h
       hands Shape: 20 min
       wait Proof: =1 h
       bake Bake: 45 min`,
  )

const planned = (day: Day, formulas: readonly Formula[]) => {
  const sheet = openDay(day, formulas)
  return { written: sheet, plan: sheet.plan! }
}

/** A reader of its own for content lines: unfolded, names and values, nested components. */
interface Component {
  name: string
  properties: Map<string, string>
  inside: Component[]
}
function readCalendar(text: string): Component {
  assert.ok(text.endsWith('\r\n') && !/[^\r]\n/.test(text), 'lines end with CRLF')
  for (const line of text.split('\r\n')) assert.ok(new TextEncoder().encode(line).length <= 75, line)
  const open: Component[] = []
  let whole: Component | undefined
  for (const line of text
    .replace(/\r\n[ \t]/g, '')
    .split('\r\n')
    .filter(Boolean)) {
    const [, name, value] = /^([A-Z-]+)(?:;[^:]*)?:(.*)$/s.exec(line)!
    if (name === 'BEGIN') {
      const component = { name: value!, properties: new Map<string, string>(), inside: [] }
      open.at(-1)?.inside.push(component)
      open.push(component)
      whole ??= component
    } else if (name === 'END') assert.equal(open.pop()!.name, value)
    else {
      assert.ok(!open.at(-1)!.properties.has(name!), `${name} once`)
      open.at(-1)!.properties.set(name!, value!)
    }
  }
  assert.equal(open.length, 0)
  return whole!
}
const unescaped = (text: string) => text.replace(/\\([\\;,nN])/g, (_, c: string) => (/n/i.test(c) ? '\n' : c))

test('a calendar has an event for each step of hands and each load, in UTC, with what RFC 5545 asks of one', () => {
  const formula = quick()
  const { written, plan } = planned(saturday([[formula, 6]], { zone: 'Europe/Paris' }), [formula])
  const calendar = readCalendar(
    writeCalendar(plan, written, { now: new Date('2026-12-01T10:20:30Z'), alarm: 5 }),
  )
  assert.equal(calendar.name, 'VCALENDAR')
  assert.equal(calendar.properties.get('VERSION'), '2.0')
  assert.ok(calendar.properties.has('PRODID'))
  // 9:00 in Paris is 8:00 UTC: baking from 7:15, shaping from 5:55, mixing from 2:45
  assert.deepEqual(
    calendar.inside.map(e => [
      e.properties.get('SUMMARY'),
      e.properties.get('DTSTART'),
      e.properties.get('DTEND'),
    ]),
    [
      ['Mill wheat: Mix', '20261205T024500Z', '20261205T025500Z'],
      ['Mill wheat: Shape', '20261205T055500Z', '20261205T061500Z'],
      ['Mill wheat: Bake', '20261205T071500Z', '20261205T080000Z'],
    ],
  )
  for (const event of calendar.inside) {
    assert.equal(event.name, 'VEVENT')
    assert.match(event.properties.get('DTSTAMP')!, /^\d{8}T\d{6}Z$/)
    assert.equal(event.inside[0]!.name, 'VALARM')
    assert.deepEqual(
      ['ACTION', 'TRIGGER'].map(p => event.inside[0]!.properties.get(p)),
      ['DISPLAY', '-PT5M'],
    )
  }
  assert.equal(new Set(calendar.inside.map(e => e.properties.get('UID'))).size, 3)
})

test('names that a calendar could trip over arrive as they are', () => {
  const name =
    'Épeautre; “pain, très long”: \\ 한국어 빵 🥖 and so on, and so on, and so on, until the line has to be folded'
  const formula = quick(name)
  const { written, plan } = planned(saturday([[formula, 6]], { name: 'Line\nbreak' }), [formula])
  const calendar = readCalendar(writeCalendar(plan, written, { now: new Date(0) }))
  assert.equal(unescaped(calendar.inside[0]!.properties.get('SUMMARY')!), `${name}: Mix`)
  assert.equal(unescaped(calendar.properties.get('X-WR-CALNAME')!), 'Line\nbreak')
  assert.equal(calendar.inside[0]!.inside.length, 0)
})

test('the same day has the same identifiers when it is sent again', () => {
  const formula = quick()
  const { written, plan } = planned(saturday([[formula, 6]]), [formula])
  const uids = (now: Date) =>
    readCalendar(writeCalendar(plan, written, { now })).inside.map(e => e.properties.get('UID'))
  assert.deepEqual(uids(new Date(0)), uids(new Date(1e12)))
  assert.equal(eventsOfHands(plan).length, 3)
})

test('as text a day is a list by the clock, a heading for each date', () => {
  const formula = quick()
  const day = saturday([[formula, 6]], { ready: '4:00' })
  const { written, plan } = planned(day, [formula])
  assert.equal(
    writeDayText(plan, written),
    `Saturday oven

Friday 4 December
22:45  Mill wheat: Mix, 10 min
22:55  Mill wheat: Bulk, 3 h

Saturday 5 December
 1:55  Mill wheat: Shape, 20 min
 2:15  Mill wheat: Proof, 1 h
 3:15  Mill wheat: Bake, 45 min
`,
  )
  assert.equal(dayProblem(day, new Map(), { leeway: 0.15, strict: true }).network.events.length, 0)
})
