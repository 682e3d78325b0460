import assert from 'node:assert/strict'
import { readdirSync, readFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { test } from 'node:test'
import { methodCautionSentences } from '../../src/day/method/words.js'
import { feedingSentences } from '../../src/day/mixing/feeding-words.js'
import { mixingSentences } from '../../src/day/mixing/words.js'
import { cautionSentences, householdSentences } from '../../src/dough/about/words.js'
import { expressionSentences } from '../../src/dough/amounts/expression-words.js'
import { jottingSentences } from '../../src/dough/amounts/jotting-words.js'
import { amountSentences } from '../../src/dough/amounts/words.js'
import { rareSentences } from '../../src/dough/cells/rare-words.js'
import { cellSentences } from '../../src/dough/cells/words.js'
import { documentSentences } from '../../src/dough/document/batch-words.js'
import { daySentences } from '../../src/dough/document/day-words.js'
import { buildSentences } from '../../src/dough/edits/builds/words.js'
import { clearedSentences } from '../../src/dough/edits/cleared/words.js'
import { dayEditSentences } from '../../src/dough/edits/fetched/day-edit-words.js'
import { fetchedEditSentences } from '../../src/dough/edits/fetched/fetched-words.js'
import { rebaseSentences } from '../../src/dough/edits/fetched/rebase-words.js'
import { editSentences } from '../../src/dough/edits/words.js'
import { labelSentences } from '../../src/dough/label/words.js'
import { guessSentences } from '../../src/dough/lexicon/guess-words.js'
import { allTakenSentences } from '../../src/dough/outline/all-taken-words.js'
import { outlineSentences } from '../../src/dough/outline/words.js'
import { remarkSentences } from '../../src/dough/remarks/remark-words.js'
import { figureSentences } from '../../src/dough/sheet/figure-words.js'
import { sheetSentences } from '../../src/dough/sheet/words.js'
import { arrivingSentences } from '../../src/exchange/arriving/words.js'
import { csvSentences } from '../../src/exchange/csv/words.js'
import { dataSentences } from '../../src/exchange/data/words.js'
import { lineSentences, recipeSentences, restSentences } from '../../src/exchange/recipe/words.js'
import { stepReasonSentences } from '../../src/exchange/steps/words.js'
import { tableSentences } from '../../src/exchange/tables/words.js'
import { textSentences } from '../../src/exchange/text/words.js'
import { copySentences } from '../../src/storage/outside/words.js'
import { damageSentences } from '../../src/storage/record/words.js'
import { storageSentences } from '../../src/storage/words.js'
import { decisionsIn, type Finding, sentencesIn } from './sentences.js'

const allSentences: Readonly<Record<string, object>> = {
  allTakenSentences,
  amountSentences,
  arrivingSentences,
  buildSentences,
  cautionSentences,
  cellSentences,
  clearedSentences,
  copySentences,
  csvSentences,
  damageSentences,
  dataSentences,
  dayEditSentences,
  daySentences,
  documentSentences,
  editSentences,
  expressionSentences,
  feedingSentences,
  fetchedEditSentences,
  figureSentences,
  guessSentences,
  householdSentences,
  jottingSentences,
  labelSentences,
  lineSentences,
  methodCautionSentences,
  mixingSentences,
  outlineSentences,
  rareSentences,
  rebaseSentences,
  recipeSentences,
  remarkSentences,
  restSentences,
  sheetSentences,
  stepReasonSentences,
  storageSentences,
  tableSentences,
  textSentences,
}

const files = ['src', 'components'].flatMap(house =>
  readdirSync(house, { recursive: true, encoding: 'utf8' })
    .filter(file => file.endsWith('.ts'))
    .map(file => join(house, file)),
)
const isWords = (file: string) => /(?:^|[/-])words\.ts$/.test(file)
const code = new Map(files.map(file => [file, readFileSync(file, 'utf8')]))

/** What is found outside words, by room. */
function findings(look: (code: string) => Finding[]): Map<string, string[]> {
  const rooms = new Map<string, string[]>()
  for (const file of files.filter(one => !isWords(one)))
    for (const { line, text } of look(code.get(file)!)) {
      const room = dirname(file)
      rooms.set(room, [...(rooms.get(room) ?? []), `${file}:${line}: ${text}`])
    }
  return rooms
}

const sentences = findings(sentencesIn)
const decisions = findings(decisionsIn)

test('the sentences of a room lie in its words', () => {
  assert.deepEqual([...sentences.values()].flat(), [])
})

test('nothing is decided by the text of a sentence', () => {
  assert.deepEqual([...decisions.values()].flat(), [])
})

test('a code stands for one sentence in the whole house', () => {
  const exported = [...code.values()].flatMap(text =>
    [...text.matchAll(/export const (\w+): Sentences</g)].map(([, name]) => name!),
  )
  assert.deepEqual(exported.toSorted(), Object.keys(allSentences))
  const codes = Object.values(allSentences).flatMap(Object.keys)
  assert.deepEqual(
    codes.filter((one, i) => codes.indexOf(one) !== i),
    [],
  )
})

for (const [title, text, found] of [
  ['a sentence in quotes', "say('Give it a weight.')", ['Give it a weight.']],
  ['a sentence with figures', `say(\`\${name} has \${n} lines of \${kind('x')}.\`)`, ['… has … lines of ….']],
  [
    'a sentence within another template',
    `a(\`x \${b ? \`Only one of them gives.\` : 0}\`)`,
    ['Only one of them gives.'],
  ],
  ['a sentence over two rows', "a(\n'There is nothing here.')", ['There is nothing here.']],
  [
    'sentences in markup and in its attributes',
    `html\`<p title="What is weighed of it.">It is \${a} of \${b}!</p>\``,
    ['It is … of …!', 'What is weighed of it.'],
  ],
  ['a sentence behind a pattern', "a(/'/.test(b), 'There is nothing here.')", ['There is nothing here.']],
  ['a sentence behind a division', "a(b / 2, 'It is / was not here.')", ['It is / was not here.']],
] as const)
  test(`${title} is found`, () => {
    assert.deepEqual(
      sentencesIn(text).map(f => f.text),
      found,
    )
  })

for (const [title, text] of [
  ['a comment', '/** Give it a weight of grams. */ // Give it a weight of grams.\nconst a = 1'],
  ['a few words', "a('Final dough', 'of the base', 'No amount yet', 'Yes, it is')"],
  ['a code', "tell({ code: 'stageNotTaken' })"],
  ['what a program is told', `throw new RangeError(\`There is no line \${id} in it.\`)`],
  ['a pattern', 'a.search(/There is nothing here./)'],
] as const)
  test(`${title} is no sentence`, () => {
    assert.deepEqual(sentencesIn(text), [])
  })

for (const text of [
  'if (problem.message === other.message) return',
  "p.message.startsWith('The batch')",
  'told.has(problem!.message)',
  '/circle/.test(error.message)',
  'switch (problem.message) {}',
  "transaction.label.replace(/^Delete /, '')",
  "request.refusal !== 'x'",
  'if (wanted === found?.sentence) return',
  "const { message } = problem\nmessage.includes('gone')",
  "line.startsWith('Not confirmed in ')",
  "if (said === 'Nothing is written.') return",
  '/^Row \\d+ has/.exec(why)',
  "switch (why) {\n  case 'There is none':\n}",
] as const)
  test(`${text.split('\n').at(-1)} decides by a sentence`, () => {
    assert.equal(decisionsIn(text).length, 1)
  })

for (const text of [
  "problem.code === 'batchNotWorkedOut'",
  `html\`<li>\${problem.message}</li>\``,
  'return error instanceof Refusal ? error.message : undefined',
  'if (problem.message === undefined) return',
  "if (label === '') return",
  'say(problem.message)',
  "name.startsWith('unit:')",
  "stage === 'Levain'",
] as const)
  test(`${text} does not`, () => {
    assert.deepEqual(decisionsIn(text), [])
  })

test('what is found is shown with its row', () => {
  assert.deepEqual(sentencesIn("a\n\nb('Give it a weight.')"), [{ line: 3, text: 'Give it a weight.' }])
  assert.deepEqual(decisionsIn("a\n\nif (p.message === 'x') b"), [
    { line: 3, text: "if (p.message === 'x') b" },
  ])
})
