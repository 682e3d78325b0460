export type DecimalMark = '.' | ','

/** A number in digits as Tarebook writes it. */
export interface Digits {
  readonly value: number
  readonly text: string // decimal point, nothing between thousands: `650`, `0.5`
  readonly mark?: DecimalMark // the decimal mark it can only have been written with
  readonly other?: { readonly value: number; readonly text: string } // how else it can be read: `1,250` as 1.25 or 1250
}

/** A number worked out, to twelve digits. */
export const numberText = (value: number): string => String(Number(value.toPrecision(12)))

/** A text with the number it is. */
export const plain = (text: string) => ({ value: Number(text), text })
const grouped = /^\d{1,3}(?:[.,]\d{3})+$/

/**
 * The number in digits, points and commas, whichever mark is the decimal: `1,5` and `1.5`, `1.234,5`, `1,000,000`.
 * `1,250` can be one and a quarter or a thousand and more: its value is 1.25, `other` is 1250, and `mark` is left out. Undefined where
 * the marks make no number (`1,2,3`) or it has more than 15 digits. An exponent may follow (`2.5e3`).
 */
export function readDigits(written: string): Digits | undefined {
  if (written.length > 24) return undefined
  if (written.length < 16 && /^\d+$/.test(written)) return plain(written)
  const [raw = '', exponent] = written.toLowerCase().split('e')
  if (exponent !== undefined) {
    const base = readDigits(raw)
    return base && !base.other
      ? { ...base, ...plain(numberText(Number(`${base.text}e${exponent}`))) }
      : undefined
  }
  const marks = raw.replace(/\d/g, '')
  if (raw.length - marks.length > 15 || marks === raw) return undefined
  const mark = marks.at(-1) as DecimalMark | undefined
  if (!mark) return plain(raw)
  const at = raw.lastIndexOf(mark)
  const [before, after] = [raw.slice(0, at), raw.slice(at + 1)]
  const other: DecimalMark = mark === ',' ? '.' : ','
  const isGrouped = grouped.test(before) && !before.includes(mark)
  if (marks.length === 1) {
    const decimal = plain(`${before || '0'}.${after}`)
    return after.length === 3 && /^[1-9]\d{0,2}$/.test(before)
      ? { ...decimal, other: plain(before + after) }
      : { ...decimal, mark }
  }
  if (grouped.test(raw) && !raw.includes(other)) return { ...plain(raw.replaceAll(mark, '')), mark: other }
  return isGrouped ? { ...plain(`${before.replaceAll(other, '')}.${after}`), mark } : undefined
}

/** A number that can be read in two ways, with its mark between thousands or as the decimal; any other as it is. */
export function settled<N extends Digits>(number: N, asThousands: boolean): N {
  const { value, text, other } = number
  return other && value < other.value === asThousands
    ? { ...number, ...other, other: { value, text } }
    : number
}

/** Characters of the longest text that is looked at as a number or an amount somebody typed. */
export const longestTyped = 1000
