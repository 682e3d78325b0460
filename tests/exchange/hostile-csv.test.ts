import assert from 'node:assert/strict'
import { test } from 'node:test'
import Papa from 'papaparse'
import { readFormulas } from '../../src/exchange/index.js'
import { randomOf, rounds } from '../random.js'
import { told } from './notation.js'

const head = 'formula,stage,ingredient,amount,note,counts as,setting,grams,percent,whole dough percent'
const line = 'Loaf,Final dough,Bread flour,100%'

for (const [what, file, expected] of [
  ['an empty file', '', ['- error: This file is empty.']],
  ['a file of blanks', '\ufeff \r\n\t\n', ['- error: This file is empty.']],
  ['headings alone', head, ['- warning: This file has headings but no rows.']],
  [
    'a file without amounts',
    'stage,ingredient,price\nDough,Salt,1',
    [
      '- error: This file has no column called amount; its first row names “stage”, “ingredient”, “price”. Name the columns of the ingredients and their amounts so.',
    ],
  ],
  [
    'a picture',
    '\ufffdPNG\r\n\u001a\n\0\0\0\rIHDR',
    ['- error: This is not a text file, or not in UTF-8. Choose a CSV file, or save it as CSV UTF-8.'],
  ],
  [
    'a row without an ingredient',
    `${head}\n${line}\nLoaf,,,1941 g,total`,
    ['3 error: Row 3 names no ingredient and was left out. Give it one, or empty the row.'],
  ],
  [
    'a row that is too long',
    `${head}\n${line},,,,,,\nLoaf,Final dough,Water,"65%",soft,,,,,,to be mixed first`,
    [
      '3 error: Row 3 has 11 cells where the headings are 10, and was left out. A comma within a cell needs quotation marks around the cell.',
    ],
  ],
  [
    'a quotation mark never closed',
    `${head}\n${line}\nLoaf,Final dough,"Water,65%\n${line}`,
    [
      '3 error: Row 3 opens a quotation mark that is never closed, so that it and all that follows could not be read. Close it, or double it if it is part of the text.',
    ],
  ],
  [
    'a quotation mark out of place',
    `${head}\n${line}\nLoaf,Final dough,"Water"s,65%\nLoaf,Final dough,"Salt",2%`,
    [
      '3 error: Row 3 has a quotation mark out of place and could not be read. A cell that starts with one has to end with one, and those within are doubled.',
    ],
  ],
  [
    'a setting with an ingredient',
    `${head}\n${line}\nLoaf,Final dough,Salt,2%,,,ferments`,
    ['3 error: Row 3 has both an ingredient and a setting and was left out. Put them in two rows.'],
  ],
  [
    'a setting that wants a stage',
    `${head}\n${line}\nLoaf,,,yes,,,ferments`,
    ['3 error: Row 3 sets “ferments” without saying for which stage. Name the stage.'],
  ],
  [
    'a flour weight of a stage',
    `${head}\n${line}\nLoaf,Final dough,,500 g,,,flour weight`,
    ['3 error: Row 3 sets the flour weight of a stage. It is the formula’s own: leave the stage empty.'],
  ],
  [
    'a flour weight that is none',
    `${head}\n${line}\nLoaf,,,-5 g,,,flour weight`,
    ['3 error: Row 3 gives “-5 g” as flour weight. Write a weight, like 1000 g.'],
  ],
  [
    'maybe where only yes or no will do',
    `${head}\n${line}\nLoaf,Final dough,,maybe,,,ferments`,
    ['3 error: Row 3 says “maybe” where only yes or no tells whether Final dough ferments.'],
  ],
  [
    'a setting given twice',
    `${head}\n${line}\nLoaf,,,600 g,,,flour weight\nLoaf,,,700 g,,,Flour weight`,
    ['4 error: Row 4 sets “Flour weight” a second time. The first stands; take one away.'],
  ],
  [
    'a setting of a stage that is not there',
    `${head}\n${line}\nLoaf,Levian,,yes,,,ferments`,
    ['3 error: Row 3 sets “ferments” of “Levian”, but Loaf has no such stage.'],
  ],
  [
    'a base that is not there',
    `${head}\n${line}\nLoaf,Final dough,,Oats,,,base`,
    ['3 error: Row 3 marks “Oats” as base, but Final dough has no such line left to mark.'],
  ],
  [
    'an ingredient that counts as nothing known',
    `${head}\n${line},,flower`,
    [
      '2 warning: Row 2 says that Bread flour counts as “flower”, which is not understood. Write flour, water, salt, other, or starter and its hydration: starter 125%.',
    ],
  ],
  [
    'an ingredient that counts as two things',
    `${head}\n${line},,flour\n${line},,salt`,
    ['3 warning: Row 3 says that Bread flour counts as salt; an earlier row said otherwise and stands.'],
  ],
  [
    'columns nobody knows',
    `${head.replace('note', 'price')},note\n${line},9.99,,,,,,soft`,
    ['- warning: These columns are not known, or come twice, and were not read: “price”.'],
  ],
  [
    'a whole dough percentage alone',
    `${head}\nLoaf,Final dough,Salt,,,,,,,2`,
    ['2 warning: Row 2 gives only a whole dough percentage for Salt, which is not read. Give it an amount.'],
  ],
] as const)
  test(`${what}: a sentence says what to do`, () => {
    const { problems } = readFormulas(file)
    assert.deepEqual(told(problems), expected)
  })

