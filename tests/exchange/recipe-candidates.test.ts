import assert from 'node:assert/strict'
import { test } from 'node:test'
import { larderOf } from '../../src/dough/document/larder.js'
import { usualLarder } from '../../src/dough/larder/usual-larder.js'
import { Candidates } from '../../src/exchange/recipe/candidates.js'
import { bestWay } from '../../src/exchange/recipe/neighbours.js'
import { rowOf } from '../../src/exchange/recipe/recipe-row.js'

/** What each row of a text is taken for, and why, the rows without text left out. */
function read(text: string) {
  const all = text.split('\n')
  const filled = all.flatMap((row, at) => (row.trim() === '' ? [] : [at]))
  const apart = filled.map((at, i) => i === 0 || filled[i - 1]! < at - 1)
  const rows = filled.map(at => rowOf(all[at]!))
  const candidates = new Candidates(larderOf(usualLarder), rows, apart).all()
  return { candidates, chosen: bestWay(candidates, apart) }
}

/** Texts, and for each row the kind it is taken for with a piece of the evidence. */
const texts: readonly (readonly [text: string, ...rows: string[]])[] = [
  ['Mill rye\n\n500 g rye flour', 'title: first row', 'line: amounts of ingredients'],
  ['# Levain\n50 g water', 'stage: marked as a heading', 'line: amounts of ingredients'],
  ['500 g flour\n\nPoolish\n50 g water', 'line: amounts', 'stage: names a kind of stage', 'line: amounts'],
  [
    'Rye sour\n50 g water\n\nDough\n50 g rye sour',
    'stage: named by a line below',
    'line:',
    'stage:',
    'line:',
  ],
  ['Soaker: 1 lb\n8 oz water', 'stage: unlike the row below', 'line: amounts'],
  ['Soaker: 1 lb\nWater: 8 oz', 'line: amounts', 'line: amounts'],
  ['500 g flour\nMethod\n20 g salt', 'line: amounts', 'method: heading of a part', 'step:'],
  ['Water\n350 g', 'line: ingredients the larder knows', 'amount: only an amount'],
  ['500 g flour\nnigella\n350 g', 'line: amounts', 'line: a name beside lines', 'amount: only an amount'],
  ['500 g flour\n\n350 g\n10 g salt', 'line: amounts', 'unknown:', 'line: amounts'],
  ['500 g flour\nreserved', 'line: amounts', 'note: only what is done to it'],
  ['Bake for 40 minutes.', 'step: a verb first'],
  ['Mix 500 g flour with 10 g salt.', 'line: ingredients in a sentence'],
  ['Serves 4', 'fact: a fact with its figure'],
]
for (const [text, ...rows] of texts)
  test(`${JSON.stringify(text)} is read as ${rows.map(row => row.split(':')[0]).join(', ')}`, () => {
    const { chosen } = read(text)
    assert.equal(chosen.length, rows.length)
    chosen.forEach(({ kind, reasons }, i) => {
      const [expected, evidence = ''] = rows[i]!.split(':')
      assert.equal(kind, expected)
      assert.ok(reasons.join().includes(evidence.trim()), reasons.join())
    })
  })

test('a row by itself can be several things, which its neighbours decide between', () => {
  const kinds = (text: string) =>
    read(text)
      .candidates.at(-1)!
      .map(({ kind }) => kind)
  assert.deepEqual(new Set(kinds('500 g flour\n\nTopping')), new Set(['stage', 'line', 'note', 'unknown']))
})
