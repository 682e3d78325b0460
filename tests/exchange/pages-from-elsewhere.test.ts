// work is counted from here on

import assert from 'node:assert/strict'
import { test } from 'node:test'
import { readPage } from '../../src/exchange/page/page-rows.js'
import { arrive } from '../../src/index.js'
import { randomOf } from '../random.js'
import { growsInStep } from '../work.js'
import { shown, text } from './notation.js'

const english = text`
  <!doctype html><html lang=en><head><title>Field loaf – Brackwater Mill</title><style>li { color: red }</style>
  <script>document.write('<li>1 kg sand</li>')</script><link rel=stylesheet href=https://mill.example/x.css></head>
  <body onload="alert(1)"><header><nav><ul><li><a href="/">Home</a></li><li>Breads</li></ul></nav></header>
  <main><article><h1>Field loaf</h1><p>A loaf for every day. It keeps for a week.</p>
  <h2>Ingredients</h2>
  <h3>For the levain</h3>
  <ul class="list"><li><span>20 g</span> <span>ripe starter</span></li><li>50&nbsp;g bread flour<li>50 g water</li></ul>
  <h3>For the dough</h3>
  <ul><li><input type="checkbox" id="a>b"> <label>1 kg bread flour</label></li><li>680 g water</li>
  <li>120 g levain</li><li>22 g <b>salt</b> (2&nbsp;&frac14; tsp)</li></ul>
  <h2>Method</h2>
  <h3>Levain</h3><ol><li>Mix everything in a jar.</li><li>Leave for 8&ndash;10 hours at 24&nbsp;&deg;C.</li></ol>
  <h3>Dough</h3>
  <ol><li><strong>Mix</strong> the flour and the water. Rest 40&nbsp;minutes.</li>
  <li>Add the levain
      and the salt.</li>
  <li><p>Bulk ferment for 4 hours with four sets of folds every 30 minutes.</p><img src="x" onerror="alert(2)"></li>
  <li>Shape and retard overnight in the fridge, 12 to 15 hours.</li><li>Bake 45 minutes at 240 &#176;C.</li></ol>
  <h2>Notes</h2><p>Wear gloves.</p></article></main>
  <footer>&copy; Brackwater Mill <iframe src="https://mill.example/"></iframe></footer></body></html>`

test('a page with its lists arrives with its stages, its lines and its method', () => {
  const came = arrive(english)
  assert.deepEqual([came.arrived.as, came.problems], ['recipe', []])
  assert.equal(
    shown(came.formulas[0]!),
    text`
      Field loaf
      note: A loaf for every day. It keeps for a week.
      Wear gloves.
      Levain: ferments
        Ripe starter 20 g
        Bread flour 50 g
        Water 50 g
        1. hands Mix “Mix everything in a jar.”
        2. wait Rest: 8–10 h, at 24 °C
      Dough:
        Bread flour 1 kg
        Water 680 g
        Levain 120 g
        Salt 22 g (2 ¼ tsp as written)
        1. hands Mix “Mix the flour and the water.”
        2. wait Rest: 40 min
        3. hands Add: adds Levain, Salt “Add the levain and the salt.”
        4. wait Bulk: 4 h, 4 × 5 min every 30 min “Bulk ferment for 4 hours with four sets of folds every 30 minutes.”
        5. hands Shape
        6. wait Retard: 12–15 h, in the fridge
        7. bake Bake: 45 min, at 240 °C`,
  )
  assert.deepEqual(came.steps.map(({ text }) => text).slice(0, 3), [
    'Mix everything in a jar.',
    'Leave for 8–10 hours at 24 °C.',
    'Mix the flour and the water.',
  ])
})

test('a part of a page in French, of paragraphs with bold heads, arrives likewise', () => {
  const came = arrive(text`
    <h2>Pain des champs</h2><p><b>Ingr&eacute;dients</b></p>
    <p>500 g de farine T65<br>350 g d&rsquo;eau<br/>100 g de levain<br>10 g de sel</p>
    <p><b>Préparation</b></p><p>Mélangez la farine et l&#8217;eau, laissez reposer 30 minutes.</p>
    <p>Ajoutez le levain et le sel et pétrissez 10 minutes. Laissez lever 4 heures à 24 °C.</p>
    <p>Façonnez, puis une nuit au frigo (12 à 15 heures). Cuire 25 minutes à couvert à 240 °C, puis 20 minutes à découvert.</p>`)
  assert.equal(
    shown(came.formulas[0]!),
    text`
      Pain des champs
      levain is a starter of 1
      Final dough:
        Farine T65 500 g
        Eau 350 g
        levain 100 g
        Sel 10 g
        1. hands Mélanger “Mélangez la farine et l’eau”
        2. wait Repos: 30 min
        3. hands Ajouter et pétrir: 10 min, ajoute levain, Sel “Ajoutez le levain et le sel et pétrissez 10 minutes.”
        4. wait Levée: 4 h, à 24 °C
        5. hands Façonner
        6. wait Froid: 12–15 h, au frigo
        7. bake Cuire couvert: 25 min, à 240 °C “Cuire 25 minutes à couvert à 240 °C”
        8. bake Cuire à découvert: 20 min, à 240 °C “puis 20 minutes à découvert.”`,
  )
})

