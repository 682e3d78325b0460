import { solve } from '../../engine/solve.js'
import { type Demand, demandsOf, partCell, type Total } from '../cells/hold-cells.js'
import type { Hold } from '../document/formula.js'
import { isWeightReading, tidy } from '../document/words.js'
import { cellOf } from '../outline/names.js'
import { type Counted, type LinePlan, lineBrings } from '../outline/outline.js'
import type { WorkedOut } from '../sheet/worked-out.js'

/** How far a reading goes: fractions of 1, or grams; Infinity where there is no end. */
export interface Reach {
  readonly least: number
  readonly most: number
}

/** What moves in a straight line: so much, and so much more a gram of the line that gives. */
type Straight = readonly [at0: number, each: number]

const at = ([at0, each]: Straight, t: number): number => at0 + (each === 0 ? 0 : each * t)

/** Where every one is at least nothing; undefined where that is nowhere. */
function wherePositive(all: readonly Straight[]): readonly [from: number, to: number] | undefined {
  let [from, to] = [0, Number.POSITIVE_INFINITY]
  for (const [at0, each] of all) {
    if (each > 0) from = Math.max(from, -at0 / each)
    else if (each < 0) to = Math.min(to, -at0 / each)
    else if (at0 < 0) return undefined
  }
  return from <= to ? [from, to] : undefined
}

/** One over the other, also where both go on without end or the other comes to nothing. */
function over(part: Straight, whole: Straight, t: number): number {
  if (t === Number.POSITIVE_INFINITY) {
    if (whole[1] !== 0) return part[1] / whole[1]
    return part[1] === 0 ? part[0] / whole[0] : part[1] * Number.POSITIVE_INFINITY
  }
  const [above, below] = [at(part, t), at(whole, t)]
  return Math.abs(below) <= 1e-9 * Math.abs(above) ? above * Number.POSITIVE_INFINITY : above / below
}

/**
 * How far the reading for which a line gives can go while all other holds are kept and nothing weighs less than nothing.
 * Undefined where the others have no answer by themselves.
 */
export function reachOf({ graph, outline, plan }: WorkedOut, giver: LinePlan): Reach | undefined {
  const { final, giving, doughWeight } = outline
  const demands = demandsOf(outline)
  const number = (cell: string) => {
    const value = graph.value(cell)
    return typeof value === 'number' ? value : Number.NaN
  }
  const isMoved = plan.cells.has(partCell(final, 'base lines', 'fixed'))
  const base = isMoved ? 0 : number(cellOf.base(final))
  const others = giving.filter(line => line !== giver)
  const part = (of: Total | 'base lines', by: 'fixed' | 'slope' | LinePlan) => number(partCell(final, of, by))
  const sum = (parts: Demand['parts'], by: 'fixed' | 'slope' | LinePlan) =>
    parts.reduce((total, [of, times]) => total + times * part(of, by), 0)

  // A row each of the others' holds, and of the base where it moves; the giver's weight is on the right side.
  const matrix: number[][] = []
  const right: Straight[] = []
  for (const [i, { parts, whole, value }] of demands.entries()) {
    if (giving[i] === giver) continue
    const all: Demand['parts'] = whole ? [...parts, [whole, -(value as number)]] : parts
    const wanted = value === 'flour weight' ? number(cellOf.flourWeight) : whole ? 0 : value
    const slope = sum(all, 'slope')
    matrix.push([...others.map(line => sum(all, line)), ...(isMoved ? [slope] : [])])
    right.push([wanted - sum(all, 'fixed') - slope * base, -sum(all, giver)])
  }
  if (isMoved) {
    matrix.push([...others.map(line => part('base lines', line)), part('base lines', 'slope') - 1])
    right.push([-part('base lines', 'fixed'), -part('base lines', giver)])
  }
  const solved = (t: number) => {
    if (matrix.length === 0) return []
    const found = solve(
      matrix,
      right.map(line => at(line, t)),
    )
    return 'x' in found ? found.x : undefined
  }
  const [none, one] = [solved(0), solved(1)]
  if (!none || !one) return undefined
  const unknowns = none.map((x, i): Straight => [x, one[i]! - x])

  /** A total in grams, by what the giver weighs. */
  const total = (parts: Demand['parts']): Straight => {
    const fixed = sum(parts, 'fixed') + sum(parts, 'slope') * base
    let [at0, each] = [fixed, sum(parts, giver)]
    const times = [...others.map(line => sum(parts, line)), ...(isMoved ? [sum(parts, 'slope')] : [])]
    for (const [i, by] of times.entries()) {
      at0 += by * unknowns[i]![0]
      each += by * unknowns[i]![1]
    }
    return [at0, each]
  }
  const { parts, whole } = demands[giving.indexOf(giver)]!
  const above = total(parts)
  const below: Straight = whole ? total([[whole, 1]]) : [1, 0]
  const range = wherePositive([...unknowns, below])
  if (!range) return undefined
  const unit = whole === 'weight' && doughWeight !== undefined ? doughWeight : 1
  const ends = range.map(t => over(above, below, t) * unit)
  if (ends.some(Number.isNaN)) return undefined
  return { least: Math.min(...ends), most: Math.max(...ends) }
}

const tiny = 1e-9

/** The nearest value within reach to what a line is to give for, in the digits in which it is said. */
export function nearestOf({ least, most }: Reach, { value, reading }: Hold): number {
  const isOver = value > most
  const end = isOver ? most : least
  const steps = isWeightReading(reading) ? (end < 10 ? 100 : 1) : end < 0.1 ? 1e4 : 1e3
  const rounded = (isOver ? Math.floor(end * steps + tiny) : Math.ceil(end * steps - tiny)) / steps
  return tidy(rounded)
}

/** What stays as it is while a line gives: the lines that give for other holds, or else those that the reading counts. */
export function stayingWhile({ outline }: WorkedOut, giver: LinePlan): readonly string[] {
  const { final, giving } = outline
  const others = giving.filter(line => line !== giver)
  const { parts, whole } = demandsOf(outline)[giving.indexOf(giver)]!
  const totals = [...parts.map(([of]) => of), ...(whole ? [whole] : [])]
  const counted = (line: LinePlan) =>
    line.source ||
    totals.some(
      of =>
        of === 'weight' ||
        of === `${line.countsAs?.kind} lines` ||
        lineBrings(line, (of === 'soaked' ? 'water' : of) as Counted) > 0,
    )
  const lines = others.length ? others : final.lines.filter(line => line !== giver && counted(line))
  return lines.map(({ line }) => line.ingredient).filter(Boolean)
}

/** A line that gives for what cannot be reached, with how far that goes. */
export interface OutOfReach {
  readonly line: LinePlan
  readonly reach: Reach
}

/** The first such line. */
export function outOfReach(seen: WorkedOut): OutOfReach | undefined {
  for (const line of seen.outline.giving) {
    const reach = reachOf(seen, line)
    const { value } = line.gives!
    const near = tiny * Math.max(1, Math.abs(value))
    if (reach && (value > reach.most + near || value < reach.least - near)) return { line, reach }
  }
  return undefined
}
