import assert from 'node:assert/strict'
import { test } from 'node:test'
import { dimensionOf } from '../../src/engine/expression/dimension'
import { nameFor } from '../../src/engine/expression/lexer'
import { straight } from '../../src/engine/expression/linear'
import { localise, parse } from '../../src/engine/expression/parse'
import { randomOf } from '../random'
import { kitchen, refusal, units, worth } from './expressions'

/** Whatever is typed is read, or refused in a sentence that points into it; nothing else may happen. */
function survives(text: string): void {
  for (const decimal of ['.', ','] as const) {
    const error = refusal(() => {
      const expression = parse(text, { units, decimal })
      assert.equal(typeof worth(expression, kitchen), 'number')
      assert.deepEqual(parse(localise(expression.text, decimal), { units, decimal }), expression)
      refusal(() => straight(expression, slot => slot === 0))
      dimensionOf(expression, () => 'weight')
    })
    if (!error) continue
    assert.match(error.message, /^\S.*[.?]$/su, `what is said of ${JSON.stringify(text)}`)
    assert.doesNotMatch(error.message, /\p{Cs}|\p{Cc}/u, 'nothing unprintable is in the sentence')
    assert.ok(error.at >= 0 && error.length >= 0 && error.at + error.length <= Math.max(1, text.length))
  }
  assert.equal(nameFor(nameFor(text)), nameFor(text))
}

const texts: readonly string[] = [
  'constructor',
  'constructor.constructor',
  '__proto__',
  '__proto__.polluted',
  'toString(1)',
  'hasOwnProperty(1)',
  'valueOf + 1',
  'a.constructor("return 1")()',
  'cos.constructor("return process")()',
  'evaluate("1")',
  'parse("1")',
  'import({a: 1}, {override: true})',
  'createUnit("x")',
  'config({})',
  'f(x) = x',
  'f = 1',
  'a.b = 1',
  'a[1] = 2',
  '[1, 2; 3, 4]',
  '{"__proto__": 1}',
  '1; 2',
  '1\n2',
  '# a comment',
  'range(0, 1e7)',
  'isPrime(982451653)',
  '0:1e9',
  'a mod b',
  '5 to g',
  '2 in',
  'true',
  'null + undefined',
  'NaN * Infinity',
  '0x10',
  '0b1',
  '1i',
  "a'",
  "'a'",
  'a.^b',
  'a.*b',
  'a << 2',
  'n0',
  'c0 + n1',
  'min',
  'min.min',
  '(min)(1)',
  'min(max)',
  '9^9^9^9^9^9',
  '1e308*10',
  '1e-400',
  '-1^0.5',
  '0/0',
  '5 unit:g',
  'unit:g',
  '\ud800',
  'a\udc00b',
  '\ud835\udc00',
  '\u202e2 g\u202c',
  '\u200f20 g',
  '2\u200b0 g',
  '\u0000',
  '1\u00002',
  '\u0301',
  'a\u0301\u0302\u0303',
  '=\u0338',
  '½½',
  '1½2',
  '²',
  '2²²½',
  '(2)² tsp',
  '1/2/3 cup',
  '1/2 1/2 cup',
  '2 ½ ½ cup',
  '%%%',
  '5%%',
  '٪',
  '🥖 + 1',
  '🥖',
  'İ + ı',
  'ΣΑΣ',
  'ﬁ + ﬂ',
  '１／２ ｃｕｐ',
  '２，５',
]
for (const text of texts) {
  test(`${JSON.stringify(text)} is read or refused in a sentence`, () => survives(text))
}

const patterns: readonly (readonly [what: string, unit: string, tail?: string])[] = [
  ['per cent and parentheses', '%('],
  ['numbers, per cent and parentheses', '3%(', ''],
  ['nested per cent', '(3+', '1)%'],
  ['opening parentheses', '('],
  ['closing parentheses', ')'],
  ['nested calls', 'min(1,', '2)'],
  ['nested parentheses', '(', ')'],
  ['minus signs', '-'],
  ['minus signs before a number', '-', '1'],
  ['not', 'not '],
  ['choices', 'a?b:'],
  ['choices in choices', 'a?', ':b'],
  ['compared choices', 'a<(', '<1)'],
  ['powers', '2^'],
  ['nines to the ninth', '9^', '9'],
  ['dots', '.'],
  ['name and dot', 'a.'],
  ['one name and one number', 'a1'],
  ['digits', '9'],
  ['grouped digits', "9'999"],
  ['commas', ','],
  ['semicolons', ';'],
  ['fractions', '½'],
  ['slashes', '1/'],
  ['mixed numbers', '1 1/'],
  ['units', '2 cup+', '1 g'],
  ['marks', '\u0301'],
  ['spaces', ' '],
  ['zero-width spaces', '\u200b'],
  ['lone surrogates', '\ud83d'],
  ['quotes', '"'],
  ['apostrophes', "'"],
  ['backslashes', '\\'],
  ['letters', 'a'],
  ['capital dotted i, which grows in lower case', 'İ'],
]
for (const [what, unit, tail = ''] of patterns) {
  test(`512 characters of ${what}, and fewer, are read or refused in a sentence`, () => {
    for (const times of [1, 2, 3, 24, 48, 60, 100, 128, 256, 512]) {
      const fits = Math.floor(512 / (unit.length + tail.length))
      const count = Math.min(times, fits)
      survives(`${unit.repeat(count)}${tail.repeat(count)}`)
      survives(`${unit.repeat(count)}1${tail.repeat(count)}`)
    }
  })
}

const alphabet = [
  ...Array.from('0123456789.,;:?!%^*/+-<>=()[]{}\'"`&|~#$@\\ \t\n½²³×÷−–≤≥≠\u00a0\u202f\u200f\u0301'),
  ...'a salt levain.water min max round not and or g cup fl oz tsp e 1e5 日本 Ж é constructor 🥖 \ud800'.split(
    ' ',
  ),
]

for (const seed of [11, 12, 13]) {
  test(`3000 random texts are read or refused in a sentence (seed ${seed})`, () => {
    const random = randomOf(seed).next
    for (let i = 0; i < 3000; i++) {
      const length = 1 + Math.floor(random() * random() * 40)
      survives(Array.from({ length }, () => alphabet[Math.floor(random() * alphabet.length)]).join(''))
    }
  })
}

for (const seed of [21, 22]) {
  test(`2000 readable texts with a few characters changed are read or refused (seed ${seed})`, () => {
    const random = randomOf(seed).next
    const whole = [
      '70% + 20 g',
      'min(1.5, 2 1/2 cup)',
      'a > 2 ? (b + 3%) : c',
      '2 fl. oz * -3',
      '(a and not b)',
    ]
    for (let i = 0; i < 2000; i++) {
      const characters = Array.from(whole[Math.floor(random() * whole.length)]!)
      for (let n = 0; n < 3; n++) {
        const piece = alphabet[Math.floor(random() * alphabet.length)]!
        characters.splice(Math.floor(random() * characters.length), Math.floor(random() * 2), piece)
      }
      survives(characters.join(''))
    }
  })
}