/** Parts of pages, and the lines and steps they come to. */
const cases: readonly (readonly [what: string, html: string, lines: string, steps: string])[] = [
  [
    'two lists and nothing else',
    '<ul><li>500 g bread flour</li><li>350 g water</li></ul><ol><li>Mix and knead 10 minutes.</li><li>Rise 1 hour.</li></ol>',
    'Bread flour 500 g, Water 350 g',
    'Mix and knead: 10 min | Rise: 1 h',
  ],
  [
    'a table of what goes in, and a list of what is done',
    '<h1>Rolls</h1><table><tr><th>Ingredient</th><th>Weight</th></tr><tr><td>Bread flour</td><td><p>500 g</p></td></tr><tr><td>Water</td><td>300 g</td></tr></table><h2>Instructions</h2><ul><li>Mix 10 minutes.</li><li>Proof 1 hour.</li></ul>',
    'Bread flour 500 g, Water 300 g',
    'Mix: 10 min | Proof: 1 h',
  ],
  [
    'a table alone',
    '<table><tbody><tr><th>Ingredient</th><th>Grams</th></tr><tr><td>Bread flour</td><td>500</td></tr><tr><td>Water</td><td>300</td></tr></tbody></table>',
    'Bread flour 500 g, Water 300 g',
    '',
  ],
  [
    'elements that never close',
    '<ul><li>500 g bread flour<li>350 g water</ul><h3>Method<ol><li>Mix 5 minutes<li>Rest 1 hour',
    'Bread flour 500 g, Water 350 g',
    'Mix: 5 min | Rest: 1 h',
  ],
  [
    'rows of a text, with a stray tag',
    'Loaf\n500 g bread flour\n350 g water<br>\n\nMethod\nMix 5 minutes.\nRest 1 hour.',
    'Bread flour 500 g, Water 350 g',
    'Mix: 5 min | Rest: 1 h',
  ],
  [
    'what is hidden, and what leads elsewhere',
    '<nav><p>100 g salt</p></nav><p hidden>100 g salt</p><ul><li>500 g bread flour</li></ul><button>10 g salt</button><template><p>9 g salt</p></template>',
    'Bread flour 500 g',
    '',
  ],
  [
    'what leads elsewhere where nothing else is there',
    '<nav><p>500 g bread flour</p></nav>',
    'Bread flour 500 g',
    '',
  ],
]
for (const [what, html, lines, steps] of cases)
  test(`HTML: ${what}`, () => {
    const came = arrive(html)
    assert.equal(came.rows.map(({ ingredient, amount }) => `${ingredient} ${amount}`).join(', '), lines)
    assert.equal(came.steps.map(({ step: { does, text } }) => `${does}: ${text}`).join(' | '), steps)
  })

const rows: readonly (readonly [html: string, ...rows: string[]])[] = [
  ['<p>a<p>b', 'a', 'b'],
  ['<p>one\n two\t three</p>', 'one two three'],
  ['<b>Levain</b><br>Dough', '**Levain**', 'Dough'],
  ['<p><b>Levain</b>: mix</p>', 'Levain: mix'],
  ['<h1>A</h1><h4>B</h4><p>c</p>', '# A', '', '## B', 'c'],
  ['<ol><li>a<ol><li>b</ol><li>c</ol>', '1. a', '1. b', '2. c'],
  ['<ul><li><p>a</p><p>b</p></li></ul>', '- a', 'b'],
  ['<tr><td>a<br>b</td><td>c</td></tr>', 'a b\tc'],
  ['<pre>a\n b</pre>', 'a', 'b'],
  ['<p>1 < 2 &amp; 3 > 2 &unknown; &#x41;&#0;</p>', '1 < 2 & 3 > 2 &unknown; A&#0;'],
  ['<p title="a > b" data-x=\'">\'>a</p>', 'a'],
  ["<p title='open>a</p><p>b</p>", 'a', 'b'],
  ['<p>a<!-- <p>b</p> -->c</p><!-- d', 'ac', 'd'],
  ['<!doctype html><?xml version="1.0"?><p>a</p>', 'a'],
  ['<p>a</p><script>"</p>" + "<p>b"</script>', 'a'],
  ['<p>a</p><script><p>b</p>', 'a', 'b'], // never closed: nothing is lost in it
  ['<textarea><p>b</textarea><p>a</p>', 'a'],
]
for (const [html, ...words] of rows)
  test(`the rows of ${html.replaceAll('\n', ' / ')}`, () =>
    assert.deepEqual(readPage(html).text.split('\n'), words))

const tags = [
  '<p>',
  '<',
  '<li',
  '<a "',
  "<b '",
  '<!--',
  '</',
  '<script>',
  '<nav>',
  '<td>x',
  '&amp;',
  '<ol><li>',
  '>',
  '"',
]
for (const tag of tags)
  test(`twice as much of ${tag} is twice the work`, () =>
    growsInStep(times => void readPage(tag.repeat(2000 * times)), 2))

test('seed 23: whatever a page is, it is read, and no word of its own is made up', () => {
  const { pick, below } = randomOf(23)
  const pieces = [
    ...tags,
    ...rows.map(([html]) => html),
    '500 g bread flour',
    '</p>',
    '</ol>',
    '\n',
    ' ',
    'hidden>',
    '=',
  ]
  for (let round = 0; round < 100; round++) {
    const html = Array.from({ length: 1 + below(12) }, () => pick(pieces)).join('')
    const { text } = readPage(html)
    const letters = (of: string) => new Set(of.match(/\p{L}/gu))
    for (const letter of letters(text)) assert.ok(letters(`${html}A`).has(letter), html)
    arrive(html)
  }
})
