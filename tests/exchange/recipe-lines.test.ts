import assert from 'node:assert/strict'
import { test } from 'node:test'
import { readAmount } from '../../src/dough/amounts/amounts.js'
import { readRecipe } from '../../src/exchange/recipe/index.js'
import { inWords } from './notation.js'
import { recipeLines } from './recipe-lines.js'
import { linesKeptApart } from './recipe-lines-kept-apart.js'
import { moreLinesKeptApart } from './recipe-lines-kept-apart-more.js'
import { ofTheDough } from './recipe-lines-purposes.js'

const tidy = (text: string) => text.replace(/ +/g, ' ').trim()

for (const [text, ...read] of recipeLines)
  test(`${JSON.stringify(text)} is read as ${read.length === 0 ? 'no line' : read.join(' · ')}`, () => {
    const { lines } = readRecipe(text)
    const expected = read.map(line => /^(.*?)(?: \? (.*?))?(?: = (.*))?$/.exec(line)!.slice(1))
    assert.deepEqual(
      lines.map(l => tidy(`${l.ingredient} | ${l.amount} | ${l.note}`)),
      expected.map(([line = '']) => tidy(line)),
    )
    lines.forEach(({ amount, guesses, said, source }, i) => {
      const [, guess, certain] = expected[i]!
      if (guess === undefined)
        assert.doesNotMatch(inWords(guesses), /range|count as|type an? |Also given|Converted|as most shops/)
      else assert.ok(inWords(guesses).includes(guess), inWords(guesses) || 'nothing is guessed')
      assert.ok(inWords(said).includes(certain ?? ''), inWords(said) || 'nothing is said')
      if (certain === undefined) assert.deepEqual(said, [])
      assert.ok(text.includes(source), source)
      if (amount !== '') assert.ok('expression' in readAmount(amount)!, amount)
      else assert.ok(guesses.length > 0)
    })
  })

for (const text of ofTheDough)
  test(`${JSON.stringify(text)} is not asked to be left out`, () => {
    const guesses = readRecipe(text).lines.flatMap(line => line.guesses)
    assert.doesNotMatch(inWords(guesses), /leave it out/)
  })

/** The number of an amount worked out, so that `1 1/4 cup` is `1.25 cup`. */
const inDecimals = (amount: string): string =>
  amount.replace(
    /^(?:(\d+) )?(\d+)\/(\d+)|^[\d.]+/,
    (number, whole = '0', over?: string, under = '1') =>
      `${over === undefined ? Number(number) : Number(whole) + Number(over) / Number(under)}`,
  )

for (const [which, keptApart] of [
  ['lines', linesKeptApart],
  ['more lines', moreLinesKeptApart],
] as const)
  test(`of ${which} kept apart from its making at least 95 of 100 amounts are right, and as many notes`, () => {
    let [right, all, noted, notes] = [0, 0, 0, 0]
    const wrong: string[] = []
    for (const [text, ...expected] of keptApart) {
      const { lines } = readRecipe(text)
      all += Math.max(expected.length, lines.length)
      const found = expected.filter(([word, amount], i) => {
        const line = lines[i]
        return line?.ingredient.toLowerCase().includes(word) && inDecimals(line.amount) === amount
      })
      right += found.length
      for (const [i, [, , note]] of expected.entries()) {
        if (note === undefined) continue
        notes += 1
        if (lines[i]?.note.includes(note)) noted += 1
      }
      if (found.length < expected.length)
        wrong.push(`${text} → ${lines.map(l => `${l.ingredient} ${l.amount}`).join(', ')}`)
    }
    assert.ok(keptApart.length >= 40)
    assert.ok(right / all >= 0.95, `${right} of ${all}: ${wrong.join('; ')}`)
    assert.ok(noted >= 0.95 * notes, `${noted} of ${notes} notes`)
  })
