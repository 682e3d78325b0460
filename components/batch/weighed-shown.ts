import { type Stage, sameName } from '../../src/dough/document/formula.js'
import { grams } from '../../src/dough/document/words.js'
import type { FigureSheet } from '../../src/dough/sheet/figures.js'
import { type NumberStyle, showDecimals } from '../base/numbers.js'
import { exactWords, leftWords } from './words.js'

/** What is weighed, in the steps of the scale. */
export interface WeighedShown {
  readonly grams: number | undefined
  readonly text: string
  readonly exact: string // in words: what it would be on a scale without steps
}

const decimalsOf = (step: number): number => /\.(\d+)/.exec(String(step))?.[1]?.length ?? 0

const unknown: WeighedShown = { grams: undefined, text: '–', exact: '' }

/** What is weighed of a line. */
export function weighedLine(sheet: FigureSheet, line: string, style: NumberStyle): WeighedShown {
  const weighed = sheet.weighed(line)
  if (!weighed) return unknown
  const wanted = sheet.line(line).batch
  const exact = wanted === undefined ? '' : exactWords(grams(wanted))
  return { grams: weighed.grams, text: showDecimals(weighed.grams, style, decimalsOf(weighed.step)), exact }
}

/** Grams of a stage's lines as they are weighed, and the finest decimals among them; undefined where one is not known. */
function weighedSum(sheet: FigureSheet, stage: Stage): { grams: number; decimals: number } | undefined {
  let sum = 0
  let decimals = 0
  for (const line of stage.lines) {
    const weighed = sheet.weighed(line.id)
    if (!weighed) return undefined
    sum += weighed.grams
    if (weighed.grams) decimals = Math.max(decimals, decimalsOf(weighed.step))
  }
  return { grams: sum, decimals }
}

/** What the lines of a stage come to as they are shown. */
export function weighedStage(sheet: FigureSheet, stage: Stage, style: NumberStyle): WeighedShown {
  const sum = weighedSum(sheet, stage)
  if (!sum) return unknown
  const { build } = sheet.stage(stage.id)
  const exact = build === undefined ? '' : exactWords(grams(build))
  return { grams: sum.grams, text: showDecimals(sum.grams, style, sum.decimals), exact }
}

/** Grams of a stage that the lines of later ones weigh, and the coarsest step of the scale at which they do. */
function takenOf(sheet: FigureSheet, stage: Stage): { taken: number; step: number } {
  const all = sheet.formula.stages
    .flatMap(s => s.lines)
    .filter(l => sheet.line(l.id).is === 'stage' && sameName(l.ingredient, stage.name))
    .flatMap(({ id }) => sheet.weighed(id) ?? [])
  return {
    taken: all.reduce((sum, { grams }) => sum + grams, 0),
    step: Math.max(0, ...all.map(({ step }) => step)),
  }
}

/** Grams of a stage that are kept back: those given, or as much as is weighed of its seed. */
export const keptOf = (sheet: FigureSheet, { keepBack = 0, lines }: Stage): number =>
  keepBack === 'seed'
    ? lines
        .filter(({ id }) => sheet.line(id).is === 'starter')
        .reduce((sum, { id }) => sum + (sheet.weighed(id)?.grams ?? 0), 0)
    : keepBack

/**
 * `653 g made, 602 g taken, 50 g kept back`: an earlier stage as it is weighed for the batch. Where all of it is taken, but for less than
 * a step of the scale, only what is made is said.
 */
export function buildWords(sheet: FigureSheet, stage: Stage, style: NumberStyle): readonly string[] {
  const made = weighedSum(sheet, stage)
  if (sheet.stage(stage.id).isFinal || !made) return []
  const { taken, step } = takenOf(sheet, stage)
  const said = (weight: number) => `${showDecimals(weight, style, made.decimals)} g`
  const words = [leftWords.made(said(made.grams))]
  const { loss = 0 } = stage
  const kept = keptOf(sheet, stage)
  if (!loss && !kept && Math.abs(made.grams - taken) < step) return words
  words.push(leftWords.taken(said(taken)))
  if (loss) words.push(leftWords.lost(said(taken / (1 - loss) - taken)))
  if (kept) words.push(leftWords.keptBack(said(kept)))
  return words
}
