import assert from 'node:assert/strict'
import { test } from 'node:test'
import { listOfPlace } from '../../components/sheet/allergen-list.js'

for (const [timeZone, language, list] of [
  ['Europe/Berlin', 'en-US', 'eu'],
  ['Europe/London', 'en-US', 'eu'],
  ['Atlantic/Canary', 'en-US', 'eu'],
  ['America/Toronto', 'en-US', 'canada'],
  ['America/St_Johns', 'en-GB', 'canada'],
  ['America/Vancouver', 'en-US', 'canada'],
  ['America/Dawson_Creek', 'en-US', 'canada'],
  ['America/New_York', 'en-GB', 'us'],
  ['America/Indiana/Knox', 'de-DE', 'us'],
  ['America/Los_Angeles', 'fr-CA', 'us'],
  ['Pacific/Honolulu', 'en', 'us'],
  ['America/Mexico_City', 'es-MX', 'eu'],
  ['America/Sao_Paulo', 'en-US', 'us'],
  ['Asia/Tokyo', 'fr-CA', 'canada'],
  ['UTC', 'en-US', 'us'],
  ['UTC', 'en', 'eu'],
  ['', 'de-AT', 'eu'],
] as const)
  test(`a clock set to ${timeZone || 'nowhere'} and words in ${language} begin with the list of ${list}`, () => {
    assert.equal(listOfPlace(timeZone, language), list)
  })
