import { arrive } from '../../src/exchange/arriving/arrive'
import { against, type Now, type Row, timeInTurns } from './row'

const length = 20_000 // characters; twice as many are compared with it, which are as many as any recipe has
const most = 100_000 // … that are to be read or refused before anybody waits

const recipe = `Mill loaf

Levain:
40 g ripe starter
100 g strong white flour (sifted)
80 g water at 26 °C

Dough:
800 g strong white flour, plus extra for dusting
2 1/2 cups (590 ml) lukewarm water
1 tbsp fine sea salt
all of the levain

1. Mix the flour with 500 g of the water and rest for 30 minutes.
2. Add the levain and the salt, and bake at 240 °C for 40 minutes.

`
/** Texts as they come, and such as are hard on readers. */
const pieces: Readonly<Record<string, string>> = {
  recipes: recipe,
  'prose in long rows': `${'Mix 20 g of salt with 500 g flour and knead it for 10 minutes, then add 1 1/2 cups water. '.repeat(40)}\n`,
  'a table': 'Bread flour,500 g,100\nWater,"350,5 g",70\nSalt,10,2\n',
  'a table of short rows': 'a,1\n',
  'a table of short rows with units': 'a,1 g\n',
  'a table of semicolons': 'ab;1,5;2\n',
  'a table of tabs': 'flour\t1\t2\n',
  'a table of strokes': '|a|1 g|\n',
  'a table of cells': `${'a,'.repeat(200)}1\n`,
  halves: '½',
  'rows of halves': `${'½'.repeat(19_000)}\n`,
  slashes: '1/',
  'one long word': 'a',
  digits: '1',
  brackets: '(',
  'line breaks': '\n',
}

/** Reading a text twice as long against reading it once, and the longest that is to be read or refused at once. */
export const readingRows = (now: Now): Row[] =>
  Object.entries(pieces).flatMap(([what, piece]) => {
    const once = piece.repeat(Math.ceil(length / piece.length)).slice(0, length)
    const twice = once + once
    const all = piece.repeat(Math.ceil(most / piece.length)).slice(0, most)
    const read = (text: string) => () => arrive(text).rows.length
    const times = timeInTurns(now, [read(twice), read(once), read(all)], 5)
    const inMs = times.map(time => time / 1000)
    const [long = 0, short = 0, whole = 0] = inMs
    return [
      against(`reading 40,000 characters of ${what}, against half of them`, [long, short], 'ms', 2.2),
      { name: `… reading or refusing 100,000`, value: whole, unit: 'ms', budget: 200 },
    ]
  })
