import assert from 'node:assert/strict'
import { test } from 'node:test'
import type { Bake } from '../../src/day/bench/bake.js'
import { bakeRecord } from '../../src/day/bench/bake-record.js'
import { larderWith } from '../../src/dough/larder/usual-larder.js'
import { writeBakedSteps, writeBakes } from '../../src/exchange/csv/write-bakes.js'
import { workedWheat } from '../day/worked-bread.js'

const formula = workedWheat()
const [levain] = formula.stages
const step = (does: string) => `b ${levain!.id} ${levain!.method!.find(one => one.does === does)!.id}`

const bake: Bake = {
  id: 'one',
  at: '2026-12-05T05:00:00Z',
  name: '=Mill "wheat"',
  formula,
  bread: 'b',
  zone: 'Europe/Zurich',
  moments: [
    { moment: step('Mix'), planned: '2026-12-05T05:00:00Z', at: '2026-12-05T05:10:00Z' },
    { moment: step('Ripen'), at: '2026-12-05T05:22:30Z' },
  ],
  weighed: [{ moment: step('Mix'), line: levain!.lines[0]!.id, wanted: 40, grams: 41.5 }],
  figures: [{ moment: step('Mix'), what: 'dough', value: 24.5 }],
  timers: [],
  note: 'a, b',
  verdict: '',
  tastes: { open: 4 },
  finished: '2026-12-05T20:00:00Z',
}
const written = [{ bake, record: bakeRecord(bake, larderWith([])) }]

/** The rows of a table whose cells hold no line breaks, each by its headings. */
function rowsOf(csv: string): Record<string, string>[] {
  const cells = (row: string) =>
    [...`${row},`.matchAll(/("(?:[^"]|"")*"|[^,]*),/g)].map(([, cell]) =>
      cell!.replace(/^"|"$/g, '').replaceAll('""', '"'),
    )
  const [head, ...rows] = csv.trimEnd().split('\r\n')
  const names = cells(head!)
  return rows.map(row => Object.fromEntries(cells(row).map((cell, i) => [names[i]!, cell])))
}

test('bakes are a table with one row a bake, on the clock of their place', () => {
  const [row, ...more] = rowsOf(writeBakes(written))
  assert.deepEqual(more, [])
  assert.equal(row!.began, '2026-12-05 06:00')
  assert.equal(row!.finished, '2026-12-05 21:00')
  assert.equal(row!['steps done'], '2')
  assert.equal(row!['weighed g'], '41.5')
  assert.equal(row!['dough °C'], '24.5')
  assert.equal(row!['open 1–5'], '4')
  assert.equal(row!.note, 'a, b')
})

test('no cell of it starts a formula in an office program', () => {
  assert.ok(writeBakes(written).includes(`"'=Mill ""wheat"""`))
})

test('their steps are a table with one row a step: planned, begun, how long, and what was written', () => {
  const rows = rowsOf(writeBakedSteps(written))
  assert.equal(rows.length, 9)
  const [mix, ripen] = rows
  assert.deepEqual(
    [mix!.step, mix!.planned, mix!.began, mix!.minutes, mix!['written minutes'], mix!['dough °C']],
    ['Mix', '2026-12-05 06:00', '2026-12-05 06:10', '12.5', '10', '24.5'],
  )
  assert.deepEqual([ripen!.minutes, ripen!['written minutes']], ['', '480–600'])
})
