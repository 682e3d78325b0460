import { tidy } from '../../dough/document/words.js'
import type { Quantity } from '../values/amount-cells.js'
import { totalOf, wordsOf } from '../values/labels.js'
import { isWithin, sumOf } from '../values/written-weights.js'
import type { DraftFormula, DraftLine, DraftStage, PrintedTotal, Told } from './draft.js'
import type { Names } from './row-features.js'
import type { TotalCheck } from './types.js'
import { type Reason, tableReason } from './words.js'

interface Both extends DraftLine {
  readonly weight: Quantity & { readonly grams: number }
  readonly percent: Quantity & { readonly percent: number }
}
const isBoth = (line: DraftLine): line is Both =>
  line.weight?.grams !== undefined && line.percent?.percent !== undefined

/**
 * Grams that 100 % weighs, by the flours that say both, or by all lines where none does, and the lines whose
 * percentage is off their weight by more than rounding explains.
 */
function baseOf(lines: readonly DraftLine[]): { base: number; off: readonly Both[] } | undefined {
  const both = lines.filter(isBoth)
  const some = both.filter(line => line.percent.percent > 0 && line.weight.grams > 0)
  if (some.length === 0) return undefined
  const flours = some.filter(line => line.kind === 'flour')
  const by = flours.length > 0 ? flours : some
  const weight = sumOf(by.map(line => line.weight.grams))!
  const share = sumOf(by.map(line => line.percent.percent))!
  const base = weight / share
  const shareStep = sumOf(by.map(({ percent: p }) => (p.percent === 1 ? 0 : p.step)))!
  const error = sumOf(by.map(line => line.weight.step))! / 2 / weight + shareStep / 2 / share
  const isOff = ({ weight: { grams, step }, percent }: Both) =>
    !isWithin(
      percent.percent * base - grams,
      (step + percent.step * base) / 2 + percent.percent * base * error,
    )
  return { base, off: both.filter(isOff) }
}

/** Do the percentages of the final dough say all that its weights say, and more digits of it? Of how much flour? */
function finerOf({ lines, flours, flourShare = 0 }: DraftStage): number | undefined {
  const both = lines.filter(isBoth)
  const flourWeight = sumOf(flours.map(line => line.weight?.grams)) ?? 0
  if (flours.length === 0 || both.length < lines.length || Math.abs(flourShare - 1) > 1e-9) return undefined
  // what the weights explain was worked out from them
  const off = both.filter(
    ({ weight, percent }) => !isWithin(percent.percent - weight.grams / flourWeight, percent.step / 2),
  )
  const isCoarser = ({ kind, weight, percent }: Both) =>
    kind !== 'flour' && percent.step * flourWeight > weight.step * (1 + 1e-9)
  return off.length > 0 && !off.some(isCoarser) ? flourWeight : undefined
}

/**
 * The rule for tables that give percentages and weights: the weights are kept, being what was weighed. Only
 * where every line of the final dough has both, all agree, the flours add to 100 and the percentages have the
 * more digits are its percentages kept, with its flour weight. Rows that disagree by more than rounding are told.
 */
export function choose(formula: DraftFormula, final: DraftStage, told: Told) {
  const { lines, stages, name } = formula
  const first = lines.find(isBoth)
  if (!first) ofAllFlour(formula, final, told)
  const found = stages.flatMap(stage => ({ where: stage.name, ...baseOf(stage.lines) }))
  for (const { base = 0, off = [], where } of found) {
    const rows = off.map(({ row }) => row)
    if (rows.length > 5) told.say({ code: 'percentagesOff', rows, name: where, base, row: rows[0]! })
    for (const { row, ingredient, weight, percent } of rows.length > 5 ? [] : off) {
      const figures = { percent: percent.percent, weight: weight.grams, share: percent.percent * base }
      told.say({ code: 'percentageOff', row, name: ingredient, base, ...figures })
    }
  }
  const isAgreed = found.every(({ off = [] }) => off.length === 0)
  const flour = isAgreed ? finerOf(final) : undefined
  /** To be called once it is known whether the totals agree. */
  const tell = (totalsAgree: boolean) => {
    if (!first) return
    const { row } = first
    if (flour === undefined) told.say({ code: 'weightsKept', name, agree: isAgreed && totalsAgree, row })
    else told.say({ code: 'percentagesKept', name, final: final.name, flour, agree: totalsAgree, row })
    tellOtherBases(formula, row, told)
  }
  return flour === undefined ? { tell } : { tell, percentIn: final, flourWeight: flour }
}

