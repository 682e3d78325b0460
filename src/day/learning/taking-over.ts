import type { Step } from '../../dough/document/formula.js'
import type { Transaction, Workbook } from '../../dough/document/workbook.js'
import { changeStep, type StepAt } from '../../dough/edits/fetched/method-edits.js'
import type { FigureSheet } from '../../dough/sheet/figures.js'
import { readStep, usualFridge } from '../method/step-text.js'
import type { Length } from '../method/step-time.js'
import { ripeningStep, stageOf } from '../mixing/fed-build.js'
import { withLength } from '../mixing/step-rewriting.js'
import { ripeningHours } from '../temperature/growth.js'
import type { Learnt } from './inner-range.js'
import { dilutionOf } from './lessons.js'

/** So many times a length: the middle as usual, and as far to either side as the range is wide. */
function lengthFrom({ middle, low, high }: Learnt, minutes: number): Length {
  const half = (high - low) / 2
  return {
    least: Math.max(0, (middle - half) * minutes),
    usual: middle * minutes,
    most: (middle + half) * minutes,
  }
}

/** How long a wait takes by what was learnt of it, minutes at the temperature it is written for; undefined where it says no time. */
export function waitLearnt({ text }: Step, learnt: Learnt): Length | undefined {
  const { length } = readStep(text)
  return length && lengthFrom(learnt, length.usual)
}

/**
 * How long a build ripens by what was learnt of its levain, fed as it is: minutes at the temperature that its step is written for, or
 * at `place` where it names none.
 */
export function ripeningLearnt(
  sheet: FigureSheet,
  stage: string,
  learnt: Learnt,
  place: number,
): Length | undefined {
  const plan = stageOf(sheet, stage)
  const own = ripeningStep(plan.stage)
  if (!own) return undefined
  const celsius = own.read.celsius ?? (own.read.inFridge ? usualFridge : place)
  const hours = ripeningHours(dilutionOf(sheet, plan), celsius)
  return Number.isFinite(hours) ? lengthFrom(learnt, hours * 60) : undefined
}

/** Whether a step says that time already, as far as it is written. */
export const saysSo = ({ text }: Step, length: Length): boolean => withLength(text, length) === text

/** Gives a step the time that was learnt; all else it says stays. Undefined where it says that already. */
export const takeStepTime = (
  workbook: Workbook,
  at: StepAt,
  { text }: Step,
  length: Length,
): Transaction | undefined => changeStep(workbook, at, { text: withLength(text, length) })
