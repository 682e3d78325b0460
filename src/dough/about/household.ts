import '../cells/rare-cells-at-once.js'
import type { Worded } from '../../engine/index.js'
import { gramsPerMeasure } from '../amounts/measures.js'
import { type Formula, type Line, nameKey } from '../document/formula.js'
import type { Ingredient } from '../document/larder.js'
import { tidy } from '../document/words.js'
import type { FigureSheet } from '../sheet/figures.js'
import { openSheet } from '../sheet/sheet.js'
import { type HouseholdDiagnostic, householdProblem } from './words.js'

export type MeasureSystem = 'us' | 'metric' | 'imperial'

export interface HouseholdOptions {
  readonly system: MeasureSystem
  readonly fractions: readonly number[] // of a cup and of a teaspoon that a kitchen has, between 0 and 1; tablespoons are whole
}

/** Quarters, thirds and halves, as sets of cups and spoons have them. */
export const usualFractions: readonly number[] = [1 / 4, 1 / 3, 1 / 2, 2 / 3, 3 / 4]

/** A line in cups and spoons. */
export interface HouseholdLine {
  readonly line: string // id
  readonly grams: number | undefined // wanted in the batch
  readonly words: string | undefined // `3 1/4 cups + 1 tbsp`; undefined: weigh it
  readonly problem: Worded<HouseholdDiagnostic> | undefined // why there are no words
  readonly measured: number | undefined // grams that the words stand for
  readonly error: number | undefined // what measuring so adds or takes, fraction of the weight wanted
  readonly step: number | undefined // grams between two amounts of the finest measure used: the error is half of it at most
}

interface Both {
  readonly weighed: number | undefined
  readonly measured: number | undefined
}

/** A formula in cups and spoons, and what they do to it: ratios as fractions of 1. */
export interface Household {
  readonly lines: readonly HouseholdLine[] // of all stages, in their order
  readonly trueHydration: Both
  readonly salt: Both
}

/**
 * Millilitres. US customary: NIST Handbook 44, Appendix C. Metric: the round measures of 250, 15 and 5 ml that NBS
 * Special Publication 430 (1975) proposed and that are sold as such. Imperial: the cup is half an imperial pint (Weights and
 * Measures Act 1985); its spoons are the metric ones, since those are what is sold in Britain, and not the older
 * tablespoon of 17.758 ml (5/8 fluid ounce) and teaspoon of 5.919 ml.
 */
const millilitres: Readonly<Record<MeasureSystem, Readonly<Record<'cup' | 'tbsp' | 'tsp', number>>>> = {
  us: { cup: 236.588, tbsp: 14.787, tsp: 4.929 },
  metric: { cup: 250, tbsp: 15, tsp: 5 },
  imperial: { cup: 284.131, tbsp: 15, tsp: 5 },
}

/** One of the measures at hand, for one ingredient. */
interface Spoon {
  readonly name: string
  readonly grams: number
  readonly parts: readonly number[] // amounts from 0 up to 1, both included
}

/** Cup, tablespoon, teaspoon. */
type Spoons = readonly [Spoon, Spoon, Spoon]

/** An amount in measures. */
interface Measured {
  readonly words: readonly string[]
  readonly amounts: readonly (readonly [Spoon, number])[]
  readonly grams: number
  readonly step: number // grams
}

const closeEnough = 0.01 // of the weight: a second measure is not worth less than this

/** `1/3` for a fraction of 1; three decimals where no denominator up to 16 says it. */
function fractionWords(fraction: number): string {
  for (let below = 2; below <= 16; below++) {
    const above = Math.round(fraction * below)
    if (Math.abs(fraction - above / below) < 1e-6) return `${above}/${below}`
  }
  return `${Number(fraction.toFixed(3))}`
}

function amountWords(amount: number, name: string): string {
  const whole = Math.floor(amount + 1e-9)
  const part = amount - whole
  const number = [whole > 0 ? `${whole}` : '', part > 1e-9 ? fractionWords(part) : '']
    .filter(Boolean)
    .join(' ')
  const plural = name === 'cup' && amount > 1 + 1e-9 ? 's' : ''
  return `${number} ${name}${plural}`
}

const gapOf = (parts: readonly number[]): number =>
  Math.max(...parts.slice(1).map((part, i) => part - parts[i]!))