test('an amount that cannot be understood is kept as typed', () => {
  const { formulas, problems } = readFormulas(`ingredient,amount\nSalt,a good pinch\nWater,=SUM(B2:B3)`)
  assert.deepEqual(
    formulas[0]!.stages[0]!.lines.map(l => l.amount),
    ['a good pinch', '=SUM(B2:B3)'],
  )
  assert.deepEqual(problems, [])
})

test('names out of a program’s own vocabulary are names like others', () => {
  const names = ['__proto__', 'constructor', 'toString', 'hasOwnProperty']
  const { formulas } = readFormulas(
    `formula,stage,ingredient,amount,setting\n${names.map(n => `${n},${n},${n},1%,\n${n},,,x,${n}`).join('\n')}`,
  )
  assert.deepEqual(
    formulas.map(f => [f.name, f.stages[0]!.lines[0]!.ingredient, f.keptSettings[0]!.setting]),
    names.map(n => [n, n, n]),
  )
})

const isBlank = (cells: readonly string[]) => cells.every(c => c.trim() === '')

test('of rows put together at random each is in a formula or a problem (seed 41)', () => {
  const random = randomOf(41)
  const cells: readonly (readonly string[])[] = [
    ['', 'A', 'B', 'a'],
    ['', 'Levain', 'Soaker', 'Final dough'],
    ['', '', 'Water', 'Bread flour', 'Levain', '=x', ' '],
    ['', '10%', '20', '1,500 g', '1,5', 'yes', 'no', 'Water', 'maybe', '700 g'],
    ['', '', 'a note', '"quoted", with\nbreaks'],
    ['', '', 'flour', 'starter 50%', 'nonsense'],
    ['', '', '', 'ferments', 'base', 'note', 'flour weight', 'loss', 'colour'],
    ['', '', '12'],
    ['', '', '12,5', 'x'],
    ['', '', '3'],
    ['', '', '', '', '', '', 'too much'],
  ]
  for (let i = 0; i < 500; i++) {
    const rows = Array.from({ length: random.below(14) }, () => cells.map(c => random.pick(c)))
    const settings = new Set<string>()
    const { formulas, problems } = readFormulas(Papa.unparse([head.split(','), ...rows]))
    const refused = new Set(
      problems.filter(p => p.severity === 'error' && p.where.row).map(p => p.where.row!),
    )
    const taken = { lines: 0, base: 0, ferments: 0, note: 0, weight: 0, kept: 0 }
    rows.forEach((cells, at) => {
      const [, , ingredient = '', , , , setting = ''] = cells
      if (isBlank(cells) || refused.has(at + 2)) return
      if (setting === '') taken.lines += ingredient.trim() === '' ? 0 : 1
      else if (setting === 'base') taken.base++
      else if (setting === 'ferments') taken.ferments++
      else if (setting === 'flour weight') taken.weight++
      else if (setting === 'note' && cells[1] === '') taken.note++
      else taken.kept++
      settings.add(setting)
    })
    const stages = formulas.flatMap(f => f.stages)
    const lines = stages.flatMap(s => s.lines)
    const found = {
      lines: lines.length,
      base: lines.filter(l => l.base).length,
      ferments: stages.filter(s => s.ferments !== undefined).length,
      note: formulas.filter(f => f.note).length,
      weight: formulas.filter(f => f.flourWeight !== 1000).length,
      kept:
        formulas.flatMap(f => f.keptSettings).length +
        formulas.filter(f => f.batch?.loss).length +
        stages.filter(s => s.loss).length,
    }
    assert.deepEqual(found, taken, `round ${i}: ${JSON.stringify(rows)}`)
  }
})

test('random text never throws, and every message is a sentence (seed 42)', () => {
  const random = randomOf(42)
  const pieces = [
    ',',
    ';',
    '\t',
    '"',
    '""',
    '\n',
    '\r\n',
    '\r',
    'ingredient',
    'amount',
    'stage',
    'setting',
    'base',
    'Water',
    '1,5',
    '%',
    "'",
    '=',
    '\0',
    '\ufeff',
    ' ',
    'sep=;',
    '\ud800',
    '🥖',
    '(',
  ]
  for (let i = 0; i < rounds(1700); i++) {
    const start = random.below(2) ? 'stage,ingredient,amount,setting\n' : ''
    const file = start + Array.from({ length: random.below(40) }, () => random.pick(pieces)).join('')
    const { formulas, problems } = readFormulas(file)
    assert.ok(formulas.length > 0 || problems.length > 0 || start !== '', JSON.stringify(file))
    for (const { message } of problems) assert.match(message, /^[A-Z].*\.$/s)
    for (const formula of formulas) assert.ok(formula.stages.length > 0)
  }
})
