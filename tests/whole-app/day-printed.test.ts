import assert from 'node:assert/strict'
import { before, test } from 'node:test'
import { printedBy } from './printed.js'

interface Printed {
  readonly what: 'order' | 'handout of the day' | 'handout of one bread'
  readonly paper: 'a4' | 'letter'
  readonly pages: number
  readonly papers: readonly { readonly text: string; readonly stages: number }[] // of a handout
  readonly foot: string
}

let all: readonly Printed[] = []
const of = (what: Printed['what']): readonly Printed[] => {
  const found = all.filter(one => one.what === what)
  assert.deepEqual(
    found.map(({ paper }) => paper),
    ['a4', 'letter'],
  )
  return found
}

before(async () => {
  all = await printedBy('tests/whole-app/day-printed.mjs')
})

test('what a day of three breads needs is printed on two pages', () => {
  for (const { paper, pages } of of('order')) assert.equal(pages, 2, `${pages} pages on ${paper}`)
})

test('the handout of one bread is two pages at most, and the bread begins on the first', () => {
  for (const { paper, pages, papers } of of('handout of one bread')) {
    assert.ok(pages <= 2, `${pages} pages on ${paper}`)
    assert.equal(pages, papers.length, paper)
    const [first] = papers
    assert.match(first!.text, /^Saturday oven, Brackwater Mill For 8 people Two-build rye Each: /)
    assert.ok(first!.stages >= 2, `${first!.stages} stages on the first page on ${paper}`)
  }
})

test('each page of a day’s handout begins with a heading, and has its class, date and number at its foot', () => {
  for (const { paper, pages, papers, foot } of of('handout of the day')) {
    assert.equal(pages, papers.length, paper)
    assert.equal(foot, 'Friday class · Saturday, December 5')
    for (const { text } of papers)
      assert.match(
        text,
        /^(?:Friday class|Mill wheat|Poolish baguette|Two-build rye|Before you bake: safety and allergens)/,
      )
    const mind = papers.filter(({ text }) => text.includes('Before you bake: safety and allergens'))
    assert.equal(mind.length, 1)
    assert.match(mind[0]!.text, /Allergens, of .* Mill wheat: wheat in .* Two-build rye: wheat in /)
  }
})
