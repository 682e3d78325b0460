import assert from 'node:assert/strict'
import { test } from 'node:test'
import {
  clockText,
  dateAfter,
  instantOf,
  lengthText,
  localOf,
  localText,
  readClock,
  readLocal,
} from '../../src/day/course/clock.js'
import { randomOf } from '../random.js'

const at = (text: string, zone: string) => instantOf(readLocal(text)!, zone)
const utc = (text: string) => Date.parse(`${text}Z`) / 60_000

// Offsets as the zones' public rules give them: Paris +1 and +2, New York −5 and −4, Kathmandu +5:45 all year.
const instants: readonly (readonly [local: string, zone: string, utc: string])[] = [
  ['2026-12-05T08:00', 'UTC', '2026-12-05T08:00'],
  ['2026-12-05T08:00', 'Europe/Paris', '2026-12-05T07:00'],
  ['2026-07-05T08:00', 'Europe/Paris', '2026-07-05T06:00'],
  ['2026-12-05T08:00', 'America/New_York', '2026-12-05T13:00'],
  ['2026-07-05T08:00', 'Asia/Kathmandu', '2026-07-05T02:15'],
  ['2026-12-31T23:30', 'America/New_York', '2027-01-01T04:30'],
  ['2026-10-25T02:30', 'Europe/Paris', '2026-10-25T00:30'], // comes twice: the first
  ['2026-10-25T03:00', 'Europe/Paris', '2026-10-25T02:00'],
  ['2026-03-29T02:30', 'Europe/Paris', '2026-03-29T01:30'], // is left out: 3:30
  ['2026-03-29T03:30', 'Europe/Paris', '2026-03-29T01:30'],
  ['2026-03-08T01:59', 'America/New_York', '2026-03-08T06:59'],
  ['2026-03-08T03:00', 'America/New_York', '2026-03-08T07:00'],
]
for (const [local, zone, expected] of instants)
  test(`${local} in ${zone} is ${expected} UTC`, () => assert.equal(at(local, zone), utc(expected)))

test('a night of changing clocks is an hour longer in autumn and an hour shorter in spring', () => {
  const night = (first: string, then: string) => at(then, 'Europe/Paris') - at(first, 'Europe/Paris')
  assert.equal(night('2026-10-24T22:30', '2026-10-25T06:00'), 8.5 * 60)
  assert.equal(night('2026-03-28T22:30', '2026-03-29T06:00'), 6.5 * 60)
  assert.equal(night('2026-12-31T22:30', '2027-01-01T06:00'), 7.5 * 60)
})

test('seed 9: an instant told locally is the same instant again, but in the hour that comes twice', () => {
  const { next, pick } = randomOf(9)
  for (let round = 0; round < 500; round++) {
    const zone = pick(['Europe/Paris', 'America/New_York', 'Australia/Lord_Howe', 'UTC', 'Asia/Tokyo'])
    const instant = Math.floor(utc('2025-01-01T00:00') + next() * 1_500_000) + 0.25
    const back = instantOf(localOf(instant, zone), zone)
    assert.ok(back === instant || back === instant - 60 || back === instant - 30, `${instant} in ${zone}`)
  }
})

test('clock times are read as people write them', () => {
  const read = ['8:00', '08:30', '8.30', '8h30', '8 h', '8', '22:30', '0:05', '24:00', '8:60', 'eight', '']
  assert.deepEqual(read.map(readClock), [
    480,
    510,
    510,
    510,
    480,
    480,
    1350,
    5,
    undefined,
    undefined,
    undefined,
    undefined,
  ])
})

test('clock times, dates and lengths are written as people read them', () => {
  assert.deepEqual([480, 1349.6, 1439.7, 5, -30].map(clockText), ['8:00', '22:30', '0:00', '0:05', '23:30'])
  assert.deepEqual([0.5, 5, 45, 60, 90, 810, 1440, 1475, 2 * 1440 + 180].map(lengthText), [
    '0.5 min',
    '5 min',
    '45 min',
    '1 h',
    '1 h 30',
    '13 h 30',
    '1 d',
    '1 d 35 min',
    '2 d 3 h',
  ])
  assert.equal(localText({ date: '2026-12-31', minutes: 1439.8 }), '2027-01-01T00:00')
  assert.equal(dateAfter('2028-02-28', 1), '2028-02-29')
})
