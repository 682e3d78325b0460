import assert from 'node:assert/strict'
import { test } from 'node:test'
import { readAmount } from '../../src/dough/amounts/amounts.js'
import { openFormula } from '../../src/dough/formula-sheet.js'
import { readRecipe } from '../../src/exchange/recipe/index.js'
import { randomOf, rounds } from '../random.js'
import { recipeLines } from './recipe-lines.js'
import { linesKeptApart } from './recipe-lines-kept-apart.js'
import { recipeTexts } from './recipe-texts.js'

/** Reads a text and looks at all that has to hold of any. */
function looked(text: string) {
  const read = readRecipe(text)
  const rows = text.replace(/^\ufeff/, '').split(/\r\n|\n|\r|\u2028|\u2029/)
  const rest = new Set(read.rest.map(r => r.row))
  const lines = new Set(read.lines.map(l => l.row))
  const what = text.slice(0, 2000)
  assert.equal(rest.size, read.rest.length, what)
  rows.forEach((row, i) => {
    assert.notEqual(rest.has(i + 1), lines.has(i + 1), `row ${i + 1} of ${what}`)
    if (row.trim() === '') assert.ok(rest.has(i + 1), what)
  })
  for (const { row, text } of read.rest) assert.equal(text, rows[row - 1])
  const inFormula = read.formula.stages.flatMap(s => s.lines)
  assert.equal(inFormula.length, read.lines.length)
  const byId = new Map(inFormula.map(line => [line.id, line]))
  for (const line of read.lines) {
    const { ingredient, amount, note } = byId.get(line.id)!
    assert.deepEqual([ingredient, amount, note], [line.ingredient, line.amount, line.note])
    assert.ok(rows[line.row - 1]!.includes(line.source) && line.source !== '', what)
    assert.match(ingredient, /\S/, what)
    if (amount === '') assert.ok(line.guesses.length > 0, what)
    else {
      const known = readAmount(amount)!
      assert.ok('expression' in known, `${amount}: ${'problem' in known ? known.problem : ''} in ${what}`)
    }
    for (const { message } of line.guesses) assert.match(message, /\.$/)
  }
  for (const { message } of read.problems) assert.match(message, /^[A-Z].*\.$/s)
  return read
}

const rowsKnown = [
  ...recipeLines.map(([text]) => text),
  ...linesKeptApart.map(([text]) => text),
  ...Object.values(recipeTexts).flatMap(text => text.split('\n')),
]

test('every row known here is among the lines or in the rest, and its amounts are understood', () => {
  looked(rowsKnown.join('\n'))
  for (const row of rowsKnown) looked(row)
})

test('recipes with letters lost, doubled and moved never throw, and every row is accounted for (seed 71)', () => {
  const random = randomOf(71)
  const signs = [
    '(',
    ')',
    ',',
    '.',
    '1',
    '½',
    '/',
    '-',
    '–',
    ' ',
    '\t',
    '%',
    ':',
    '’',
    'x',
    'g',
    '\n',
    ';',
    '°',
    '[',
    '|',
    '#',
    '*',
    '\u0301',
    '\ud83c',
    'à',
    'et',
    '00',
  ]
  const texts = [...Object.values(recipeTexts), ...rowsKnown]
  for (let i = 0; i < rounds(250); i++) {
    let text = random.pick(texts)
    for (let n = 1 + random.below(8); n > 0; n--) {
      const at = random.below(text.length + 1)
      const much = random.below(4)
      const gone = random.below(3) === 0 ? much : 0
      text = text.slice(0, at) + (random.below(2) ? random.pick(signs) : '') + text.slice(at + gone)
      if (random.below(6) === 0) text = text.slice(at) + text.slice(0, at)
    }
    looked(text)
  }
})

test('rows put together at random never throw, and every row is accounted for (seed 72)', () => {
  const random = randomOf(72)
  const words =
    '500 g kg ml cup cups tsp 1/2 ½ 2 1/4 a an one half dozen pinch of de d’ du flour water salt eau sel levain Levain: ( ) , ; : . - – to à and et or ou plus x × about environ % 28 °C minutes loaves eggs œufs sachet (7 g) each for pour dusting Mix Bake until | \t # ** 1,250 1.000 000 lukewarm tiède'.split(
      / /,
    )
  for (let i = 0; i < rounds(400); i++) {
    const rows = Array.from({ length: 1 + random.below(6) }, () =>
      Array.from({ length: random.below(14) }, () => random.pick(words)).join(random.below(5) ? ' ' : ''),
    )
    looked(rows.join('\n'))
  }
})

test('any characters at all never throw (seed 73)', () => {
  const random = randomOf(73)
  for (let i = 0; i < rounds(300); i++) {
    const codes = Array.from({ length: random.below(80) }, () => random.below(random.below(4) ? 128 : 65536))
    looked(String.fromCharCode(...codes))
  }
})

test('two thousand lines are read, each as itself', () => {
  const text = Array.from({ length: 2000 }, (_, i) => `${i + 1} g bread flour (sifted), lukewarm`).join('\n')
  const { lines } = looked(text)
  assert.deepEqual(
    lines.map(l => l.amount),
    Array.from({ length: 2000 }, (_, i) => `${i + 1} g`),
  )
})

for (const [what, piece] of [
  ['parentheses that open', '('],
  ['amounts in parentheses', '(1 g)'],
  ['amounts', '1 g '],
  ['amounts with commas', '1 g salt, '],
  ['digits in threes', '1 000 '],
  ['fractions', '1 1/2 '],
  ['ands', '1 and '],
  ['hyphens', 'a-'],
  ['points', '. '],
  ['bullets', '- '],
  ['words', 'heaped '],
  ['letters', 'a'],
  ['spaces', ' '],
  ['marks', '#*_=|>'],
  ['sentences', 'Mix 1 g. A '],
] as const)
  test(`a very long row of ${what} is taken as far as a row goes, and told`, () => {
    looked(piece.repeat(Math.floor(19_999 / piece.length)))
    const { problems } = looked(piece.repeat(30_000))
    assert.match(problems.map(p => p.message).join(), what === 'spaces' ? /No ingredient/ : /too long/)
  })

test('what was read opens as a sheet', () => {
  for (const text of Object.values(recipeTexts)) {
    const sheet = openFormula(readRecipe(text).formula)
    assert.deepEqual(
      sheet.problems.filter(p => p.severity === 'error').map(p => p.message),
      [],
    )
  }
})
