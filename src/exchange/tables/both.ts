import { grams, per100, tidy } from '../../dough/document/words.js'
import type { Quantity } from './cell-quantity.js'
import { sumOf } from './sums.js'
import {
  type ForeignFormula,
  type ForeignLine,
  type ForeignStage,
  rowOrRows,
  type Told,
} from './table-draft.js'

/** Which of the two a formula's lines keep, after all that could be doubtful was told. */
export interface Kept {
  readonly percentIn: ReadonlySet<ForeignStage> // stages whose lines keep their percentages
  readonly flourWeight?: number // grams, where the percentages of the final dough are of this
  readonly remark?: {
    readonly row: number
    readonly says: string
    readonly agreement: string // the rest of it while no total differs
    readonly more: string | undefined // another sentence
  }
}

interface Base {
  readonly grams: number
  readonly error: number // how much of it is rounding, fraction of 1
}

const isBoth = (line: ForeignLine): boolean => line.weight?.grams !== undefined && line.percent !== undefined

/** What 100 % weighs by these lines together. */
function baseBy(lines: readonly ForeignLine[]): Base {
  let weight = 0
  let share = 0
  for (const { weight: w, percent: p } of lines) {
    weight += w!.grams!
    share += p!.percent!
  }
  let error = 0
  for (const { weight: w, percent: p } of lines)
    error += w!.step / 2 / weight + (p!.percent === 1 ? 0 : p!.step / 2 / share)
  return { grams: weight / share, error }
}

/** What 100 % weighs, from the lines that say both: by the flours together, or by the line with which most agree. */
function baseOf(lines: readonly ForeignLine[]): Base | undefined {
  const both = lines.filter(line => isBoth(line) && line.percent!.percent! > 0 && line.weight!.grams! > 0)
  const flours = both.filter(line => line.kind === 'flour')
  const alone = [...flours, ...both].slice(0, 12).map(line => baseBy([line]))
  const bases = flours.length > 0 ? [baseBy(flours), ...alone] : alone
  const [first] = bases
  if (!first || offLines(both, first).length === 0) return first
  const counted = bases
    .filter((base, at) => at === 0 || base.error < 0.01) // by a rough figure all would agree
    .map(base => ({ base, off: offLines(both, base).length }))
  return counted.reduce((best, one) => (one.off < best.off ? one : best)).base
}

/** Is a line's percentage off its weight by more than rounding explains? */
function isOff(line: ForeignLine, base: Base): boolean {
  const { weight, percent } = line
  const share = percent!.percent!
  const rounding = weight!.step / 2 + (percent!.step / 2) * base.grams + share * base.grams * base.error
  return Math.abs(share * base.grams - weight!.grams!) > rounding * (1 + 1e-9) + 1e-9
}

const offLines = (lines: readonly ForeignLine[], base: Base | undefined): ForeignLine[] =>
  base ? lines.filter(line => isBoth(line) && isOff(line, base)) : []

function tellOff(off: readonly ForeignLine[], base: Base, where: string, told: Told): void {
  if (off.length > 5) {
    told.say(
      'warning',
      off[0]!.row,
      `${rowOrRows(off.map(line => line.row))} of ${where} have percentages that do not agree with their weights, if 100 % is ${grams(base.grams)}. The weights are read.`,
    )
    return
  }
  for (const { row, ingredient, weight, percent } of off)
    told.say(
      'warning',
      row,
      `Row ${row} gives ${per100(percent!.percent!)} and ${grams(weight!.grams!)} for ${ingredient}, but ${per100(percent!.percent!)} of ${grams(base.grams)} is ${grams(percent!.percent! * base.grams)}. The weight is read.`,
    )
}

/** Do the percentages of the final dough say all that its weights say, and more digits of it? */
function isFiner(final: ForeignStage): number | undefined {
  const flours = final.lines.filter(line => line.kind === 'flour')
  if (flours.length === 0 || !final.lines.every(isBoth)) return undefined
  const share = sumOf(flours.map(line => line.percent!.percent))!
  const flourWeight = sumOf(flours.map(line => line.weight!.grams))!
  if (Math.abs(share - 1) > 1e-9) return undefined
  const finer = final.lines.some(
    ({ weight, percent }) => Math.abs(percent!.percent! * flourWeight - weight!.grams!) > 1e-6 * flourWeight,
  )
  const coarser = final.lines.some(
    ({ weight, percent, kind }) =>
      kind !== 'flour' &&
      percent!.step * flourWeight > weight!.step * (1 + 1e-9) &&
      Math.abs(percent!.percent! * flourWeight - weight!.grams!) > 1e-6 * flourWeight,
  )
  return finer && !coarser ? flourWeight : undefined
}

/**
 * The rule for tables that give percentages and weights: the weights are kept, being what was weighed. Only
 * where every line of the final dough has both, all agree, the flours add to 100 and the percentages have the
 * more digits are its percentages kept, with its flour weight. Rows that disagree by more than rounding are told.
 */
