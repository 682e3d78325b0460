import assert from 'node:assert/strict'
import { test } from 'node:test'
import { nameFor } from '../../src/engine/expression/lexer'
import { parse } from '../../src/engine/expression/parse'
import { amount, refusal, units } from './expressions'

const read: readonly (readonly [text: string, grams: number])[] = [
  ['70%', 700],
  ['70 %', 700],
  ['70% + 20 g', 720],
  ['20 g + 70%', 720],
  ['100% - 8% + 3 g', 923],
  ['(8+2)%', 100],
  ['57%', 570],
  ['7%/2', 35],
  ['2*salt', 40],
  ['SALT * 2', 40],
  ['levain.water / 2', 40],
  ['1.5 kg', 1500],
  ['20g', 20],
  ['2 1/2 cup', 600],
  ['1/2 cup', 120],
  ['1 / 2 cup', 120],
  ['½ tsp', 2.5],
  ['2½ tsp', 12.5],
  ['2 ½ tsp', 12.5],
  ['1⁄2 tsp', 2.5],
  ['⅞ cup', 210],
  ['12 1/2 %', 125],
  ['1/2 %', 5],
  ['2 1/2', 2.5],
  ['water / 2 cup', 700 / 480],
  ['10 * 1/2 cup', 1200],
  ['(1+1) tsp', 10],
  ['min(1, 2) tsp', 5],
  ['3 teaspoons', 15],
  ['3 Teaspoons', 15],
  ['2 tsp.', 10],
  ['2 fl oz', 60],
  ['2 fl. oz', 60],
  ['2 fl.oz.', 60],
  ['2 fl  oz + 1 g', 61],
  ['water × 2', 1400],
  ['water ÷ 2', 350],
  ['water − 20 g', 680],
  ['water – 20 g', 680],
  ['3² g', 9],
  ['2³', 8],
  ['1e3', 1000],
  ['1e3 g', 1000],
  ['2.5E-1', 0.25],
  ['.5', 0.5],
  ['1\u00a0000 g', 1000],
  ['1\u202f000\u202f000', 1e6],
  ["1'000 g", 1000],
  ['1’000.5 g', 1000.5],
  ['１２', 12],
  ['٢٥', 25],
  ['२.५', 2.5],
  ['５０％', 500],
  ['min(1.5, 2)', 1.5],
  ['min(1.5; 2)', 1.5],
  ['MAX(1, 2)', 2],
  ['round(2.675, 2)', 2.68],
  ['average(1, 2, 6)', 3],
  ['sum(1, 2, 3) + abs(-1) + ceil(0.2) + floor(1.8)', 9],
  ['-2^2', -4],
  ['2^-1', 0.5],
  ['2^3^2', 512],
  ['2 + 3*4', 14],
  ['- -3', 3],
  ['+3', 3],
  ['water > 500 g ? 1 : 2', 1],
  ['water ≤ 500 g ? 1 : 2', 2],
  ['water ≠ salt and not (water < salt) ? 1 : 2', 1],
  ['0 > 1 ? 1 : 0 > 1 ? 2 : 3', 3],
  ['1 > 0 ? 0 > 1 ? 1 : 2 : 3', 2],
  ['1>0?.5:2', 0.5],
  ['0.1 + 0.2 == 0.3', 1],
]

for (const [text, grams] of read) {
  test(`${text} comes to ${grams}`, () => assert.equal(amount(text), grams))
}

test('without a base, per cent is a hundredth', () => {
  assert.equal(amount('12.5%', { percentOf: null }), 0.125)
  assert.equal(amount('70% + 20', { percentOf: null }), 20.7)
})

test('per cent can be of another name', () => assert.equal(amount('50%', { percentOf: 'water' }), 350))

const same: readonly (readonly [a: string, b: string])[] = [
  ['crème', 'cre\u0300me'],
  ['Crème', 'crème'],
  ['Ж', 'ж'],
  ['Bread_Flour', 'bread_flour'],
]
for (const [a, b] of same) {
  test(`${a} and ${b} are one name`, () => assert.deepEqual(parse(a).names, parse(b).names))
}

const names =
  '日本 Ж crème _x t65_bio नमक e pi i g h version constructor __proto__ toString base min n0 c0 unit'
for (const name of names.split(' ')) {
  test(`${name} standing alone is just a name`, () => {
    assert.deepEqual(parse(name, { units }).names, [name.toLowerCase()])
  })
}

test('expressions of one structure share key and tree', () => {
  const a = parse('70% * k + 20 g', { units })
  const b = parse('5%*x +  1.5 kg', { units })
  assert.equal(a.key, b.key)
  assert.equal(a.tree, b.tree)
  assert.deepEqual(b.names, ['base', 'x', 'unit:kg'])
  assert.deepEqual(b.numbers, [5, 1.5])
})

test('the place of every name is told in the trimmed text', () => {
  const { text, spans, names } = parse('  Salt + 2*levain.water + 3% + salt', { units })
  assert.deepEqual(
    spans.map(({ slot, at, length }) => [names[slot], text.slice(at, at + length)]),
    [
      ['salt', 'Salt'],
      ['levain.water', 'levain.water'],
      ['salt', 'salt'],
    ],
  )
})

