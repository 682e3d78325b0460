import type { CellError } from '../../engine/index.js'
import { solve } from '../../engine/solve.js'
import type { Hold } from '../document/formula.js'
import { cellOf } from '../outline/names.js'
import {
  type Counted,
  ingredientKey,
  type LinePlan,
  type Outline,
  type StagePlan,
} from '../outline/outline.js'
import type { CellWriter, Term } from './cell-writer.js'
import type { LineCells } from './line-cells.js'
import { type HeldLine, type RareDiagnostic, rareProblem } from './rare-words.js'
import { isOwn, type StageCells } from './stage-cells.js'

/** A total of the final dough: a count, all of its weight, or the weight of some of its own lines. */
export type Total = Counted | 'weight' | 'flour lines' | 'water lines' | 'levain lines'

/** What a hold demands of the dough: Σ times × part = value × whole, or the value alone. */
export interface Demand {
  readonly parts: readonly (readonly [Total, times: number])[]
  readonly whole: Total | undefined
  readonly value: number | 'flour weight'
}

/**
 * What a hold demands. Every reading is a total, or one total over another. `doughWeight`: grams to which all is scaled
 * once it is solved, so that a weight that is held is a share of them.
 */
export function demandOf(hold: Hold, line: LinePlan, doughWeight: number | undefined): Demand {
  const { value, reading } = hold
  const over = (part: Total, whole: Total): Demand => ({ parts: [[part, 1]], whole, value })
  const weight = (part: Total): Demand =>
    doughWeight === undefined
      ? { parts: [[part, 1]], whole: undefined, value }
      : { parts: [[part, 1]], whole: 'weight', value: value / doughWeight }
  switch (reading) {
    case 'trueHydration':
      return over('water', 'flour')
    case 'moistureHydration':
      return over('moisture', 'flour')
    case 'hydrationWithoutSoakers':
      return {
        parts: [
          ['water', 1],
          ['soaked', -1],
        ],
        whole: 'flour',
        value,
      }
    case 'prefermentedFlour':
      return over('prefermented', 'flour')
    case 'salt':
    case 'fat':
    case 'sugar':
    case 'egg':
    case 'milk':
      return over(reading, 'flour')
    case 'listedHydration':
      return over('water lines', 'flour lines')
    case 'levainOnFlour':
      return over('levain lines', 'flour lines')
    case 'totalFlour':
      return weight('flour')
    case 'totalWater':
      return weight('water')
    case 'doughWeight':
      return weight('weight')
    case 'wholeDough':
      return over(`all ${ingredientKey(line)}`, 'flour')
  }
}

/** Whether the line's whole-dough share is not held but follows, since it makes up the rest of the flour. */
export const makesUpTheRest = (outline: Outline, line: LinePlan): boolean =>
  outline.final.baseIsFlour &&
  line === outline.final.base[0] &&
  outline.final.base.every(l => l.gives?.reading === 'wholeDough')

/** Where every flour of the dough is a share of the whole, the first makes up the rest of the flour weight. */
export const demandsOf = (outline: Outline): Demand[] =>
  outline.giving.map(line =>
    makesUpTheRest(outline, line)
      ? { parts: [['flour', 1]], whole: undefined, value: 'flour weight' }
      : demandOf(line.gives!, line, outline.doughWeight),
  )

/** The cells of what each total of a demand is made of: what nothing moves, a gram of base, a gram of a line that gives. */
export const partCell = (
  final: StagePlan,
  total: Total | 'base lines',
  of: 'fixed' | 'slope' | LinePlan,
): string =>
  `${final.stage.id}.${total} ${of === 'fixed' ? of : of === 'slope' ? 'a gram of base' : `by ${of.line.id}`}`

/**
 * The weights of the lines that give, and the base where they move it, as the one solution of a linear
 * system: a row a hold, and one that says what the base is the sum of.
 */
