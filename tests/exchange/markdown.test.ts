import assert from 'node:assert/strict'
import { test } from 'node:test'
import { openFormula } from '../../src/dough/formula-sheet.js'
import { writeHtml } from '../../src/exchange/text/html-table.js'
import { writeMarkdown } from '../../src/exchange/text/markdown.js'
import { formulaOf } from '../dough/notation.js'
import { randomOf } from '../random.js'
import { anyFormula } from './any-formula.js'
import { text } from './notation.js'

const mill = {
  ...formulaOf(`
    Levain:
      Ripe starter = 40 g
      Bread flour = 100 g
      Water = 80 g
    Final dough:
      Bread flour = 1000 g
      Water = 69%
      Salt = 2 tsp
      Levain = 210 g
  `),
  name: 'Mill *wheat*',
  note: 'Mix.\nFold twice.\n\n- shape | bake <hot>',
}

test('a formula is written as Markdown with a table for each stage', () => {
  assert.equal(
    writeMarkdown(openFormula(mill)),
    `${text`
      # Mill \\*wheat\\*

      Mix.
      Fold twice.

      \\- shape &#124; bake &lt;hot&gt;

      ## Levain

      220 g as written, 83.33 % hydration, ferments

      | Ingredient | % | Grams | Note |
      | --- | ---: | ---: | --- |
      | Ripe starter | 40.0 | 40 | |
      | Bread flour | 100.0 | 100 | |
      | Water | 80.0 | 80 | |

      ## Final dough

      1912 g as written, 70.47 % hydration

      | Ingredient | % | Grams | As typed | Note |
      | --- | ---: | ---: | --- | --- |
      | Bread flour | 100.0 | 1000 | | |
      | Water | 69.0 | 690 | 69% | |
      | Salt | 1.2 | 12 | 2 tsp | |
      | Levain | 21.0 | 210 | | |

      ## Readings

      | Reading | As written |
      | --- | ---: |
      | True hydration | 70.47 % |
      | Listed hydration | 69 % |
      | Moisture hydration | 70.47 % |
      | Salt | 1.08 % |
      | Prefermented flour | 10.28 % |
      | Levain on flour | 21 % |
      | Total flour | 1114.5 g |
      | Total water | 785.5 g |
      | Dough weight | 1912 g |

      ## Allergens and cautions

      Listed, of the fourteen allergens of the European Union: cereals containing gluten (wheat) in Ripe starter, Bread flour.

      This is what the larder lists for these ingredients, and nothing more. It does not say that a bread suits anybody with an allergy. A starter carries the flour it is fed with, and flour dust settles everywhere. Your suppliers’ labels and local food law decide.

      Raw flour: Do not taste raw flour, dough or starter: flour is not treated to kill germs, and heating it at home does not reliably do so.

      For bread made for others or for sale, follow your local food rules and your licence.
    `.replace('Mix.\n', 'Mix.  \n')}\n`,
  )
})

test('a batch has a column of its own, and what is made and held is told with the settings', () => {
  const [, final] = mill.stages
  const written = writeMarkdown(
    openFormula({
      ...mill,
      batch: { make: 'dough', grams: 3824 },
      holds: [{ reading: 'trueHydration', value: 0.75, line: final!.lines[1]!.id }],
    }),
  )
  assert.match(written, /^\| Ingredient \| % \| Grams \| Batch, g \| As typed \| Note \|$/m)
  assert.match(written, /^\| Make \| 3824 g dough \| \| \|$/m)
  assert.match(written, /^\| Hold true hydration \| 75% \| Water \| gives \|$/m)
})

test('no text of a formula is markup, a cell more, or a formula in an office program (seed 41)', () => {
  const random = randomOf(41)
  for (let i = 0; i < 100; i++) {
    const written = writeMarkdown(openFormula(anyFormula(random)))
    for (const line of written.split('\n')) {
      assert.doesNotMatch(line, /[<>]|(?<!\\)`|[\0\t\r\u2028]|(?<!\\)\]\(/, line)
      assert.doesNotMatch(line, /^\s*[=+\-@＝＋－＠]/, line)
    }
    // every row of a table has as many cells as its heading
    for (const table of written
      .trim()
      .split('\n\n')
      .filter(part => part.startsWith('| ')))
      assert.equal(new Set(table.split('\n').map(row => row.split('|').length)).size, 1, table)
  }
})

test('the HTML of a formula is its tables and nothing that runs', () => {
  const html = writeHtml(openFormula({ ...mill, name: '<img src=x onerror=alert(1)> & "Mill"' }))
  assert.match(html, /<h2>&lt;img src=x onerror=alert\(1\)&gt; &amp; &quot;Mill&quot;<\/h2>/)
  assert.match(html, /<p>• shape \| bake &lt;hot&gt;<\/p>/)
  assert.equal(html.match(/<table /g)!.length, 3)
  assert.equal(html.match(/<th scope="col"/g)!.length, html.match(/<\/th>/g)!.length)
})

test('whatever a formula is made of, its HTML has only its own elements and no formula of an office program (seed 42)', () => {
  const random = randomOf(42)
  const own =
    /^<\/?(?:h2|h3|p|table|thead|tbody|tr|th|td|ul|ol|li)(?: (?:scope|style)="[\w\s:;#,-]*")*>$|^<meta charset="utf-8">$/
  for (let i = 0; i < 100; i++) {
    const html = writeHtml(openFormula(anyFormula(random)))
    for (const [tag] of html.matchAll(/<[^>]*>/g)) assert.match(tag, own)
    for (const [, cell] of html.matchAll(/<(?:td|h2|h3|p|li)[^>]*>([^<]*)</g))
      assert.doesNotMatch(cell!, /^\s*[=+\-@＝＋－＠]/)
  }
})
