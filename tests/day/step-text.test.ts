import assert from 'node:assert/strict'
import { test } from 'node:test'
import { withoutLoad } from '../../src/day/method/load-text.js'
import { lengthOf, readStep, stepInLine } from '../../src/day/method/step-text.js'

const tidy = (value: number) => Number(value.toFixed(6))

/** What was read, in one line: `30`, `=30`, `210–270 (240)`, `at 25`, `fridge`, `4 × 5 / 30`, `each`, `6 at once`, `adds Salt + Water (2)`, `? words`. */
function said(text: string): string {
  const { length, exact, celsius, inFridge, repeats, each, atOnce, adds, notRead } = readStep(text)
  const time =
    length &&
    (length.least === length.most
      ? `${exact ? '=' : ''}${tidy(length.usual)}`
      : `${tidy(length.least)}–${tidy(length.most)} (${tidy(length.usual)})`)
  return [
    time,
    celsius !== undefined && `at ${tidy(celsius)}`,
    inFridge && 'fridge',
    repeats && `${repeats.times} × ${tidy(repeats.minutes)} / ${tidy(repeats.every)}`,
    each && 'each',
    atOnce && `${atOnce} at once`,
    adds.length > 0 && `adds ${adds.join(' + ')}`,
    ...notRead.map(words => `? ${words}`),
  ]
    .filter(Boolean)
    .join(', ')
}

const cases: readonly (readonly [typed: string, read: string])[] = [
  ['30 min', '30'],
  ['1 h 30', '90'],
  ['1 h 30 min', '90'],
  ['1h30', '90'],
  ['1:30 h', '90'],
  ['0:45', '45'],
  ['90 s', '1.5'],
  ['2 d', '2880'],
  ['2 jours', '2880'],
  ['1,5 h', '90'],
  ['1.5 h', '90'],
  ['½ h', '30'],
  ['3½ h', '210'],
  ['=30 min', '=30'],
  ['= 1 h', '=60'],
  ['3.5–4.5 h', '210–270 (240)'],
  ['3,5-4,5 h', '210–270 (240)'],
  ['12–15 h', '720–900 (810)'],
  ['30 min to 1 h', '30–60 (45)'],
  ['12 à 15 heures', '720–900 (810)'],
  ['15–12 h', '720–900 (810)'],
  ['1 h 30–2 h', '90–120 (105)'],
  ['at 25 °C', 'at 25'],
  ['77 °F', 'at 25'],
  ['77F', 'at 25'],
  ['à 25 °C', 'at 25'],
  ['30 min à 25 °C', '30, at 25'],
  ['30 min at 25°', '30, at 25'],
  ['1 h 30 at 24 °C', '90, at 24'],
  ['for 45 min', '45'],
  ['at 230 °C for 45 min', '45, at 230'],
  ['pendant 45 min', '45'],
  ['12 h in the fridge', '720, fridge'],
  ['12 h, au frigo', '720, fridge'],
  ['in the fridge, 12–15 h', '720–900 (810), fridge'],
  ['at 4 °C, 12 h', '720, at 4'],
  ['at -18 °C', 'at -18'],
  ['4 × 5 min every 30 min', '4 × 5 / 30'],
  ['3.5–4.5 h, 4 × 5 min every 30 min, at 25 °C', '210–270 (240), at 25, 4 × 5 / 30'],
  ['2 h, 3x 2 min every ½ h', '120, 3 × 2 / 30'],
  ['2 h, 4 × 5 min toutes les 30 min', '120, 4 × 5 / 30'],
  ['2 min each', '2, each'],
  ['2 min chacun', '2, each'],
  ['45 min, 6 at once', '45, 6 at once'],
  ['45 min at 230 °C, 6 à la fois', '45, at 230, 6 at once'],
  ['5 min, adds Salt, Water (2)', '5, adds Salt + Water (2)'],
  ['adds Salt, Water (2), 5 min', '5, adds Salt + Water (2)'],
  ['5 min, ajoute Sel', '5, adds Sel'],
  ['until it wobbles', '? until it wobbles'],
  ['30 min, until it wobbles', '30, ? until it wobbles'],
  ['30 min; at 25 °C', '30, at 25'],
  ['30 min of rest', '30, ? of rest'],
  ['30', '? 30'],
  ['5 every 30 min', '? 5 every 30 min'],
  ['4 × 5 min', '? 4 × 5 min'],
  ['10 min, 20 min', '10, ? 20 min'],
  ['', ''],
]
for (const [typed, read] of cases)
  test(`“${typed}” is ${read || 'nothing'}`, () => assert.equal(said(typed), read))

for (const [typed, left] of [
  ['45 min, at 240 °C, 12 at once', '45 min, at 240 °C'],
  ['12 at once, 1,5 h', '1,5 h'],
  ['45 min at 230 °C 6 à la fois', '45 min at 230 °C'],
  ['20 min, 4 at a time, adds Salt', '20 min, adds Salt'],
  ['45 min, at 240 °C', '45 min, at 240 °C'],
  ['all 12 at once', 'all 12 at once'], // words of the baker’s, not a load
] as const)
  test(`“${typed}” without a load is “${left}”`, () => assert.equal(withoutLoad(typed), left))

test('a wait with a single time moves by the leeway; a range, an exact time, hands and baking do not', () => {
  const length = (kind: 'hands' | 'wait' | 'bake', text: string) => lengthOf({ kind }, readStep(text), 0.15)
  assert.deepEqual(length('wait', '100 min'), { least: 85, usual: 100, most: 114.99999999999999 })
  assert.deepEqual(length('wait', '=100 min'), { least: 100, usual: 100, most: 100 })
  assert.deepEqual(length('wait', '3–5 h'), { least: 180, usual: 240, most: 300 })
  assert.deepEqual(length('hands', '10 min'), { least: 10, usual: 10, most: 10 })
  assert.deepEqual(length('bake', '45 min'), { least: 45, usual: 45, most: 45 })
  assert.equal(length('wait', 'at 25 °C'), undefined)
})

const inOneLine: readonly (readonly [typed: string, does: string | undefined, text?: string])[] = [
  ['Bake, 45 min at 230 °C', 'Bake', '45 min at 230 °C'],
  ['Bake 45 min at 230 °C', 'Bake', '45 min at 230 °C'],
  ['Bake at 230 °C for 45 min', 'Bake', 'at 230 °C for 45 min'],
  ['Mix: 10 min, adds Salt', 'Mix', '10 min, adds Salt'],
  ['Fold 4 × 5 min every 30 min', 'Fold', '4 × 5 min every 30 min'],
  ['Rest in the fridge 12 h', 'Rest', 'in the fridge 12 h'],
  ['Divide, preshape, 10 min', 'Divide, preshape', '10 min'],
  ['Laisser lever 1 h 30 à 24 °C', 'Laisser lever', '1 h 30 à 24 °C'],
  ['Bake', undefined],
  ['Fold 3 times', undefined],
  ['Cover, then rest', undefined],
  ['Work in the salt', undefined],
  ['45 min', undefined],
  ['Shape 6 rolls', undefined],
]

test('a step typed in one line is what is done and what else it says', () => {
  for (const [typed, does, text] of inOneLine)
    assert.deepEqual(stepInLine(typed), does === undefined ? undefined : { does, text }, typed)
})
