import assert from 'node:assert/strict'
import { test } from 'node:test'
import { measuresIn, quantitiesIn, quantityAt, wholeAmount } from '../../src/dough/lexicon/quantities.js'
import { type Token, tokensOf } from '../../src/dough/lexicon/text-tokens.js'
import { figureOf } from '../../src/dough/lexicon/written-figures.js'
import { randomOf } from '../random.js'

const asGrams = () => 'g' as const

/** Text → what is found of amounts in it, as Tarebook writes them. */
const found: readonly (readonly [text: string, ...amounts: string[]])[] = [
  ['500 g flour', '500 g'],
  ['flour: 1 lb 4 oz', '1 lb + 4 oz'],
  ['1 lb, 4 oz', '1 lb + 4 oz'],
  ['1 lb 450 g', '1 lb', '450 g'],
  ['bread flour 1 kg, water 700 g', '1 kg', '700 g'],
  ['Weizenmehl 1 kg, 700 g Wasser', '1 kg', '700 g'],
  ['2 EL Öl und 1 TL Salz', '2 tbsp', '1 tsp'],
  ['2 Esslöffel', '2 tbsp'],
  ['1½ Teelöffel', '1 1/2 tsp'],
  ['eineinhalb TL Salz', '1 1/2 tsp'],
  ['anderthalb Liter', '1 1/2 l'],
  ['ein halber Liter Milch', '1/2 l'],
  ['dreiviertel Liter', '3/4 l'],
  ['zweihundertfünfundzwanzig Gramm', '225 g'],
  ['zwei Pfund Mehl', '1000 g'],
  ['eine Prise Salz', '0.3 g'],
  ['Prise Zucker', '0.3 g'],
  ['2 Msp. Vanille', '0.6 g'],
  ['c. à s.: 2', '2 g'],
  ['2 c. à s. d’huile', '2 tbsp'],
  ['une demi-livre de beurre', '250 g'],
  ['quatre-vingt-dix grammes', '90 g'],
  ['3 tbs', '3 tbsp'],
  ['12 ozs', '12 oz'],
  ['5 dl', '500 ml'],
  ['2 x 400 g', '800 g'],
  ['1 400 g Dose', '400 g'],
  ['650–680 g', '665 g'],
  ['10 bis 12 g', '11 g'],
  ['900-1,000 g', '950 g'],
  ['1.234,5 g', '1234.5 g'],
  ['1,250 kg', '1.250 kg'],
  ['1,250 g', '1250 g'],
  ['1 250,5 g', '1250.5 g'],
  ['٢٫٥ g', '2.5 g'],
  ['2.5e2 g', '250 g'],
  ['ca. 20 g', '20 g'],
  ['~20 g', '20 g'],
  ['70,5 %', '70.5%'],
  ['30 Minuten bei 240 °C'],
  ['ergibt 2 Brote'],
  ['um 8:30 Uhr'],
]
for (const [text, ...amounts] of found)
  test(`in ${JSON.stringify(text)} stands ${amounts.join(' and ') || 'no amount'}`, () => {
    const quantities = quantitiesIn(tokensOf(text))
    assert.deepEqual(
      quantities.map(quantity => figureOf(quantity, asGrams).text),
      amounts,
    )
  })

test('an amount says where in its text it stands', () => {
  const text = 'Wasser: etwa 1 lb 4 oz, kalt'
  const tokens = tokensOf(text)
  const [quantity] = quantitiesIn(tokens)
  assert.equal(text.slice(tokens[quantity!.from]!.at, tokens[quantity!.to - 1]!.end), 'etwa 1 lb 4 oz')
  assert.deepEqual(quantity!.about, ['etwa'])
})

/** Text → the same amount in other measures. */
const also: readonly (readonly [text: string, first: string, ...others: string[]])[] = [
  ['2 cups (474 ml)', '2 cup', '474 ml'],
  ['1 cup / 240 ml', '1 cup', '240 ml'],
  ['500g/1lb 2oz', '500 g', '1 lb + 2 oz'],
  ['60 g (1/2 cup, 2.1 oz)', '60 g', '1/2 cup', '2.1 oz'],
  ['1 kg [2.2 lb]', '1 kg', '2.2 lb'],
  ['20 g', '20 g'],
]
for (const [text, first, ...others] of also)
  test(`${text} is ${[first, ...others].join(', also ')}`, () => {
    assert.deepEqual(
      measuresIn(tokensOf(text))?.quantities.map(quantity => figureOf(quantity, asGrams).text),
      [first, ...others],
    )
  })

