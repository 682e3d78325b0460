import assert from 'node:assert/strict'
import { readdirSync, readFileSync } from 'node:fs'
import { test } from 'node:test'
import { readTable } from '../../src/exchange/csv/csv-table.js'

const folder = 'node_modules/csv-spectrum'
const names = readdirSync(`${folder}/csvs`).map(file => file.replace(/\.csv$/, ''))

test('the cases of csv-spectrum are all there', () => assert.equal(names.length, 12))

function wantedOf(name: string): unknown {
  const json = readFileSync(`${folder}/json/${name}.json`, 'utf8')
  // In 2.0.0 this case's JSON is one record outside a list, with another telephone number than its CSV has.
  if (name === 'location_coordinates') return [JSON.parse(json.replace('1234567890', '2095257564'))]
  return JSON.parse(json)
}

for (const name of names) {
  test(`csv-spectrum: ${name} reads as its JSON`, () => {
    const { rows, problems } = readTable(readFileSync(`${folder}/csvs/${name}.csv`, 'utf8'), () => false)
    const [headings, ...body] = rows
    const records = body.map(({ cells }) =>
      Object.fromEntries(headings!.cells.map((h, at) => [h, cells[at]])),
    )
    assert.deepEqual(records, wantedOf(name))
    assert.deepEqual(problems, [])
  })
}
