import type { Larder } from '../../dough/document/larder.js'
import { grams, per100 } from '../../dough/document/words.js'
import type { Quantity } from './cell-quantity.js'
import {
  alike,
  type ForeignFormula,
  type ForeignLine,
  type ForeignStage,
  type PrintedTotal,
  rowOrRows,
  wordsOf,
} from './table-draft.js'
import type { TotalCheck } from './types.js'

/** Lines that a total may be the sum of; `share` is how much of each counts, 1 when left out. */
interface Candidate {
  readonly name: string
  readonly lines: readonly ForeignLine[]
  readonly share?: (line: ForeignLine) => number
}

const ofKind = (lines: readonly ForeignLine[], kind: 'flour' | 'water'): ForeignLine[] =>
  lines.filter(line => line.kind === kind)

/** How much of a line is flour, or water, starters taken apart. */
function part(line: ForeignLine, kind: 'flour' | 'water', larder: Larder): number {
  if (line.kind === kind) return 1
  if (line.takes) return 0
  const countsAs = larder.find(line.ingredient)?.countsAs
  if (countsAs?.kind !== 'starter') return 0
  return (kind === 'flour' ? 1 : countsAs.hydration) / (1 + countsAs.hydration)
}

/** What a total may be the sum of: the likeliest first. */
function candidates(
  total: PrintedTotal,
  formula: ForeignFormula,
  final: ForeignStage,
  larder: Larder,
): Candidate[] {
  const { of, heads, row } = total
  const stage = total.stage ?? final
  const above = heads ? stage.lines : stage.lines.filter(line => line.row < row)
  const lines = above.length > 0 ? above : stage.lines
  const everything = formula.lines
  const added = everything.filter(line => !line.takes) // nothing is counted twice
  const inStage: Candidate = { name: stage.name, lines }
  const isLast = stage === formula.stages.at(-1) || stage === final
  const inDough: Candidate[] = [
    { name: final.name, lines: final.lines },
    { name: formula.name, lines: added },
  ]
  if (of === 'dough') return inDough
  if (of === 'flour' || of === 'water') {
    const share = (line: ForeignLine) => part(line, of, larder)
    const own = { name: `${of} of ${stage.name}`, lines: ofKind(lines, of) }
    const all: Candidate[] = [
      { name: `total ${of}`, lines: ofKind(everything, of) },
      { name: `total ${of}`, lines: everything.filter(line => share(line) > 0), share },
    ]
    return isLast ? [...all, own] : [own, ...all]
  }
  if (of.named === '')
    return isLast ? [inStage, ...inDough, { name: formula.name, lines: everything }] : [inStage]
  const named = formula.stages.find(
    s => alike(s.name, of.named) || wordsOf(s.name).includes(wordsOf(of.named)),
  )
  if (named) return [{ name: named.name, lines: named.lines }]
  if (alike(formula.name, of.named)) return [inDough[1]!, inDough[0]!]
  const ingredient = (from: readonly ForeignLine[]) => from.filter(line => alike(line.ingredient, of.named))
  return [ingredient(lines), ingredient(everything)]
    .filter(found => found.length > 0)
    .map(found => ({ name: `total ${of.named}`, lines: found }))
}

/** A formula has a few totals; a table of nothing else would be added up for ever. */
const mostTotals = 40

interface Computed {
  readonly sum: number | undefined
  readonly rounding: number // what the last digits of the lines may add to
  readonly unknown: readonly number[] // rows without such a figure
}

function compute(
  candidate: Candidate,
  unit: 'grams' | 'percent',
  baseOf: (line: ForeignLine) => number | undefined,
): Computed {
  let sum = 0
  let rounding = 0
  const unknown: number[] = []
  for (const line of candidate.lines) {
    const share = candidate.share?.(line) ?? 1
    const base = baseOf(line)
    const percent = line.percent?.percent
    const value =
      unit === 'percent'
        ? percent
        : (line.grams ?? line.weight?.grams ?? (base && percent !== undefined ? base * percent : undefined))
    const step = unit === 'percent' ? line.percent?.step : (line.weight?.step ?? 0)
    if (value === undefined) unknown.push(line.row)
    else sum += value * share
    rounding += (step ?? 0) / 2
  }
  return { sum: unknown.length > 0 || candidate.lines.length === 0 ? undefined : sum, rounding, unknown }
}

function check(
  printed: Quantity,
  total: PrintedTotal,
  among: readonly Candidate[],
  baseOf: (line: ForeignLine) => number | undefined,
  isOneOfMany: boolean,
): TotalCheck {
  const unit = printed.percent === undefined ? 'grams' : 'percent'
  const value = printed.percent ?? printed.grams ?? 0
  const say = unit === 'percent' ? per100 : grams
  const found = among.map(candidate => ({ candidate, ...compute(candidate, unit, baseOf) }))
  const off = ({ sum }: Computed) => (sum === undefined ? Infinity : Math.abs(sum - value))
  const isExact = (c: Computed) => off(c) <= (printed.step / 2) * (1 + 1e-9) + 1e-9
  const isRounding = (c: Computed) => off(c) <= (printed.step / 2 + c.rounding) * (1 + 1e-9) + 1e-9
  const chosen =
    found.find(isExact) ?? found.find(isRounding) ?? found.find(c => c.sum !== undefined) ?? found[0]
  const label = total.label === '' ? 'the row without a name' : total.label
  const base = { row: total.row, name: chosen?.candidate.name ?? label, unit, printed: value } as const
  if (!chosen || printed.measure || chosen.sum === undefined) {
    const unknown = chosen?.unknown ?? []
    const why = printed.measure
      ? 'it is no weight'
      : unknown.length > 0
        ? `${rowOrRows(unknown).toLowerCase()} ${unknown.length === 1 ? 'has' : 'have'} no such figure`
        : among.length === 0 && isOneOfMany
          ? `there are more than ${mostTotals} totals`
          : `it is not known what ${label} adds up`
    const sentence = `The file says ${base.name} ${printed.measure ? printed.text : say(value)}; it was not compared, for ${why}.`
    return { ...base, computed: undefined, verdict: 'not compared', sentence }
  }
  const { sum } = chosen
  const says = `The file says ${base.name} ${say(value)}`
  const verdict = isExact(chosen) ? 'agrees' : isRounding(chosen) ? 'rounding' : 'differs'
  const sentence =
    verdict === 'agrees'
      ? `${says}, and its lines add to that.`
      : `${says}; its lines add to ${say(sum)}${verdict === 'rounding' ? ', which rounding explains' : ''}.`
  return { ...base, computed: sum, verdict, sentence }
}

/** The totals that a formula prints, beside what its lines add to. */
export function checkTotals(
  formula: ForeignFormula,
  final: ForeignStage,
  baseOf: (line: ForeignLine) => number | undefined, // grams of 100 % in the line's stage, where known
  larder: Larder,
): TotalCheck[] {
  return formula.totals.flatMap((total, at) => {
    const among = at >= mostTotals ? [] : candidates(total, formula, final, larder)
    return total.quantities.map(printed => check(printed, total, among, baseOf, at >= mostTotals))
  })
}
