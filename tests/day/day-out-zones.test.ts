import assert from 'node:assert/strict'
import { test } from 'node:test'
import { breadNames } from '../../src/day/out/bread-names.js'
import { writeCalendar } from '../../src/day/out/calendar.js'
import { writeDayText } from '../../src/day/out/day-text.js'
import { openDay } from '../../src/day/plan/open-day.js'
import { bread, saturday } from './notation.js'
import { readCalendar } from './rfc5545.js'

const loaf = bread(
  'Mill wheat',
  `Final dough:
     Flour 1000 g
     hands Mix: 10 min
     wait Bulk: =3 h
     hands Shape: 20 min
     wait Retard: =10 h
     bake Bake: 45 min`,
)

type Row = readonly [what: string, begins: string, ends: string, clock: string]

// Instants and clock times by Python's zoneinfo: back from the local time at which the bread is ready, in UTC.
const days: readonly (readonly [zone: string, date: string, ready: string, rows: readonly Row[]])[] = [
  [
    'Europe/Paris',
    '2026-03-29',
    '9:00',
    [
      ['Mix', '20260328T164500Z', '20260328T165500Z', 'Sat 28 Mar 17:45'],
      ['Shape', '20260328T195500Z', '20260328T201500Z', 'Sat 28 Mar 20:55'],
      ['Heat up Oven', '20260329T053000Z', '20260329T061500Z', 'Sun 29 Mar 7:30'],
      ['Bake', '20260329T061500Z', '20260329T070000Z', 'Sun 29 Mar 8:15'],
    ],
  ],
  [
    'Europe/Paris',
    '2026-10-25',
    '9:00',
    [
      ['Mix', '20261024T174500Z', '20261024T175500Z', 'Sat 24 Oct 19:45'],
      ['Shape', '20261024T205500Z', '20261024T211500Z', 'Sat 24 Oct 22:55'],
      ['Heat up Oven', '20261025T063000Z', '20261025T071500Z', 'Sun 25 Oct 7:30'],
      ['Bake', '20261025T071500Z', '20261025T080000Z', 'Sun 25 Oct 8:15'],
    ],
  ],
  [
    'America/New_York',
    '2026-03-08',
    '9:00',
    [
      ['Mix', '20260307T224500Z', '20260307T225500Z', 'Sat 7 Mar 17:45'],
      ['Shape', '20260308T015500Z', '20260308T021500Z', 'Sat 7 Mar 20:55'],
      ['Heat up Oven', '20260308T113000Z', '20260308T121500Z', 'Sun 8 Mar 7:30'],
      ['Bake', '20260308T121500Z', '20260308T130000Z', 'Sun 8 Mar 8:15'],
    ],
  ],
  [
    'America/New_York',
    '2026-11-01',
    '9:00',
    [
      ['Mix', '20261031T234500Z', '20261031T235500Z', 'Sat 31 Oct 19:45'],
      ['Shape', '20261101T025500Z', '20261101T031500Z', 'Sat 31 Oct 22:55'],
      ['Heat up Oven', '20261101T123000Z', '20261101T131500Z', 'Sun 1 Nov 7:30'],
      ['Bake', '20261101T131500Z', '20261101T140000Z', 'Sun 1 Nov 8:15'],
    ],
  ],
  [
    'Europe/Paris',
    '2027-01-01',
    '9:00',
    [
      ['Mix', '20261231T174500Z', '20261231T175500Z', 'Thu 31 Dec 18:45'],
      ['Shape', '20261231T205500Z', '20261231T211500Z', 'Thu 31 Dec 21:55'],
      ['Heat up Oven', '20270101T063000Z', '20270101T071500Z', 'Fri 1 Jan 7:30'],
      ['Bake', '20270101T071500Z', '20270101T080000Z', 'Fri 1 Jan 8:15'],
    ],
  ],
  [
    'America/New_York',
    '2027-01-01',
    '7:30',
    [
      ['Mix', '20261231T221500Z', '20261231T222500Z', 'Thu 31 Dec 17:15'],
      ['Shape', '20270101T012500Z', '20270101T014500Z', 'Thu 31 Dec 20:25'],
      ['Heat up Oven', '20270101T110000Z', '20270101T114500Z', 'Fri 1 Jan 6:00'],
      ['Bake', '20270101T114500Z', '20270101T123000Z', 'Fri 1 Jan 6:45'],
    ],
  ],
  [
    'Europe/Paris',
    '2026-10-25',
    '3:15',
    [
      ['Mix', '20261024T120000Z', '20261024T121000Z', 'Sat 24 Oct 14:00'],
      ['Shape', '20261024T151000Z', '20261024T153000Z', 'Sat 24 Oct 17:10'],
      ['Heat up Oven', '20261025T004500Z', '20261025T013000Z', 'Sun 25 Oct 2:45'],
      ['Bake', '20261025T013000Z', '20261025T021500Z', 'Sun 25 Oct 2:30'],
    ],
  ],
  [
    'Europe/Paris',
    '2026-10-25',
    '2:30',
    [
      ['Mix', '20261024T101500Z', '20261024T102500Z', 'Sat 24 Oct 12:15'],
      ['Shape', '20261024T132500Z', '20261024T134500Z', 'Sat 24 Oct 15:25'],
      ['Heat up Oven', '20261024T230000Z', '20261024T234500Z', 'Sun 25 Oct 1:00'],
      ['Bake', '20261024T234500Z', '20261025T003000Z', 'Sun 25 Oct 1:45'],
    ],
  ],
  [
    'America/New_York',
    '2026-03-08',
    '3:40',
    [
      ['Mix', '20260307T172500Z', '20260307T173500Z', 'Sat 7 Mar 12:25'],
      ['Shape', '20260307T203500Z', '20260307T205500Z', 'Sat 7 Mar 15:35'],
      ['Heat up Oven', '20260308T061000Z', '20260308T065500Z', 'Sun 8 Mar 1:10'],
      ['Bake', '20260308T065500Z', '20260308T074000Z', 'Sun 8 Mar 1:55'],
    ],
  ],
]

