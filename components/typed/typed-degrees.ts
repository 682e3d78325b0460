import { type NumberStyle, showDecimals } from '../base/numbers.js'
import { readNumber } from './typed-numbers.js'

/** A temperature as it is shown, without its unit: `24`, `27.4`. */
export const showCelsius = (celsius: number, style: NumberStyle): string => showDecimals(celsius, style, 1, 0)

/** With its unit. */
export const sayCelsius = (celsius: number, style: NumberStyle): string =>
  `${showCelsius(celsius, style)}\u00a0°C`

/** The °C that a baker typed: `24`, `24,5 °C`, `75 °F`; undefined where it is no temperature. */
export function readDegrees(typed: string, style: NumberStyle): number | undefined {
  const [, number = '', scale = 'C'] = /^(.*?)\s*(?:°\s*)?([CF])?$/i.exec(typed.trim()) ?? []
  const degrees = readNumber(number.replace('−', '-').replace(/°$/, ''), style)
  if (degrees === undefined) return undefined
  return scale.toUpperCase() === 'F' ? Number((((degrees - 32) * 5) / 9).toFixed(2)) : degrees
}

/** The degrees that a baker typed of a rise: a difference. */
export function readRise(typed: string, style: NumberStyle): number | undefined {
  const isFahrenheit = /F\s*$/i.test(typed)
  const degrees = readDegrees(typed.replace(/F\s*$/i, ''), style)
  return degrees === undefined ? undefined : isFahrenheit ? (degrees * 5) / 9 : degrees
}
