import { ingredientNamed } from '../../src/dough/larder/spelled-names'
import { larderWith } from '../../src/dough/larder/usual-larder'
import { type Arrivals, arrive } from '../../src/index'

/**
 * Recipes and tables as they are published, with what is to be read of them.
 *
 * A case begins with `==== ` and its title; then comes the text as it arrives (`→` is a tab), then a row of four dashes, then its
 * stages, one a row: `Levain: Water = 80 g; Salt =`. Bars part what is as right: `Water = 1 l|1000 g`. No amount is one to be
 * asked for, `*` is any that is not; a `?` behind it: it has to be marked. `~` before a name or a stage: it may be missing. `asks`
 * on a row of its own: something is asked before anything is added.
 */
export interface WholeCase {
  readonly title: string
  readonly text: string
  readonly asks: boolean
  readonly stages: readonly {
    readonly names: readonly string[]
    readonly isOptional: boolean
    readonly lines: readonly LineExpected[]
  }[]
}
interface LineExpected {
  readonly names: readonly string[]
  readonly amounts: readonly string[]
  readonly isMarked: boolean
  readonly isOptional: boolean
}

const bars = (text: string) => text.split('|').map(part => part.trim())
const sure = (text: string) => text.replace(/^~/, '')

function lineOf(text: string): LineExpected {
  const [name = '', amount = ''] = text.split(' =')
  return {
    names: bars(sure(name.trim())),
    amounts: bars(amount.replace(/\?\s*$/, '')),
    isMarked: /\?\s*$/.test(amount),
    isOptional: name.trim().startsWith('~'),
  }
}

export const wholeCases = (file: string): WholeCase[] =>
  file
    .split(/^==== /m)
    .slice(1)
    .map(of => {
      const [head = '', expected = ''] = of.split(/^----\n/m)
      const title = head.slice(0, head.indexOf('\n'))
      const rows = expected.split('\n').filter(row => row.trim() !== '')
      return {
        title,
        text: head.slice(title.length + 1).replaceAll('→', '\t'),
        asks: rows.includes('asks'),
        stages: rows
          .filter(row => row !== 'asks')
          .map(row => {
            const at = row.indexOf(': ')
            return {
              names: bars(sure(row.slice(0, at))),
              isOptional: row.startsWith('~'),
              lines: row
                .slice(at + 2)
                .split('; ')
                .map(lineOf),
            }
          }),
      }
    })

interface LineRead {
  readonly stage: string
  readonly name: string
  readonly amount: string
  readonly isMarked: boolean
}

const larder = larderWith([])
const key = (name: string) => name.toLowerCase().replaceAll('œ', 'oe').replaceAll('’', "'").trim()
const isNamed = (name: string, names: readonly string[]) => {
  const known = ingredientNamed(larder, name)
  return names.some(
    one => key(one) === key(name) || (known !== undefined && ingredientNamed(larder, one) === known),
  )
}

/** `1 1/2 cup + 2 tbsp` as figures by unit; weights in grams, ounces in ounces, litres in millilitres. */
function figures(amount: string): ReadonlyMap<string, number> {
  const sum = new Map<string, number>()
  for (const part of amount.split('+')) {
    const [, whole = '0', over, under = '1', decimal, unit = ''] =
      /^\s*(?:(?:(\d+) )?(\d+)\/(\d+)|([\d.]+))\s*(.*?)\s*$/.exec(part) ?? []
    const number = over === undefined ? Number(decimal) : Number(whole) + Number(over) / Number(under)
    const [to, times] = { kg: ['g', 1000], l: ['ml', 1000], lb: ['oz', 16] }[unit] ?? [unit, 1]
    sum.set(String(to), (sum.get(String(to)) ?? 0) + number * Number(times))
  }
  return sum
}

function isAmount(amount: string, amounts: readonly string[]): boolean {
  const read = figures(amount)
  return amounts.some(one => {
    if (one === '*') return amount !== ''
    if (one === '' || amount === '') return one === amount
    const wanted = figures(one)
    return (
      wanted.size === read.size &&
      [...wanted].every(([unit, n]) => Math.abs((read.get(unit) ?? Number.NaN) - n) <= 0.002 * n)
    )
  })
}

function linesOf(came: Arrivals): LineRead[] {
  const { arrived, problems } = came
  const asks =
    (arrived.as === 'table' && arrived.look.guesses.some(({ ask }) => ask)) ||
    (arrived.as === 'recipe' && arrived.batches.length > 0)
  const rows = [...came.rows]
  return came.formulas.flatMap(formula =>
    formula.stages.flatMap(stage =>
      stage.lines.map(({ ingredient: name, amount }) => {
        const of = came.formulas.length > 1 && formula.stages.length === 1 ? formula.name : stage.name
        const at = rows.findIndex(
          row => row.stage === stage.name && row.ingredient === name && row.amount === amount,
        )
        const [row] = at < 0 ? [] : rows.splice(at, 1)
        const said = problems.some(
          ({ severity, message }) =>
            severity !== 'remark' && message.toLowerCase().includes(name.toLowerCase()),
        )
        return { stage: of, name, amount, isMarked: asks || said || (row?.guesses.length ?? 0) > 0 }
      }),
    ),
  )
}

