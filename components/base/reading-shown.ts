import type { ReadingName } from '../../src/dough/document/reading-names.js'
import { isWeightReading } from '../../src/dough/document/words.js'
import type { FigureSheet } from '../../src/dough/sheet/figures.js'
import { type NumberStyle, showDecimals, showGrams, showNumber, showPercent } from './numbers.js'

/** What a reading is counted in on the screen. */
export const readingUnit = (name: ReadingName): '%' | 'g' => (isWeightReading(name) ? 'g' : '%')

/** A reading as the screen shows it, without its unit: `70.5`, `1,921`. */
export const showReading = (name: ReadingName, value: number, style: NumberStyle): string =>
  isWeightReading(name) ? showGrams(value, style) : showPercent(value, style)

/** A value that a reading is held at, as it was typed: `75`, `2082.5`. */
export const heldToType = (name: ReadingName, value: number, style: NumberStyle): string =>
  showNumber(isWeightReading(name) ? value : value * 100, style)

/** The reading of the batch as it is weighed, where a batch is made and that is not what is written. */
export function showWeighed(sheet: FigureSheet, name: ReadingName, style: NumberStyle): string | undefined {
  const { make } = sheet.formula.batch ?? { make: 'as written' }
  const [written, weighed] = [
    sheet.reading(name),
    make === 'as written' ? undefined : sheet.weighedReading(name),
  ]
  if (written === undefined || weighed === undefined) return undefined
  const shown = showReading(name, weighed, style)
  return shown === showReading(name, written, style) ? undefined : shown
}

/** `58–85 %`: a usual range in words. */
export function showRange([from, to]: readonly [number, number], style: NumberStyle): string {
  const plain = (x: number) => showDecimals(x * 100, style, 1, 0)
  return `${plain(from)}–${plain(to)}\u00a0%`
}
