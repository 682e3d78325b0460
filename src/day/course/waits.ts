import type { Day } from '../../dough/document/day.js'
import type { StepRead } from '../method/step-text.js'
import type { Length } from '../method/step-time.js'
import { isExtrapolated, timeFactor } from '../temperature/growth.js'

/** Where something stands on a day. */
export type Standing = 'kitchen' | 'fridge' | 'proofer'

/** A wait brought from the temperature it was written for to where it stands. */
export interface Scaled {
  readonly length: Length // minutes
  readonly standing: Standing
  readonly celsius: number // of where it stands
  readonly written: number | undefined // °C it was written for; undefined: its time is taken as it is
  readonly factor: number // 1 where nothing is scaled
  readonly extrapolated: boolean
}

const warmestFridge = 10 // °C: a wait written for no more than this stands in the fridge

/** The place of the day nearest to the temperature a wait was written for. */
export function standingOf({ celsius, inFridge }: StepRead, day: Day): Standing {
  if (inFridge || (celsius !== undefined && celsius <= warmestFridge)) return 'fridge'
  if (celsius === undefined || day.proofer === undefined) return 'kitchen'
  return Math.abs(celsius - day.proofer) < Math.abs(celsius - day.kitchen) ? 'proofer' : 'kitchen'
}

/**
 * A wait on a day: one that says a temperature takes longer where it is cooler and less where it is warmer; from and to
 * move alike, and each moves out by a tenth of what the usual moved. `exact` waits and those that name no temperature
 * are taken as they are.
 */
export function scaledWait(read: StepRead, length: Length, day: Day): Scaled {
  const standing = standingOf(read, day)
  const celsius = day[standing] ?? day.kitchen
  const written = read.celsius
  const same = { standing, celsius, written, length, factor: 1, extrapolated: false }
  if (written === undefined || read.exact || written === celsius) return same
  const factor = timeFactor(written, celsius)
  if (!Number.isFinite(factor) || factor === 0) return { ...same, extrapolated: true }
  const usual = length.usual * factor
  const out = Math.abs(usual - length.usual) / 10
  const least = Math.max(0, length.least * factor - out)
  const extrapolated = isExtrapolated(written) || isExtrapolated(celsius)
  return {
    ...same,
    length: { least, usual, most: length.most * factor + out },
    factor,
    extrapolated,
  }
}
