import assert from 'node:assert/strict'
import { test } from 'node:test'
import { readStep } from '../../src/day/method/step-text.js'
import { type MethodRead, readMethod } from '../../src/exchange/steps/read-method.js'
import { randomOf } from '../random.js'
import { englishCases, englishStageCases, frenchCases, frenchStageCases } from './method-cases.js'

const english = [
  { name: 'Levain', lines: ['Ripe starter', 'Bread flour', 'Water'] },
  {
    name: 'Final dough',
    lines: ['Bread flour', 'Wholemeal spelt', 'Water', 'Salt', 'Levain', 'Olive oil'],
    flours: new Set([0, 1]),
  },
]
const french = [
  { name: 'Levain', lines: ['Levain chef', 'Farine T80', 'Eau'] },
  {
    name: 'Pâte finale',
    lines: ['Farine T65', 'Farine de seigle', 'Eau', 'Sel', 'Levain'],
    flours: new Set([0, 1]),
  },
]

const rowsOf = (text: string) => text.split('\n').map((row, at) => ({ row: at + 1, text: row }))

/** Steps in the notation of `method-cases.ts`. */
const said = ({ steps }: MethodRead, stages: readonly { name: string }[]): string[] =>
  steps.map(({ stage, step: { kind, does, text }, guesses }) => {
    const at = stage === stages.length - 1 ? '' : `@${stages[stage]!.name} `
    const codes = guesses.length > 0 ? ` ? ${guesses.map(({ code }) => code).join(' ')}` : ''
    return `${at}${kind} ${does}: ${text}${codes}`
  })

for (const [name, stages, cases] of [
  ['English', english.slice(1), englishCases],
  ['English, two stages', english, englishStageCases],
  ['French', french.slice(1), frenchCases],
  ['French, two stages', french, frenchStageCases],
] as const)
  for (const [words, ...steps] of cases)
    test(`${name}: ${words.replaceAll('\n', ' / ')}`, () => {
      assert.deepEqual(said(readMethod(rowsOf(words), stages), stages), steps)
    })

test('the words of a step are those of the recipe, and no word of the text is lost', () => {
  const words = (text: string) => text.match(/[\p{L}\d½¼¾]+/gu) ?? []
  for (const [stages, cases] of [
    [english, [...englishCases, ...englishStageCases]],
    [french, [...frenchCases, ...frenchStageCases]],
  ] as const)
    for (const [text] of cases) {
      const { steps, left } = readMethod(rowsOf(text), stages)
      const kept = [...steps.map(({ source }) => source), ...left.map(row => row.text)].flatMap(words)
      const leads = /^(?:Step|\d+)$/ // numbers of a list say nothing
      for (const word of words(text))
        assert.ok(kept.includes(word) || leads.test(word), `${word} of “${text}”`)
    }
})

test('what a step comes to is understood as a step is, and the lines it adds are lines of its stage', () => {
  for (const [stages, cases] of [
    [english, [...englishCases, ...englishStageCases]],
    [french, [...frenchCases, ...frenchStageCases]],
  ] as const)
    for (const [text] of cases)
      for (const { step, stage } of readMethod(rowsOf(text), stages).steps) {
        const { notRead, adds } = readStep(step.text)
        assert.deepEqual(notRead, [], `${step.text} of “${text}”`)
        for (const name of adds) assert.ok(stages[stage]!.lines.includes(name), `${name} of “${text}”`)
      }
})

test('of two lines of one name the second is added where the text says the rest of it', () => {
  const stages = [{ name: 'Dough', lines: ['Bread flour', 'Water', 'Salt', 'Water', 'Honey'] }]
  const { steps } = readMethod(
    rowsOf(
      'Mix the flour and most of the water. Rest 40 minutes. Work in the remaining water and the honey.',
    ),
    stages,
  )
  assert.deepEqual(
    steps.map(({ step }) => `${step.does}: ${step.text}`),
    ['Mix: ', 'Rest: 40 min', 'Add: adds Water (2), Honey'],
  )
})

test('a word that may mean two lines adds neither, and asks', () => {
  const stages = [{ name: 'Dough', lines: ['Bread flour', 'Whole milk', 'Milk powder', 'Salt'] }]
  const { steps } = readMethod(rowsOf('Mix the flour and the salt.\nAdd the milk.'), stages)
  assert.deepEqual(
    steps.map(({ step: { text }, guesses }) => [text, guesses.map(({ code }) => code)]),
    [
      ['', []],
      ['', ['whichLine']],
    ],
  )
})

test('a soaker’s steps stand with the soaker, and a heading sends what follows to its stage', () => {
  const stages = [
    { name: 'Seed soaker', lines: ['Sunflower seeds', 'Linseed', 'Boiling water'] },
    { name: 'Final dough', lines: ['Bread flour', 'Water', 'Seed soaker', 'Salt'] },
  ]
  const text =
    'Pour the boiling water over the seeds and leave overnight.\n## Final dough\nMix 5 min.\nRest 30 min.'
  const { steps, left } = readMethod(rowsOf(text), stages)
  assert.deepEqual(
    steps.map(({ stage, step: { does, text: of } }) => `${stage} ${does}: ${of}`),
    ['0 Pour: ', '0 Rest: 8–12 h', '1 Mix: 5 min', '1 Rest: 30 min'],
  )
  assert.deepEqual(left, [{ row: 2, text: '## Final dough' }])
})

test('the sentence of a recipe is the note of its step where it says more than the step', () => {
  const { steps } = readMethod(
    rowsOf('Rest 30 minutes. Bulk 4 hours, until grown by half. It should wobble.'),
    english,
  )
  assert.deepEqual(
    steps.map(({ source, step: { note } }) => [source, note]),
    [
      ['Rest 30 minutes.', ''],
      [
        'Bulk 4 hours, until grown by half. It should wobble.',
        'Bulk 4 hours, until grown by half. It should wobble.',
      ],
    ],
  )
})

test('seed 71: whatever words a method is made of, it is read, and each step is one', () => {
  const { pick, below } = randomOf(71)
  const pieces = [...englishCases, ...frenchCases].flatMap(([text]) => text.split(/(?<=[\s,.:])/))
  const odd = [
    '\n',
    '\n\n',
    '½',
    '4 × ',
    '°',
    ' °F',
    '(',
    '::',
    '1. ',
    '**',
    '\u00a0',
    '\ud800',
    'x'.repeat(300),
    '-',
    '0 min',
    '9e9 h',
    '#',
  ]
  for (let i = 0; i < 130; i++) {
    const text = Array.from({ length: below(60) }, () => pick(below(4) ? pieces : odd)).join(pick(['', ' ']))
    const { steps } = readMethod(rowsOf(text), english)
    for (const { step } of steps) {
      assert.deepEqual(readStep(step.text).notRead, [], `${step.text} of ${JSON.stringify(text)}`)
      assert.notEqual(step.does, '')
    }
  }
})