for (const text of ['20 g water', 'two', '', '2 cups (474 ml', '(20 g)', '20 minutes', 'g'])
  test(`${JSON.stringify(text)} is not nothing but an amount with a unit`, () => {
    assert.notEqual(wholeAmount(text)?.terms[0].unit?.kind, 'unit')
  })

test('the mark of the text decides a number that can be read in two ways, and the other reading is told', () => {
  const read = (text: string, mark: '.' | ',') => {
    const { text: amount, guesses } = figureOf(measuresIn(tokensOf(text), mark)!.quantities[0], asGrams)
    return [amount, guesses]
  }
  assert.deepEqual(read('1,250 kg', '.'), [
    '1250 kg',
    [{ code: 'two readings', read: '1250', other: '1.250' }],
  ])
  assert.deepEqual(read('1,250 g', ','), [
    '1.250 g',
    [{ code: 'two readings', read: '1.250', other: '1250' }],
  ])
  assert.deepEqual(read('1.250 g', ','), ['1250 g', [{ code: 'two readings', read: '1250', other: '1.250' }]])
  assert.deepEqual(read('1.25 g', ','), ['1.25 g', []])
})

test('what is guessed has a code', () => {
  const codes = (text: string) =>
    quantitiesIn(tokensOf(text)).flatMap(quantity => figureOf(quantity, asGrams).guesses.map(g => g.code))
  assert.deepEqual(codes('1 pint milk'), ['us measure'])
  assert.deepEqual(codes('1 livre'), ['metric pound'])
  assert.deepEqual(codes('2 Tassen'), ['other cup'])
  assert.deepEqual(codes('a pinch'), ['estimate'])
  assert.deepEqual(codes('1 stick'), ['stick'])
  assert.deepEqual(codes('2 T'), ['letter'])
  assert.deepEqual(codes('25 cl'), ['converted'])
  assert.deepEqual(codes('6–7 g'), ['range'])
  assert.deepEqual(codes('2 x 7 g'), ['times'])
  assert.deepEqual(codes('a handful of nuts'), ['unknown measure'])
  assert.deepEqual(codes('20 g'), [])
})

/** How often tokens are looked at while amounts are sought. */
function looks(text: string): number {
  let count = 0
  const counting: ProxyHandler<Token[]> = {
    get: (tokens, key) => {
      count++
      return Reflect.get(tokens, key)
    },
  }
  quantitiesIn(new Proxy(tokensOf(text), counting))
  return count
}

for (const piece of [
  '1/',
  '½',
  '1 ',
  '1,',
  '1-',
  '1/1 ',
  'a ',
  'half ',
  'twenty ',
  '1 g + ',
  '1 lb ',
  '1x',
  '~',
  '( ',
  '2 (2 ',
])
  test(`amounts in ${JSON.stringify(piece)} over and over are sought in one pass`, () => {
    const [once, twice] = [looks(piece.repeat(2000)), looks(piece.repeat(4000))]
    assert.ok(twice <= 2.2 * once, `${twice} looks against ${once}`)
    assert.ok(once <= 200 * 2000 * piece.length, `${once} looks`)
  })

test('no text makes it throw, and no amount stands within another (seed 41)', () => {
  const random = randomOf(41)
  const pieces =
    '1|2,5|1,000|0|½|/|-|–| |  |\t|g|kg|lb|oz|cup|c. à s.|EL|Prise|pinch|a|ein|und|and|half|(|)|×|x|~|°|%|of|de|d’|hundert|zwei|plus|1e9|٣|.|,|sticks|tin|\u200b'.split(
      '|',
    )
  for (let i = 0; i < 3000; i++) {
    const text = Array.from({ length: 1 + random.below(9) }, () => random.pick(pieces)).join(
      random.below(2) ? ' ' : '',
    )
    const tokens = tokensOf(text)
    let to = 0
    for (const quantity of quantitiesIn(tokens)) {
      assert.ok(quantity.from >= to && quantity.to > quantity.from && quantity.to <= tokens.length, text)
      to = quantity.to
      const { value } = figureOf(quantity, asGrams)
      assert.ok(!Number.isNaN(value), text)
    }
    tokens.forEach((_, at) => {
      quantityAt(tokens, at)
      measuresIn(tokensOf(text))
    })
    wholeAmount(text)
  }
})
