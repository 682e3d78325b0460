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

// Instants in UTC and what clocks show, by Python's zoneinfo: back from the local time at which the bread is ready. Mixing, shaping,
// heating up, baking.
const days = [
  'Europe/Paris, 2026-03-29, 9:00, 20260328T1645 Sat 28 Mar 17:45, 20260328T1955 Sat 28 Mar 20:55, 20260329T0530 Sun 29 Mar 7:30, 20260329T0615 Sun 29 Mar 8:15',
  'Europe/Paris, 2026-10-25, 9:00, 20261024T1745 Sat 24 Oct 19:45, 20261024T2055 Sat 24 Oct 22:55, 20261025T0630 Sun 25 Oct 7:30, 20261025T0715 Sun 25 Oct 8:15',
  'America/New_York, 2026-03-08, 9:00, 20260307T2245 Sat 7 Mar 17:45, 20260308T0155 Sat 7 Mar 20:55, 20260308T1130 Sun 8 Mar 7:30, 20260308T1215 Sun 8 Mar 8:15',
  'America/New_York, 2026-11-01, 9:00, 20261031T2345 Sat 31 Oct 19:45, 20261101T0255 Sat 31 Oct 22:55, 20261101T1230 Sun 1 Nov 7:30, 20261101T1315 Sun 1 Nov 8:15',
  'Europe/Paris, 2027-01-01, 9:00, 20261231T1745 Thu 31 Dec 18:45, 20261231T2055 Thu 31 Dec 21:55, 20270101T0630 Fri 1 Jan 7:30, 20270101T0715 Fri 1 Jan 8:15',
  'America/New_York, 2027-01-01, 7:30, 20261231T2215 Thu 31 Dec 17:15, 20270101T0125 Thu 31 Dec 20:25, 20270101T1100 Fri 1 Jan 6:00, 20270101T1145 Fri 1 Jan 6:45',
  'Europe/Paris, 2026-10-25, 3:15, 20261024T1200 Sat 24 Oct 14:00, 20261024T1510 Sat 24 Oct 17:10, 20261025T0045 Sun 25 Oct 2:45, 20261025T0130 Sun 25 Oct 2:30',
  'Europe/Paris, 2026-10-25, 2:30, 20261024T1015 Sat 24 Oct 12:15, 20261024T1325 Sat 24 Oct 15:25, 20261024T2300 Sun 25 Oct 1:00, 20261024T2345 Sun 25 Oct 1:45',
  'America/New_York, 2026-03-08, 3:40, 20260307T1725 Sat 7 Mar 12:25, 20260307T2035 Sat 7 Mar 15:35, 20260308T0610 Sun 8 Mar 1:10, 20260308T0655 Sun 8 Mar 1:55',
]
const does = [
  ['Mix', 10],
  ['Shape', 20],
  ['Heat up Oven', 45],
  ['Bake', 45],
] as const

/** `20261225T093000Z` of `20261225T0930`, so many minutes later. */
function utc(text: string, later = 0): string {
  const [, date, hours, minutes] = /^(\d{4}\d\d\d\d)T(\d\d)(\d\d)$/.exec(text)!
  const day = date!.replace(/^(....)(..)/, '$1-$2-')
  const at = new Date(Date.parse(`${day}T${hours}:${minutes}Z`) + later * 60_000)
  return `${at.toISOString().replace(/[-:]|\.\d+/g, '')}`
}

for (const text of days) {
  const [zone, date, ready, ...times] = text.split(', ') as [string, string, string, ...string[]]
  const rows = times.map((time, i) => {
    const [begins, ...clock] = time.split(' ') as [string, ...string[]]
    const [what, minutes] = does[i]!
    return { what, begins: utc(begins), ends: utc(begins, minutes), clock }
  })
  const day = saturday([[loaf, 6]], { zone, date, ready })
  const { plan } = openDay(day, [loaf])
  const nameOf = breadNames(day, [loaf])

  test(`ready at ${ready} on ${date} in ${zone}: the calendar has the instants`, () => {
    const { inside } = readCalendar(writeCalendar(plan!, nameOf, { now: new Date(0) }))
    assert.deepEqual(
      inside.map(({ properties }) => ['SUMMARY', 'DTSTART', 'DTEND'].map(name => properties.get(name))),
      rows.map(({ what, begins, ends }) => [
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
    for (const { what, clock } of rows) {
      const [weekday, number, month, time] = clock as [keyof typeof full, string, keyof typeof months, string]
      const expected = `${what} ${full[weekday]} ${number} ${months[month]} ${time}`
      assert.ok(shown.includes(expected), `${expected} is among ${shown.join('; ')}`)
    }
  })
}