/** Says so where percentages are of anything but their stage's own flour, which is what they are shown on from now on. */
function tellOtherBases({ name, stages }: DraftFormula, row: number, told: Told): void {
  const shares = stages.flatMap(({ name: stage, lines, flours, flourShare: share }) => {
    if (flours.length === 0 || share === undefined) return []
    const within = 0.002 + sumOf(flours.map(line => line.percent!.step / 2))!
    const unknown = lines.filter(line => line.kind === undefined && !line.takes) // may be flour
    const most = share + sumOf(unknown.map(line => line.percent?.percent ?? 0))!
    return [{ stage, share, isOwn: share <= 1 + within && most >= 1 - within }]
  })
  const others = shares.filter(({ isOwn }) => !isOwn)
  const all = sumOf(shares.map(({ share }) => share))!
  if (others.length > 0 && shares.length > 1 && Math.abs(all - 1) <= 0.005)
    told.say({ code: 'shownAnewOfAllFlour', name, row })
  else
    for (const { stage, share } of others) told.say({ code: 'percentagesShownAnew', name: stage, share, row })
}

/** Percentages alone, of all the flour in the dough instead of each stage's own: weights for 1000 g of flour. */
function ofAllFlour({ name, stages, lines }: DraftFormula, final: DraftStage, told: Told): void {
  if (stages.length < 2 || !lines.every(line => line.percent && !line.weight)) return
  const [all = 0, own = 0] = [sumOf(stages.map(({ flourShare }) => flourShare)), final.flourShare]
  if (Math.abs(all - 1) > 0.002 || Math.abs(own - 1) <= 0.002) return
  for (const line of lines) {
    const { percent = 0, step, ...rest } = line.percent!
    const grams = tidy(percent * 1000)
    line.weight = { ...rest, text: `${grams} g`, grams, step: step * 1000 }
    line.percent = undefined
  }
  told.say({ code: 'ofAllFlour', name, final: final.name, all, own, row: lines[0]!.row })
}

/** Lines that a total may be the sum of; `share` is how much of each counts, 1 when left out. */
interface Candidate {
  readonly name: string
  readonly lines: readonly DraftLine[]
  readonly share?: (line: DraftLine) => number
}

/** How much of a line is flour, or water, starters taken apart. */
function part({ kind, takes, ingredient }: DraftLine, of: 'flour' | 'water', names: Names): number {
  const countsAs = takes ? undefined : names.find(ingredient)?.countsAs
  if (kind === of || countsAs?.kind !== 'starter') return kind === of ? 1 : 0
  return (of === 'flour' ? 1 : countsAs.hydration) / (1 + countsAs.hydration)
}

