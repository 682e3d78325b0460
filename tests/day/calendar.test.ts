import assert from 'node:assert/strict'
import { test } from 'node:test'
import { dayProblem } from '../../src/day/course/day-problem.js'
import { breadNames } from '../../src/day/out/bread-names.js'
import { eventsOfHands, writeCalendar } from '../../src/day/out/calendar.js'
import { writeDayText } from '../../src/day/out/day-text.js'
import { openDay } from '../../src/day/plan/open-day.js'
import type { Day } from '../../src/dough/document/day.js'
import type { Formula } from '../../src/dough/document/formula.js'
import { randomOf } from '../random.js'
import { bread, saturday } from './notation.js'
import { readCalendar, unescaped } from './rfc5545.js'

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
  const { plan } = openDay(day, formulas)
  return { plan: plan!, nameOf: breadNames(day, formulas) }
}

test('a calendar has an event for each step of hands and each load, in UTC, with what RFC 5545 asks of one', () => {
  const formula = quick()
  const { nameOf, plan } = planned(saturday([[formula, 6]], { zone: 'Europe/Paris' }), [formula])
  const calendar = readCalendar(
    writeCalendar(plan, nameOf, { now: new Date('2026-12-01T10:20:30Z'), alarm: 5 }),
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
      ['Heat up Oven', '20261205T063000Z', '20261205T071500Z'], // for 45 min
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
})

test('names that a calendar could trip over arrive as they are', () => {
  const name =
    'Épeautre; “pain, très long”: \\ 한국어 빵 🥖 and so on, and so on, and so on, until the line has to be folded'
  const formula = quick(name)
  const { nameOf, plan } = planned(saturday([[formula, 6]], { name: 'Line\nbreak' }), [formula])
  const calendar = readCalendar(writeCalendar(plan, nameOf, { now: new Date(0) }))
  assert.equal(unescaped(calendar.inside[0]!.properties.get('SUMMARY')!), `${name}: Mix`)
  assert.equal(unescaped(calendar.properties.get('X-WR-CALNAME')!), 'Line\nbreak')
  assert.equal(calendar.inside[0]!.inside.length, 0)
})

test('the same day has the same identifiers when it is sent again', () => {
  const formula = quick()
  const { nameOf, plan } = planned(saturday([[formula, 6]]), [formula])
  const uids = (now: Date) =>
    readCalendar(writeCalendar(plan, nameOf, { now })).inside.map(e => e.properties.get('UID'))
  assert.deepEqual(uids(new Date(0)), uids(new Date(1e12)))
  assert.equal(eventsOfHands(plan).length, 3)
})

test('as text a day is a list by the clock, a heading for each date', () => {
  const formula = quick()
  const day = saturday([[formula, 6]], { ready: '4:00' })
  const { nameOf, plan } = planned(day, [formula])
  assert.equal(
    writeDayText(plan, nameOf),
    `Saturday oven

Friday 4 December
22:45  Mill wheat: Mix, 10 min
22:55  Mill wheat: Bulk, 3 h

Saturday 5 December
 1:55  Mill wheat: Shape, 20 min
 2:15  Mill wheat: Proof, 1 h
 2:30  Heat up Oven, 45 min
 3:15  Mill wheat: Bake, 45 min
`,
  )
  assert.equal(dayProblem(day, new Map(), { leeway: 0.15, strict: true }).network.events.length, 0)
})

test('seed 5545: whatever names and notes hold, the file is one by the grammar, and the names arrive', () => {
  const { next, pick } = randomOf(5545)
  const signs = [
    'a',
    'é',
    '🥖',
    '한',
    ';',
    ',',
    ':',
    '\\',
    '"',
    '\n',
    '\r\n',
    '\t',
    ' ',
    '\u0007',
    '\u007f',
    'BEGIN:VEVENT',
    'e\u0301',
  ]
  for (let round = 0; round < 60; round++) {
    const words = () => Array.from({ length: Math.floor(next() * 90) }, () => pick(signs)).join('')
    const formula = quick(`x${words()}`)
    const stages = formula.stages.map(s => ({ ...s, method: s.method!.map(m => ({ ...m, note: words() })) }))
    const day = saturday([[formula, 6]], { name: words() })
    const { nameOf, plan } = planned(day, [{ ...formula, stages }])
    const { inside } = readCalendar(writeCalendar(plan, nameOf, { now: new Date(0), alarm: 10 }))
    const kept = formula.name.replace(/\r\n/g, '\n').replaceAll('\u0007', '').replaceAll('\u007f', '')
    assert.equal(unescaped(inside[0]!.properties.get('SUMMARY')!), `${kept}: Mix`)
  }
})

test('sent again later, an event has a higher number, so that calendars take it for the newer', () => {
  const formula = quick()
  const { nameOf, plan } = planned(saturday([[formula, 6]]), [formula])
  const number = (now: string) =>
    Number(
      readCalendar(writeCalendar(plan, nameOf, { now: new Date(now) })).inside[0]!.properties.get('SEQUENCE'),
    )
  assert.equal(number('2026-12-01T10:21:00Z') - number('2026-12-01T10:20:59Z'), 1)
})

const calendarOf = (...event: readonly string[]) => [
  'BEGIN:VCALENDAR',
  'VERSION:2.0',
  'PRODID:x',
  'BEGIN:VEVENT',
  ...event,
  'END:VEVENT',
  'END:VCALENDAR',
  '',
]
const least = ['UID:1', 'DTSTAMP:20261201T000000Z', 'DTSTART:20261205T053000Z']

test('the reader takes the least that a calendar can be', () => {
  assert.equal(readCalendar(calendarOf(...least).join('\r\n')).inside.length, 1)
})

for (const [what, stream] of [
  ['line ends without CR', calendarOf(...least).join('\n')],
  ['a line of 76 octets', calendarOf(...least, `SUMMARY:${'é'.repeat(34)}`).join('\r\n')],
  ['a comma that is not escaped', calendarOf(...least, 'SUMMARY:a, b').join('\r\n')],
  ['an escape that is none', calendarOf(...least, 'SUMMARY:a\\:b').join('\r\n')],
  ['a local time', calendarOf(...least.slice(0, 2), 'DTSTART:20261205T053000').join('\r\n')],
  ['a 31st of November', calendarOf(...least.slice(0, 2), 'DTSTART:20261131T053000Z').join('\r\n')],
  ['an event without UID', calendarOf(...least.slice(1)).join('\r\n')],
  ['an event that ends as it begins', calendarOf(...least, 'DTEND:20261205T053000Z').join('\r\n')],
  ['a property twice', calendarOf(...least, 'SUMMARY:a', 'SUMMARY:b').join('\r\n')],
  [
    'an alarm without what it says',
    calendarOf(...least, 'BEGIN:VALARM', 'ACTION:DISPLAY', 'TRIGGER:-PT5M', 'END:VALARM').join('\r\n'),
  ],
  [
    'an alarm at no duration',
    calendarOf(
      ...least,
      'BEGIN:VALARM',
      'ACTION:DISPLAY',
      'DESCRIPTION:a',
      'TRIGGER:-P5M',
      'END:VALARM',
    ).join('\r\n'),
  ],
  ['no event at all', 'BEGIN:VCALENDAR\r\nVERSION:2.0\r\nPRODID:x\r\nEND:VCALENDAR\r\n'],
] as const)
  test(`the reader refuses ${what}`, () => assert.throws(() => readCalendar(stream)))
