import assert from 'node:assert/strict'
import { test } from 'node:test'
import { readFormulas } from '../../src/exchange/index.js'
import { plainAmount } from '../../src/exchange/values/decimals.js'
import { randomOf } from '../random.js'
import { told } from './notation.js'

const amountsOf = (csv: string) => {
  const { formulas, problems } = readFormulas(csv)
  return { amounts: formulas[0]!.stages[0]!.lines.map(l => l.amount), problems: told(problems) }
}
const commaFile = (...amounts: string[]) => `ingredient,amount\n${amounts.map(a => `Salt,"${a}"`).join('\n')}`
const semicolonFile = (...amounts: string[]) =>
  `ingredient;amount\n${amounts.map(a => `Salt;"${a}"`).join('\n')}`

for (const [file, amounts] of [
  [
    commaFile('1.5%', 'min(1,5) * salt', '1,234.5 g', '1,000,000 g'),
    ['1.5%', 'min(1,5) * salt', '1234.5 g', '1000000 g'],
  ],
  [commaFile('1,5%', '0,125 g', '1.234,5 g', '1000,500 g'), ['1.5%', '0.125 g', '1234.5 g', '1000.500 g']],
  [commaFile('1,5%', '1,000 g'), ['1.5%', '1.000 g']],
  [commaFile('min(1,5; 2) * salt', '12,5 g + (2,5% * 2)'), ['min(1.5, 2) * salt', '12.5 g + (2.5% * 2)']],
  [
    commaFile('1\u202f000 g', "1'250 g", '1 000 g', '2 1/2 cup', '1 100/3 g'),
    ['1000 g', '1250 g', '1000 g', '2 1/2 cup', '1 100/3 g'],
  ],
  [commaFile(',5 g', '\u22122 g + 3 g'), ['.5 g', '-2 g + 3 g']],
  [
    semicolonFile('70%', '1,8%', 'max(2; 3,5) g', 'round(1,5 g)'),
    ['70%', '1.8%', 'max(2, 3.5) g', 'round(1.5 g)'],
  ],
  [semicolonFile('1.5%', '20 g'), ['1.5%', '20 g']],
  [
    commaFile('2*T65,5', 'levain.water', 'half,half', '1,2,3'),
    ['2*T65,5', 'levain.water', 'half,half', '1,2,3'],
  ],
] as const)
  test(`${amounts.join(' · ')} is what is stored of ${JSON.stringify(file)}`, () => {
    assert.deepEqual(amountsOf(file), { amounts, problems: [] })
  })

test('in a comma file 1,000 g alone is a thousand grams, and a warning says so', () => {
  const { amounts, problems } = amountsOf(commaFile('20%', '1,000 g'))
  assert.deepEqual(amounts, ['20%', '1000 g'])
  assert.deepEqual(problems, [
    '3 warning: Row 3 has “1,000”, which is read as 1000. If that is not meant, write it without a mark between thousands and with a decimal point.',
  ])
})

test('in a semicolon file 1,250 kg alone is one and a quarter, and a warning says so', () => {
  const { amounts, problems } = amountsOf(semicolonFile('20%', '1,250 kg'))
  assert.deepEqual(amounts, ['20%', '1.250 kg'])
  assert.match(problems.join(), /Row 3 has “1,250”, which is read as 1.250/)
})

test('a number alone is grams, with a remark', () => {
  const { amounts, problems } = amountsOf(commaFile('20', '2.5', '1/2', '½', '20 g', '2*salt'))
  assert.deepEqual(amounts, ['20 g', '2.5 g', '1/2 g', '½ g', '20 g', '2*salt'])
  assert.deepEqual(problems.length, 4)
  assert.equal(problems[0], '2 remark: Row 2 gives no unit for Salt: taken as 20 g.')
})

test('plain amounts stay as they are and show no decimal comma (seed 20)', () => {
  const random = randomOf(20)
  const pieces = [
    '1',
    '25',
    '000',
    ',',
    '.',
    ' ',
    ';',
    '(',
    ')',
    'min',
    'g',
    '%',
    '/',
    "'",
    '½',
    'x2',
    '\u00a0',
    '-',
    '',
  ]
  for (let i = 0; i < 20_000; i++) {
    const typed = Array.from({ length: 1 + random.below(9) }, () => random.pick(pieces)).join('')
    const once = plainAmount(typed, '.').text
    const twice = plainAmount(once, '.')
    assert.equal(twice.text, once, typed)
    assert.equal(twice.signs[','], 0, typed)
  }
})
