import { type Formula, finalDoughOf, type Line, newId } from '../../src/dough/document/formula'
import { larderOf } from '../../src/dough/document/larder'
import { openFormula } from '../../src/dough/formula-sheet'
import { usualLarder } from '../../src/dough/larder/usual-larder'
import { against, type Now, type Row, timeInTurns } from './row'

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

type Edit = (formula: Formula) => Formula

const inFinal =
  (edit: (lines: Line[]) => readonly Line[]): Edit =>
  formula => {
    const final = finalDoughOf(formula)
    return {
      ...formula,
      stages: formula.stages.map(s => (s === final ? { ...s, lines: edit([...s.lines]) } : s)),
    }
  }

/** The last line at another amount. */
const retyped = (amount: string) => inFinal(lines => lines.with(-1, { ...lines.at(-1)!, amount }))

/** One edit of an open sheet with a reading read: its time, and that against opening the sheet anew. */
function times(now: Now): Row[] {
  const cases: readonly { lines: number; held: boolean; name: string; budget?: number; ratio?: number }[] = [
    {
      lines: 30,
      held: true,
      name: 'one edit in a 30-line formula with four holds',
      budget: 1000 / 60 / 10, // ms, a tenth of a frame
    },
    { lines: 500, held: false, name: 'one edit in a 500-line formula', ratio: 0.08 },
    { lines: 5000, held: false, name: 'one edit in a 5,000-line formula', ratio: 0.02 },
  ]
  return cases.flatMap(({ lines, held, name, budget, ratio }): Row[] => {
    let formula = bread(lines, held)
    const sheet = openFormula(formula)
    let turn = 0
    const next = () => {
      formula = retyped(`${1 + (++turn % 97) / 10}%`)(formula)
      return formula
    }
    const edit = () => {
      sheet.update(next())
      return sheet.reading('trueHydration')! + sheet.reading('doughWeight')!
    }
    const anew = () => openFormula(next()).reading('trueHydration')!
    const [value, baseline] = timeInTurns(now, [edit, anew], 21).map(us => us / 1000) as [number, number]
    return [
      { name, value, unit: 'ms', ...(budget ? { budget } : {}) },
      against(`${name}, against working all out anew`, [value, baseline], 'ms', ratio),
    ]
  })
}

const usual = larderOf(usualLarder)
const other = larderOf(usualLarder.map(i => (i.name === 'Honey' ? { ...i, moisture: 0.2 } : i)))

/** Edits of a kind, and how many cells each defined among 500 lines when every edit planned all cells. */
const kinds: readonly (readonly [string, defined: number, Edit])[] = [
  [
    'a changed name',
    4,
    inFinal(lines => {
      const at = lines.findIndex(l => l.ingredient === 'Honey')
      return lines.with(at, { ...lines[at]!, ingredient: 'Malt syrup' })
    }),
  ],
  ['a moved line', 1, inFinal(lines => lines.toSpliced(6, 1).toSpliced(8, 0, lines[6]!))],
  [
    'a new line',
    7,
    inFinal(lines => lines.toSpliced(8, 0, { id: newId(), ingredient: 'Honey', amount: '3%', note: '' })),
  ],
  [
    'a hold',
    8,
    formula => ({
      ...formula,
      holds: [{ reading: 'trueHydration', value: 0.75, line: finalDoughOf(formula).lines[0]!.id }],
    }),
  ],
  ['a batch', 3, formula => ({ ...formula, batch: { make: 'pieces', pieces: [{ count: 6, weight: 900 }] } })],
  ['another larder', 1, formula => formula],
]

/** How many cells one edit plans and defines, whatever it takes. */
function counts(): Row[] {
  const cost = (lines: number, edit: Edit, larder = usual) => {
    const formula = bread(lines, false)
    const sheet = openFormula(formula, usual)
    const edited = edit(formula)
    sheet.update(edited, larder)
    const all = openFormula(edited, larder).workedOut.plan.cells.size
    return { ...sheet.workedOut.lastUpdate(), all }
  }
  const unit = 'cells'
  const typed = [30, 500, 5000].flatMap((lines): Row[] => {
    const { planned, defined } = cost(lines, retyped('7.5%'))
    const of = `by a typed amount, ${lines.toLocaleString('en')} lines`
    return [
      { name: `planned ${of}`, value: planned, unit, budget: 12 },
      { name: `defined ${of}`, value: defined, unit, budget: 12 },
    ]
  })
  const others = kinds.flatMap(([name, definedBefore, edit]): Row[] => {
    const { planned, defined, all } = cost(500, edit, name === 'another larder' ? other : usual)
    const of = `by ${name}, 500 lines, against planning all`
    return [
      against(`planned ${of}`, [planned, all], unit, 1),
      against(`defined ${of}`, [defined, definedBefore], unit, 1),
    ]
  })
  return [...typed, ...others]
}

/** What an edit of an open sheet costs. */
export const doughRows = (now: Now): Row[] => [...counts(), ...times(now)]