export function choose(formula: ForeignFormula, final: ForeignStage, told: Told): Kept {
  const lines = formula.lines
  if (!lines.some(isBoth)) return { percentIn: new Set(), ...ofAllFlour(formula, final, told) }
  const own = formula.stages.map(stage => {
    const base = baseOf(stage.lines)
    return { stage, base, off: offLines(stage.lines, base) }
  })
  const all = formula.stages.length > 1 ? baseOf(lines) : undefined
  const offAll = offLines(lines, all)
  const offOwn = own.flatMap(({ off }) => off)
  const isOfAll = all !== undefined && offOwn.length > 0 && offAll.length < offOwn.length
  if (isOfAll) tellOff(offAll, all, formula.name, told)
  else for (const { stage, base, off } of own) if (base) tellOff(off, base, stage.name, told)
  const flourWeight = !isOfAll && offOwn.length === 0 ? isFiner(final) : undefined
  const agree = (isOfAll ? offAll : offOwn).length === 0
  const { row } = lines.find(isBoth)!
  const more = ofAnotherBase(formula, isOfAll)
  const both = `${formula.name} gives percentages and weights. `
  if (flourWeight !== undefined) {
    const says = `${both}The percentages of ${final.name} are read, of ${grams(flourWeight)} of flour: they have the more digits`
    return {
      percentIn: new Set([final]),
      flourWeight,
      remark: { row, says, agreement: ', and agree with the weights', more },
    }
  }
  const agreement = agree ? '; the percentages agree with them' : ''
  const says = `${both}The weights are read`
  return { percentIn: new Set(), remark: { row, says, agreement, more } }
}

/** Says so where percentages are of anything but their stage's own flour, which is what they are shown on from now on. */
function ofAnotherBase(formula: ForeignFormula, isOfAll: boolean): string | undefined {
  const stages = formula.stages.flatMap(({ name, lines }) => {
    const flours = lines.filter(line => line.kind === 'flour')
    const share = sumOf(flours.map(line => line.percent?.percent))
    if (flours.length === 0 || share === undefined) return []
    const within = 0.002 + sumOf(flours.map(line => line.percent!.step / 2))!
    const unknown = lines.filter(line => line.kind === undefined && !line.takes) // may be flour
    const most = share + unknown.reduce((sum, line) => sum + (line.percent?.percent ?? 0), 0)
    return [{ name, share, isOwn: share <= 1 + within && most >= 1 - within }]
  })
  const others = stages.filter(({ isOwn }) => !isOwn)
  if (others.length === 0) return undefined
  const anew = 'own flour, the weights unchanged.'
  const all = sumOf(stages.map(({ share }) => share))!
  if (stages.length > 1 && (isOfAll || Math.abs(all - 1) <= 0.005))
    return `The percentages of ${formula.name} are of the whole flour in the file and are shown anew on each stage’s ${anew}`
  const [{ name, share }] = others as [(typeof others)[0]]
  return others.length === 1
    ? `The flour of ${name} is ${per100(share)} in the file; its percentages are shown anew on the stage’s ${anew}`
    : `The flours of ${others.length} stages are not 100 % in the file; their percentages are shown anew on each stage’s ${anew}`
}

/** Percentages alone, of all the flour in the dough instead of each stage's own: weights for 1000 g of flour. */
function ofAllFlour(formula: ForeignFormula, final: ForeignStage, told: Told): { flourWeight?: number } {
  const { lines } = formula
  if (formula.stages.length < 2 || !lines.every(line => line.percent && !line.weight)) return {}
  const flour = (of: readonly ForeignLine[]) =>
    sumOf(of.filter(line => line.kind === 'flour').map(line => line.percent!.percent)) ?? 0
  const [all, own] = [flour(lines), flour(final.lines)]
  if (Math.abs(all - 1) > 0.002 || Math.abs(own - 1) <= 0.002) return {}
  for (const line of lines) {
    const percent = line.percent!
    const weight = tidy(percent.percent! * 1000)
    line.weight = { ...percent, text: `${weight} g`, grams: weight, step: percent.step * 1000 }
    line.percent = undefined
  }
  told.say(
    'warning',
    lines[0]!.row,
    `The flours of all stages of ${formula.name} add to ${per100(all)}, those of ${final.name} to ${per100(own)}: the percentages are of all the flour, and were read as weights for 1,000 g of it.`,
  )
  return {}
}

/** Shares of 1 where percentages are meant, as programs write them: flours that add to 1, and no sign of per cent. */
export function asPercentages(formula: ForeignFormula, told: Told): void {
  for (const stage of formula.stages) {
    const shares = stage.lines.filter(line => line.percent !== undefined)
    const flours = shares.filter(line => line.kind === 'flour')
    const sum = sumOf(flours.map(line => line.percent!.percent)) ?? 0
    if (flours.length === 0 || !shares.every(line => line.percent!.bare) || Math.abs(sum - 0.01) > 1e-5)
      continue
    for (const line of shares) line.percent = timesHundred(line.percent!)
    told.say(
      'warning',
      shares[0]!.row,
      `The percentages of ${stage.name || 'the dough'} are written as shares of 1: its flours add to 1. They were read as per cent, 1 being 100 %.`,
    )
  }
}

function timesHundred(percent: Quantity): Quantity {
  const fraction = tidy(percent.percent! * 100)
  return { ...percent, text: `${tidy(fraction * 100)}%`, percent: fraction, step: percent.step * 100 }
}
