import type { NumberStyle } from './numbers.js'

/**
 * The number a baker typed into a field of numbers, or undefined when it is none. A single sign before
 * exactly three digits could be either; the baker's own decimal sign decides.
 */
export function readNumber(typed: string, style: NumberStyle): number | undefined {
  const text = typed
    .normalize('NFKC')
    .replace(/[\s'’]/g, '')
    .replace(/\u2212/g, '-')
  if (!/^-?(\d[\d.,]*|[.,]\d+)$/.test(text)) return undefined
  const last = Math.max(text.lastIndexOf('.'), text.lastIndexOf(','))
  if (last < 0) return Number(text)
  const sign = text[last]
  const both = text.includes('.') && text.includes(',')
  const groups =
    text.split(sign!).length > 2 || (!both && sign !== style.decimal && /^-?[1-9]\d{0,2}.\d{3}$/.test(text))
  if (groups && both) return undefined
  const whole = groups ? text : text.slice(0, last)
  const rest = groups ? '' : text.slice(last + 1)
  if (!/^-?\d{0,3}([.,]?\d{3})*$|^-?\d+$/.test(whole)) return undefined
  return Number(`${whole.replace(/[.,]/g, '')}.${rest}`)
}

const formats = new Map<string, Intl.NumberFormat>()

/** A number as the baker would type it: their decimal sign, no grouping, no digits that are only noise. */
export function showNumber(value: number, style: NumberStyle): string {
  let format = formats.get(style.language)
  if (!format) {
    // Latin digits always: what is shown in a field has to be read back from it.
    const options = { maximumSignificantDigits: 6, useGrouping: false, numberingSystem: 'latn' }
    format = new Intl.NumberFormat(style.language, options)
    formats.set(style.language, format)
  }
  return format.format(value)
}
