import { readFileSync } from 'node:fs'
import { test } from 'node:test'
import { deepEqual, ok } from '../assert'
import { type Score, scoreOfAll, scoreOf as scoreOfOne, wholeCases } from './whole-cases'

const scoreOf = (file: string): Score =>
  scoreOfAll(wholeCases(readFileSync(`tests/exchange/wholes/${file}.txt`, 'utf8')))

/** The least that is read right of the files kept apart, which nothing is made to fit: shares, and lines. */
const floors = [
  ['recipes-kept-apart', { amounts: 0.92, names: 0.94, stages: 0.67, lost: 14, wrongUnmarked: 6 }],
  ['tables-kept-apart', { amounts: 0.82, names: 0.92, stages: 0.77, lost: 8, wrongUnmarked: 12 }],
] as const

for (const [file, least] of floors)
  test(`of ${file.replaceAll('-', ' ')} as many amounts, names and stages are right as when they were read first`, () => {
    const { lost, wrongUnmarked, wrong, ...shares } = scoreOf(file)
    const share = ([right, of]: readonly [number, number]) => right / of
    for (const what of ['amounts', 'names', 'stages'] as const)
      ok(share(shares[what]) >= least[what], `${what}: ${shares[what].join(' of ')}\n${wrong.join('\n')}`)
    ok(lost <= least.lost, `${lost} lost\n${wrong.join('\n')}`)
    ok(wrongUnmarked <= least.wrongUnmarked, `${wrongUnmarked} wrong without a mark\n${wrong.join('\n')}`)
  })

const met = wholeCases(readFileSync('tests/exchange/wholes/met.txt', 'utf8'))
for (const whole of met) test(`all is right of ${whole.title}`, () => deepEqual(scoreOfOne(whole).wrong, []))
