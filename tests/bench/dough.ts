import { type Formula, finalDoughOf, type Line, newId } from '../../src/dough/document/formula'
import { openFormula } from '../../src/dough/formula-sheet'
import { type Now, type Row, timeInTurns } from './row'

const ingredients = [
  'Bread flour',
  'Whole wheat flour',
  'Wholemeal spelt',
  'Milk',
  'Butter',
  'Honey',
  'Egg',
  'Linseed',
]

/** A dough of so many lines with a levain, in percentages; four of its readings are held where `held` says so. */
function bread(lines: number, held: boolean): Formula {
  const line = (ingredient: string, amount: string): Line => ({ id: newId(), ingredient, amount, note: '' })
  const named = [line('Water', '70%'), line('Salt', '2%'), line('Levain', '20%'), line('Bread flour', '60%')]
  const more = Array.from({ length: lines - named.length - 3 }, (_, i) =>
    line(ingredients[i % 8]!, `${1 + (i % 5)}%`),
  )
  const levain = [line('Ripe starter', '20%'), line('Bread flour', '100%'), line('Water', '80%')]
  const [water, salt, taken, flour] = named.map(l => l.id)
  const formula: Formula = {
    id: newId(),
    name: 'Bench',
    note: '',
    flourWeight: 1000,
    meanings: [],
    keptSettings: [],
    stages: [
      { id: newId(), name: 'Levain', lines: levain },
      { id: newId(), name: 'Final dough', lines: [...named, ...more] },
    ],
  }
  if (!held) return formula
  return {
    ...formula,
    holds: [
      { reading: 'trueHydration', value: 0.74, line: water! },
      { reading: 'salt', value: 0.019, line: salt! },
      { reading: 'prefermentedFlour', value: 0.12, line: taken! },
      { reading: 'doughWeight', value: 2000, line: flour! },
    ],
  }
}

/** The formula with its last line at another amount. */
function retyped(formula: Formula, amount: string): Formula {
  const final = finalDoughOf(formula)
  const lines = final.lines.map((l, i) => (i === final.lines.length - 1 ? { ...l, amount } : l))
  return { ...formula, stages: formula.stages.map(s => (s === final ? { ...s, lines } : s)) }
}

const tenthOfFrame = 1000 / 60 / 10 // ms

/** One edit of an open sheet with a reading read: its time, and that against opening the sheet anew. */
export function doughRows(now: Now): Row[] {
  const cases = [
    { lines: 30, held: true, name: 'one edit in a 30-line formula with four holds' },
    { lines: 500, held: false, name: 'one edit in a 500-line formula' },
  ]
  return cases.flatMap(({ lines, held, name }): Row[] => {
    let formula = bread(lines, held)
    const sheet = openFormula(formula)
    let turn = 0
    const next = () => {
      formula = retyped(formula, `${1 + (++turn % 97) / 10}%`)
      return formula
    }
    const edit = () => {
      sheet.update(next())
      return sheet.reading('trueHydration')! + sheet.reading('doughWeight')!
    }
    const anew = () => openFormula(next()).reading('trueHydration')!
    const [value, baseline] = timeInTurns(now, [edit, anew], 21).map(us => us / 1000) as [number, number]
    return [
      { name, value, unit: 'ms', ...(held ? { budget: tenthOfFrame } : {}) },
      { name: `${name}, against working all out anew`, value, unit: 'ms', baseline, ratio: value / baseline },
    ]
  })
}
