// work is counted from here on
import assert from 'node:assert/strict'
import { test } from 'node:test'
import { arrive } from '../../src/exchange/arriving/arrive.js'
import { growsInStep, workOf } from '../work.js'

/** Texts of nothing but one piece, whatever it is read as. */
const pieces = {
  halves: '½',
  slashes: '1/',
  'one long word': 'a',
  digits: '1',
  'numbers with gaps': '1 000 ',
  'brackets that open': '(',
  'brackets that close': ')',
  'a bracket behind each number': '1 (',
  'line breaks': '\n',
  'rows of halves': `${'½'.repeat(200)}\n`,
  'rows of slashes': `${'1/'.repeat(200)}\n`,
  'rows of numbers': `${'1 2 3 '.repeat(80)}\n`,
  'rows of brackets': `${'('.repeat(300)}\n`,
  'rows of words': `${'mix 20 g of salt with 1 1/2 cups water or more then '.repeat(8)}\n`,
  'rows of joins': `${'and 1 g or 2 oz / '.repeat(20)}\n`,
  'rows of blanks': `a${' '.repeat(300)}\n`,
  'rows with commas': 'Flour,500 g,"70,5"\n',
  'short rows with commas': 'a,1\n',
  'rows with tabs': 'Flour\t500 g\t70.5\n',
  'rows with gaps': 'Flour    500 g    70.5\n',
  'rows with strokes': '| Flour | 500 g | 70.5 |\n',
  'rows of cells': `${'a,'.repeat(60)}1\n`,
  'names on rows of their own': 'Levain\n20 g levain\n\n',
}
const textOf = (piece: string, length: number): string =>
  piece.repeat(Math.ceil(length / piece.length)).slice(0, length)

for (const [what, piece] of Object.entries(pieces))
  test(`the work of reading a text of nothing but ${what} grows no faster than the text`, () =>
    growsInStep(length => void arrive(textOf(piece, length)), 3000))

test('no text makes much more work than another of its length', () => {
  const length = 4000
  const plain = workOf(() => void arrive(textOf('500 g bread flour, sifted\n', length)))
  for (const [what, piece] of Object.entries(pieces)) {
    const work = workOf(() => void arrive(textOf(piece, length)))
    assert.ok(work <= 5 * plain, `${what}: ${work} steps, a list ${plain}`)
  }
})

test('a text longer than any recipe costs less than one that is read', () => {
  const read = workOf(() => void arrive(textOf('500 g bread flour, sifted\n', 20_000)))
  for (const piece of ['½', '1/', '1 g\n'])
    assert.ok(workOf(() => void arrive(textOf(piece, 100_000))) < read, piece)
})
