import assert from 'node:assert/strict'
import { test } from 'node:test'
import Papa from 'papaparse'
import { jottingNameAsKept } from '../../src/dough/amounts/jotting-names.js'
import { type Formula, newId } from '../../src/dough/document/formula.js'
import { readFormulas, writeFormulas } from '../../src/exchange/index.js'
import { plainCell, safeCell } from '../../src/exchange/values/safe-cell.js'
import { randomOf } from '../random.js'

/** What OWASP names as starts of a formula ("CSV Injection"), line feed included, and what programs also take for one. */
const starts = [
  '=',
  '+',
  '-',
  '@',
  '\t',
  '\r',
  '\n',
  '＝',
  '＋',
  '－',
  '＠',
  ' =',
  '\u00a0@',
  '\r\n+',
  '\n\t-',
  "'=",
  ';=',
  'x;@',
  'x\n=',
  'x\t+',
  'x\r-',
]
const payloads = ['1+1', 'cmd|x', 'HYPERLINK("http://mill.example")', '']

/** Every text that a formula file holds, each with the formula that has it there. */
const fields: readonly (readonly [string, (text: string) => Partial<Formula>])[] = [
  ['name of the formula', name => ({ name })],
  ['note of the formula', note => ({ note })],
  ['name of a stage', name => ({ stages: [{ id: 's', name, lines: [] }] })],
  ['ingredient', ingredient => inLine({ ingredient })],
  ['amount', amount => inLine({ amount })],
  ['note of a line', note => inLine({ note })],
  ['ingredient that is base', ingredient => inLine({ ingredient, base: true })],
  [
    'ingredient of a meaning',
    ingredient => ({ ...inLine({ ingredient }), meanings: [{ ingredient, countsAs: { kind: 'salt' } }] }),
  ],
  [
    'ingredient that gives',
    ingredient => ({ ...inLine({ ingredient }), holds: [{ reading: 'salt', value: 0.02, line: 'l' }] }),
  ],
  ['ingredient all of which is used', ingredient => ({ batch: { make: 'all of', ingredient, grams: 300 } })],
  [
    'name of a jotting',
    typed => ({ jottings: [{ id: 'j', name: jottingNameAsKept(`${typed} a`), text: '20 g' }] }),
  ],
  ['text of a jotting', text => ({ jottings: [{ id: 'j', name: 'per_loaf', text }] })],
  ['stage of a kept setting', stage => inSetting({ stage })],
  ['name of a kept setting', setting => inSetting({ setting })],
  ['value of a kept setting', amount => inSetting({ amount })],
  ['note of a kept setting', note => inSetting({ note })],
  ['ingredient of a kept setting', ingredient => inSetting({ setting: 'hold colour', ingredient })],
]

function inLine(fields: object): Partial<Formula> {
  const line = { id: 'l', ingredient: 'Bread flour', amount: '100%', note: '', ...fields }
  return { stages: [{ id: 's', name: 'Final dough', lines: [line] }] }
}

function inSetting(fields: object): Partial<Formula> {
  return { keptSettings: [{ stage: '', setting: 'colour', amount: 'brown', note: '', ...fields }] }
}

const plain: Formula = {
  id: newId(),
  name: 'Loaf',
  note: '',
  flourWeight: 1000,
  stages: inLine({}).stages!,
  meanings: [],
  keptSettings: [],
}

for (const [field, having] of fields)
  test(`no start of a formula leaves as the ${field}, and what was written is read again`, () => {
    for (const start of starts)
      for (const payload of payloads) {
        const written = writeFormulas([{ ...plain, ...having(start + payload) }])
        for (const cells of Papa.parse<string[]>(written).data)
          for (const cell of cells)
            for (const part of [cell, ...cell.split(/[;\t\r\n]/)])
              assert.doesNotMatch(part, /^\s*[=+\-@＝＋－＠]|^[\t\r\n]/, JSON.stringify(start + payload))
        // a name of blanks alone is no name, so nothing need come back of it
        if ((start + payload).trim() === '') continue
        assert.equal(writeFormulas(readFormulas(written).formulas), written, JSON.stringify(start + payload))
      }
  })

test('a cell made harmless is taken back to the letter (seed 81)', () => {
  const random = randomOf(81)
  const letters = ['=', '+', '-', '@', '\t', '\r', '\n', ' ', ';', "'", 'a', '＝', '\u00a0']
  for (let i = 0; i < 20_000; i++) {
    const text = Array.from({ length: random.below(7) }, () => random.pick(letters)).join('')
    const safe = safeCell(text)
    assert.equal(plainCell(safe), text, JSON.stringify(text))
    for (const part of [safe, ...safe.split(/[;\t\r\n]/)])
      assert.doesNotMatch(part, /^\s*[=+\-@＝＋－＠]|^[\t\r\n]/, JSON.stringify(text))
  }
})
