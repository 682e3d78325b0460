import { tidy } from '../../dough/document/words.js'
import type { Quantity } from './cells.js'
import { type DraftFormula, type DraftLine, type DraftStage, isWithin, sumOf, type Told } from './draft.js'

/** Which of the two a formula's lines keep, after all that could be doubtful was told. */
export interface Kept {
  readonly percentIn?: DraftStage // its lines keep their percentages
  readonly flourWeight?: number // grams, which those are of
  tell(agree: boolean): void // what was decided, once it is known whether all totals agree
}

interface Base {
  readonly grams: number
  readonly error: number // how much of it is rounding, fraction of 1
}

interface Both extends DraftLine {
  readonly weight: Quantity & { readonly grams: number }
  readonly percent: Quantity & { readonly percent: number }
}
const isBoth = (line: DraftLine): line is Both =>
  line.weight?.grams !== undefined && line.percent?.percent !== undefined

/** What 100 % weighs by these lines together. */
function baseBy(lines: readonly Both[]): Base {
  const weight = sumOf(lines.map(line => line.weight.grams))!
  const share = sumOf(lines.map(line => line.percent.percent))!
  const errors = lines.map(
    ({ weight: w, percent: p }) => w.step / 2 / weight + (p.percent === 1 ? 0 : p.step / 2 / share),
  )
  return { grams: weight / share, error: sumOf(errors)! }
}

/** What 100 % weighs, from the lines that say both: by the flours together, or by the line with which most agree. */
function baseOf(lines: readonly DraftLine[]): { base: Base; off: readonly Both[] } | undefined {
  const both = lines.filter(isBoth)
  const some = both.filter(line => line.percent.percent > 0 && line.weight.grams > 0)
  const flours = some.filter(line => line.kind === 'flour')
  const alone = [...flours, ...some].slice(0, 12).map(line => baseBy([line]))
  const [first, ...others] = (flours.length > 0 ? [baseBy(flours), ...alone] : alone).map(base => ({
    base,
    off: both.filter(line => isOff(line, base)),
  }))
  if (!first || first.off.length === 0) return first
  const sharp = others.filter(({ base }) => base.error < 0.01) // by a rough figure all would agree
  return sharp.reduce((best, one) => (one.off.length < best.off.length ? one : best), first)
}

/** Is a line's percentage off its weight by more than rounding explains? */
function isOff({ weight, percent: { percent: share, step } }: Both, base: Base): boolean {
  const rounding = weight.step / 2 + (step / 2) * base.grams + share * base.grams * base.error
  return !isWithin(share * base.grams - weight.grams, rounding)
}

function tellOff(off: readonly Both[], base: number, name: string, told: Told): void {
  if (off.length > 5)
    return told.say({ code: 'percentagesOff', rows: off.map(line => line.row), name, base }, off[0]!.row)
  for (const { row, ingredient, weight, percent } of off) {
    const figures = { percent: percent.percent, weight: weight.grams, base, share: percent.percent * base }
    told.sayOf({ code: 'percentageOff', row, name: ingredient, ...figures })
  }
}