/** What a total may be the sum of: the likeliest first. */
function candidates(
  total: PrintedTotal,
  formula: DraftFormula,
  final: DraftStage,
  names: Names,
): Candidate[] {
  const { heads, label, row, stage = final } = total
  const of = (heads ? undefined : totalOf(label)) ?? { named: '' }
  const above = heads ? stage.lines : stage.lines.filter(line => line.row < row)
  const lines = above.length > 0 ? above : stage.lines
  const everything = formula.lines
  const isLast = stage === final
  const whole = { name: formula.name, lines: everything.filter(line => !line.takes) } // nothing is counted twice
  const dough = { name: final.name, lines: final.lines }
  if (of === 'dough') return [dough, whole]
  if (of === 'flour' || of === 'water') {
    const share = (line: DraftLine) => part(line, of, names)
    const isOfIt = (line: DraftLine) => line.kind === of
    const own = { name: `${of} of ${stage.name}`, lines: lines.filter(isOfIt) }
    const alone = { name: `total ${of}`, lines: everything.filter(isOfIt) }
    const all = { name: alone.name, lines: everything.filter(line => share(line) > 0), share }
    return isLast ? [alone, all, own] : [own, alone, all]
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

type Unit = 'grams' | 'percent'

/** What the lines add to, what their last digits may add to, and the rows without such a figure. A line without any, `to taste`, adds nothing. */
function compute(
  { name, lines, share }: Candidate,
  unit: Unit,
  baseOf: (line: DraftLine) => number | undefined,
) {
  let [sum, rounding] = [0, 0]
  const unknown: number[] = []
  for (const line of lines) {
    const { weight, percent, grams } = line
    if (!weight && !percent && grams === undefined && !line.takes) continue
    const base = baseOf(line)
    const inGrams = grams ?? weight?.grams ?? (base && percent?.percent && base * percent.percent)
    const value = unit === 'percent' ? percent?.percent : inGrams
    if (value === undefined) unknown.push(line.row)
    sum += (value ?? 0) * (share?.(line) ?? 1)
    rounding += ((unit === 'percent' ? percent : weight)?.step ?? 0) / 2
  }
  return { name, sum: unknown.length === 0 && lines.length > 0 ? sum : undefined, rounding, unknown }
}

const codes = { agrees: 'totalAgrees', rounding: 'totalRounded', differs: 'totalDiffers' } as const

/** A printed total beside the first of the candidates that it agrees with; one that differs is told. */
function check(
  unit: Unit,
  { percent, grams = 0, step }: Quantity,
  { row, label }: PrintedTotal,
  found: readonly ReturnType<typeof compute>[],
  tell: (why: Reason & { row: number }) => void,
): TotalCheck {
  const value = percent ?? grams
  const verdicts = found.map(({ sum, rounding }) => {
    if (sum === undefined) return 'not compared'
    if (isWithin(sum - value, step / 2)) return 'agrees'
    return isWithin(sum - value, step / 2 + rounding) ? 'rounding' : 'differs'
  })
  const verdict = (['agrees', 'rounding', 'differs'] as const).find(one => verdicts.includes(one))
  const { name, sum, unknown } = found[verdict ? verdicts.indexOf(verdict) : 0] ?? {
    name: label || 'the row without a name',
    unknown: [],
  }
  const of = { name, printed: { unit, value } }
  const why: Reason =
    verdict && sum !== undefined
      ? { code: codes[verdict], ...of, computed: { unit, value: sum } }
      : unknown.length > 0
        ? { code: 'totalOfUnknownFigures', ...of, rows: unknown }
        : { code: 'totalOfUnknown', ...of, label: label || name }
  if (verdict === 'differs') tell({ ...why, row })
  return { row, verdict: verdict ?? 'not compared', sentence: tableReason(why).message }
}

/** The totals that a formula prints, beside what its lines add to; `flourWeight` is that of a final dough in percentages. */
export function checkTotals(
  formula: DraftFormula,
  final: DraftStage,
  flourWeight: number,
  names: Names,
  told: Told,
): TotalCheck[] {
  if (formula.totals.length === 0) return []
  const bases = new Map<DraftLine, number | undefined>() // grams of 100 % in its stage
  for (const { flours, lines } of formula.stages) {
    const isPercent = lines === final.lines && flours.every(line => !line.weight && line.percent)
    const base = isPercent ? flourWeight : sumOf(flours.map(line => line.grams))
    for (const line of lines) bases.set(line, flours.length === 0 ? undefined : base)
  }
  return formula.totals.flatMap((total, at) => {
    const among = at < mostTotals ? candidates(total, formula, final, names) : []
    return total.quantities.map(printed => {
      const unit = printed.percent === undefined ? 'grams' : 'percent'
      const found = among.map(candidate => compute(candidate, unit, line => bases.get(line)))
      return check(unit, printed, total, found, why => told.say(why, formula.id))
    })
  })
}