for (const [zone, date, ready, rows] of days) {
  const day = saturday([[loaf, 6]], { zone, date, ready })
  const { plan } = openDay(day, [loaf])
  const nameOf = breadNames(day, [loaf])

  test(`ready at ${ready} on ${date} in ${zone}: the calendar has the instants`, () => {
    const { inside } = readCalendar(writeCalendar(plan!, nameOf, { now: new Date(0) }))
    assert.deepEqual(
      inside.map(({ properties }) => ['SUMMARY', 'DTSTART', 'DTEND'].map(name => properties.get(name))),
      rows.map(([what, begins, ends]) => [
        what.startsWith('Heat') ? what : `Mill wheat: ${what}`,
        begins,
        ends,
      ]),
    )
  })

  test(`ready at ${ready} on ${date} in ${zone}: the list has the times that clocks show, beneath their dates`, () => {
    const lines = writeDayText(plan!, nameOf, 'en-GB').split('\n')
    let heading = ''
    const shown = lines.flatMap(line => {
      const [, clock, what] = /^ ?(\d+:\d\d) {2}(?:Mill wheat: )?(.*?),/.exec(line) ?? []
      if (clock === undefined) heading = line || heading
      return clock === undefined ? [] : [`${what} ${heading} ${clock}`]
    })
    const full = { Thu: 'Thursday', Fri: 'Friday', Sat: 'Saturday', Sun: 'Sunday' } as const
    const months = { Jan: 'January', Mar: 'March', Oct: 'October', Nov: 'November', Dec: 'December' } as const
    for (const [what, , , clock] of rows) {
      const [weekday, number, month, time] = clock.split(' ') as [
        keyof typeof full,
        string,
        keyof typeof months,
        string,
      ]
      const expected = `${what} ${full[weekday]} ${number} ${months[month]} ${time}`
      assert.ok(shown.includes(expected), `${expected} is among ${shown.join('; ')}`)
    }
  })
}
