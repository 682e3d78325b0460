import { readTime } from '../../../src/day/method/step-time.js'
import { isCelsius } from '../../../src/dough/document/day-checks.js'
import type { NumberStyle } from '../../base/numbers.js'
import { readDegrees } from '../../typed/typed-degrees.js'
import { readNumber } from '../../typed/typed-numbers.js'

/** The temperature a baker typed, °C: `21`, `70 °F`; undefined when it is none of a bakehouse. */
export function readCelsius(typed: string, style: NumberStyle): number | undefined {
  const celsius = readDegrees(typed, style)
  return celsius !== undefined && isCelsius(celsius) ? Number(celsius.toFixed(1)) : undefined
}

/** The minutes a baker typed: `15`, `1 h 30`; undefined when they are none. */
export function readMinutes(typed: string, style: NumberStyle): number | undefined {
  const bare = readNumber(typed, style)
  const time = bare === undefined ? readTime(typed.trim()) : undefined
  const minutes = bare ?? (time?.rest.trim() === '' ? time.value : undefined)
  return minutes !== undefined && minutes >= 0 ? minutes : undefined
}
