import assert from 'node:assert/strict'
import { test } from 'node:test'
import { asTheyWrite, numberStyleOf, showNumber } from '../../components/base/numbers'
import { readNumber } from '../../components/typed/typed-numbers'

for (const language of ['C', 'en-US@posix', 'fr_FR', ''])
  test(`a browser whose language is “${language}” writes numbers in English`, () => {
    assert.deepEqual(numberStyleOf(language), { language: 'en', decimal: '.' })
  })

const read: readonly (readonly [language: string, typed: string, number: number | undefined])[] = [
  ['en', '12', 12],
  ['en', ' 1.5 ', 1.5],
  ['en', '1,5', 1.5],
  ['en', '1,500', 1500],
  ['en', '1,234,567.8', 1234567.8],
  ['en', '0,245', 0.245],
  ['en', '1.034', 1.034],
  ['en', '.5', 0.5],
  ['en', '−3', -3],
  ['en', '１２', 12],
  ['de', '1,034', 1.034],
  ['de', '1.034', 1034],
  ['de', '0.53', 0.53],
  ['de', '1.234,5', 1234.5],
  ['fr', '1 234,5', 1234.5],
  ['de-CH', '1’234.5', 1234.5],
  ['en', '', undefined],
  ['en', 'a lot', undefined],
  ['en', '1.2.3', undefined],
  ['en', '12 g', undefined],
  ['en', '1e3', undefined],
]

for (const [language, typed, number] of read) {
  test(`“${typed}” in ${language} is ${number ?? 'no number'}`, () =>
    assert.equal(readNumber(typed, numberStyleOf(language)), number))
}

for (const language of ['en', 'de', 'fr', 'de-CH', 'ar-EG', 'fa', 'sv', 'en-IN']) {
  test(`what a field shows in ${language} is read back as it was`, () => {
    const style = numberStyleOf(language)
    for (const value of [0.5283, 1.607, 15.87, 137, 1036, 12345.5, 0.1 + 0.2])
      assert.equal(readNumber(showNumber(value, style), style), Number(value.toPrecision(6)))
  })
}

/** As kept, with decimal points → as shown where the comma is the decimal mark. */
const inGerman: readonly (readonly [kept: string, shown: string])[] = [
  ['1.5 kg', '1,5 kg'],
  ['min(1.5, 2)', 'min(1,5; 2)'],
  ['1 lb, 4 oz', '1 lb; 4 oz'],
  ['2.5 c. à s.', '2,5 c. à s.'],
  ['levain.water', 'levain.water'],
  ['1,000', '1.000'], // in doubt: typed so
  ['1,\u200b250 kg', '1.\u200b250 kg'],
  ['min(1,500)', 'min(1;500)'],
]
for (const [kept, shown] of inGerman) {
  test(`${JSON.stringify(kept)} is shown as ${shown} where the comma is the decimal mark`, () => {
    assert.equal(asTheyWrite(kept, numberStyleOf('de')), shown)
    assert.equal(asTheyWrite(kept, numberStyleOf('en')), kept)
  })
}