export function writeHolds(out: CellWriter, outline: Outline, stages: StageCells, lines: LineCells): void {
  const { final } = outline
  const { giving } = outline
  const moved = stages.isMoved(final)
  const demands = demandsOf(outline)
  const inputs: string[] = []
  const at = new Map<string, number>()
  const put = (cell: string): number => {
    if (!at.has(cell)) at.set(cell, inputs.push(cell) - 1)
    return at.get(cell)!
  }

  type Of = Parameters<typeof partCell>[2]
  const weightOf =
    (of: Of) =>
    (line: LinePlan): string | undefined =>
      of === 'fixed' ? lines.fixed(line) : of === 'slope' ? lines.slope(line) : lines.by(line, of)

  /** A total's part: what nothing moves, a gram of base, or a gram of a line that gives. */
  const part = (total: Total, of: Of): number => {
    const cell = partCell(final, total, of)
    if (!out.cells.has(cell)) out.dot(cell, cell, termsOf(total, weightOf(of)))
    return put(cell)
  }
  const termsOf = (total: Total, weight: (line: LinePlan) => string | undefined): Term[] => {
    if (total === 'weight') return ones(final.lines, weight)
    if (total === 'flour lines')
      return ones(
        final.lines.filter(l => isOwn(l, 'flour')),
        weight,
      )
    if (total === 'water lines')
      return ones(
        final.lines.filter(l => isOwn(l, 'water')),
        weight,
      )
    if (total === 'levain lines')
      return ones(
        final.lines.filter(l => isOwn(l, 'levain')),
        weight,
      )
    if (total.startsWith('all '))
      return stages.terms(final.lines, total, weight).concat(stageTerms(final.lines, total, weight))
    return stages.terms(final.lines, total, weight)
  }
  const rowOf = ({ parts, whole, value }: Demand) => {
    const totals: Demand['parts'] = whole ? [...parts, [whole, -(value as number)]] : parts
    const partsOf = (of: Of) => totals.map(([total, times]) => [part(total, of), times] as const)
    const given = value === 'flour weight'
    return {
      fixed: partsOf('fixed'),
      slope: partsOf('slope'),
      by: giving.map(partsOf),
      right: given ? put(cellOf.flourWeight) : whole ? 0 : value,
      given,
    }
  }
  const rows = demands.map(rowOf)
  const baseRow = moved ? baseParts() : undefined
  const base = moved ? undefined : put(cellOf.base(final))

  /** Σ of the base lines' parts. */
  function baseParts() {
    const sum = (of: Of) => {
      const cell = partCell(final, 'base lines', of)
      out.dot(cell, cell, ones(final.base, weightOf(of)))
      return put(cell)
    }
    return { fixed: sum('fixed'), slope: sum('slope'), by: giving.map(sum) }
  }

  const name = 'holds'
  const system = (values: readonly number[]): number[] | CellError => {
    const sum = (parts: readonly (readonly [number, number])[]) =>
      parts.reduce((s, [i, times]) => s + values[i]! * times, 0)
    const matrix = rows.map(row => [...row.by.map(sum), ...(moved ? [sum(row.slope)] : [])])
    const right = rows.map(row => {
      const wanted = row.given ? values[row.right]! : row.right
      return wanted - sum(row.fixed) - (moved ? 0 : sum(row.slope) * values[base!]!)
    })
    if (baseRow) {
      matrix.push([...baseRow.by.map(i => values[i]!), values[baseRow.slope]! - 1])
      right.push(-values[baseRow.fixed]!)
    }
    return answer(matrix, right, giving, name)
  }

  let last: { readonly values: readonly number[]; readonly answer: number[] | CellError } | undefined
  const solved = (values: readonly number[]) => {
    if (!last?.values.every((v, i) => Object.is(v, values[i])))
      last = { values: [...values], answer: system(values) }
    return last!.answer
  }
  const how = `holds ${JSON.stringify([giving.map(g => g.gives), outline.doughWeight, rows, baseRow, giving.map(g => g.line.ingredient)])}`
  const unknown = (cell: string, words: string, i: number) =>
    out.compute(cell, words, `${how} ${i}`, inputs, values => {
      const x = solved(values)
      return Array.isArray(x) ? x[i]! : x
    })
  for (const [i, line] of giving.entries())
    out.belonging({ of: 'line', id: line.line.id }, () =>
      unknown(cellOf.weight(line), `${line.line.ingredient} in ${final.stage.name}`, i),
    )
  if (moved)
    out.belonging({ of: 'stage', id: final.stage.id }, () =>
      unknown(cellOf.base(final), `flour of ${final.stage.name}`, giving.length),
    )
}

const ones = (lines: readonly LinePlan[], weight: (line: LinePlan) => string | undefined): Term[] =>
  lines.flatMap((line): Term[] => {
    const at = weight(line)
    return at === undefined ? [] : [[at, 1]]
  })

/** A held share of a stage: the weights of the lines that take it. */
const stageTerms = (
  lines: readonly LinePlan[],
  total: string,
  weight: (line: LinePlan) => string | undefined,
): Term[] =>
  ones(
    lines.filter(l => l.source && total === `all ${ingredientKey(l)}`),
    weight,
  )

/** The weights, or what names the holds and the lines that stand in the way. */
function answer(
  matrix: number[][],
  right: number[],
  giving: readonly LinePlan[],
  origin: string,
): number[] | CellError {
  const error = (why: RareDiagnostic): CellError => ({ kind: 'domain', ...rareProblem(why), origin })
  const holds = (of: readonly LinePlan[]): HeldLine[] =>
    of.map(l => ({ hold: l.gives!, ingredient: l.line.ingredient }))
  const among = (indexes: readonly number[]) => indexes.flatMap(i => giving[i] ?? [])
  const found = solve(matrix, right)
  if ('x' in found) {
    // Where the base is an unknown too, ratios alone are met by a dough of nothing.
    const isNothing = found.x.length > giving.length && Math.abs(found.x.at(-1)!) <= 1e-9
    if (isNothing) return error({ code: 'onlyNothingHolds', holds: holds(giving) })
    const below = giving.findIndex((_, i) => found.x[i]! < -1e-9)
    if (below < 0) return found.x
    const { ingredient } = giving[below]!.line
    return error({
      code: 'givesBelowNothing',
      holds: holds(giving),
      ingredient,
      weight: found.x[below]!,
    })
  }
  switch (found.reason) {
    case 'none': {
      return error({ code: 'holdsContradict', holds: holds(among(found.equations)) })
    }
    case 'many': {
      const of = among(found.unknowns)
      const open = (of.length ? of : giving).map(l => l.line.ingredient)
      return error({ code: 'holdsLeaveOpen', holds: holds(giving), open })
    }
    case 'unstable':
      return error({ code: 'holdsAlike', holds: holds(giving) })
  }
}
