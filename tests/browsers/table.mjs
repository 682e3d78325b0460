/** The table of DEVELOPERS.md that says what of Tarebook was tried in which engine, made of what the tests gave. */
import { readFileSync, writeFileSync } from 'node:fs'
import { log } from './say.mjs'

/** @import { Count } from '../node.mjs' */

const whole = (/** @type {string} */ file, title = '') => `tests/whole-app/${file}.browser.test.ts › ${title}`

/** @type {readonly (readonly [capability: string, tests: string[]])[]} */
const capabilities = [
  [
    'type an amount; the readings follow',
    [whole('by-hand', 'an amount'), whole('first-job', 'shows its true')],
  ],
  ['undo, redo', [whole('by-hand', 'an amount'), whole('first-job', 'comes back by undo')]],
  ['go from cell to cell, move a line', [whole('by-hand', 'arrows go')]],
  ['copy, cut and paste blocks of cells', [whole('blocks')]],
  ['hold a reading', [whole('every-number', 'holds true')]],
  ['batch and keep-back', [whole('every-number', 'makes six')]],
  ['working', [whole('every-number', 'shows how')]],
  ['jotting', [whole('every-number', 'works out a jotting')]],
  ['kept state, beside, write in grams', [whole('every-number', 'keeps a state')]],
  ['plan a day; hold a time, take advice', [whole('day-planned')]],
  ['every way in', [whole('arrive-and-leave'), whole('restore-a-workbook')]],
  ['every way out', [whole('leave-each-way'), whole('first-job', 'goes out')]],
  ['larder', [whole('by-hand', 'a new ingredient')]],
  ['load anew', [whole('first-job', 'is still there')]],
  ['what is typed and not entered, kept', [whole('typed-and-left', 'stands in its field again: a cell')]],
  ['second tab', [whole('by-hand', 'a second tab')]],
  ['without a network', [whole('by-hand', 'it opens and computes')]],
  ['phone', [whole('by-hand', 'all is at hand')]],
  ['dark', [whole('by-hand', 'it is dark')]],
  ['print a card', ['tests/screens/card-printed.browser.test.ts › is black on white']],
  ['all browser tests', ['tests/']],
]

/** Whether a file holds something of the table besides all that there is. */
export const isTried = (/** @type {string} */ file) =>
  capabilities.some(([, tests]) => tests.some(each => each.startsWith(file)))

/** Whether a case, by its full title, is one that a row of the table goes by: no engine leaves it out. */
export const isNamed = (/** @type {string} */ title) =>
  capabilities.some(([, tests]) =>
    tests.some(each => {
      const [file = '', name] = each.split(' › ')
      return name !== undefined && title.startsWith(file) && title.includes(` ${name}`)
    }),
  )

const path = 'DEVELOPERS.md'
const [begin, end] = ['<!-- engines -->', '<!-- /engines -->']

/**
 * @param {string[]} engines
 * @param {Count[]} counts of each of them
 */
function tableOf(engines, counts) {
  const everything = new Set(counts.flatMap(({ results }) => [...results.keys()]))
  const rows = capabilities.map(([capability, tests]) => {
    const wanted = [...everything].filter(
      test => tests.some(beginning => test.startsWith(beginning)) && !test.includes('.chromium.'),
    )
    const cells = counts.map(({ results }) =>
      wanted.length > 0 && wanted.every(test => results.get(test)) ? 'yes' : '–',
    )
    return [capability, ...cells]
  })
  const lines = [['', ...engines], ['---', ...engines.map(() => '---')], ...rows]
  return lines.map(cells => `| ${cells.join(' | ')} |`).join('\n')
}

/**
 * @param {string[]} engines
 * @param {Count[]} counts of each of them, of all their tests
 * @param {boolean} mayWrite
 * @returns {boolean} whether the table stands as it is to be, now
 */
export function tableStands(engines, counts, mayWrite) {
  const text = readFileSync(path, 'utf8')
  const [from, to] = [text.indexOf(begin) + begin.length, text.indexOf(end)]
  const table = `\n${tableOf(engines, counts)}\n`
  if (text.slice(from, to) === table) return true
  if (mayWrite) writeFileSync(path, text.slice(0, from) + table + text.slice(to))
  else log(`\n✗ ${path} has another table of engines than the tests give; --fix writes it:${table}`)
  return mayWrite
}