/** How many are right, of how many. */
export interface Score {
  amounts: readonly [right: number, of: number]
  names: readonly [right: number, of: number]
  stages: readonly [right: number, of: number]
  lost: number // lines of the text that are none
  wrongUnmarked: number // amounts, with lines that nothing in the text is
  needless: readonly [marks: number, of: number] // where nothing is in doubt
  wrong: string[] // what, in words
}

/** Reads one and counts what is right. */
export function scoreOf({ title, text, asks, stages }: WholeCase): Score {
  const came = arrive(text)
  const read = linesOf(came)
  const expected = stages.flatMap(stage => stage.lines.map(line => ({ stage, line })))
  const isIn = (line: LineRead, { names }: WholeCase['stages'][number]) =>
    names.some(name => key(name) === key(line.stage))
  type Wanted = (typeof expected)[number]
  const pairs = new Map<Wanted, LineRead>()
  const taken = new Set<LineRead>()
  const tests: ((wanted: Wanted, line: LineRead) => boolean)[] = [
    ({ stage, line }, r) => isIn(r, stage) && isNamed(r.name, line.names) && isAmount(r.amount, line.amounts),
    ({ line }, r) => isNamed(r.name, line.names) && isAmount(r.amount, line.amounts),
    ({ stage, line }, r) => isIn(r, stage) && isNamed(r.name, line.names),
    ({ stage, line }, r) => isIn(r, stage) && isAmount(r.amount, line.amounts),
    ({ line }, r) => isNamed(r.name, line.names),
    ({ line }, r) => isAmount(r.amount, line.amounts),
  ]
  for (const test of tests)
    for (const wanted of expected) {
      if (pairs.has(wanted)) continue
      const found = read.find(line => !taken.has(line) && test(wanted, line))
      if (!found) continue
      taken.add(found)
      pairs.set(wanted, found)
    }
  const surplus = read.filter(line => !taken.has(line))
  const wrong: string[] = []
  const say = (what: string) => wrong.push(`${title}: ${what}`)
  const counts = { amounts: 0, names: 0, lost: 0, wrongUnmarked: 0, needless: 0, certain: 0, all: 0 }
  for (const wanted of expected) {
    const { line, stage } = wanted
    const found = pairs.get(wanted)
    if (!found && line.isOptional) continue
    counts.all += 1
    const what = `${stage.names[0]}: ${line.names[0]} = ${line.amounts[0]}`
    if (!found) {
      counts.lost += 1
      say(`lost ${what}`)
      continue
    }
    const seen = `${found.stage}: ${found.name} = ${found.amount}${found.isMarked ? ' ?' : ''}`
    if (isNamed(found.name, line.names)) counts.names += 1
    else say(`name of ${what}, read ${seen}`)
    const isRight = isAmount(found.amount, line.amounts) && (found.isMarked || !line.isMarked)
    if (isRight) counts.amounts += 1
    else {
      say(`amount of ${what}, read ${seen}`)
      if (!found.isMarked) counts.wrongUnmarked += 1
    }
    if (isRight && !asks && !line.isMarked && line.amounts[0] !== '') {
      counts.certain += 1
      if (found.isMarked) counts.needless += 1
    }
  }
  for (const line of surplus) {
    say(`nothing is ${line.stage}: ${line.name} = ${line.amount}${line.isMarked ? ' ?' : ''}`)
    if (!line.isMarked) counts.wrongUnmarked += 1
  }
  const rightStages = stages.filter(stage => {
    const inIt = read.filter(line => isIn(line, stage))
    const wanted = expected.filter(one => one.stage === stage)
    const isRight =
      inIt.every(line => wanted.some(one => pairs.get(one) === line)) &&
      wanted.every(one => {
        const found = pairs.get(one)
        return found ? isIn(found, stage) : one.line.isOptional
      })
    if (!isRight && !stage.isOptional)
      say(`stage ${stage.names[0]}, read ${[...new Set(read.map(line => line.stage))].join(', ')}`)
    return isRight
  })
  const wantedStages = stages.filter(stage => !stage.isOptional || rightStages.includes(stage))
  const others = new Set(
    read.filter(line => !stages.some(stage => isIn(line, stage))).map(line => line.stage),
  )
  if (asks && !read.every(({ isMarked }) => isMarked)) say('nothing is asked')
  return {
    amounts: [counts.amounts, counts.all + surplus.length],
    names: [counts.names, counts.all],
    stages: [rightStages.length, Math.max(wantedStages.length, rightStages.length + others.size)],
    lost: counts.lost,
    wrongUnmarked: counts.wrongUnmarked + (asks && !read.every(({ isMarked }) => isMarked) ? 1 : 0),
    needless: [counts.needless, counts.certain],
    wrong,
  }
}

/** The scores of several, as one. */
export function scoreOfAll(cases: readonly WholeCase[]): Score {
  const scores = cases.map(scoreOf)
  const sum = (of: (score: Score) => readonly [number, number]) =>
    scores.reduce<readonly [number, number]>(([a, b], score) => [a + of(score)[0], b + of(score)[1]], [0, 0])
  return {
    amounts: sum(score => score.amounts),
    names: sum(score => score.names),
    stages: sum(score => score.stages),
    needless: sum(score => score.needless),
    lost: scores.reduce((all, { lost }) => all + lost, 0),
    wrongUnmarked: scores.reduce((all, score) => all + score.wrongUnmarked, 0),
    wrong: scores.flatMap(({ wrong }) => wrong),
  }
}