/** So much of one measure as is nearest to the grams, or as goes into them; undefined for none of it. */
function inOne(grams: number, spoon: Spoon, way: 'nearest' | 'below'): Measured | undefined {
  const { grams: each, parts } = spoon
  const whole = Math.floor(grams / each + 1e-9)
  const rest = Math.max(0, grams / each - whole)
  const fits = parts.filter(part => part <= rest + 1e-9)
  const part =
    way === 'below'
      ? fits.at(-1)!
      : parts.reduce((best, p) => (Math.abs(p - rest) < Math.abs(best - rest) ? p : best))
  const amount = whole + part
  return amount > 1e-9 ? inAll([[spoon, amount]]) : undefined
}

/** An amount of so much of each measure, the coarsest first. */
function inAll(amounts: readonly (readonly [Spoon, number])[]): Measured {
  const { grams, parts } = amounts.at(-1)![0]
  return {
    words: amounts.map(([{ name }, amount]) => amountWords(amount, name)),
    amounts,
    grams: amounts.reduce((sum, [{ grams }, amount]) => sum + grams * amount, 0),
    step: gapOf(parts) * grams,
  }
}

function inTwo(grams: number, coarse: Spoon, fine: Spoon): Measured | undefined {
  const first = inOne(grams, coarse, 'below')
  const second = first && inOne(grams - first.grams, fine, 'nearest')
  return first && second ? inAll([...first.amounts, ...second.amounts]) : undefined
}

/**
 * The same with three teaspoons as a tablespoon, and tablespoons as a part of a cup that a kitchen has, where they are one: 16 a cup in the
 * United States, and no whole number elsewhere.
 */
function carried(measured: Measured, [cup, tbsp]: Spoons, isUs: boolean): Measured {
  const of = (name: string) => measured.amounts.find(([spoon]) => spoon.name === name)?.[1] ?? 0
  let [cups, tablespoons] = [of('cup'), of('tbsp')]
  const areTeaspoons = of('tsp') >= 3 - 1e-9
  if (of('tsp') > 0 && !areTeaspoons) return measured
  if (areTeaspoons) tablespoons += 1
  const inCups = cups + tablespoons / 16
  const isPart = cup.parts.some(part => Math.abs(inCups - Math.floor(inCups + 1e-9) - part) < 1e-9)
  const areTablespoons = isUs && tablespoons > 0 && isPart
  if (areTablespoons) [cups, tablespoons] = [inCups, 0]
  if (!areTeaspoons && !areTablespoons) return measured
  const amounts = [[cup, cups] as const, [tbsp, tablespoons] as const]
  return inAll(amounts.filter(([, amount]) => amount > 0))
}

/** The nearest amount in one measure, or in two where that is nearer by a hundredth of the weight. */
function nearest(grams: number, cup: Spoon, tbsp: Spoon, tsp: Spoon): Measured | undefined {
  const holds = (spoon: Spoon, smallest: number) => grams >= spoon.grams * smallest * 0.99
  const coarse = holds(cup, cup.parts[1]!) ? cup : holds(tbsp, 1) ? tbsp : tsp
  const error = (m: Measured) => Math.abs(m.grams - grams)
  const best = (all: readonly (Measured | undefined)[]) =>
    all.filter(m => m !== undefined).sort((a, b) => error(a) - error(b))[0]
  const one = inOne(grams, coarse, 'nearest')
  if (coarse === tsp) return one
  const rest = grams - (inOne(grams, coarse, 'below')?.grams ?? 0)
  // More than three teaspoons are tablespoons, and beside cups nobody wants parts of a teaspoon.
  const fine = coarse === cup ? [tbsp, ...(rest < tbsp.grams ? [{ ...tsp, parts: [0, 1] }] : [])] : [tsp]
  const two = best(fine.map(spoon => inTwo(grams, coarse, spoon)))
  return one && two && error(one) - error(two) < closeEnough * grams ? one : (two ?? one)
}