/** Do the percentages of the final dough say all that its weights say, and more digits of it? Of how much flour? */
function finerOf({ lines, flours }: DraftStage): number | undefined {
  const both = lines.filter(isBoth)
  const flourWeight = sumOf(flours.map(line => line.weight?.grams)) ?? 0
  const share = sumOf(flours.map(line => line.percent?.percent)) ?? 0
  if (flours.length === 0 || both.length < lines.length || Math.abs(share - 1) > 1e-9) return undefined
  const off = both.filter(
    ({ weight, percent }) => Math.abs(percent.percent * flourWeight - weight.grams) > 1e-6 * flourWeight,
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
export function choose(formula: DraftFormula, final: DraftStage, told: Told): Kept {
  const { lines, stages, name } = formula
  const first = lines.find(isBoth)
  if (!first) {
    ofAllFlour(formula, final, told)
    return { tell: () => {} }
  }
  const own = stages.map(stage => ({ name: stage.name, ...baseOf(stage.lines) }))
  const offOwn = own.flatMap(({ off = [] }) => off).length
  const all = stages.length > 1 && offOwn > 0 ? baseOf(lines) : undefined
  const isOfAll = all !== undefined && all.off.length < offOwn
  for (const { base, off = [], name: where } of isOfAll ? [{ ...all, name }] : own)
    if (base) tellOff(off, base.grams, where, told)
  const agree = (isOfAll ? all.off.length : offOwn) === 0
  const flourWeight = offOwn === 0 ? finerOf(final) : undefined
  const tell = (totalsAgree: boolean) => {
    if (flourWeight === undefined)
      told.say({ code: 'weightsKept', name, agree: agree && totalsAgree }, first.row)
    else {
      const figures = { name, final: final.name, flour: flourWeight, agree: totalsAgree }
      told.say({ code: 'percentagesKept', ...figures }, first.row)
    }
    tellOtherBases(formula, isOfAll, first.row, told)
  }
  return flourWeight === undefined ? { tell } : { tell, percentIn: final, flourWeight }
}

/** Says so where percentages are of anything but their stage's own flour, which is what they are shown on from now on. */
function tellOtherBases({ name, stages }: DraftFormula, isOfAll: boolean, row: number, told: Told): void {
  const shares = stages.flatMap(({ name: stage, lines, flours }) => {
    const share = sumOf(flours.map(line => line.percent?.percent))
    if (flours.length === 0 || share === undefined) return []
    const within = 0.002 + sumOf(flours.map(line => line.percent!.step / 2))!
    const unknown = lines.filter(line => line.kind === undefined && !line.takes) // may be flour
    const most = share + sumOf(unknown.map(line => line.percent?.percent ?? 0))!
    return [{ stage, share, isOwn: share <= 1 + within && most >= 1 - within }]
  })
  const [other, ...others] = shares.filter(({ isOwn }) => !isOwn)
  if (!other) return
  const all = sumOf(shares.map(({ share }) => share))!
  if (shares.length > 1 && (isOfAll || Math.abs(all - 1) <= 0.005))
    told.say({ code: 'shownAnewOfAllFlour', name }, row)
  else if (others.length === 0)
    told.say({ code: 'percentagesShownAnew', name: other.stage, share: other.share }, row)
  else told.say({ code: 'severalShownAnew', stages: others.length + 1 }, row)
}

/** Percentages alone, of all the flour in the dough instead of each stage's own: weights for 1000 g of flour. */
function ofAllFlour({ name, stages, lines }: DraftFormula, final: DraftStage, told: Told): void {
  if (stages.length < 2 || !lines.every(line => line.percent && !line.weight)) return
  const flourIn = (of: readonly DraftStage[]) =>
    sumOf(of.flatMap(({ flours }) => flours.map(line => line.percent!.percent))) ?? 0
  const [all, own] = [flourIn(stages), flourIn([final])]
  if (Math.abs(all - 1) > 0.002 || Math.abs(own - 1) <= 0.002) return
  for (const line of lines) {
    const { percent = 0, step, ...rest } = line.percent!
    const grams = tidy(percent * 1000)
    line.weight = { ...rest, text: `${grams} g`, grams, step: step * 1000 }
    line.percent = undefined
  }
  told.say({ code: 'ofAllFlour', name, final: final.name, all, own }, lines[0]!.row)
}

/** Shares of 1 where percentages are meant, as programs write them: flours that add to 1, and no sign of per cent. */
export function asPercentages({ stages }: DraftFormula, told: Told): void {
  for (const { name, lines, flours } of stages) {
    const shares = lines.filter(line => line.percent !== undefined)
    const sum = sumOf(flours.map(line => line.percent?.percent ?? 0)) ?? 0
    if (!shares.every(line => line.percent!.bare) || Math.abs(sum - 0.01) > 1e-5) continue
    for (const line of shares) {
      const { percent = 0, step, ...rest } = line.percent!
      const share = tidy(percent * 100)
      line.percent = { ...rest, text: `${tidy(share * 100)}%`, percent: share, step: step * 100 }
    }
    told.say({ code: 'sharesOfOne', name: name || 'the dough' }, shares[0]!.row)
  }
}
