import assert from 'node:assert/strict'
import { test } from 'node:test'
import { dateToRead, readDate } from '../../components/day/facts/read-date.js'

const today = '2026-11-30' // a Monday

const cases: readonly (readonly [typed: string, language: string, is: string | undefined])[] = [
  ['2026-12-05', 'en', '2026-12-05'],
  ['2026-2-31', 'en', undefined],
  ['5 December', 'en', '2026-12-05'],
  ['Dec 5, 2027', 'en', '2027-12-05'],
  ['Sat 5 December', 'en', '2026-12-05'],
  ['12/5', 'en', '2026-12-05'],
  ['5/12', 'en-GB', '2026-12-05'],
  ['5.12.', 'de', '2026-12-05'],
  ['5.12.27', 'de', '2027-12-05'],
  ['Samstag', 'de', '2026-12-05'],
  ['samedi', 'fr', '2026-12-05'],
  ['1er février', 'fr', '2027-02-01'],
  ['5 août', 'fr', '2027-08-05'],
  ['Saturday', 'en', '2026-12-05'],
  ['sat', 'en', '2026-12-05'],
  ['monday', 'en', '2026-12-07'], // the next, not today
  ['today', 'en', '2026-11-30'],
  ['tomorrow', 'en', '2026-12-01'],
  ['demain', 'fr', '2026-12-01'],
  ['15 November', 'en', '2026-11-15'], // of the last thirty days
  ['15 October', 'en', '2027-10-15'],
  ['31 February', 'en', undefined],
  ['soon', 'en', undefined],
  ['5', 'en', undefined],
  ['December', 'en', undefined],
  ['5 12 2026 7', 'en', undefined],
  ['', 'en', undefined],
]

for (const [typed, language, is] of cases)
  test(`“${typed}” in ${language} is ${is ?? 'no date'}`, () =>
    assert.equal(readDate(typed, today, language), is))

test('a date as it is shown is read back, in every language and far ahead', () => {
  for (const language of ['en', 'en-GB', 'de', 'fr', 'es', 'it', 'nl', 'sv'])
    for (const date of ['2026-11-30', '2026-12-05', '2027-03-31', '2028-02-29', '2024-05-01'])
      assert.equal(readDate(dateToRead(date, today, language), today, language), date, `${language} ${date}`)
})