function spoonsOf(ingredient: Ingredient, { system, fractions }: HouseholdOptions): Spoons | undefined {
  const inside = fractions.filter(f => f > 0 && f < 1)
  const parts = [0, ...[...new Set(inside)].sort((a, b) => a - b), 1]
  const grams = (measure: 'cup' | 'tbsp' | 'tsp') => {
    const us = gramsPerMeasure(ingredient, measure)
    return us === undefined ? undefined : (us * millilitres[system][measure]) / millilitres.us[measure]
  }
  const [cup, tbsp, tsp] = [grams('cup'), grams('tbsp'), grams('tsp')]
  if (!cup || !tbsp || !tsp) return undefined
  return [
    { name: 'cup', grams: cup, parts },
    { name: 'tbsp', grams: tbsp, parts: [0, 1] },
    { name: 'tsp', grams: tsp, parts },
  ]
}

/** A line in words, with how far they are off. */
function measuredLine(
  line: Line,
  grams: number | undefined,
  ingredient: Ingredient | undefined,
  options: HouseholdOptions,
): HouseholdLine {
  const unsaid = (why: HouseholdDiagnostic): HouseholdLine => ({
    line: line.id,
    grams,
    words: undefined,
    problem: householdProblem(why),
    measured: undefined,
    error: undefined,
    step: undefined,
  })
  const unknown = () => unsaid({ code: 'measureUnknown', ingredient: line.ingredient })
  if (grams === undefined) return unsaid({ code: 'weightUnknown' })
  if (!(grams > 0)) return unsaid({ code: 'nothingToMeasure' })
  if (!ingredient) return unknown()
  const said = (measured: Measured): HouseholdLine => ({
    line: line.id,
    grams,
    words: measured.words.join(' + '),
    problem: undefined,
    measured: measured.grams,
    error: measured.grams / grams - 1,
    step: measured.step,
  })
  if (ingredient.kind === 'egg' && ingredient.each) {
    const counted = inOne(grams, { name: 'each', grams: ingredient.each, parts: [0, 1] }, 'nearest')
    if (counted) return said(counted)
  }
  const spoons = spoonsOf(ingredient, options)
  if (!spoons) return unknown()
  const measured = nearest(grams, ...spoons)
  return measured
    ? said(carried(measured, spoons, options.system === 'us'))
    : unsaid({ code: 'lessThanASpoon' })
}

/** So many grams of an ingredient in cups and spoons, `3 1/4 cups + 1 tbsp`; undefined where they are to be weighed. */
export const inMeasures = (
  ingredient: Ingredient,
  grams: number,
  options: HouseholdOptions,
): string | undefined =>
  measuredLine({ id: '', ingredient: ingredient.name, amount: '', note: '' }, grams, ingredient, options)
    .words

/** The formula with what cups and spoons stand for, to read the dough that they give. */
function asMeasured(sheet: FigureSheet, lines: ReadonlyMap<string, HouseholdLine>): Formula | undefined {
  const { batch: _batch, holds: _holds, ...formula } = sheet.formula
  if ([...lines.values()].some(({ grams }) => grams === undefined)) return undefined
  return {
    ...formula,
    stages: formula.stages.map(stage => ({
      ...stage,
      ferments: sheet.stage(stage.id).ferments,
      lines: stage.lines.map(line => {
        const household = lines.get(line.id)
        return { ...line, amount: `${tidy(household?.measured ?? household?.grams ?? 0)} g` }
      }),
    })),
  }
}

/**
 * Each line of the batch in the nearest practical cups and spoons, where it is known what they hold of it, and the dough's
 * true hydration and salt when it is measured so. Lines without words are taken as weighed.
 */
export function householdOf(sheet: FigureSheet, options: HouseholdOptions): Household {
  const stages = new Set(sheet.formula.stages.map(s => nameKey(s.name)))
  const lines = sheet.formula.stages
    .flatMap(stage => stage.lines)
    .filter(line => line.ingredient || line.amount)
    .map(line => {
      const isStage = stages.has(nameKey(line.ingredient))
      const ingredient = isStage ? undefined : sheet.larder.find(line.ingredient)
      return measuredLine(line, sheet.line(line.id).batch, ingredient, options)
    })
  const formula = asMeasured(sheet, new Map(lines.map(line => [line.line, line])))
  const measured = formula && openSheet(formula, sheet.larder)
  return {
    lines,
    trueHydration: {
      weighed: sheet.reading('trueHydration'),
      measured: measured?.reading('trueHydration'),
    },
    salt: { weighed: sheet.reading('salt'), measured: measured?.reading('salt') },
  }
}
