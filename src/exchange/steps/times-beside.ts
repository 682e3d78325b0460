import type { Tongue } from './sentences.js'
import { lengthWritten, type StepDraft } from './step-draft.js'

const isOpen = ({ length, asTyped }: StepDraft): boolean => length === undefined && asTyped === undefined

function give(step: StepDraft, minutes: number): void {
  step.length = { least: minutes, most: minutes }
  step.reasons = step.reasons.filter(({ code }) => code !== 'noTime' && code !== 'fewMinutes')
}

/**
 * Gives steps a time that is stated beside their words: to the only one, or to the one that is waited for or baked, where the
 * words give it none. Where they give another, that is said.
 */
export function timesBeside(minutes: number, steps: readonly StepDraft[], tongue: Tongue): void {
  const [only, ...others] = steps
  if (!only) return
  const most = steps.reduce((sum, { length }) => sum + (length?.most ?? 0), 0)
  const least = steps.reduce((sum, { length }) => sum + (length?.least ?? 0), 0)
  const open = steps.filter(isOpen)
  const folded = steps.find(({ reasons }) => reasons.some(({ code }) => code === 'foldsLength'))
  if (folded) {
    folded.reasons = folded.reasons.filter(({ code }) => code !== 'foldsLength')
    return give(folded, minutes)
  }
  if (others.length === 0 && open.length === 1) {
    return give(only, minutes)
  }
  const passing = open.filter(({ kind }) => kind !== 'hands')
  const [one, another] = passing.length > 0 ? passing : open
  if (one && !another && minutes > most) {
    // what of it the other steps do not take
    give(one, minutes - (least + most) / 2)
    one.reasons.push({ code: 'timeBeside' })
  } else if (
    !steps.some(({ length }) => length && length.least <= minutes && minutes <= length.most) &&
    !(least <= minutes && minutes <= most)
  )
    steps.at(-1)!.reasons.push({
      code: 'severalTimes',
      others: lengthWritten({ least: minutes, most: minutes }, tongue),
    })
}

/** Gives the only step that is baked the time that the whole recipe bakes, where its words give it none. */
export function bakingBeside(minutes: number, steps: readonly StepDraft[]): void {
  const [bake, ...others] = steps.filter(({ kind }) => kind === 'bake')
  if (!bake || others.length > 0 || !isOpen(bake)) return
  give(bake, minutes)
  bake.reasons.push({ code: 'bakingBeside' })
}
