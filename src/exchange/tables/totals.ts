import type { Quantity } from './cells.js'
import { type DraftFormula, type DraftLine, type DraftStage, isWithin, type PrintedTotal } from './draft.js'
import type { Names } from './row-features.js'
import type { TotalCheck } from './types.js'
import { wordsOf } from './vocabulary.js'
import { inWords, type Reason } from './words.js'

/** Lines that a total may be the sum of; `share` is how much of each counts, 1 when left out. */
interface Candidate {
  readonly name: string
  readonly lines: readonly DraftLine[]
  readonly share?: (line: DraftLine) => number
}

/** How much of a line is flour, or water, starters taken apart. */
function part(line: DraftLine, kind: 'flour' | 'water', names: Names): number {
  if (line.kind === kind) return 1
  const countsAs = line.takes ? undefined : names.find(line.ingredient)?.countsAs
  if (countsAs?.kind !== 'starter') return 0
  return (kind === 'flour' ? 1 : countsAs.hydration) / (1 + countsAs.hydration)
}

/** What a total may be the sum of: the likeliest first. */
function candidates(
  total: PrintedTotal,
  formula: DraftFormula,
  final: DraftStage,
  names: Names,
): Candidate[] {
  const { of, heads, row, stage = final } = total
  const above = heads ? stage.lines : stage.lines.filter(line => line.row < row)
  const lines = above.length > 0 ? above : stage.lines
  const everything = formula.lines
  const isLast = stage === final
  const whole = { name: formula.name, lines: everything.filter(line => !line.takes) } // nothing is counted twice
  const dough = { name: final.name, lines: final.lines }
  if (of === 'dough') return [dough, whole]
  if (of === 'flour' || of === 'water') {
    const share = (line: DraftLine) => part(line, of, names)
    const ofKind = (from: readonly DraftLine[]) => from.filter(line => line.kind === of)
    const own = { name: `${of} of ${stage.name}`, lines: ofKind(lines) }
    const name = `total ${of}`
    const all = [
      { name, lines: ofKind(everything) },
      { name, lines: everything.filter(line => share(line) > 0), share },
    ]
    return isLast ? [...all, own] : [own, ...all]
  }
  const own = { name: stage.name, lines }
  if (of.named === '') return isLast ? [own, dough, whole, { name: formula.name, lines: everything }] : [own]
  const isNamed = (name: string) => wordsOf(name) === wordsOf(of.named)
  const named = formula.stages.find(({ name }) => isNamed(name) || wordsOf(name).includes(wordsOf(of.named)))
  if (named) return [{ name: named.name, lines: named.lines }]
  if (isNamed(formula.name)) return [whole, dough]
  return [lines, everything]
    .map(from => ({ name: `total ${of.named}`, lines: from.filter(line => isNamed(line.ingredient)) }))
    .filter(found => found.lines.length > 0)
}

/** A formula has a few totals; a table of nothing else would be added up for ever. */
const mostTotals = 40

type Bases = ReadonlyMap<DraftStage, number | undefined>

interface Computed {
  readonly candidate: Candidate
  readonly sum: number | undefined
  readonly rounding: number // what the last digits of the lines may add to
  readonly unknown: readonly number[] // rows without such a figure
}

function compute(
  candidate: Candidate,
  unit: 'grams' | 'percent',
  baseOf: (line: DraftLine) => number | undefined,
): Computed {
  let [sum, rounding] = [0, 0]
  const unknown: number[] = []
  for (const line of candidate.lines) {
    const { weight, percent } = line
    const base = baseOf(line)
    const inGrams = line.grams ?? weight?.grams ?? (base && percent?.percent && base * percent.percent)
    const value = unit === 'percent' ? percent?.percent : inGrams
    if (value === undefined) unknown.push(line.row)
    else sum += value * (candidate.share?.(line) ?? 1)
    rounding += ((unit === 'percent' ? percent : weight)?.step ?? 0) / 2
  }
  const isKnown = unknown.length === 0 && candidate.lines.length > 0
  return { candidate, sum: isKnown ? sum : undefined, rounding, unknown }
}

function check(
  printed: Quantity,
  { row, label: said }: PrintedTotal,
  found: readonly Computed[],
  isOneOfMany: boolean,
): TotalCheck {
  const unit = printed.percent === undefined ? 'grams' : 'percent'
  const value = printed.percent ?? printed.grams ?? 0
  const isOff = ({ sum }: Computed, within: number) => sum === undefined || !isWithin(sum - value, within)
  const isExact = (c: Computed) => !isOff(c, printed.step / 2)
  const isRounding = (c: Computed) => !isOff(c, printed.step / 2 + c.rounding)
  const chosen =
    found.find(isExact) ?? found.find(isRounding) ?? found.find(c => c.sum !== undefined) ?? found[0]
  const label = said === '' ? 'the row without a name' : said
  const name = chosen?.candidate.name ?? label
  const figures = { row, name, unit, printed: value } as const
  const of = { name, printed: { unit, value } } as const
  if (printed.measure || chosen?.sum === undefined) {
    const rows = chosen?.unknown ?? []
    const why: Reason = printed.measure
      ? { code: 'totalIsNoWeight', name, text: printed.text }
      : rows.length > 0
        ? { code: 'totalOfUnknownFigures', ...of, rows }
        : isOneOfMany
          ? { code: 'totalOfMany', ...of, most: mostTotals }
          : { code: 'totalOfUnknown', ...of, label }
    return { ...figures, computed: undefined, verdict: 'not compared', sentence: inWords(why) }
  }
  const computed = chosen.sum
  const verdict = isExact(chosen) ? 'agrees' : isRounding(chosen) ? 'rounding' : 'differs'
  const sentence = inWords({ code: codes[verdict], ...of, computed: { unit, value: computed } })
  return { ...figures, computed, verdict, sentence }
}

const codes = { agrees: 'totalAgrees', rounding: 'totalRounded', differs: 'totalDiffers' } as const

/** The totals that a formula prints, beside what its lines add to. `bases`: grams of 100 % in a stage, where known. */
export function checkTotals(
  formula: DraftFormula,
  final: DraftStage,
  bases: Bases,
  names: Names,
): TotalCheck[] {
  if (formula.totals.length === 0) return []
  const byLine = new Map(
    formula.stages.flatMap(stage => stage.lines.map(line => [line, bases.get(stage)] as const)),
  )
  return formula.totals.flatMap((total, at) => {
    const isOneOfMany = at >= mostTotals
    const among = isOneOfMany ? [] : candidates(total, formula, final, names)
    return total.quantities.map(printed => {
      const unit = printed.percent === undefined ? 'grams' : 'percent'
      const found = among.map(candidate => compute(candidate, unit, line => byLine.get(line)))
      return check(printed, total, found, isOneOfMany)
    })
  })
}