// The words, and the part of the text they point at.
const refused: readonly (readonly [text: string, words: RegExp, at: string])[] = [
  ['', /^Nothing is written\.$/, ''],
  ['   ', /^Nothing is written\.$/, ''],
  ['2 salt', /^2 salt: salt is not one of the units, which are g, .*; to multiply write 2\*salt\.$/, 'salt'],
  ['2 (3)', /put \+, -, \* or \/ in between/, '('],
  ['(2) 3', /in between/, '3'],
  ['salt water', /salt water: put/, 'water'],
  ['2 g water', /g water: put/, 'water'],
  ['70%20', /always per cent, never a remainder/, '20'],
  ['10% 200', /always per cent/, '200'],
  ['50% water', /write 0\.5\*water/, 'water'],
  ['% 3', /needs a number before it/, '%'],
  ['2 + %', /needs a number before it/, '%'],
  ['2,5', /Write 2\.5 with a point/, ','],
  ['2, 5', /only separates/, ','],
  ['1 000 g', /write 1000 without a space/, '000'],
  ['sqrt(4)', /^"sqrt" is not something Tarebook can work out here; it knows min, max, /, 'sqrt'],
  ['salt(4)', /not something/, 'salt'],
  ['constructor(1)', /not something/, 'constructor'],
  ['min.max(1)', /not something/, 'min.max'],
  ['min()', /needs something between/, ')'],
  ['abs(1, 2)', /takes one thing/, ','],
  ['round(1, 2, 3)', /at most 2/, ','],
  ['(1, 2)', /only separates/, ','],
  ['2 +', /missing after "\+"/, '+'],
  ['* 2', /missing before "\*"/, '*'],
  ['()', /missing before "\)"/, ')'],
  ['(2', /never closed/, '('],
  ['2)', /closes nothing/, ')'],
  ['a ? b', /needs a ":"/, '?'],
  ['(a ? b) : c', /needs a ":"/, '?'],
  ['a : b', /belongs after a "\?"/, ':'],
  ['1:3', /belongs after/, ':'],
  ['a < b < c', /two things at a time/, 'a < b < c'],
  ['a = 2', /^"=" at character 3 has no meaning here: to compare, write ==\.$/, '='],
  ['a[1]', /"\[" at character 2/, '['],
  ['{a: 1}', /"\{" at character 1/, '{'],
  ['"a"', /without quotes/, '"'],
  ['`a`', /without quotes/, '`'],
  ["a'", /without quotes/, "'"],
  ['5!', /"!"/, '!'],
  ['a & b', /write and/, '&'],
  ['a | b', /write or/, '|'],
  ['~a', /write not/, '~'],
  ['a?.b', /"\." at character 3/, '.'],
  ['a ?? b', /missing before "\?"/, '?'],
  ['a; b', /only separates/, ';'],
  ['a.b.c', /at most one point/, 'a.b.c'],
  ['a . b', /a point stands inside/, '.'],
  ['2.', /a point stands inside/, '.'],
  ['1.2.3', /in between/, '.3'],
  ['2 1/0 cup', /divides by zero/, '0'],
  ['1e999', /too large/, '1e999'],
  ['3 \u202eg', /U\+202E at character 3/, '\u202e'],
  ['a # b', /"#"/, '#'],
  ['a and', /missing after "and"/, 'and'],
  ['not', /missing after "not"/, 'not'],
]

for (const [text, words, at] of refused) {
  test(`${JSON.stringify(text)} is refused: ${words.source}`, () => {
    const error = refusal(() => parse(text, { units }))
    assert.match(error?.message ?? 'not refused', words)
    assert.equal(text.slice(error!.at, error!.at + error!.length), at)
  })
}

const limits: readonly (readonly [what: string, inside: string, outside: string])[] = [
  ['512 characters', `1+1${' '.repeat(509)}`, `1+1${' '.repeat(510)}`],
  ['256 parts', `1${'+1'.repeat(127)}`, `1${'+1'.repeat(128)}`],
  ['48 levels', `${'('.repeat(48)}1${')'.repeat(48)}`, `${'('.repeat(49)}1${')'.repeat(49)}`],
  ['64 things in a call', `sum(${'1,'.repeat(63)}1)`, `sum(${'1,'.repeat(64)}1)`],
]
for (const [what, inside, outside] of limits) {
  test(`up to ${what} are read, one more is not`, () => {
    assert.equal(
      refusal(() => parse(inside)),
      undefined,
    )
    assert.match(refusal(() => parse(outside))?.message ?? '', /\d/)
  })
}

const named: readonly (readonly [words: string, name: string])[] = [
  ['Bread flour', 'bread_flour'],
  ['T65 – bio', 't65_bio'],
  ['00 flour', '_00_flour'],
  ['  Baker’s  yeast ', 'bakers_yeast'],
  ['Cre\u0300me', 'crème'],
  ['日本 塩', '日本_塩'],
  ['½ whole', 'whole'],
  ['Not', '_not'],
  ['levain.water', 'levain_water'],
  ['', '_'],
  ['!?', '_'],
]
for (const [words, name] of named) {
  test(`${JSON.stringify(words)} is named ${name}, which names itself and can be read`, () => {
    assert.equal(nameFor(words), name)
    assert.equal(nameFor(name), name)
    assert.deepEqual(parse(name).names, [name])
  })
}
